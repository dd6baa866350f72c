/** Gel handed out where the same runners find no water after it: at the station, or shortly down the course. */
import { servedOn } from '../layout/stretches.ts';
import type { LaidDirection, Layout, StationLayout } from '../layout/layout.ts';
import type { StationPass } from '../station/station.ts';
import { type Check, COMMON_PRACTICE, type Found, atStation, check, metres, named } from './check.ts';

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
function isDry({ items }: LaidDirection, { station }: StationLayout): boolean {
  const gel = items.find(({ kind }) => kind === 'gel');
  const water = items.find(({ kind }) => kind === 'water');
  if (gel === undefined) return false;
  return (
    water === undefined ||
    !station.serves.includes('water') ||
    Math.max(water.from, water.to) <= Math.max(gel.from, gel.to)
  );
}

/** One finding a race: of its served passes in this direction, the one after which water is farthest. */
function dryRaces(direction: LaidDirection, station: StationLayout, layout: Layout): Found[] {
  const served = direction.passes.map((k) => station.passes[k]!).filter((pass) => pass.served);
  return [...new Set(served.map(({ race }) => race))].flatMap((race) => {
    const ways = served.filter((pass) => pass.race === race).map((pass) => ({ pass, water: nextWater(pass, layout) }));
    const worst = ways.sort((a, b) => b.water - a.water)[0]!;
    return worst.water <= WITHIN ? [] : [dry(worst.pass, worst.water, station)];
  });
}

function dry(pass: StationPass, water: number, station: StationLayout): Found {
  const none = water === Infinity;
  const after = none ? 'no station after it on that race serves water' : `the next water is ${metres(water)} on`;
  const here = servedOn(station.station).includes('water') ? 'meet the water before it' : 'find no water there';
  const message = `${named(station)} hands gel to race "${pass.race}", but those who pass at ${metres(pass.measure)} ${here}, and ${after}; expected water after the gel, at the station or within ${metres(WITHIN)}. Serve water after it, or hand the gel out elsewhere.`;
  return {
    message,
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
