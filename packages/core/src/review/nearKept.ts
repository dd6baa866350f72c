/**
 * Checks that the road stays free by what the map has beside the course: hydrants, fire stations, hospitals. Where a course runs by
 * several times, each counts.
 */
import { passesOf } from '../course/passes.ts';
import type { KeepClear, KeepClearKind } from '../ground/along.ts';
import type { StationLayout } from '../layout/layout.ts';
import type { NearKept } from '../text/params/reviewGround.ts';
import { type Met, type Span, alongOf, casesOf, dayOfMap, gapTo, noMap, spansOf } from './byMap.ts';
import { type Case, type Check, type Ground, type ReviewCode, type RuleOf, stationCheck } from './check.ts';
import { courseOf } from './standing.ts';
import { local } from './zones.ts';

/** What is kept clear: `free` metres along the course on either side of what the map has up to `beside` metres from it. */
export interface Kept<C extends ReviewCode> {
  readonly kinds: readonly KeepClearKind[];
  readonly free: number;
  readonly beside: number;
  /** Only on its own side of the road. */
  readonly ownSide: boolean;
  readonly params: (shared: NearKept, kept: KeepClear) => Case<C>['params'];
}

export const nearKept = <C extends ReviewCode>(rule: Omit<RuleOf<C>, 'missing'>, kept: Kept<C>): Check =>
  stationCheck<C>({ ...rule, missing: noMap }, (station, ground) => nearAt(station, ground, kept));

function nearAt<C extends ReviewCode>(station: StationLayout, ground: Ground, kept: Kept<C>): Case<C>[] {
  if (ground.ground === undefined) return [];
  const map = dayOfMap(ground.ground);
  const spans = spansOf(station);
  const reach = kept.free + kept.beside + Math.max(0, ...spans.map(({ item }) => farthest(item.along)));
  const met = spans.flatMap((span) =>
    (alongOf(ground, span.direction)?.keepClear ?? [])
      .filter((one) => kept.kinds.includes(one.kind) && isWithin(one, station, reach))
      .flatMap((one) => metBy(span, one, ground, kept)),
  );
  return casesOf<C, KeepClear>(met, station, ({ thing, by }, items) => {
    const measured = kept.free - by;
    return {
      params: kept.params({ map, items, name: thing.name, measured, limit: kept.free }, thing),
      measured,
      limit: kept.free,
      unit: 'm',
    };
  });
}

const farthest = ([from, to]: readonly [number, number]): number => Math.max(Math.abs(from), Math.abs(to));

/** Courses bend: what is farther away as the crow flies is farther along them too. */
function isWithin({ lon, lat }: KeepClear, { at }: StationLayout, reach: number): boolean {
  const [east, north] = local(at, [lon, lat]);
  return Math.hypot(east!, north!) <= reach;
}

function metBy<C extends ReviewCode>(
  span: Span,
  thing: KeepClear,
  ground: Ground,
  { free, beside, ownSide }: Kept<C>,
): Met<KeepClear>[] {
  const passes = passesOf(courseOf(ground, span.direction.course), [thing.lon, thing.lat], { snapRadius: beside });
  const { side } = span.item;
  const gaps = passes
    .filter(({ offset }) => !ownSide || side === 'unclear' || offset > 0 === (side === 'left'))
    .map(({ measure }) => gapTo(span, measure));
  const gap = Math.min(...gaps);
  return gap < free ? [{ span, thing, id: thing.id, by: free - gap }] : [];
}
