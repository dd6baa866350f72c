/** The map follows what is edited elsewhere: a station or a zone that has changed out of sight is brought into it. */
import type { LonLat } from '@halfcup/core';
import type { OpenPlan } from '../state/store/store.ts';
import type { Bounds } from './fit.ts';

/** More at once is a change of the whole plan, and leads nowhere. */
const MOST = 12;

function bounds(places: readonly LonLat[]): Bounds | null {
  if (places.length === 0) return null;
  const [lons, lats] = [places.map(([lon]) => lon), places.map(([, lat]) => lat)];
  return [Math.min(...lons), Math.min(...lats), Math.max(...lons), Math.max(...lats)];
}

/** Where stations and zones are that one edit has changed; `null` for another plan, another variant, and changes of all. */
export function changedPlaces(before: OpenPlan, after: OpenPlan): Bounds | null {
  if (before.files !== after.files || before.variant !== after.variant) return null;
  const plans = [before.analysis.plan, after.analysis.plan] as const;
  const was = new Map(plans[0].stations.map((station) => [station.id, JSON.stringify(station)]));
  const stations = after.analysis.stations.filter(({ id, station }) => was.get(id) !== JSON.stringify(station));
  const zonesBefore = new Set(plans[0].zones.map((zone) => JSON.stringify(zone)));
  const zones = plans[1].zones.filter((zone) => !zonesBefore.has(JSON.stringify(zone)));
  if (stations.length + zones.length > MOST) return null;
  return bounds([...stations.map(({ at }) => at), ...zones.flatMap(({ polygon }) => polygon)]);
}
