/**
 * Where a whole station was recorded: the table at its pin, else the first one that was, and how far that is from where the plan has
 * it. Model: the distance between two places whose errors are the point's and `pinR95`; beyond the limit by the margin k·σ it is too
 * far, beyond it by less nobody can tell.
 */
import type { Finding, LonLat } from '../finding.ts';
import { inverseLength } from '../geodesy/karney.ts';
import { type Item, isTable } from '../layout/layout.ts';
import { itemOf } from '../plan/lookups.ts';
import { COMMON_PRACTICE } from './check.ts';
import { type OnCourse, type PlacedGround, endPoints, marginOf, onCourse } from './placedGround.ts';
import { pinKind } from './placedMatch.ts';
import { type PlacedPoint, makePlaced } from './placedPoint.ts';
import type { Verdict } from './placedVerdict.ts';

/** The recorded table that tells where its station stands. */
export interface Anchor {
  readonly item: Item;
  /** Which end of it was recorded, as the lead's runners meet it. */
  readonly end: 0 | 1;
  readonly point: PlacedPoint;
  /** `null` where no pass of the lead's course is near. */
  readonly on: OnCourse | null;
  /** Where the plan has that end. */
  readonly planned: LonLat;
}

/** How far a station was recorded from its place in the plan. Lengths in metres. */
export interface PlacedStation {
  /** Its id. */
  readonly station: string;
  readonly course: string;
  /** The table by which it is told. */
  readonly item: Item['kind'];
  readonly planned: LonLat;
  readonly recorded: LonLat;
  readonly distance: number;
  /** By how much the distance must differ from the limit to be decided. */
  readonly margin: number;
  /** `placedWithin` of the practice. */
  readonly limit: number;
  readonly verdict: Verdict;
  /** Of `distance`, along the course, downstream positive; `null` where the course is not near. */
  readonly along: number | null;
  /** Course distances of both; `null` where the course is not near. */
  readonly measures: readonly [planned: number, recorded: number | null];
}

/** The table of the lead's ground that was recorded: the one at the pin, else the first that runners meet. */
export function anchorOf(ground: PlacedGround): Anchor | null {
  const { direction, station } = ground;
  const pin = itemOf(direction, pinKind(station));
  const tables = direction.items.filter((item) => isTable(item) && item.kind !== 'handOut');
  const ordered = [...tables].sort((a, b) => Number(b === pin) - Number(a === pin) || a.from - b.from);
  for (const item of ordered) {
    const found = recordedEnd(item, ground);
    const planned = found === null ? null : item.at[found.end];
    if (found !== null && planned !== null) return { ...found, item, planned };
  }
  return null;
}

function recordedEnd(item: Item, ground: PlacedGround): Pick<Anchor, 'end' | 'point' | 'on'> | null {
  const ends = endPoints(item, ground);
  const end = ends[0] !== null ? 0 : 1;
  const on = ends[end];
  if (on !== null) return { end, point: on.point, on };
  const own = ground.matched.filter(({ target }) => target.kind === item.kind);
  const far = own.find((one) => one.end !== 'to') ?? own[0];
  if (far === undefined) return null;
  return { end: far.end === 'to' ? 1 : 0, point: far.point, on: onCourse(far.point, item.from, ground) };
}

/** The station's distance from the plan; `null` where none of its tables was recorded. */
export function placedStation(ground: PlacedGround, anchor: Anchor | null): PlacedStation | null {
  if (anchor === null) return null;
  const { item, end, point, on, planned } = anchor;
  const { placedWithin: limit, pinR95 } = ground.station.practice;
  const [recorded, margin] = [point.at, marginOf(point.r95, pinR95)];
  const distance = inverseLength(planned[0], planned[1], recorded[0], recorded[1]);
  const from = end === 0 ? item.from : item.to;
  return {
    station: ground.station.id,
    course: ground.direction.course,
    item: item.kind,
    planned,
    recorded,
    distance,
    margin,
    limit,
    verdict: distance <= limit ? 'holds' : distance > limit + margin ? 'fails' : 'cannot tell',
    along: on === null ? null : on.measure - from,
    measures: [from, on?.measure ?? null],
  };
}

/** What is said of a station that stands too far from its plan, or may. */
export function farFinding({ verdict, ...one }: PlacedStation, { point }: Anchor): Finding[] {
  if (verdict === 'holds') return [];
  const { station, course, item, distance: measured, limit, margin, along } = one;
  const sure = verdict === 'fails';
  const mostly = along !== null && Math.abs(along) > measured / 2 ? along : null;
  const where = { ...point.where, station, course, item };
  return [
    makePlaced(
      'placed-far',
      { measured, limit, margin, along: mostly, sure },
      {
        severity: sure ? 'error' : 'note',
        where,
        measured,
        limit,
        unit: 'm',
        source: COMMON_PRACTICE,
        ...(sure ? {} : { cannotTell: true }),
      },
    ),
  ];
}
