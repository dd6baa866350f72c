/**
 * Another leg of any course that crosses the road between sign and last box, or comes up to it: runners run into one
 * another, or into tables. Told from legs that share the road by where they come from and go to (`otherLegs.ts`): one
 * that stays with it one way joins or parts (`fork-in-stretch`), one that runs it both ways shares it.
 */
import { inverseLength } from '../geodesy/karney.ts';
import type { LonLat } from '../finding.ts';
import type { LaidDirection, Layout, StationLayout } from '../layout/layout.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, check } from './check.ts';
import { type Beside, type OtherLeg, groundOfPlace, halfRoad, otherLegs, stretchOf } from './otherLegs.ts';
import { tableEnds } from './standing.ts';

/** Places of two courses nearer than this, metres, are one crossing. */
const ONE_PLACE = 30;
/** A leg that leaves to the side that it came from, and stays with the road for longer than this, metres, joins and parts. */
const SHARES = 20;

/** Where another leg meets the road of a station. */
interface Meeting {
  readonly leg: OtherLeg;
  readonly touches: boolean;
  readonly measure: number;
  readonly at: LonLat;
  /** From the tables along the course, upstream negative; 0 beside them. */
  readonly away: number;
}

export const legCrosses: Check = check(
  {
    code: 'leg-crosses',
    severity: 'warning',
    source: COMMON_PRACTICE,
  },
  (layout) =>
    layout.stations.flatMap((station) => {
      const met = station.directions.flatMap((direction) => meetings(direction, station, layout));
      const nearest = met.toSorted((a, b) => Math.abs(a.away) - Math.abs(b.away));
      const kept: Meeting[] = [];
      for (const one of nearest) if (!kept.some((other) => isOnePlace(one, other))) kept.push(one);
      return kept.map((one) => foundOf(one, nearest, station));
    }),
);

const isOnePlace = ({ at: a }: Meeting, { at: b }: Meeting): boolean =>
  inverseLength(a[0], a[1], b[0], b[1]) <= ONE_PLACE;

function meetings(direction: LaidDirection, station: StationLayout, layout: Layout): Meeting[] {
  const stretch = stretchOf(direction);
  const tables = tableEnds(direction);
  if (stretch === null || tables === null) return [];
  const half = halfRoad(station);
  return otherLegs(direction, layout).flatMap((leg) => {
    const met = meetingPlaces(leg, half);
    if (met === null) return [];
    const alongs = met.places.map(({ along }) => along);
    // The leg is as wide as the road.
    const [from, to] = [Math.min(...alongs) - half, Math.max(...alongs) + half];
    if (to < stretch[0] || from > stretch[1]) return [];
    const away = to < tables[0] ? to - tables[0] : Math.max(from - tables[1], 0);
    const place = met.places.toSorted((a, b) => Math.abs(a.lateral) - Math.abs(b.lateral))[0]!;
    return [{ leg, touches: met.touches, measure: place.measure, at: groundOfPlace(leg, place), away }];
  });
}

/** Where a leg crosses the road or comes up to it; `null` where it does neither. `half`: of the road, metres. */
function meetingPlaces(
  leg: OtherLeg,
  half: number,
): { readonly touches: boolean; readonly places: readonly Beside[] } | null {
  const { comes, goes, runs, places } = leg;
  const on = places.filter(({ lateral }) => Math.abs(lateral) <= half);
  if (comes.side * goes.side === -1) return { touches: false, places: on.length > 0 ? on : crossed(places) };
  if (on.length === 0) return null;
  const sides = [comes, goes].filter(({ is }) => is === 'side').length;
  if (sides === 2) return runs === 'with' && lengthOf(on) > SHARES ? null : { touches: true, places: on };
  // One end stays with the road: against the own runners it is a way that comes to it here, or goes.
  if (sides === 1 && runs !== 'with' && [comes, goes].some(({ is }) => is === 'along'))
    return { touches: true, places: comes.is === 'side' ? on.slice(0, 1) : on.slice(-1) };
  return null;
}

const lengthOf = (places: readonly Beside[]): number => places.at(-1)!.measure - places[0]!.measure;

/** Where the leg changes sides between two places that are both off the road. */
const crossed = (places: readonly Beside[]): Beside[] => {
  const after = places.findIndex(({ lateral }, k) => k > 0 && Math.sign(lateral) !== Math.sign(places[k - 1]!.lateral));
  return places.slice(after - 1, after + 1);
};

function foundOf(
  { leg, touches, measure, at, away }: Meeting,
  all: readonly Meeting[],
  station: StationLayout,
): Case<'leg-crosses'> {
  const here = all.filter((other) => inverseLength(at[0], at[1], other.at[0], other.at[1]) <= ONE_PLACE);
  const courses = [...new Set([leg.course.id, ...here.map((other) => other.leg.course.id)])];
  return {
    params: { courses, measure, touches: touches && here.every((other) => other.touches), away },
    where: { ...atStation(station), course: leg.course.id, measure, at },
    severity: away === 0 ? 'error' : 'warning',
    measured: Math.abs(away),
    unit: 'm',
  };
}
