/** Legs between served stations, per race, that are longer or shorter than the practice wants. */
import type { Finding, Severity } from '../finding.ts';
import type { Layout } from '../layout/layout.ts';
import type { Leg, RaceSpacing } from '../station/station.ts';
import { type Check, type Found, check } from './check.ts';

const SOURCE = 'IMMDA guidance, stations 1.6 km to 5 km apart (quoted, not read)';

const km = (value: number): string => `${(value / 1000).toFixed(2)} km`;

function stopName(layout: Layout, id: string): string {
  return id === 'start' || id === 'finish'
    ? `the ${id}`
    : (layout.stations.find((station) => station.id === id)?.name ?? id);
}

function whereOf(layout: Layout, race: RaceSpacing, leg: Leg): Finding['where'] {
  const station = layout.stations.find(({ id }) => id === (leg.to === 'finish' ? leg.from : leg.to));
  const base = { race: race.race, course: race.course, measure: leg.end };
  return station === undefined
    ? base
    : { ...base, station: station.id, path: `/stations/${station.index}`, at: station.at };
}

function legCheck(
  code: 'leg-long' | 'leg-short',
  severity: Severity,
  wrong: (leg: Leg, layout: Layout) => string | null,
  limitOf: (layout: Layout) => number,
): Check {
  return check({ code, severity, source: SOURCE }, (layout) =>
    layout.spacing.flatMap((race): Found[] =>
      race.legs.flatMap((leg) => {
        const expected = wrong(leg, layout);
        if (expected === null) return [];
        const name = layout.plan.races.find(({ id }) => id === race.race)?.name ?? race.race;
        const message = `${name}: ${km(leg.length)} from ${stopName(layout, leg.from)} to ${stopName(layout, leg.to)} (at ${km(leg.end)}); expected ${expected}.`;
        return [
          { message, where: whereOf(layout, race, leg), measured: leg.length, limit: limitOf(layout), unit: 'm' },
        ];
      }),
    ),
  );
}

export const legLong: Check = legCheck(
  'leg-long',
  'warning',
  (leg, { plan }) => (leg.length > plan.practice.maxSpacing ? `at most ${km(plan.practice.maxSpacing)}` : null),
  ({ plan }) => plan.practice.maxSpacing,
);

/** The way to the first station and from the last one may be short. */
export const legShort: Check = legCheck(
  'leg-short',
  'note',
  (leg, { plan }) =>
    leg.from !== 'start' && leg.to !== 'finish' && leg.length < plan.practice.minSpacing
      ? `at least ${km(plan.practice.minSpacing)}`
      : null,
  ({ plan }) => plan.practice.minSpacing,
);
