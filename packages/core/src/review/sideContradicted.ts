/** A declared side that the pin's own position contradicts with confidence. */
import { leadPass } from '../station/directions.ts';
import { type Check, COMMON_PRACTICE, atStation, check, metres, named } from './check.ts';

export const sideContradicted: Check = check(
  {
    code: 'side-contradicted',
    severity: 'warning',
    source: COMMON_PRACTICE,
  },
  ({ stations }) =>
    stations.flatMap((station) => {
      const lead = station.directions.find((direction) => direction.lead);
      if (lead === undefined || station.declared === null) return [];
      const pass = station.passes[leadPass(station.station, station.passes)]!;
      if (pass.side === 'unclear' || pass.side === station.declared) return [];
      const message = `${named(station)} is declared on the ${station.declared}, but its pin stands ${metres(Math.abs(pass.offset))} to the ${pass.side} (${(pass.confidence * 100).toFixed(0)} % sure). The declared side rules; mend whichever is wrong.`;
      return [
        {
          message,
          where: { ...atStation(station, 'side'), measure: pass.measure, course: pass.course },
          measured: pass.offset,
          unit: 'm',
        },
      ];
    }),
);
