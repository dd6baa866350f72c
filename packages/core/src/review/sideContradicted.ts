/** A declared side that the pin's own position contradicts with confidence. */
import { leadPass } from '../station/directions.ts';
import { leadOf } from '../plan/lookups.ts';
import { type Check, COMMON_PRACTICE, atStation, check } from './check.ts';

export const sideContradicted: Check = check(
  {
    code: 'side-contradicted',
    severity: 'warning',
    source: COMMON_PRACTICE,
  },
  ({ stations }) =>
    stations.flatMap((station) => {
      if (leadOf(station) === undefined || station.declared === null) return [];
      const pass = station.passes[leadPass(station.station, station.passes)]!;
      if (pass.side === 'unclear' || pass.side === station.declared) return [];
      return [
        {
          params: {
            declared: station.declared,
            side: pass.side,
            offset: pass.offset,
            confidence: pass.confidence,
          },
          where: { ...atStation(station, 'side'), measure: pass.measure, course: pass.course },
          measured: pass.offset,
          unit: 'm',
        },
      ];
    }),
);
