/**
 * A fork between sign and last box: runners who join the road there, or leave it, pass some of what a station has and
 * not the rest. Where served runners miss the sign alone, `sign-missed` says so; where runners who are not served pass
 * the tables, `passers-not-served` or `seen-not-served` does.
 */
import type { LaidDirection, Layout, StationLayout } from '../layout/layout.ts';
import { itemOf } from '../plan/lookups.ts';
import type { StretchPart } from '../text/params/reviewFlows.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, check } from './check.ts';
import { type Beside, type OtherLeg, groundOfPlace, halfRoad, otherLegs } from './otherLegs.ts';
import { tableEnds } from './standing.ts';

/** Metres by which a fork may cut into what counts as passed: roads part slowly. */
const ROOM = 5;

export const forkInStretch: Check = check(
  {
    code: 'fork-in-stretch',
    severity: 'warning',
    source: COMMON_PRACTICE,
  },
  (layout) =>
    layout.stations.flatMap((station) =>
      station.directions.flatMap((direction) => {
        const forks = otherLegs(direction, layout).flatMap((leg) => forkOf(leg, direction, station, layout));
        const first = forks.toSorted((a, b) => Math.abs(a.params.away) - Math.abs(b.params.away))[0];
        return first === undefined ? [] : [withAll(first, forks)];
      }),
    ),
);

/** The fork nearest the tables, with the races of all that take it the same way. */
const withAll = (
  first: Case<'fork-in-stretch'>,
  forks: readonly Case<'fork-in-stretch'>[],
): Case<'fork-in-stretch'> => ({
  ...first,
  params: {
    ...first.params,
    races: [
      ...new Set(forks.filter(({ params }) => params.how === first.params.how).flatMap(({ params }) => params.races)),
    ],
  },
});

function forkOf(
  leg: OtherLeg,
  direction: LaidDirection,
  station: StationLayout,
  layout: Layout,
): Case<'fork-in-stretch'>[] {
  const on = leg.places.filter(({ lateral }) => Math.abs(lateral) <= halfRoad(station));
  const [first, last] = [on[0], on.at(-1)];
  const tables = tableEnds(direction);
  // A leg that changes sides crosses: that has a finding of its own.
  if (
    leg.runs !== 'with' ||
    first === undefined ||
    last === undefined ||
    tables === null ||
    leg.comes.side * leg.goes.side === -1
  )
    return [];
  const shared: Reach = [
    leg.comes.is === 'side' ? first.along : -Infinity,
    leg.goes.is === 'side' ? last.along : Infinity,
  ];
  const { meets, misses, any } = partsMet(shared, direction, tables);
  if (!any || misses.length === 0 || isToldElsewhere(leg, misses, shared, tables, station)) return [];
  const how = leg.comes.is === 'side' && (misses[0] === 'sign' || leg.goes.is !== 'side') ? 'joins' : 'parts';
  const place: Beside = how === 'joins' ? first : last;
  const away = place.along < tables[0] ? place.along - tables[0] : Math.max(place.along - tables[1], 0);
  const races = layout.plan.races.filter(({ course }) => course === leg.course.id).map(({ id }) => id);
  return [
    {
      params: { races, how, away, meets, misses },
      where: {
        ...atStation(station),
        course: leg.course.id,
        race: races[0]!,
        measure: place.measure,
        at: groundOfPlace(leg, place),
      },
    },
  ];
}

type Reach = readonly [from: number, to: number];

/** What a leg that shares the road from one course distance to another passes whole, what not; `any`: whether it passes a part of anything. */
function partsMet(
  [from, to]: Reach,
  direction: LaidDirection,
  tables: Reach,
): { readonly meets: StretchPart[]; readonly misses: StretchPart[]; readonly any: boolean } {
  const [sign, trash] = [itemOf(direction, 'sign'), itemOf(direction, 'trash')];
  const parts: [StretchPart, Reach][] = [
    ...(sign === undefined ? [] : [['sign', [sign.from, sign.from]] as [StretchPart, Reach]]),
    ['tables', tables],
    ...(trash === undefined || trash.boxes?.length === 0
      ? []
      : [['boxes', [trash.from, trash.to]] as [StretchPart, Reach]]),
  ];
  const whole = ([, [low, high]]: [StretchPart, Reach]): boolean => from <= low + ROOM && to >= high - ROOM;
  return {
    meets: parts.filter(whole).map(([part]) => part),
    misses: parts.filter((part) => !whole(part)).map(([part]) => part),
    any: parts.some(([, [low, high]]) => from <= high && to >= low),
  };
}

function isToldElsewhere(
  leg: OtherLeg,
  misses: readonly StretchPart[],
  shared: Reach,
  tables: Reach,
  { passes }: StationLayout,
): boolean {
  const [first, last] = [leg.places[0]!.measure, leg.places.at(-1)!.measure];
  const served = passes.some(
    ({ course, measure, served: is }) => is && course === leg.course.id && measure >= first && measure <= last,
  );
  if (served) return misses.length === 1 && misses[0] === 'sign';
  return shared[0] <= tables[1] && shared[1] >= tables[0];
}
