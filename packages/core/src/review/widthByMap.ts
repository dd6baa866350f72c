/**
 * The road's width as the map has it, where the plan gives none: a note that says it, and a warning where it leaves less than the set
 * width clear. Never by what streets of a class mostly are.
 */
import type { WidthStretch } from '../ground/along.ts';
import type { StationLayout } from '../layout/layout.ts';
import { leadOf } from '../plan/lookups.ts';
import { alongOf, dayOfMap, noMap } from './byMap.ts';
import { type Check, COMMON_PRACTICE, type Ground, atStation, check, stationCheck } from './check.ts';
import { clearBeside } from './clearWidth.ts';
import { tableEnds } from './standing.ts';

/** The narrowest stretch by the tables whose width or lanes the map has; `null` where the plan gives its own. */
export function widthByMap(station: StationLayout, ground: Ground): WidthStretch | null {
  if (ground.ground === undefined) return null;
  const lead = leadOf(station);
  const ends = lead === undefined ? null : tableEnds(lead);
  if (station.station.width !== undefined || lead === undefined || ends === null) return null;
  const [narrowest] = (alongOf(ground, lead)?.widths ?? [])
    .filter(({ from, to, rests }) => rests !== 'class' && from < ends[1] && to > ends[0])
    .toSorted((a, b) => a.width - b.width);
  return narrowest ?? null;
}

/** What would stay clear by the map's width, where that is too little. */
function shortBy(
  station: StationLayout,
  found: WidthStretch,
): { readonly clear: number; readonly limit: number } | null {
  const beside = clearBeside({ ...station, station: { ...station.station, width: found.width } });
  const limit = station.practice.clearWidth;
  return beside === null || beside.clear >= limit ? null : { clear: beside.clear, limit };
}

/** Those that are too narrow by it are told by themselves. */
export const widthFromMap: Check = check(
  { code: 'width-from-map', severity: 'note', source: COMMON_PRACTICE, missing: noMap },
  (layout) => {
    const stations = layout.stations.flatMap((station) => {
      const found = widthByMap(station, layout);
      return found === null || shortBy(station, found) !== null ? [] : [{ station: station.id, width: found.width }];
    });
    return stations.length === 0
      ? []
      : [{ params: { map: dayOfMap(layout.ground!), stations }, where: { path: '/stations' } }];
  },
);

export const narrowByMap: Check = stationCheck(
  { code: 'narrow-by-map', severity: 'warning', source: COMMON_PRACTICE, missing: noMap },
  (station, ground) => {
    const found = widthByMap(station, ground);
    const short = found === null ? null : shortBy(station, found);
    if (found === null || short === null) return [];
    const { clear: measured, limit } = short;
    return [
      {
        params: { map: dayOfMap(ground.ground!), measured, limit, road: found.width },
        where: atStation(station),
        measured,
        limit,
        unit: 'm',
      },
    ];
  },
);
