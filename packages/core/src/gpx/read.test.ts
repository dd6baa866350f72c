import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Result } from '../finding.ts';
import type { GpxDocument } from './document.ts';
import { createGpxReader, readGpx } from './read.ts';

const good = (result: Result<GpxDocument>): GpxDocument => {
  if (!result.ok) throw new Error(result.findings.map(({ message }) => message).join('\n'));
  return result.value;
};
const read = (text: string): GpxDocument => good(readGpx(text, 'course.gpx'));
const points = (document: GpxDocument): number[][][][] =>
  document.tracks.map(({ segments }) => segments.map(({ lon, lat }) => Array.from(lon, (x, i) => [x, lat[i] ?? NaN])));

const FULL = `<?xml version="1.0" encoding="UTF-8"?>
<gpx version="1.1" creator="Halfcup test" xmlns="http://www.topografix.com/GPX/1/1" xmlns:far="urn:far">
  <metadata><name> Island &amp; Reef </name><author><name>nobody</name></author></metadata>
  <wpt lat="-12.25" lon="45.5">
    <ele>3.5</ele><name><![CDATA[Mile <1>]]></name><cmt>left side</cmt><desc>by the &#x70;ier</desc>
    <link href="x"><text>not a name</text></link><sym>Flag</sym><type>water</type><hdop>1.5</hdop>
    <extensions><far:name>far</far:name><name>also far</name></extensions>
  </wpt>
  <rte><name>Plan</name><rtept lat="1" lon="2"><ele>10</ele><name>not the route</name></rtept><rtept lat="1.5" lon="2.5"/></rte>
  <trk>
    <name>Course</name>
    <trkseg>
      <trkpt lat="-12.3" lon="45.1"><ele>7.25</ele><time>2031-05-04T06:00:00Z</time></trkpt>
      <trkpt lat="-12.4" lon="-180"></trkpt>
    </trkseg>
    <trkseg></trkseg>
    <trkseg><trkpt lon="180" lat="90"/></trkseg>
  </trk>
</gpx>
`;

test('A file of GPX 1.1 gives its tracks, routes, waypoints and names.', () => {
  expect(read(FULL)).toEqual({
    file: 'course.gpx',
    version: '1.1',
    creator: 'Halfcup test',
    name: 'Island & Reef',
    waypoints: [
      {
        lon: 45.5,
        lat: -12.25,
        ele: 3.5,
        name: 'Mile <1>',
        comment: 'left side',
        description: 'by the pier',
        symbol: 'Flag',
        type: 'water',
        hdop: 1.5,
        line: 4,
        column: 3,
      },
    ],
    routes: [
      {
        kind: 'route',
        name: 'Plan',
        line: 9,
        column: 3,
        segments: [{ lon: Float64Array.of(2, 2.5), lat: Float64Array.of(1, 1.5), ele: Float64Array.of(10, NaN) }],
      },
    ],
    tracks: [
      {
        kind: 'track',
        name: 'Course',
        line: 10,
        column: 3,
        segments: [
          { lon: Float64Array.of(45.1, -180), lat: Float64Array.of(-12.3, -12.4), ele: Float64Array.of(7.25, NaN) },
          { lon: Float64Array.of(180), lat: Float64Array.of(90), ele: Float64Array.of(NaN) },
        ],
      },
    ],
  });
});

test('Bytes and text, whole or cut anywhere, give the same.', () => {
  const whole = readGpx(FULL, 'a.gpx');
  const bytes = new TextEncoder().encode(FULL);
  expect(readGpx(bytes, 'a.gpx')).toEqual(whole);
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 90 }), fc.boolean(), (step, asBytes) => {
      const reader = createGpxReader('a.gpx');
      for (let at = 0; at < bytes.length; at += step)
        reader.write(asBytes ? bytes.subarray(at, at + step) : FULL.slice(at, at + step));
      expect(reader.close()).toEqual(whole);
    }),
    { seed: 3, numRuns: 60 },
  );
});

test('Line breaks of CR LF change no place.', () => {
  expect(read(FULL.replaceAll('\n', '\r\n'))).toEqual(read(FULL));
});

test('A place is right where the tag breaks after its name, and after characters beyond the basic plane.', () => {
  const { waypoints } = read('<gpx>\n  <!-- 🏃🏃 --><wpt\n lat="1"\r\n lon="2"/><wpt lat="1" lon="2">\n</wpt></gpx>');
  expect(waypoints.map(({ line, column }) => [line, column])).toEqual([
    [2, 14],
    [4, 11],
  ]);
});

test('Five thousand points grow the columns and keep every value.', () => {
  const rows = Array.from(
    { length: 5000 },
    (_, i) => `<trkpt lat="${i / 100}" lon="${-i / 50}"><ele>${i}</ele></trkpt>`,
  );
  const [track] = read(`<gpx><trk><trkseg>${rows.join('')}</trkseg></trk></gpx>`).tracks;
  expect(track?.segments[0]).toEqual({
    lon: Float64Array.from(rows, (_, i) => 0 - i / 50 + 0),
    lat: Float64Array.from(rows, (_, i) => i / 100),
    ele: Float64Array.from(rows, (_, i) => i),
  });
});

describe('Namespaces:', () => {
  const body = '<trk><trkseg><trkpt lat="1" lon="2"/></trkseg></trk>';
  const prefixed = '<g:trk><g:trkseg><g:trkpt lat="1" lon="2"/></g:trkseg></g:trk>';
  const one = [[[[2, 1]]]];

  test.each([
    ['GPX 1.0', `<gpx version="1.0" xmlns="http://www.topografix.com/GPX/1/0"><name>n</name>${body}</gpx>`],
    ['GPX 1.1', `<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1">${body}</gpx>`],
    ['another', `<gpx xmlns="urn:any">${body}</gpx>`],
    ['none', `<gpx>${body}</gpx>`],
    ['a prefix', `<g:gpx xmlns:g="http://www.topografix.com/GPX/1/1">${prefixed}</g:gpx>`],
    ['a prefix that nothing declares', `<g:gpx>${prefixed}</g:gpx>`],
    [
      'a second prefix for GPX',
      `<gpx xmlns="http://www.topografix.com/GPX/1/1" xmlns:g="http://www.topografix.com/GPX/1/1">${prefixed}</gpx>`,
    ],
    [
      'a prefix inside a file of none',
      `<gpx>${prefixed.replace('<g:trk>', '<g:trk xmlns:g="http://www.topografix.com/GPX/1/0">')}</gpx>`,
    ],
  ])('%s is read.', (_, text) => {
    expect(points(read(text))).toEqual(one);
  });

  test.each([
    ['by prefix', `<gpx xmlns:f="urn:far">${body}<f:trk>${body}</f:trk></gpx>`],
    [
      'by default',
      `<gpx xmlns="http://www.topografix.com/GPX/1/1">${body}${body.replace('<trk>', '<trk xmlns="urn:far">')}</gpx>`,
    ],
    [
      'by default, with the prefix of GPX taken over',
      `<g:gpx xmlns:g="http://www.topografix.com/GPX/1/1">${prefixed}${prefixed.replace('<g:trk>', '<g:trk xmlns:g="urn:far">')}</g:gpx>`,
    ],
    ['inside extensions', `<gpx>${body}<extensions>${body}</extensions></gpx>`],
  ])('A foreign element is left out: %s.', (_, text) => {
    const result = readGpx(text, 'a.gpx');
    expect(result.findings).toEqual([]);
    expect(points(good(result))).toEqual(one);
  });

  test('A foreign element inside a name or a point does not change it.', () => {
    const { waypoints } = read(
      '<gpx xmlns:f="urn:far"><wpt lat="1" lon="2"><f:ele>9</f:ele><name>Pi<f:b>x</f:b>er</name><f:name>no</f:name></wpt></gpx>',
    );
    expect(waypoints[0]).toMatchObject({ name: 'Pier', ele: null });
  });
});

test('A file without tracks, routes and waypoints is read; what is missing is for the course to say.', () => {
  expect(read('<gpx version="1.1"/>')).toMatchObject({ tracks: [], routes: [], waypoints: [], version: '1.1' });
  expect(read('<gpx><wpt lat="1" lon="2"/></gpx>').waypoints).toHaveLength(1);
  expect(read('<gpx><trk><name> </name><trkseg/></trk></gpx>').tracks).toMatchObject([{ name: null, segments: [] }]);
});

test('A reader that is closed takes nothing more.', () => {
  const reader = createGpxReader('a.gpx');
  reader.write('<gpx/>');
  expect(reader.close().ok).toBe(true);
  expect(() => reader.write('<gpx/>')).toThrow('write after close');
  expect(() => reader.close()).toThrow('close after close');
});

test('what is neither text nor bytes is a mistake in the program, and is said to be', () => {
  const wrong: [unknown, string][] = [
    [undefined, 'undefined'],
    [null, 'null'],
    [5, 'number'],
    [{}, 'an object (Object)'],
    [new ArrayBuffer(4), 'an object (ArrayBuffer)'],
    [new Float64Array(2), 'an object (Float64Array)'],
  ];
  for (const [input, kind] of wrong) {
    expect(() => readGpx(input as string, 'course.gpx')).toThrow(
      new TypeError(`GPX is read from a string or a Uint8Array, the content of the file course.gpx; this is ${kind}`),
    );
  }
});
