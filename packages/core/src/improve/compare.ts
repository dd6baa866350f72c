/**
 * What changes between two versions of a plan: where stations stand, how races are spaced, where items
 * are laid out, and which findings come and go. Findings are told apart by code, station, race, item
 * and course, never by their words.
 */
import type { Analysis } from '../analyse.ts';
import type { Side } from '../course/course.ts';
import type { Finding, LonLat } from '../finding.ts';
import { inverseLength } from '../geodesy/karney.ts';
import type { Item, LaidDirection, StationLayout } from '../layout/layout.ts';
import { findById, itemOf } from '../plan/lookups.ts';
import type { ItemKind } from '../plan/plan.ts';
import type { Leg, RaceSpacing } from '../station/station.ts';
import { aText, tuple, want } from '../wants.ts';
import { isAnalysis } from '../review/shapes.ts';

/** A value before and after; `null` where there is none. */
export type Change<T> = readonly [before: T, after: T];

/** A station that stands elsewhere; `moved` is metres on the ground, as the crow flies. */
export interface MovedStation {
  readonly id: string;
  readonly name: string;
  readonly moved: number;
  readonly from: LonLat;
  readonly to: LonLat;
}

/** A leg that changed, metres; `null` where only the other version has it. */
export interface ChangedLeg {
  readonly from: string;
  readonly to: string;
  readonly length: Change<number | null>;
}

/** The legs of a race that changed; longest, shortest and mean before and after in any case. Metres. */
export interface ChangedSpacing {
  readonly race: string;
  readonly legs: readonly ChangedLeg[];
  readonly longest: Change<number>;
  readonly shortest: Change<number>;
  readonly mean: Change<number>;
}

/** An item laid out otherwise, from the pin's foot on, metres: its upstream end, then its downstream one. */
export interface ChangedItem {
  readonly station: string;
  readonly item: ItemKind;
  /** Of the lead direction, or of another. */
  readonly lead: boolean;
  /** Of that direction's first pass. */
  readonly race: string;
  /** Along the course. */
  readonly along: Change<number | null>;
  /** By measuring wheel. */
  readonly wheel: Change<number | null>;
  readonly alongEnd: Change<number | null>;
  readonly wheelEnd: Change<number | null>;
  readonly side: Change<Side | null>;
}

/** What changes between two states of a plan; only what differs is listed. */
export interface Comparison {
  /** Their names. */
  readonly variants: Change<string>;
  readonly stations: readonly MovedStation[];
  readonly spacing: readonly ChangedSpacing[];
  readonly items: readonly ChangedItem[];
  readonly findings: { readonly gained: readonly Finding[]; readonly lost: readonly Finding[] };
}

/** Metres that count as no change of a place or a leg: 1 mm. */
const SAME = 1e-3;
/** Metres that no crew can tell along a kerb. */
const SAME_ITEM = 0.05;

/**
 * What changes between two analyses of one plan, of the same races and the same stations by id; `names`: what they are called.
 * Only what differs is listed: places and legs by over 1 mm, items by over 5 cm.
 * @example
 * ```ts
 * import { analyse, compareAnalyses, improve, readPlan } from '@halfcup/core';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const result = analyse(read.value.plan, { gpx: new Map() });
 * if (!result.ok) throw new Error(result.findings[0]?.message);
 * const { analysis: after } = improve(result.value, { within: 200 });
 * const { stations, spacing } = compareAnalyses(['today', 'improved'], result.value, after);
 * stations.map(({ id, moved }) => [id, moved]); // → [['s1', 135]]
 * spacing[0]?.longest; // → [2000, 1865]
 * ```
 */
export function compareAnalyses(names: Change<string>, before: Analysis, after: Analysis): Comparison {
  want('compareAnalyses', 'names', tuple(aText, aText), names);
  want('compareAnalyses', 'before', isAnalysis, before);
  want('compareAnalyses', 'after', isAnalysis, after);
  const pairs = before.stations.flatMap((station) => {
    const other = findById(after.stations, station.id);
    return other === undefined ? [] : [[station, other] as const];
  });
  return {
    variants: names,
    stations: pairs.flatMap(([from, to]) => movedStation(from, to)),
    spacing: before.spacing.map((race, k) => changedSpacing(race, after.spacing[k]!)),
    items: pairs.flatMap(([from, to]) => changedItems(from, to)),
    findings: { gained: beyond(after.findings, before.findings), lost: beyond(before.findings, after.findings) },
  };
}

function movedStation({ id, name, at: from }: StationLayout, { at: to }: StationLayout): MovedStation[] {
  const moved = inverseLength(from[0], from[1], to[0], to[1]);
  return moved <= SAME ? [] : [{ id, name, moved, from, to }];
}

/** Legs by their ends and by which time the race runs between these, from 0. */
function keyedLegs(legs: readonly Leg[]): Map<string, Leg> {
  const keyed = new Map<string, Leg>();
  for (const leg of legs) {
    let turn = 0;
    while (keyed.has(JSON.stringify([leg.from, leg.to, turn]))) turn++;
    keyed.set(JSON.stringify([leg.from, leg.to, turn]), leg);
  }
  return keyed;
}

function changedSpacing(before: RaceSpacing, after: RaceSpacing): ChangedSpacing {
  const [old, now] = [keyedLegs(before.legs), keyedLegs(after.legs)];
  const legs = [...new Set([...old.keys(), ...now.keys()])].flatMap((key): ChangedLeg[] => {
    const [a, b] = [old.get(key), now.get(key)];
    const { from, to } = (a ?? b)!;
    const length = [a?.length ?? null, b?.length ?? null] as const;
    return same(length, SAME) ? [] : [{ from, to, length }];
  });
  return {
    race: before.race,
    legs,
    longest: [before.longest, after.longest],
    shortest: [before.shortest, after.shortest],
    mean: [before.mean, after.mean],
  };
}

const same = ([a, b]: Change<number | null>, within: number): boolean =>
  a === b || (a !== null && b !== null && Math.abs(a - b) <= within);

/** A direction by its first pass, which keeps its number while the station moves on its stretch of road. */
const directionKey = ({ lead, passes }: LaidDirection, station: StationLayout): string => {
  const first = station.passes[passes[0]!]!;
  return lead ? 'lead' : JSON.stringify([first.race, first.pass]);
};

function changedItems(before: StationLayout, after: StationLayout): ChangedItem[] {
  const keyed = (station: StationLayout): Map<string, LaidDirection> =>
    new Map(station.directions.map((direction) => [directionKey(direction, station), direction]));
  const [old, now] = [keyed(before), keyed(after)];
  return [...new Set([...old.keys(), ...now.keys()])].flatMap((key) => {
    const [a, b] = [old.get(key), now.get(key)];
    const { lead, race } = (a ?? b)!;
    const kinds = new Set([...(a?.items ?? []), ...(b?.items ?? [])].map(({ kind }) => kind));
    return [...kinds].flatMap((kind) => {
      const [one, other] = [a, b].map((direction) => direction && itemOf(direction, kind));
      const changes = changesOf(one, other);
      return changes === null ? [] : [{ station: before.id, item: kind, lead, race, ...changes }];
    });
  });
}

function changesOf(
  one: Item | undefined,
  other: Item | undefined,
): Omit<ChangedItem, 'station' | 'item' | 'lead' | 'race'> | null {
  const of = (key: 'along' | 'wheel', end: 0 | 1): Change<number | null> => [
    one?.[key]?.[end] ?? null,
    other?.[key]?.[end] ?? null,
  ];
  const changes = {
    along: of('along', 0),
    wheel: of('wheel', 0),
    alongEnd: of('along', 1),
    wheelEnd: of('wheel', 1),
    side: [one?.side ?? null, other?.side ?? null] as const,
  };
  const kept =
    [changes.along, changes.wheel, changes.alongEnd, changes.wheelEnd].every((change) => same(change, SAME_ITEM)) &&
    changes.side[0] === changes.side[1];
  return kept ? null : changes;
}

const findingKey = ({ code, where: { station, race, item, course } }: Finding): string =>
  JSON.stringify([code, station, race, item, course]);

/** Findings of the first list that the second has none of, or fewer of: the last of each kind. */
function beyond(findings: readonly Finding[], others: readonly Finding[]): Finding[] {
  const left = new Map<string, number>();
  for (const other of others) left.set(findingKey(other), (left.get(findingKey(other)) ?? 0) + 1);
  return findings.filter((finding) => {
    const key = findingKey(finding);
    const count = left.get(key) ?? 0;
    left.set(key, count - 1);
    return count <= 0;
  });
}
