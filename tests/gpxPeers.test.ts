/**
 * Our reader against another one, gpxparser 3 (MIT), on the GPX files that three npm packages carry (all MIT).
 * gpxparser runs in a process of its own, as it puts the names of a browser into the global scope. It cannot be the
 * reader itself: it joins the segments of a track, takes any text that begins with a number, and tells no line.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { readGpx, type GpxDocument, type GpxLine } from '@halfcup/core/gpx';
import { describe, expect, it } from 'vitest';
import { type PeerLine, peerOf } from './support/gpxparser.ts';

const require = createRequire(import.meta.url);

function ours(path: string): GpxDocument {
  const result = readGpx(readFileSync(path), path);
  if (!result.ok) throw new Error(result.findings.map(({ message }) => message).join('\n'));
  expect(result.findings).toEqual([]);
  return result.value;
}

const text = (value: string | null): string | null => (value === null || value.trim() === '' ? null : value.trim());
const inOurForm = ({ name, points }: PeerLine): unknown => ({
  name: text(name),
  lon: points.map(({ lon }) => lon),
  lat: points.map(({ lat }) => lat),
  ele: points.map(({ ele }) => ele ?? NaN),
});
const joined = ({ name, segments }: GpxLine): unknown => ({
  name,
  lon: segments.flatMap(({ lon }) => [...lon]),
  lat: segments.flatMap(({ lat }) => [...lat]),
  ele: segments.flatMap(({ ele }) => [...ele]),
});

const counted = (lines: readonly GpxLine[]): number =>
  lines.flatMap(({ segments }) => segments.map(({ lon }) => lon.length)).reduce((sum, count) => sum + count, 0);

const inPackage = (name: string, main: string, file: string): string =>
  join(dirname(require.resolve(`${name}/${main}`)), file);

describe.each([
  // gpx-parse 0.10.4 (MIT): a loop of 7,745 points.
  ['gpx-parse', inPackage('gpx-parse', 'package.json', 'tests/integration/data/route-1.1.gpx'), 7745, 0, 0],
  // stoplight 0.0.7 (MIT): a run out and back of 1,919 points, with two waypoints.
  ['stoplight', inPackage('stoplight', 'package.json', 'gpx/sample.gpx'), 1919, 0, 2],
  // gpxparser 3.0.8 (MIT): its demo file, without a namespace, with a track, a route and waypoints.
  ['gpxparser', inPackage('gpxparser', 'package.json', 'test/test.xml'), 205, 205, 2],
] as const)('the file of %s', (_, path, trackPoints, routePoints, waypoints) => {
  const document = ours(path);
  const peer = peerOf(path);

  it('has the same tracks and routes, every longitude, latitude and elevation being exactly equal', () => {
    expect(document.tracks.map((line) => joined(line))).toEqual(peer.tracks.map((line) => inOurForm(line)));
    expect(document.routes.map((line) => joined(line))).toEqual(peer.routes.map((line) => inOurForm(line)));
  });

  it('has the same name and waypoints', () => {
    expect(document.name).toBe(text(peer.name));
    expect(
      document.waypoints.map(({ lat, lon, ele, name, comment, description }) => ({
        lat,
        lon,
        ele,
        name,
        cmt: comment,
        desc: description,
      })),
    ).toEqual(
      peer.waypoints.map(({ lat, lon, ele, name, cmt, desc }) => ({
        lat,
        lon,
        ele,
        name: text(name),
        cmt: text(cmt),
        desc: text(desc),
      })),
    );
  });

  it('has as many points and waypoints as there are opening tags in the file', () => {
    expect([counted(document.tracks), counted(document.routes), document.waypoints.length]).toEqual([
      trackPoints,
      routePoints,
      waypoints,
    ]);
  });
});
