/**
 * Runners who come both ways past the tables on one road: beside tables and hand-out crew each way needs its own width.
 * Ways further apart than the road is wide, or than 10 m where no width is given, do not share it.
 */
import type { StationLayout } from '../layout/layout.ts';
import { leadOf } from '../plan/lookups.ts';
import { leadPass } from '../station/directions.ts';
import { runsAgainst } from '../station/sides.ts';
import type { StationPass } from '../station/station.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, stationCheck } from './check.ts';
import { clearBeside } from './clearWidth.ts';
import { tableEnds } from './standing.ts';

/** Lines farther apart than this, metres, are two roads, where no width is given. */
const ONE_ROAD = 10;
/** Rounding that is no shortfall, metres. */
const SAME = 1e-9;

export const flowsShareWidth: Check = stationCheck(
  {
    code: 'flows-share-width',
    severity: 'error',
    source: `${COMMON_PRACTICE}; the metre for the crew is an assumption`,
  },
  (station) => {
    const other = againstOnRoad(station);
    const lead = leadOf(station);
    return other.length === 0 || lead === undefined || tableEnds(lead) === null ? [] : sharing(other, station);
  },
);

/** Passes of any race that run against the lead on its road. */
export function againstOnRoad({ station, passes, directions }: StationLayout): StationPass[] {
  const lead = leadOf({ directions }) === undefined ? undefined : passes[leadPass(station, passes)];
  if (lead === undefined) return [];
  // Both offsets are of one pin, each left of its own way.
  return passes.filter(
    (pass) =>
      pass.end === undefined &&
      runsAgainst(pass.azimuthDeg, lead.azimuthDeg) &&
      Math.abs(lead.offset + pass.offset) <= (station.width ?? ONE_ROAD),
  );
}

function sharing(other: readonly StationPass[], station: StationLayout): Case<'flows-share-width'>[] {
  const each = station.practice.clearWidth;
  const limit = 2 * each;
  const beside = clearBeside(station);
  if (beside !== null && beside.clear >= limit - SAME) return [];
  // One way that finds no room has a finding already, which a wider road mends for both.
  if (beside !== null && beside.clear < each - SAME) return [];
  const [first] = other;
  const params = {
    other: other.map(({ race, measure }) => ({ race, measure })),
    measured: beside?.clear ?? null,
    road: beside?.width ?? null,
    limit,
    each,
  };
  const where = { ...atStation(station, 'width'), course: first!.course, race: first!.race, measure: first!.measure };
  if (beside === null) return [{ params, where, severity: 'warning', limit, unit: 'm', cannotTell: true }];
  return [{ params, where, measured: beside.clear, limit, unit: 'm' }];
}
