/** A pass that the plan names as lead or as served, and that the course does not make. */
import type { PassChoice } from '../plan/plan.ts';
import { type Check, COMMON_PRACTICE, atStation, check } from './check.ts';

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
      return [...lead, ...listed]
        .filter(({ choice }) => !exists(choice))
        .map(({ choice, key }) => {
          const count = passes.filter((pass) => pass.race === choice.race).length;
          return {
            params: { race: choice.race, time: choice.pass + 1, count },
            where: { ...atStation(layout, key), race: choice.race },
          };
        });
    }),
);
