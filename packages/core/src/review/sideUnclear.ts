/**
 * Tables whose side is not told: the lead's, where nobody declared it and the pin does not tell it; that of another
 * direction, where the lead's does not follow from the same line.
 */
import type { LaidDirection, StationLayout } from '../layout/layout.ts';
import { leadOf } from '../plan/lookups.ts';
import { leadPass } from '../station/directions.ts';
import { onOneLine } from '../station/sides.ts';
import type { StationPass } from '../station/station.ts';
import { courseTable } from '../station/seeStation.ts';
import { type Case, type Check, COMMON_PRACTICE, type Ground, atStation, check } from './check.ts';
import { passesServed } from './bothWays.ts';

export const sideUnclear: Check = check(
  {
    code: 'side-unclear',
    severity: 'warning',
    source: COMMON_PRACTICE,
  },
  (layout) =>
    layout.stations.flatMap((station) => {
      const lead = leadOf(station);
      if (lead === undefined) return [];
      const pass = station.passes[leadPass(station.station, station.passes)]!;
      const own = lead.side === 'unclear' ? [unclear(station, lead, pass, true)] : [];
      const others = station.directions.filter((direction) => !direction.lead && direction.side === 'unclear');
      return [
        ...own,
        ...others
          .map((direction) => ({ direction, first: firstPass(direction, station) }))
          // On the lead's line the one follows from the other, and one finding says it.
          .filter(({ first }) => own.length === 0 || !sharesLine(first, pass, station, layout))
          .map(({ direction, first }) => unclear(station, direction, first, false)),
      ];
    }),
);

const firstPass = ({ passes, measure }: LaidDirection, station: StationLayout): StationPass =>
  passes.map((k) => station.passes[k]!).find((pass) => pass.measure === measure)!;

function sharesLine(
  pass: StationPass,
  lead: StationPass,
  { station, practice }: StationLayout,
  { courses }: Ground,
): boolean {
  return onOneLine(pass, { station, practice, courses: courseTable(courses), lead, declared: undefined });
}

function unclear(
  station: StationLayout,
  direction: LaidDirection,
  pass: StationPass,
  lead: boolean,
): Case<'side-unclear'> {
  const wanted = station.practice.sideConfidence;
  return {
    params: {
      offset: pass.offset,
      confidence: pass.confidence,
      wanted,
      why: pass.why ?? 'position',
      other: lead ? null : passesServed(direction, station),
      placed: pass.side !== 'unclear',
    },
    where: { ...atStation(station), measure: direction.measure, course: direction.course },
    measured: pass.confidence,
    limit: wanted,
  };
}
