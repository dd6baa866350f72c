/** Legs between served stations, per race, that are longer or shorter than the practice wants. */
import type { Finding, Severity } from '../finding.ts';
import type { Layout } from '../layout/layout.ts';
import { findById } from '../plan/lookups.ts';
import type { Practice } from '../plan/plan.ts';
import type { Leg, RaceSpacing } from '../station/station.ts';
import { COMMON_PRACTICE, type Case, type Check, check } from './check.ts';
import { lostFrom } from './lost.ts';

/** The longest leg; the shortest is common practice. */
const SOURCE = {
  'leg-long': 'Western Province Athletics, station guide 2019: at most 5 km apart (read)',
  'leg-short': COMMON_PRACTICE,
} as const;

type LegCode = 'leg-long' | 'leg-short';

function caseOf(layout: Layout, race: RaceSpacing, leg: Leg, limit: number): Case<LegCode> {
  const here = leg.to === 'finish' ? 'from' : 'to';
  const station = findById(layout.stations, leg[here]);
  const base: Finding['where'] = { race: race.race, course: race.course, measure: leg.end };
  return {
    params: {
      measured: leg.length,
      limit,
      race: race.race,
      from: leg.from === 'start' ? null : leg.from,
      to: leg.to === 'finish' ? null : leg.to,
      here: station === undefined ? null : here,
      end: leg.end,
    },
    where:
      station === undefined
        ? base
        : { ...base, station: station.id, path: `/stations/${station.index}`, at: station.at },
    measured: leg.length,
    limit,
    unit: 'm',
  };
}

const legCheck = (
  code: LegCode,
  severity: Severity,
  limitOf: (practice: Practice) => number,
  wrong: (leg: Leg, limit: number, race: RaceSpacing, layout: Layout) => boolean,
): Check =>
  check({ code, severity, source: SOURCE[code], lost: true }, (layout) => {
    const limit = limitOf(layout.plan.practice);
    return layout.spacing.flatMap((race) =>
      race.legs.filter((leg) => wrong(leg, limit, race, layout)).map((leg) => caseOf(layout, race, leg, limit)),
    );
  });

/** Where a station that serves nobody belongs into the leg, that has a finding of its own. */
export const legLong: Check = legCheck(
  'leg-long',
  'warning',
  ({ maxSpacing }) => maxSpacing,
  (leg, limit, race, layout) => leg.length > limit && !lostFrom(leg, race.race, layout),
);

/** Two stations nearer than this, metres, stand face to face or into one another, which has findings of its own. */
export const FACE_TO_FACE = 50;

/** The way to the first station and from the last one may be short. */
export const legShort: Check = legCheck(
  'leg-short',
  'note',
  ({ minSpacing }) => minSpacing,
  (leg, limit) =>
    leg.from !== 'start' &&
    leg.to !== 'finish' &&
    leg.length < limit &&
    (leg.length >= FACE_TO_FACE || leg.from === leg.to),
);
