/** 2,000 broken files, made from a good one by a fixed seed: each is read or refused in words, none throws. */

import { expect, test } from 'vitest';
import { createGpxReader, readGpx } from './read.ts';

const GOOD = `<?xml version="1.0" encoding="UTF-8"?>
<gpx version="1.1" creator="c" xmlns="http://www.topografix.com/GPX/1/1" xmlns:f="urn:far">
<metadata><name>Île &amp; Reef</name></metadata>
<wpt lat="-12.25" lon="45.5"><ele>3.5</ele><name><![CDATA[Pier <1>]]></name><hdop>1.5</hdop><extensions><f:x>1</f:x></extensions></wpt>
<!-- a comment --><rte><name>r</name><rtept lat="1" lon="2"/><rtept lat="1.5" lon="2.5"/></rte>
<trk><name>Course</name><trkseg><trkpt lat="-12.3" lon="45.1"><ele>7.25</ele></trkpt><trkpt lat="-12.4" lon="45.2"></trkpt></trkseg>
<trkseg><trkpt lat="-12.5" lon="45.3"/><trkpt lat="-12.6" lon="45.4"/></trkseg></trk>
</gpx>
`;
const PIECES = [
  '<',
  '>',
  '&',
  '"',
  '</',
  '/>',
  '<!--',
  ']]>',
  '<![CDATA[',
  '<?xml ?>',
  '<!DOCTYPE x [',
  'xmlns=""',
  ' lat="1"',
  '-',
  '.',
  'e',
  '999',
  ',',
  '\0',
  '\r',
  '\u{FEFF}',
  '<trkpt>',
  '</trkseg>',
  '&#0;',
  '&x;',
  '🏃',
  'Infinity',
];

/** xorshift32 (Marsaglia 2003, doi:10.18637/jss.v008.i14). */
function randomOf(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) % below;
  };
}

function alterNumber(bytes: number[], random: (below: number) => number): void {
  const digits = [...bytes.keys()].filter((i) => (bytes[i] ?? 0) >= 0x30 && (bytes[i] ?? 0) <= 0x39);
  const at = digits[random(Math.max(1, digits.length))];
  if (at !== undefined) bytes[at] = '0123456789.-+eEN, '.charCodeAt(random(18));
}

function mutate(random: (below: number) => number): Uint8Array {
  let bytes: number[] = [...new TextEncoder().encode(GOOD)];
  for (let times = 1 + random(2); times > 0 && bytes.length > 0; times--) {
    const at = random(bytes.length);
    const length = random(random(2) === 0 ? 3 : 40);
    const kind = random(8);
    if (kind === 0) bytes[at] = random(256);
    else if (kind === 1) bytes.splice(at, length);
    else if (kind === 2) bytes.splice(at, 0, ...new TextEncoder().encode(PIECES[random(PIECES.length)]));
    else if (kind === 3) bytes.splice(at, 0, ...bytes.slice(at, at + length));
    else if (kind === 4) bytes = bytes.slice(0, at);
    else if (kind === 5) bytes.splice(random(bytes.length), 0, ...bytes.splice(at, length));
    else alterNumber(bytes, random);
  }
  return Uint8Array.from(bytes);
}

function check(bytes: Uint8Array): boolean {
  const result = readGpx(bytes, 'f.gpx');
  for (const { message, where, measured } of result.findings) {
    expect(message).toMatch(/^[A-Z0-9].*[.]$/su);
    expect(message).not.toMatch(/NaN|undefined|null|Error:|\[object/);
    expect(measured).not.toBe(NaN);
    if (where.line !== undefined) expect(where.line).toBeGreaterThanOrEqual(1);
    if (where.line !== undefined) expect(where.column).toBeGreaterThanOrEqual(1);
  }
  if (!result.ok) {
    expect(result.findings.some(({ severity }) => severity === 'error')).toBe(true);
    return false;
  }
  const { tracks, routes, waypoints } = result.value;
  const lines = [...tracks, ...routes].flatMap(({ segments }) => segments);
  for (const value of [...lines.flatMap(({ lon }) => [...lon]), ...waypoints.map(({ lon }) => lon)])
    expect(Math.abs(value)).toBeLessThanOrEqual(180);
  for (const value of [...lines.flatMap(({ lat }) => [...lat]), ...waypoints.map(({ lat }) => lat)])
    expect(Math.abs(value)).toBeLessThanOrEqual(90);
  for (const { lon, lat, ele } of lines) expect([lat.length, ele.length]).toEqual([lon.length, lon.length]);
  return true;
}

test('Each of 2,000 broken files gives a document or findings; none throws, none holds a not-a-number.', () => {
  const random = randomOf(20_310_504);
  let readable = 0;
  for (let i = 0; i < 2000; i++) if (check(mutate(random))) readable += 1;
  // Were all refused, or none, the mutations would try only half of the reader.
  expect(readable).toBeGreaterThan(100);
  expect(readable).toBeLessThan(1900);
});

test('A broken file gives the same findings however it is cut.', () => {
  const random = randomOf(97);
  for (let i = 0; i < 300; i++) {
    const bytes = mutate(random);
    const reader = createGpxReader('f.gpx');
    const step = 1 + random(50);
    for (let at = 0; at < bytes.length; at += step) reader.write(bytes.subarray(at, at + step));
    expect(reader.close()).toEqual(readGpx(bytes, 'f.gpx'));
  }
});
