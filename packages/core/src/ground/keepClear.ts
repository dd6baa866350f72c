/**
 * Things beside a course that must stay reachable: hydrants, fire stations, hospitals, ambulance stations, where the map has
 * them within 60 m of the course. Of an area its point nearest to the course.
 */
import type { LonLat } from '../finding.ts';
import { nearestOn } from '../course/passes.ts';
import type { IndexedCourse } from '../course/segmentIndex.ts';
import { segmentLength } from '../geodesy/segment.ts';
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

/** Metres between the points of an outline that are tried; between two of them the distance changes by no more. */
const FINE = 0.5;

/** The point of an area's outline nearest to the course, to half a metre along the outline. */
function nearestOf(indexed: IndexedCourse, { rings }: GroundArea): LonLat {
  const { lon, lat } = rings[0]!;
  let [least, best]: [number, LonLat] = [Infinity, [lon[0]!, lat[0]!]];
  const tryAt = (point: LonLat): number => {
    const { distance } = nearestOn(indexed, point);
    if (distance < least) [least, best] = [distance, point];
    return distance;
  };
  // What is between two points is nearer than the nearer of them by half their distance at most.
  const search = (a: LonLat, da: number, b: LonLat, db: number): void => {
    const length = segmentLength(a[0], a[1], b[0], b[1]);
    if (length <= FINE || (da + db - length) / 2 >= Math.min(least, KEEP_CLEAR_WITHIN)) return;
    const middle: LonLat = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const dm = tryAt(middle);
    search(a, da, middle, dm);
    search(middle, dm, b, db);
  };
  let before: LonLat = [lon[0]!, lat[0]!];
  let distance = tryAt(before);
  for (let i = 1; i < lon.length; i++) {
    const here: LonLat = [lon[i]!, lat[i]!];
    const next = tryAt(here);
    search(before, distance, here, next);
    [before, distance] = [here, next];
  }
  return best;
}
