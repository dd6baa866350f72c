/** Courses for tests, made with geodesics that are not the project's own (GeographicLib, C. F. F. Karney). */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import geographiclib from 'geographiclib-geodesic';

const wgs84 = geographiclib.Geodesic.WGS84;

export type Position = readonly [lon: number, lat: number];

/** Geodesic length in metres between two positions. */
export const geodesicLength = ([lon1, lat1]: Position, [lon2, lat2]: Position): number =>
  wgs84.Inverse(lat1, lon1, lat2, lon2).s12!;

/** Where one comes to by an azimuth in degrees and a length in metres. */
export function go([lon, lat]: Position, azimuthDeg: number, length: number): Position {
  const { lon2, lat2 } = wgs84.Direct(lat, lon, azimuthDeg, length);
  return [lon2!, lat2!];
}

/** The azimuth of a geodesic after a length, degrees. */
export const azimuthAfter = ([lon, lat]: Position, azimuthDeg: number, length: number): number =>
  wgs84.Direct(lat, lon, azimuthDeg, length).azi2!;

/** An empty stretch of mid-ocean. */
export const OCEAN: Position = [-17.4, -33.2];

/** A geodesic from a position: `count` points, `step` metres apart. */
export const straight = (from: Position, azimuthDeg: number, count: number, step: number): Position[] =>
  Array.from({ length: count }, (_, k) => go(from, azimuthDeg, k * step));

export interface Waypoint {
  readonly at: Position;
  readonly name?: string;
}

/** GPX 1.1 of one track with one segment for each list of points. */
export function gpxText(segments: readonly (readonly Position[])[], waypoints: readonly Waypoint[] = []): string {
  const points = waypoints.map(
    ({ at: [lon, lat], name }) =>
      `  <wpt lat="${lat}" lon="${lon}">${name === undefined ? '' : `<name>${name}</name>`}</wpt>`,
  );
  const segs = segments.map((segment) =>
    ['  <trkseg>', ...segment.map(([lon, lat]) => `    <trkpt lat="${lat}" lon="${lon}"/>`), '  </trkseg>'].join('\n'),
  );
  return [
    '<gpx version="1.1" creator="halfcup tests" xmlns="http://www.topografix.com/GPX/1/1">',
    ...points,
    '<trk>',
    ...segs,
    '</trk>',
    '</gpx>',
    '',
  ].join('\n');
}

/** A plan with one course and one race; `stations` and more keys as given. */
export const planText = (stations: readonly object[], more: object = {}): string =>
  JSON.stringify(
    {
      format: 'halfcup-plan',
      version: 1,
      courses: [{ id: 'c', gpx: 'c.gpx' }],
      races: [{ id: 'm', course: 'c' }],
      stations,
      ...more,
    },
    null,
    2,
  );

const resolve = createRequire(import.meta.url).resolve;

/** A recorded run of 21.5 km; package gpx-parse 0.10.4, MIT. */
export const RUN_21K: string = resolve('gpx-parse/tests/integration/data/route-1.1.gpx');

/** A recorded run of 5.8 km, out and back; package stoplight 0.0.7, MIT. */
export const OUT_AND_BACK: string = resolve('stoplight/gpx/sample.gpx');

/** Track points of a file by a pattern, so that no reader under test is trusted. */
export function trackPoints(file: string): Position[] {
  const tags = readFileSync(file, 'utf8').match(/<trkpt\b[^>]*>/gu) ?? [];
  return tags.map((tag) => [Number(/\blon="([^"]+)"/u.exec(tag)![1]), Number(/\blat="([^"]+)"/u.exec(tag)![1])]);
}
