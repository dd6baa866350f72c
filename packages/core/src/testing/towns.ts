/** Street maps for tests, drawn in metres from an origin. Not part of the package. */
import { fromEastNorth } from '../geodesy/frame.ts';
import type { LonLat } from '../finding.ts';
import type { Ground, GroundArea, GroundPoint, GroundWay, Tags } from '../ground/ground.ts';
import { ORIGIN, courseThrough } from './courses.ts';
import { type IndexedCourse, indexCourse } from '../course/segmentIndex.ts';

/** Metres east and north of {@link ORIGIN}. */
export type Place = readonly [east: number, north: number];

/** A small map: places by name, ways as names of places in order. */
export interface Drawing {
  readonly places: Readonly<Record<string, Place>>;
  readonly ways: Readonly<Record<string, readonly [line: string, tags: Tags]>>;
  /** Tags of places, and of places that are on no way. */
  readonly points?: Readonly<Record<string, Tags>>;
  readonly areas?: Readonly<Record<string, readonly [line: string, tags: Tags]>>;
}

export const placed = ([east, north]: Place): LonLat => fromEastNorth(ORIGIN, east, north);

const lineOf = (points: readonly LonLat[]): { lon: Float64Array; lat: Float64Array } => ({
  lon: Float64Array.from(points, ([lon]) => lon),
  lat: Float64Array.from(points, ([, lat]) => lat),
});

/** The map of a drawing; ids are the drawing's names. */
export function drawnGround({ places, ways, points = {}, areas = {} }: Drawing): Ground {
  const through = (line: string): LonLat[] => line.split(' ').map((name) => placed(places[name]!));
  return {
    source: { date: '2026-10-02', credit: 'drawn for tests', licence: null },
    ways: Object.entries(ways).map(([id, [line, tags]]): GroundWay => ({
      id,
      tags,
      nodes: line.split(' '),
      ...lineOf(through(line)),
    })),
    points: Object.entries(points).map(([id, tags]): GroundPoint => {
      const [lon, lat] = placed(places[id]!);
      return { id, tags, lon, lat };
    }),
    areas: Object.entries(areas).map(([id, [line, tags]]): GroundArea => ({
      id,
      tags,
      rings: [lineOf(through(line))],
    })),
  };
}

/** A course through places, with a point every `step` metres. */
export function courseAlong(places: readonly Place[], step: number = 10): IndexedCourse {
  const points: Place[] = [places[0]!];
  for (let i = 1; i < places.length; i++) {
    const [[x0, y0], [x1, y1]] = [places[i - 1]!, places[i]!];
    const pieces = Math.max(1, Math.round(Math.hypot(x1 - x0, y1 - y0) / step));
    for (let k = 1; k <= pieces; k++) points.push([x0 + ((x1 - x0) * k) / pieces, y0 + ((y1 - y0) * k) / pieces]);
  }
  return indexCourse(courseThrough(points.map(placed)));
}
