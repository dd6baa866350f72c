/** A pass that the plan names as lead or as served, and that the course does not make; a race that the station lists and that never comes by. */
import type { StationLayout } from '../layout/layout.ts';
import type { PassChoice } from '../plan/plan.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, check } from './check.ts';

export const passUnknown: Check = check(
  { code: 'pass-unknown', lost: true, severity: 'error', source: COMMON_PRACTICE },
  ({ stations }) =>
    stations.flatMap((layout) => {
      const { station, passes, nearest } = layout;
      // Where no course runs by, that has a finding of its own.
      if (nearest !== null) return [];
      const listed =
        typeof station.passes === 'string' ? [] : station.passes.map((choice, k) => ({ choice, key: `passes/${k}` }));
      const lead = station.lead === undefined ? [] : [{ choice: station.lead, key: 'lead' }];
      const exists = ({ race, pass }: PassChoice): boolean =>
        passes.some((known) => known.race === race && known.pass === pass);
      const chosen = [...lead, ...listed];
      const named = chosen.map(({ choice }) => choice.race);
      const wrong = chosen
        .filter(({ choice }) => !exists(choice))
        .map(({ choice, key }) => {
          const count = passes.filter((pass) => pass.race === choice.race).length;
          return {
            params: { race: choice.race, time: choice.pass + 1, count },
            where: { ...atStation(layout, key), race: choice.race },
          };
        });
      return [...wrong, ...absentRaces(layout, named)];
    }),
);

/** Races that a station lists, and that never come by; those of which it names a pass aside. */
function absentRaces(layout: StationLayout, named: readonly string[]): Case<'pass-unknown'>[] {
  const { station, passes } = layout;
  return (station.races ?? [])
    .filter((race) => !named.includes(race) && !passes.some((pass) => pass.race === race))
    .map((race) => ({
      params: { race, time: 1, count: 0 },
      where: { ...atStation(layout, 'races'), race },
      severity: 'warning' as const,
    }));
}
