/** A station whose side nobody declared and whose pin does not tell it. */
import { leadPass } from '../station/directions.ts';
import { leadOf } from '../plan/lookups.ts';
import { type Check, COMMON_PRACTICE, atStation, check } from './check.ts';

export const sideUnclear: Check = check(
  {
    code: 'side-unclear',
    severity: 'warning',
    source: COMMON_PRACTICE,
  },
  ({ stations }) =>
    stations.flatMap((station) => {
      const lead = leadOf(station);
      if (lead === undefined || lead.side !== 'unclear') return [];
      const pass = station.passes[leadPass(station.station, station.passes)]!;
      return [
        {
          params: { offset: pass.offset, confidence: pass.confidence, wanted: station.practice.sideConfidence },
          where: { ...atStation(station), measure: lead.measure, course: lead.course },
          measured: pass.confidence,
          limit: station.practice.sideConfidence,
        },
      ];
    }),
);
