/** Gel handed out where the same runners find no water after it: at the station, or shortly down the course. */
import { servedOn } from '../layout/stretches.ts';
import type { LaidDirection, Layout, StationLayout } from '../layout/layout.ts';
import type { StationPass } from '../station/station.ts';
import { itemOf } from '../plan/lookups.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, check } from './check.ts';

/** Farthest that water may follow at a later station, metres. */
const WITHIN = 1600;

export const gelWithoutWater: Check = check(
  {
    code: 'gel-without-water',
    severity: 'warning',
    source: COMMON_PRACTICE,
    missing: ({ stations }) => (stations.some(({ station }) => station.serves.includes('gel')) ? null : 'no-gel'),
  },
  (layout) =>
    layout.stations.flatMap((station) =>
      station.directions
        .filter((direction) => isDry(direction, station))
        .flatMap((direction) => dryRaces(direction, station, layout)),
    ),
);

/** A direction whose runners meet gel tables, and no water table that reaches past them. Sports drink is no water. */
function isDry(direction: LaidDirection, { station }: StationLayout): boolean {
  const gel = itemOf(direction, 'gel');
  const water = itemOf(direction, 'water');
  if (gel === undefined) return false;
  return (
    water === undefined ||
    !station.serves.includes('water') ||
    Math.max(water.from, water.to) <= Math.max(gel.from, gel.to)
  );
}

/** One finding a race: of its served passes in this direction, the one after which water is farthest. */
function dryRaces(direction: LaidDirection, station: StationLayout, layout: Layout): Case<'gel-without-water'>[] {
  const served = direction.passes.map((k) => station.passes[k]!).filter((pass) => pass.served);
  return [...new Set(served.map(({ race }) => race))].flatMap((race) => {
    const ways = served.filter((pass) => pass.race === race).map((pass) => ({ pass, water: nextWater(pass, layout) }));
    const worst = ways.sort((a, b) => b.water - a.water)[0]!;
    return worst.water <= WITHIN ? [] : [dry(worst.pass, worst.water, station)];
  });
}

function dry(pass: StationPass, water: number, station: StationLayout): Case<'gel-without-water'> {
  const none = water === Infinity;
  return {
    params: {
      race: pass.race,
      measure: pass.measure,
      next: none ? null : water,
      within: WITHIN,
      waterBefore: servedOn(station.station).includes('water'),
    },
    where: {
      ...atStation(station, 'serves'),
      course: pass.course,
      race: pass.race,
      item: 'gel',
      measure: pass.measure,
    },
    ...(none ? {} : { measured: water }),
    limit: WITHIN,
    unit: 'm',
  };
}

/** Metres of course from a pass to the race's next served stop with water; Infinity where there is none. */
function nextWater(pass: StationPass, { stations }: Layout): number {
  const ahead = stations
    .filter(({ station }) => servedOn(station).includes('water'))
    .flatMap(({ passes }) =>
      passes.filter((other) => other.served && other.race === pass.race && other.measure > pass.measure),
    )
    .map((other) => other.measure - pass.measure);
  return Math.min(Infinity, ...ahead);
}
