/** Cuts lines, surfaces and points to what lies beside the courses. */
import { bboxClip } from '@turf/bbox-clip';
import { polygon } from '@turf/helpers';
import { type Corridor, holds, meets, meetsArea } from './corridor.ts';
import { type FeatureParts, type FeatureWay, isClosed } from './feature.ts';
import type { GroundArea, GroundLine } from './ground.ts';
import { turnedRings } from './rings.ts';

/** A run of positions of a line, both ends included. */
export interface PositionRun {
  readonly first: number;
  readonly last: number;
}

/** Runs of a line all of whose segments are within reach of a course, in order. */
export function runsBeside({ lon, lat }: GroundLine, corridor: Corridor): readonly PositionRun[] {
  const runs: PositionRun[] = [];
  let first = -1;
  for (let i = 0; i + 1 < lon.length; i++) {
    const near = meets(corridor, lon[i]!, lat[i]!, lon[i + 1]!, lat[i + 1]!);
    if (near && first < 0) first = i;
    if (!near && first >= 0) {
      runs.push({ first, last: i });
      first = -1;
    }
  }
  if (first >= 0) runs.push({ first, last: lon.length - 1 });
  return runs;
}

export const partOf = ({ lon, lat }: GroundLine, { first, last }: PositionRun): GroundLine => ({
  lon: lon.slice(first, last + 1),
  lat: lat.slice(first, last + 1),
});

const clippedWay = (way: FeatureWay, corridor: Corridor): FeatureWay[] =>
  runsBeside(way, corridor).map((run) => ({
    ...way,
    ...partOf(way, run),
    nodes: way.nodes === null ? null : way.nodes.slice(run.first, run.last + 1),
  }));

/** Positions of a surface beyond which one that reaches past the courses is cut to their bounds. */
const LARGE = 200;

/** A surface that is within reach; a large one cut to the courses' bounds, for the sea would fill the file. */
export function clippedArea(area: GroundArea, corridor: Corridor): GroundArea[] {
  if (!meetsArea(corridor, area.rings[0]!)) return [];
  const positions = area.rings.reduce((sum, { lon }) => sum + lon.length, 0);
  if (positions <= LARGE || area.tags['building'] !== undefined) return [area];
  const cut = bboxClip(polygon(area.rings.map(positionsOf)), [...corridor.bounds]);
  const rings = (cut.geometry.coordinates as unknown as [number, number][][])
    .map((ring) => lineOf(ring))
    .filter((ring) => isClosed(ring));
  return rings.length === 0 ? [] : [{ ...area, rings: turnedRings(rings) }];
}

const positionsOf = ({ lon, lat }: GroundLine): [number, number][] => Array.from(lon, (x, k) => [x, lat[k]!]);

const toE7 = (degrees: number): number => Math.round(degrees * 1e7) / 1e7 + 0;

const lineOf = (ring: readonly (readonly [number, number])[]): GroundLine => ({
  lon: Float64Array.from(ring, ([lon]) => toE7(lon)),
  lat: Float64Array.from(ring, ([, lat]) => toE7(lat)),
});

/** What of a feature's parts lies beside the courses. */
export const clippedParts = ({ ways, areas, points }: FeatureParts, corridor: Corridor): FeatureParts => ({
  ways: ways.flatMap((way) => clippedWay(way, corridor)),
  areas: areas.flatMap((area) => clippedArea(area, corridor)),
  points: points.filter(({ lon, lat }) => holds(corridor, lon, lat)),
});
