/** Rows of tables many times longer than the cups poured before the first runner, and those who hand them out, need. */
import type { StationDay } from '../raceday/day.ts';
import type { Layout } from '../layout/layout.ts';
import { findById } from '../plan/lookups.ts';
import { crewOf, practiceOf, suppliesOf } from '../plan/practice.ts';
import { type Case, type Check, COMMON_PRACTICE, dayCheck } from './check.ts';

/** More than so many times what is needed is no margin: common practice, no source. */
const TOO_MANY = 4;
/** Fewer are never too many. */
const FEW = 10;

function manyAt(layout: Layout, day: StationDay): Case<'tables-many'>['params']['stations'][number][] {
  const station = findById(layout.plan.stations, day.id);
  if (station === undefined) return [];
  const { cupsPerLayer, layers } = suppliesOf(layout.plan, station);
  const line = day.crew.handOut * crewOf(layout.plan, station).handSpacing;
  const front = Math.ceil(line / practiceOf(layout.plan, station).tableLength);
  return (['water', 'sportsDrink'] as const).flatMap((item) => {
    const [tables, poured] = [station.tables[item], day.prePour[item]];
    if (tables === undefined || poured === undefined) return [];
    const needed = Math.max(1, front, Math.ceil(Math.max(poured.cups, poured.massCurve) / (cupsPerLayer * layers)));
    return tables > FEW && tables > TOO_MANY * needed ? [{ station: day.id, item, tables, needed }] : [];
  });
}

export const tablesMany: Check = dayCheck(
  { code: 'tables-many', severity: 'note', source: COMMON_PRACTICE },
  (layout, { day }) => {
    const stations = day.stations
      .flatMap((own) => manyAt(layout, own))
      .sort((a, b) => b.tables / b.needed - a.tables / a.needed);
    const [worst] = stations;
    if (worst === undefined) return [];
    const alone = stations.length === 1 ? { station: worst.station, item: worst.item } : {};
    return [
      {
        params: { stations },
        where: { path: '/stations', ...alone },
        measured: worst.tables,
        limit: worst.needed,
        unit: 'tables',
      },
    ];
  },
);
