/**
 * Things beside a course that must stay reachable: hydrants, fire stations, hospitals, ambulance stations, where the map has
 * them within 60 m of the course. Of an area its point nearest to the course.
 */
import type { LonLat } from '../finding.ts';
import { nearestOn } from '../course/passes.ts';
import type { IndexedCourse } from '../course/segmentIndex.ts';
import type { KeepClear, KeepClearKind } from './along.ts';
import type { Ground, GroundArea, Tags } from './ground.ts';

/** Metres from the course. */
export const KEEP_CLEAR_WITHIN = 60;

function kindOf({ emergency, amenity }: Tags): KeepClearKind | null {
  if (emergency === 'fire_hydrant') return 'hydrant';
  if (emergency === 'ambulance_station') return 'ambulanceStation';
  if (amenity === 'fire_station') return 'fireStation';
  return amenity === 'hospital' ? 'hospital' : null;
}

export function keepClearOf(indexed: IndexedCourse, ground: Ground): KeepClear[] {
  const found: KeepClear[] = [];
  const add = (id: string, tags: Tags, kind: KeepClearKind, [lon, lat]: LonLat): void => {
    const { measure, offset, distance } = nearestOn(indexed, [lon, lat]);
    if (distance <= KEEP_CLEAR_WITHIN) found.push({ kind, id, name: tags['name'] ?? null, lon, lat, measure, offset });
  };
  for (const { id, tags, lon, lat } of ground.points) {
    const kind = kindOf(tags);
    if (kind !== null) add(id, tags, kind, [lon, lat]);
  }
  for (const area of ground.areas) {
    const kind = kindOf(area.tags);
    if (kind !== null) add(area.id, area.tags, kind, nearestOf(indexed, area));
  }
  return found.sort((a, b) => a.measure - b.measure);
}

function nearestOf(indexed: IndexedCourse, { rings }: GroundArea): LonLat {
  const { lon, lat } = rings[0]!;
  let [least, best]: [number, LonLat] = [Infinity, [lon[0]!, lat[0]!]];
  for (let i = 0; i < lon.length; i++) {
    const { distance } = nearestOn(indexed, [lon[i]!, lat[i]!]);
    if (distance < least) [least, best] = [distance, [lon[i]!, lat[i]!]];
  }
  return best;
}
