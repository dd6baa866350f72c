/**
 * A race that is served along its course, and nowhere plain water, or for longer than a leg may be: between two stops with
 * water, counting the start and the finish, only others stand. One that is served nowhere: `race-unserved`; a leg that is too long by itself: `leg-long`.
 */
import type { Layout } from '../layout/layout.ts';
import { servedOn } from '../layout/stretches.ts';
import type { Leg, RaceSpacing } from '../station/station.ts';
import { findById } from '../plan/lookups.ts';
import { type Case, type Check, COMMON_PRACTICE, check } from './check.ts';
import { lostFrom } from './lost.ts';

export const noWater: Check = check(
  { code: 'no-water', severity: 'error', source: COMMON_PRACTICE, lost: true },
  (layout) => {
    const served = layout.spacing.filter(({ legs }) => legs.length > 1);
    const dry = served.filter((race) => !stopsOf(race).some((id) => hasWater(id, layout))).map(({ race }) => race);
    const long = served.filter(({ race }) => !dry.includes(race)).flatMap((race) => longestDry(race, layout));
    return dry.length === 0
      ? long
      : [
          {
            params: { races: dry, dry: null },
            where: { path: '/stations', ...(dry.length === 1 ? { race: dry[0]! } : {}) },
            measured: dry.length,
            limit: 0,
          },
          ...long,
        ];
  },
);

const stopsOf = ({ legs }: RaceSpacing): string[] => legs.flatMap(({ to }) => (to === 'finish' ? [] : [to]));

function hasWater(id: string, { stations }: Layout): boolean {
  const station = findById(stations, id);
  return station !== undefined && servedOn(station.station).includes('water');
}

/** The longest way of a race from water to water that other stops part into legs, where it is longer than a leg may be. */
function longestDry({ race, course, legs }: RaceSpacing, layout: Layout): Case<'no-water'>[] {
  const limit = layout.plan.practice.maxSpacing;
  const ways: Leg[][] = [[]];
  for (const leg of legs) {
    ways.at(-1)!.push(leg);
    if (leg.to !== 'finish' && hasWater(leg.to, layout)) ways.push([]);
  }
  const lengthOf = (way: readonly Leg[]): number => way.reduce((sum, { length }) => sum + length, 0);
  const [longest] = ways
    .filter((way) => way.length > 1 && isDry(way, lengthOf(way), limit))
    .filter((way) => !lostFrom({ ...way.at(-1)!, from: way[0]!.from, length: lengthOf(way) }, race, layout))
    .sort((a, b) => lengthOf(b) - lengthOf(a));
  if (longest === undefined) return [];
  const [length, last] = [lengthOf(longest), longest.at(-1)!];
  return [
    {
      params: { races: [race], dry: { length, end: last.end, limit } },
      where: { path: '/stations', race, course, measure: last.end },
      measured: length,
      limit,
      unit: 'm',
      severity: 'warning',
    },
  ];
}

/** Longer than a leg may be, and not only for one leg that is too long by itself and has a finding. */
function isDry(way: readonly Leg[], length: number, limit: number): boolean {
  const longest = Math.max(...way.map((leg) => leg.length));
  return length > limit && (longest <= limit || length - longest > limit);
}
