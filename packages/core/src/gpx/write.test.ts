import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import type { GpxDocument } from './document.ts';
import { readGpx } from './read.ts';
import { writeGpx } from './write.ts';

const read = (text: string): GpxDocument => {
  const result = readGpx(text, 'c.gpx');
  if (!result.ok) throw new Error(result.findings.map(({ message }) => message).join('\n'));
  expect(result.findings).toEqual([]);
  return result.value;
};
const columns = (
  points: readonly (readonly [lon: number, lat: number, ele: number])[],
): { lon: Float64Array; lat: Float64Array; ele: Float64Array } => ({
  lon: Float64Array.from(points, ([lon]) => lon),
  lat: Float64Array.from(points, ([, lat]) => lat),
  ele: Float64Array.from(points, ([, , ele]) => ele),
});

/** What XML 1.0 (production 2, Char) cannot hold becomes U+FFFD; the reader trims. */
const held = (text: string): string | null =>
  Array.from(text, (sign) => {
    const code = sign.codePointAt(0)!;
    const isChar =
      code === 9 ||
      code === 10 ||
      code === 13 ||
      (code >= 0x20 && code <= 0xd7ff) ||
      (code >= 0xe000 && code <= 0xfffd) ||
      code >= 0x1_0000;
    return isChar ? sign : '\uFFFD';
  })
    .join('')
    .trim() || null;

test('Elements stand in the order of the schema, numbers without exponents, and what is not given is left out.', () => {
  const time = Date.UTC(2031, 4, 4, 6);
  const text = writeGpx({
    creator: 'A & B',
    name: 'Island',
    time,
    waypoints: [
      {
        lon: -17.4,
        lat: 1e-9,
        ele: 0.0000001,
        time,
        name: 'n',
        comment: 'c',
        description: 'd',
        symbol: 's',
        type: 't',
        hdop: 1e-7,
      },
      { lon: 1, lat: 2 },
    ],
    routes: [{ name: 'r', points: [{ lon: 1, lat: 2, hdop: 0.84 }] }],
    tracks: [
      {
        name: 'k',
        description: 'e',
        type: 'course',
        segments: [
          {
            ...columns([
              [1, 2, NaN],
              [1, -2, 7.5],
            ]),
            time: Float64Array.of(time, NaN),
          },
          columns([]),
        ],
      },
    ],
  });
  expect(text.split('\n')).toEqual([
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<gpx version="1.1" creator="A &amp; B" xmlns="http://www.topografix.com/GPX/1/1">',
    '<metadata><name>Island</name><time>2031-05-04T06:00:00.000Z</time></metadata>',
    '<wpt lat="0.0000000" lon="-17.4000000"><ele>0</ele><time>2031-05-04T06:00:00.000Z</time><name>n</name><cmt>c</cmt><desc>d</desc><sym>s</sym><type>t</type><hdop>0</hdop></wpt>',
    '<wpt lat="2.0000000" lon="1.0000000"></wpt>',
    '<rte><name>r</name>',
    '<rtept lat="2.0000000" lon="1.0000000"><hdop>0.84</hdop></rtept>',
    '</rte>',
    '<trk><name>k</name><desc>e</desc><type>course</type>',
    '<trkseg>',
    '<trkpt lat="2.0000000" lon="1.0000000"><time>2031-05-04T06:00:00.000Z</time></trkpt>',
    '<trkpt lat="-2.0000000" lon="1.0000000"><ele>7.5</ele></trkpt>',
    '</trkseg>',
    '</trk>',
    '</gpx>',
    '',
  ]);
});

test('Every text comes back whole but for what XML cannot hold, in whichever field it stands.', () => {
  const any = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 40 }),
    fc.array(fc.integer({ min: 0, max: 0xffff }), { maxLength: 40 }).map((units) => String.fromCharCode(...units)),
    fc.constantFrom(']]>', '<!--', '&amp;', '<script>alert("1")</script>', '\r\n\t'),
  );
  fc.assert(
    fc.property(any, (text) => {
      const { name, creator, waypoints, tracks } = read(
        writeGpx({
          creator: `x${text}x`,
          name: text,
          waypoints: [{ lon: 0, lat: 0, name: text, comment: text, description: text, symbol: text, type: text }],
          tracks: [{ name: text, segments: [columns([[0, 0, NaN]])] }],
        }),
      );
      const expected = held(text);
      expect(creator).toBe(held(`x${text}x`));
      expect([
        name,
        tracks[0]!.name,
        ...[waypoints[0]!].flatMap((one) => [one.name, one.comment, one.description, one.symbol, one.type]),
      ]).toEqual(Array.from({ length: 7 }, () => expected));
    }),
    { seed: 20260714, numRuns: 200 },
  );
});

test('Positions come back to half of 1e-7 of a degree, at the antimeridian by whole turns, elevations to half a millimetre.', () => {
  const place = fc.tuple(
    fc.double({ min: -540, max: 540, noNaN: true }),
    fc.double({ min: -90, max: 90, noNaN: true }),
    fc.double({ min: -500, max: 9000, noNaN: true }),
  );
  fc.assert(
    fc.property(fc.array(place, { minLength: 1, maxLength: 20 }), (points) => {
      const [segment] = read(writeGpx({ creator: 'x', tracks: [{ segments: [columns(points)] }] })).tracks[0]!.segments;
      for (const [i, [lon, lat, ele]] of points.entries()) {
        const turn = segment!.lon[i]! - lon;
        expect(Math.abs(turn - 360 * Math.round(turn / 360))).toBeLessThan(0.500001e-7);
        expect(segment!.lon[i]).toBeLessThan(180);
        expect(Math.abs(segment!.lat[i]! - lat)).toBeLessThan(0.500001e-7);
        expect(Math.abs(segment!.ele[i]! - ele)).toBeLessThan(0.500001e-3);
      }
    }),
    { seed: 20260714, numRuns: 200 },
  );
});

// The schema's longitudeType ends before 180.
test.each([
  [180, '-180.0000000'],
  [179.99999999, '-180.0000000'],
  [-180, '-180.0000000'],
  [-180.00000001, '-180.0000000'],
  [179.9999999, '179.9999999'],
  [-0.00000001, '0.0000000'],
])('Longitude %d is written %s.', (lon, expected) => {
  expect(writeGpx({ creator: 'x', waypoints: [{ lon, lat: 0 }] })).toContain(`lon="${expected}"`);
});

test.each([
  [NaN, 0, 0],
  [0, 90.0001, 0],
  [Infinity, 0, 0],
  [0, NaN, 0],
  [0, 0, NaN],
  [0, 0, -1],
])('A point at %d, %d with a dilution of %d is a fault of the caller.', (lon, lat, hdop) => {
  expect(() => writeGpx({ creator: 'x', waypoints: [{ lon, lat, hdop }] })).toThrow(RangeError);
});
