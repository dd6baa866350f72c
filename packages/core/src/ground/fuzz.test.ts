/**
 * Broken street files, made by a fixed seed from good ones as XML, PBF and GeoJSON: each is read or refused in words, none throws. Of each
 * format 1,000 in continuous integration, 5,000 with `TRIES=5000`.
 */
import { readFileSync } from 'node:fs';
import { unzlibSync, zlibSync } from 'fflate';
import { expect, it } from 'vitest';
import { buildCourse } from '../course/build.ts';
import { tries } from '../testing/tries.ts';
import { createGroundClipper } from './clipper.ts';
import { groundText } from './groundText.ts';
import { readGround } from './readGround.ts';

const built = buildCourse({
  id: 'c',
  name: 'C',
  segments: [
    {
      lon: Float64Array.of(13.3508, 13.3528),
      lat: Float64Array.of(52.5145, 52.5145),
      ele: Float64Array.of(NaN, NaN),
    },
  ],
});
if (!built.ok) throw new Error('the course is good');
const COURSES = [built.value];

const SMALL = `<?xml version="1.0" encoding="UTF-8"?>
<osm version="0.6"><bounds minlat="52" minlon="13" maxlat="53" maxlon="14"/>
<node id="1" timestamp="2017-09-13T10:52:59Z" lat="52.5145" lon="13.3509"><tag k="highway" v="crossing"/></node>
<node id="2" lat="52.5146" lon='13.3512'/><node id="3" lat="52.5149" lon="13.3512"/><node id="-4" lat="52.5149" lon="13.3509"/>
<way id="7"><nd ref="1"/><nd ref="2"/><nd ref="3"/><tag k="highway" v="residential"/><tag k="name" v="Île &amp; Quay"/></way>
<!-- a comment --><way id="8"><nd ref="1"/><nd ref="2"/><nd ref="3"/><nd ref="-4"/><nd ref="1"/><tag k="building" v="yes"/></way>
<way id="9"><nd ref="3"/><nd ref="-4"/><nd ref="1"/></way>
<relation id="5"><member type="way" ref="7" role="outer"/><member type="way" ref="9" role="outer"/><member type="way" ref="8" role="inner"/><tag k="type" v="multipolygon"/><tag k="natural" v="water"/></relation>
</osm>`;
const PIECES = [
  '<',
  '>',
  '&',
  '"',
  "'",
  '</',
  '/>',
  '<!--',
  ']]>',
  '<![CDATA[',
  '<?xml ?>',
  '<!DOCTYPE x [',
  'xmlns:a=""',
  ' id="1"',
  '-',
  '.',
  'e',
  '999',
  ',',
  '\0',
  '\r',
  '\u{FEFF}',
  '<node>',
  '</way>',
  '&#0;',
  '&x;',
  '{',
  '}',
  '[',
  ']',
  ':',
  '\\',
  '\\u',
  'null',
  '1e999',
  '"id"',
  '"type":"Feature"',
  '<nd ref="1"/>',
  '<member type="way"/>',
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

/** Something of the bytes changed, cut, doubled, moved or put in. */
function mutated(good: Uint8Array, random: (below: number) => number): Uint8Array {
  let bytes = [...good];
  for (let times = 1 + random(3); times > 0 && bytes.length > 0; times--) {
    const at = random(bytes.length);
    const length = random(random(2) === 0 ? 3 : 60);
    const kind = random(7);
    if (kind === 0) bytes[at] = random(256);
    else if (kind === 1) bytes.splice(at, length);
    else if (kind === 2) bytes.splice(at, 0, ...new TextEncoder().encode(PIECES[random(PIECES.length)]));
    else if (kind === 3) bytes.splice(at, 0, ...bytes.slice(at, at + length));
    else if (kind === 4 && random(3) === 0) bytes = bytes.slice(0, at);
    else if (kind === 5) bytes.splice(random(bytes.length), 0, ...bytes.splice(at, length));
    else bytes[at] = bytes[at]! ^ (1 << random(8));
  }
  return Uint8Array.from(bytes);
}

/** Reads and holds what is given to the rules of findings; whether it could be read. */
function check(bytes: Uint8Array): boolean {
  const clipper = createGroundClipper('town.osm', COURSES, 300);
  clipper.write(bytes);
  const result = clipper.close();
  for (const { message, where } of result.findings) {
    expect(message).toMatch(/^[A-Z0-9].*[.]$/su);
    // What stands in quotes, and the names of tags, are the file's own.
    expect(message.replaceAll(/“[^”]*”|<[^>]*>/gu, '')).not.toMatch(/NaN|undefined|null|Error:|\[object/);
    expect(message).not.toContain('\n');
    if (where.line !== undefined) expect(Math.min(where.line, where.column!)).toBeGreaterThanOrEqual(1);
  }
  if (!result.ok) {
    expect(result.findings.some(({ severity }) => severity === 'error')).toBe(true);
    return false;
  }
  const { ways, areas, points } = result.value.ground;
  for (const { lon, lat } of [...ways, ...areas.flatMap(({ rings }) => rings)]) {
    expect(lon.length).toBe(lat.length);
    for (const x of lon) expect(Math.abs(x)).toBeLessThanOrEqual(180);
    for (const y of lat) expect(Math.abs(y)).toBeLessThanOrEqual(90);
  }
  for (const { nodes, lon } of ways) expect(nodes.length).toBe(lon.length);
  for (const { lon, lat } of points) expect([Math.abs(lon) <= 180, Math.abs(lat) <= 90]).toEqual([true, true]);
  const text = groundText(result.value.ground);
  expect(readGround(text, 'g.geojson').ok).toBe(true);
  return true;
}

/** Were all refused, or none, the mutations would try only half of the reader. */
function tryOut(seed: number, make: (random: (below: number) => number) => Uint8Array): void {
  const random = randomOf(seed);
  const cases = tries(5000);
  let readable = 0;
  for (let k = 0; k < cases; k++) if (check(make(random))) readable++;
  expect(readable).toBeGreaterThan(cases / 50);
  expect(readable).toBeLessThan(cases * 0.98);
}

it('broken XML is read or refused in words', () => {
  const good = new TextEncoder().encode(SMALL);
  expect(check(good)).toBe(true);
  tryOut(20_310_504, (random) => mutated(good, random));
});

it('broken GeoJSON is read or refused in words', () => {
  const clipper = createGroundClipper('town.osm', COURSES, 300);
  clipper.write(new TextEncoder().encode(SMALL));
  const made = clipper.close();
  if (!made.ok) throw new Error('the file is good');
  const good = new TextEncoder().encode(groundText(made.value.ground));
  expect(check(good)).toBe(true);
  tryOut(97, (random) => mutated(good, random));
});

const PBF = readFileSync(new URL('../../../../fixtures/streets/streets.osm.pbf', import.meta.url));

/** Frames of a PBF file: what stands before the packed bytes of each block, and the block unpacked. */
const BLOCKS = (() => {
  const zlib: number[] = [];
  for (let at = 0; at + 1 < PBF.length; at++)
    if (PBF[at] === 0x78 && (PBF[at + 1] === 0x9c || PBF[at + 1] === 0xda)) zlib.push(at);
  return zlib.map((at) => unzlibSync(PBF.subarray(at)));
})();

const varint = (value: number): number[] =>
  value < 128 ? [value] : [(value % 128) + 128, ...varint(Math.floor(value / 128))];
const field = (number: number, bytes: Uint8Array): number[] => [number * 8 + 2, ...varint(bytes.length), ...bytes];

/** A frame of a type with that content. */
function frame(type: string, content: Uint8Array): number[] {
  const blob = [2 * 8, ...varint(content.length), ...field(3, zlibSync(content))];
  const head = [...field(1, new TextEncoder().encode(type)), 3 * 8, ...varint(blob.length)];
  return [0, 0, Math.floor(head.length / 256), head.length % 256, ...head, ...blob];
}

it('broken PBF is read or refused in words, with its frames broken or what is packed in them', () => {
  expect(BLOCKS.length).toBeGreaterThanOrEqual(2);
  const framed = (blocks: readonly Uint8Array[]): Uint8Array =>
    Uint8Array.from(blocks.flatMap((block, k) => frame(k === 0 ? 'OSMHeader' : 'OSMData', block)));
  expect(check(framed(BLOCKS))).toBe(true);
  tryOut(7, (random) => {
    if (random(4) === 0) return mutated(PBF, random);
    const at = random(BLOCKS.length);
    return framed(BLOCKS.map((block, k) => (k === at ? mutated(block, random) : block)));
  });
});

it('the same bytes give the same findings however they are cut', () => {
  const random = randomOf(11);
  const good = [new TextEncoder().encode(SMALL), PBF];
  for (let k = 0; k < tries(200); k++) {
    const bytes = mutated(good[k % 2]!, random);
    const [whole, cut] = [0, 1].map(() => createGroundClipper('town.osm', COURSES, 300));
    whole!.write(bytes);
    const step = 1 + random(400);
    for (let at = 0; at < bytes.length; at += step) cut!.write(bytes.subarray(at, at + step));
    expect(cut!.close()).toEqual(whole!.close());
  }
});
