/** A station whose side nobody declared and whose pin does not tell it. */
import { leadPass } from '../station/directions.ts';
import { type Check, COMMON_PRACTICE, atStation, check, metres, named } from './check.ts';

export const sideUnclear: Check = check(
  {
    code: 'side-unclear',
    severity: 'warning',
    source: COMMON_PRACTICE,
  },
  ({ stations }) =>
    stations.flatMap((station) => {
      const lead = station.directions.find((direction) => direction.lead);
      if (lead === undefined || lead.side !== 'unclear') return [];
      const pass = station.passes[leadPass(station.station, station.passes)]!;
      const message = `${named(station)} is ${metres(Math.abs(pass.offset))} from the course line: its side is ${(pass.confidence * 100).toFixed(0)} % sure, expected ${(station.practice.sideConfidence * 100).toFixed(0)} %. Its items are placed on the line; declare "side", or move the pin off the line.`;
      return [
        {
          message,
          where: { ...atStation(station), measure: lead.measure, course: lead.course },
          measured: pass.confidence,
          limit: station.practice.sideConfidence,
        },
      ];
    }),
);
