/**
 * Which recorded point is which item of the plan: by the station and the item that its name says,
 * else by the nearest planned place. Where two answers are possible there is none, and a finding.
 */
import type { Finding, LonLat } from '../finding.ts';
import { eastNorth } from '../geodesy/frame.ts';
import { type LaidDirection, type StationLayout, isTable } from '../layout/layout.ts';
import { formOf } from '../kinds.ts';
import type { ItemKind } from '../plan/plan.ts';
import type { PlacedParams, StationItem } from '../text/params/placed.ts';
import { type PlacedName, readName } from './placedNames.ts';
import { type PlacedPoint, makePlaced } from './placedPoint.ts';

/** How far, metres, a point that names no station may stand from the planned place that it is taken for. */
export const NEAR = 60;

/** An item of the plan that can be recorded: a direction's own sign and trash drop, and the tables that all directions share. */
export interface Target {
  readonly station: StationLayout;
  readonly direction: LaidDirection;
  readonly kind: ItemKind;
  /** Planned places of its ends and boxes. */
  readonly places: readonly LonLat[];
}

/** A point that stands for a target, and for which end of it where its name says so. */
export interface Matched {
  readonly point: PlacedPoint;
  readonly target: Target;
  readonly end: 'from' | 'to' | null;
}

/** What was matched; `blocked`: targets that points name, but none may be used. */
export interface Matching {
  readonly matched: readonly Matched[];
  readonly blocked: ReadonlySet<Target>;
  readonly findings: readonly Finding[];
}

/** Everything of a layout that can be recorded, in the plan's order. */
export function targetsOf(stations: readonly StationLayout[]): Target[] {
  return stations.flatMap((station) =>
    station.directions.flatMap((direction) =>
      direction.items
        .filter((item) => formOf(item.kind) !== 'line' && (direction.lead || !isTable(item)))
        .map(({ kind, at, boxes = [] }) => ({
          station,
          direction,
          kind,
          places: [...at, ...boxes.map((box) => box.at)].filter((place) => place !== null),
        })),
    ),
  );
}

/** Stations whose names are exchanged on the ground: each with the one that is meant. */
export type Exchanged = ReadonlyMap<StationLayout, StationLayout>;

/** Matches points that name an item first, then those that do not, against what is left. */
export function matchPoints(
  points: readonly PlacedPoint[],
  stations: readonly StationLayout[],
  targets: readonly Target[],
  exchanged: Exchanged = new Map(),
): Matching {
  const read = points.map((point) => {
    const name = readName(point.waypoint.name, stations);
    return { point, name: { ...name, stations: name.stations.map((one) => exchanged.get(one) ?? one) } };
  });
  const says = read.filter(({ name }) => name.kinds !== 'any').map(({ point, name }) => matchOne(point, name, targets));
  const taken = new Set(says.flatMap((one) => ('target' in one ? [one.target] : [])));
  const left = targets.filter((target) => !taken.has(target));
  const silent = read.filter(({ name }) => name.kinds === 'any').map(({ point, name }) => matchOne(point, name, left));
  const all = [...says, ...silent];
  const matched = all.flatMap((one) => ('target' in one ? [one] : []));
  const twice = doubled(matched);
  return {
    matched: matched.filter(({ target }) => !twice.has(target)),
    blocked: new Set([...twice.keys(), ...all.flatMap((one) => ('between' in one ? one.between : []))]),
    findings: [...all.flatMap((one) => ('finding' in one ? [one.finding] : [])), ...twice.values()],
  };
}

type Answer = Matched | { readonly finding: Finding; readonly between: readonly Target[] };

function matchOne(point: PlacedPoint, name: PlacedName, targets: readonly Target[]): Answer {
  if (name.stations.length > 1)
    return ambiguous(point, { is: 'stations', stations: name.stations.map(({ id }) => id) }, []);
  const fitting = targets.filter((target) => fits(target, name));
  const station = name.stations[0] ?? confirmed(name, point, fitting);
  const own = station === null ? [] : fitting.filter((target) => target.station === station);
  if (station !== null && own.length === 0)
    return unknown({ is: 'nothing', point: point.waypoint.name, station: station.id }, point);
  // A thing that was moved far is still the thing that its name says; where the name says no station or no item, only what is near.
  const certain = station !== null && name.kinds !== 'any';
  const near = (station === null ? fitting : own)
    .map((target) => ({ target, away: distanceTo(target, point) }))
    .filter(({ away }) => certain || away <= NEAR)
    .sort((a, b) => a.away - b.away);
  const [first, second] = near;
  if (first === undefined) return unknown({ is: 'far', point: point.waypoint.name, near: NEAR }, point);
  if (second !== undefined && !(second.away - first.away > point.r95)) {
    const between = near.filter(({ away }) => !(away - first.away > point.r95)).map(({ target }) => target);
    return ambiguous(
      point,
      { is: 'between', of: between.map(refOf), r95: point.r95 },
      name.kinds === 'any' ? [] : between,
    );
  }
  return { point, target: first.target, end: name.end };
}

function fits({ station, kind }: Target, { kinds }: PlacedName): boolean {
  if (kinds === 'any') return true;
  if (kinds === 'none') return false;
  return kinds === 'pin' ? kind === pinKind(station) : kinds.includes(kind);
}

/** The kind of the table at the chalk mark. */
export const pinKind = ({ station: { serves } }: StationLayout): ItemKind =>
  serves.includes('sportsDrink') ? 'sportsDrink' : serves.includes('water') ? 'water' : 'gel';

/** The station of a loose number, where no other is nearer. */
function confirmed({ perhaps }: PlacedName, point: PlacedPoint, fitting: readonly Target[]): StationLayout | null {
  if (perhaps === null) return null;
  const nearest = fitting.reduce<Target | null>(
    (best, target) => (best === null || distanceTo(target, point) < distanceTo(best, point) ? target : best),
    null,
  );
  return nearest?.station === perhaps ? perhaps : null;
}

/** Metres to the nearest planned place of a target; Infinity where it has none. */
export const distanceTo = ({ places }: Target, { at }: PlacedPoint): number =>
  places.reduce((least, place) => {
    const { east, north } = eastNorth(at, place);
    return Math.min(least, Math.hypot(east, north));
  }, Infinity);

const refOf = ({ kind, station, direction }: Target): StationItem => ({
  station: station.id,
  item: kind,
  measure: station.directions.length > 1 && !isTable({ kind }) ? direction.measure : null,
});

/** Targets that may have one point and have more, or more than one for the same end, with what is said of each. */
function doubled(matched: readonly Matched[]): Map<Target, Finding> {
  const twice = new Map<Target, Finding>();
  for (const target of new Set(matched.map((one) => one.target))) {
    const own = matched.filter((one) => one.target === target);
    const same =
      formOf(target.kind) === 'board'
        ? own
        : ['from', 'to'].map((end) => own.filter((one) => one.end === end)).find((ends) => ends.length > 1);
    if (same === undefined || same.length < 2) continue;
    const { where } = same[1]!.point;
    const params = {
      is: 'twice',
      points: same.map(({ point }) => point.waypoint.name),
      lines: same.map(({ point }) => point.waypoint.line),
      of: refOf(target),
    } as const;
    twice.set(
      target,
      makePlaced('placed-ambiguous', params, {
        severity: 'warning',
        where: { ...where, station: target.station.id, item: target.kind },
      }),
    );
  }
  return twice;
}

type Ambiguous = PlacedParams['placed-ambiguous'];

function ambiguous(
  { waypoint, where }: PlacedPoint,
  why: Omit<Extract<Ambiguous, { is: 'stations' }>, 'point'> | Omit<Extract<Ambiguous, { is: 'between' }>, 'point'>,
  between: readonly Target[],
): Answer {
  const params = { ...why, point: waypoint.name };
  return { finding: makePlaced('placed-ambiguous', params, { severity: 'warning', where }), between };
}

const unknown = (params: PlacedParams['placed-unknown'], { where }: PlacedPoint): Answer => ({
  finding: makePlaced('placed-unknown', params, { severity: 'warning', where }),
  between: [],
});
