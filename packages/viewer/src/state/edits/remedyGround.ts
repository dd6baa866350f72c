/** The remedy of what stands where the plan's map, or one of its zones, wants nothing: the station moved to the nearest clear place. */
import type { StationLayout } from '@halfcup/core';
import { clearPlace, type ClearPlace } from '@halfcup/core/stages';
import { lengthText } from '../../words.ts';
import type { OpenPlan } from '../store/store.ts';
import { moveStation } from './edits.ts';
import { type FoundAt, type Remedy, remedy } from './remedy.ts';

/** Places are searched once for a station as it stands: cards ask again and again. */
const known = new WeakMap<OpenPlan, Map<string, ClearPlace | null>>();

function placeOf(open: OpenPlan, { id }: StationLayout): ClearPlace | null {
  const places = known.get(open) ?? new Map<string, ClearPlace | null>();
  known.set(open, places);
  if (!places.has(id)) places.set(id, clearPlace(open.analysis, id));
  return places.get(id) ?? null;
}

export function toClearPlace({ open, station, units }: FoundAt<unknown>): readonly Remedy[] {
  const place = placeOf(open, station);
  if (place === null) return [];
  const { at, on } = place.station;
  const placement = on === undefined ? { at: at! } : { on };
  const how = `${lengthText(Math.abs(place.shift), units)} ${place.shift < 0 ? 'back' : 'forward'}`;
  return [
    remedy(
      `Move the station ${how}`,
      `The station stands ${how}, at the nearest clear place.`,
      moveStation(station.id, station.name, placement, null),
    ),
  ];
}
