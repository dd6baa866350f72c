/**
 * The width of road that stays clear beside the tables. Model: their back edge stands at half the
 * road's width and the setback from its centre; tables are 30 in deep (common practice, no source);
 * the hand-out crew stands in the metre before them (assumption). Kerbs, parked cars and crowds are
 * not known. Width is given, so positions do not enter.
 */
import type { Layout, StationLayout } from '../layout/layout.ts';
import type { ReasonCode } from '../text/params/checks.ts';
import { metres as toMetres } from '../units.ts';
import { type Check, COMMON_PRACTICE, atStation, check } from './check.ts';
import { tableEnds } from './standing.ts';

/** Depth of a table, metres (30 in). */
const DEPTH: number = toMetres(30, 'in');
/** What the hand-out crew takes in front of the tables, metres. */
const CREW = 1;
/** Clear width of a fire apparatus road, metres (20 ft). */
const RESPONDERS: number = toMetres(20, 'ft');
/** Rounding that is no shortfall, metres. */
const SAME = 1e-9;

/** Metres of road left beside tables and crew; `null` where the plan gives no width or nothing stands there. */
export function clearBeside({
  station,
  practice,
  directions,
}: StationLayout): { readonly width: number; readonly taken: number; readonly clear: number } | null {
  if (station.width === undefined || !directions.some((direction) => tableEnds(direction) !== null)) return null;
  const taken = Math.max(DEPTH + CREW - practice.setback, 0);
  return { width: station.width, taken, clear: station.width - taken };
}

export const clearWidth: Check = check(
  {
    code: 'clear-width',
    severity: 'error',
    source: `${COMMON_PRACTICE}; the metre for the crew is an assumption`,
    missing: ({ stations }) => (stations.some((station) => clearBeside(station) !== null) ? null : 'no-width'),
  },
  ({ stations }) =>
    stations.flatMap((station) => {
      const beside = clearBeside(station);
      const limit = station.practice.clearWidth;
      if (beside === null || beside.clear >= limit - SAME) return [];
      const { clear, width: road, taken } = beside;
      return [
        {
          params: { measured: clear, limit, road, taken, crew: CREW },
          where: atStation(station, 'width'),
          measured: clear,
          limit,
          unit: 'm',
        },
      ];
    }),
);

const needsWay = ({ station }: StationLayout): boolean =>
  station.points.some(({ kind }) => kind === 'medical' || kind === 'access');

export const respondersWidth: Check = check(
  {
    code: 'responders-width',
    severity: 'note',
    source:
      'International Fire Code 503.2.1, 20 ft unobstructed, as a fire chief prints it (2018, read); local code and the fire marshal decide',
    missing: (layout) => respondersMissing(layout),
  },
  ({ stations }) => {
    const narrow = stations
      .flatMap((station) => {
        const beside = clearBeside(station);
        return beside === null || !needsWay(station) || beside.clear >= RESPONDERS - SAME ? [] : [{ station, beside }];
      })
      .sort((a, b) => a.beside.clear - b.beside.clear);
    const [worst] = narrow;
    if (worst === undefined) return [];
    const { station, beside } = worst;
    const all = stations.filter((one) => narrow.some((other) => other.station === one)).map(({ id }) => id);
    return [
      {
        params: { measured: beside.clear, limit: RESPONDERS, road: beside.width, station: station.id, stations: all },
        where: all.length === 1 ? atStation(station, 'width') : { path: '/stations' },
        measured: beside.clear,
        limit: RESPONDERS,
        unit: 'm',
      },
    ];
  },
);

function respondersMissing({ stations }: Layout): ReasonCode | null {
  if (!stations.some(needsWay)) return 'no-medical-or-access';
  return stations.some((station) => needsWay(station) && clearBeside(station) !== null) ? null : 'no-responders-width';
}
