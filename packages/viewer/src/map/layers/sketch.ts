/** What somebody draws on the map: a zone that is begun or reshaped, a distance that is measured. Pure. */
import type { LonLat } from '@halfcup/core';
import type { Units } from '@halfcup/core/plan';
import { segmentLength } from '@halfcup/core/geometry';
import { featureCollection, lineString, point, polygon } from '@turf/turf';
import type { Feature, FeatureCollection, Position } from 'geojson';
import type { MapTool } from '../../state/store/store.ts';
import { lengthText } from '../../words.ts';

const position = (at: LonLat): Position => [at[0], at[1]];

/** Metres along the points, straight from each to the next. */
export const lengthOf = (points: readonly LonLat[]): number =>
  points
    .slice(1)
    .reduce((sum, at, index) => sum + segmentLength(points[index]![0], points[index]![1], at[0], at[1]), 0);

function area(corners: readonly LonLat[]): Feature[] {
  if (corners.length < 2) return corners.map((at) => point(position(at)));
  const ring = [...corners, corners[0]!].map(position);
  return corners.length === 2 ? [lineString(ring.slice(0, 2))] : [polygon([ring])];
}

function ruler(points: readonly LonLat[], units: Units): Feature[] {
  if (points.length < 2) return points.map((at) => point(position(at)));
  const text = lengthText(lengthOf(points), units);
  return [
    lineString(points.map(position)),
    ...points.map((at, index) => point(position(at), index === points.length - 1 ? { text } : {})),
  ];
}

/** `pointer`: where the next point would come. */
export function sketchOf(tool: MapTool | null, pointer: LonLat | null, units: Units): FeatureCollection {
  const next = pointer === null ? [] : [pointer];
  if (tool === null) return featureCollection([]);
  if (tool.kind === 'draw') return featureCollection(area([...tool.corners, ...next]));
  if (tool.kind === 'reshape') return featureCollection(tool.corners === null ? [] : area(tool.corners));
  return featureCollection(ruler(tool.points.length === 0 ? [] : [...tool.points, ...next], units));
}
