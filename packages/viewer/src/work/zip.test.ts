import { unzipSync, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { demoFile, DEMO_NAMES, textFile, tries } from '../testing.ts';
import type { NamedFile } from '../state/open/fileKinds.ts';
import { packed, unpacked } from './zip.ts';
import { crc32, zipEntries } from './zipDirectory.ts';

const archive = (bytes: Uint8Array): NamedFile => ({ name: 'plan.zip', bytes: new Uint8Array(bytes) });
const text = (value: string): Uint8Array => new TextEncoder().encode(value);
const plan = text('{"format":"halfcup-plan"}');

function filesOf(bytes: Uint8Array): readonly NamedFile[] {
  const read = unpacked(archive(bytes));
  if (!read.ok) throw new Error(read.findings[0]!.message);
  return read.value;
}
const codes = (bytes: Uint8Array): string[] => unpacked(archive(bytes)).findings.map(({ code }) => code);

describe('a ZIP archive', () => {
  test('gives back what was packed, byte for byte', () => {
    const files = DEMO_NAMES.map(demoFile);
    const back = filesOf(packed(files));
    expect(back.map(({ name }) => name)).toEqual(files.map(({ name }) => name));
    for (const [k, { bytes }] of back.entries()) expect(Buffer.from(bytes).equals(files[k]!.bytes)).toBe(true);
  });

  test('has the sums of the standard: CRC-32 of "123456789" (the check value of the catalogue of CRC algorithms)', () => {
    expect(crc32(text('123456789'))).toBe(0xcbf43926);
    expect(crc32(new Uint8Array(0))).toBe(0);
  });

  test('is listed as another library lists it', () => {
    const bytes = packed(DEMO_NAMES.map(demoFile));
    const list = zipEntries(bytes, 100);
    if (list === null || list === 'many') throw new Error('no list');
    expect(list.map(({ name, size }) => [name, size])).toEqual(
      Object.entries(unzipSync(bytes)).map(([name, content]) => [name, content.length]),
    );
  });

  test('with a byte that has changed is refused, packed or as it is', () => {
    for (const level of [0, 6] as const) {
      const whole = zipSync({ 'plan.json': text('{"name":"Pier run", "stations": []}') }, { level });
      const at = 30 + 'plan.json'.length + 5;
      expect(codes(whole)).toEqual([]);
      expect(codes(whole.with(at, whole[at]! ^ 1))).toEqual(['zip-damaged']);
    }
  });

  test('leaves out what no plan can use, with a note for each, and hidden files without one', () => {
    const bytes = zipSync({
      'plan.json': plan,
      'track.xml': text('<gpx></gpx>'),
      'notes/readme.txt': text('Read me'),
      'start.jpg': new Uint8Array([0xff, 0xd8, 0xff]),
      '.DS_Store': text('x'),
      '__MACOSX/plan.json': text('x'),
    });
    const read = unpacked(archive(bytes));
    expect(read.ok && read.value.map(({ name }) => name)).toEqual(['plan.json', 'track.xml']);
    expect(read.findings.map(({ severity, message }) => `${severity}: ${message}`)).toEqual([
      'note: notes/readme.txt in this ZIP file is no course, plan, drawing or results, so it was left out.',
      'note: start.jpg in this ZIP file is no course, plan, drawing or results, so it was left out.',
    ]);
  });

  test('of one file that grows a thousandfold beyond what it says is refused after as many bytes as it says', () => {
    const bytes = zipSync({ 'plan.json': new Uint8Array(5_000_000) }, { level: 9 });
    const view = new DataView(bytes.buffer);
    const list = bytes.length - 22 - 46 - 'plan.json'.length;
    view.setUint32(list + 24, 1000, true);
    expect(codes(bytes)).toEqual(['zip-damaged']);
    view.setUint32(list + 24, 300 * 2 ** 20, true);
    expect(codes(bytes)).toEqual(['past-limit']);
  });

  test('locked with a password, of an unknown kind, cut off or empty is refused in plain words', () => {
    const bytes = zipSync({ 'plan.json': plan });
    const list = bytes.length - 22 - 46 - 'plan.json'.length;
    expect(codes(bytes.with(list + 8, 1))).toEqual(['zip-encrypted']);
    expect(codes(bytes.with(list + 10, 93))).toEqual(['zip-unreadable']);
    expect(codes(bytes.subarray(0, -10))).toEqual(['zip-unreadable']);
    expect(codes(new Uint8Array([0x50, 0x4b, 3, 4]))).toEqual(['zip-unreadable']);
  });

  test('of more files than a plan can have is refused', () => {
    const many = Object.fromEntries(Array.from({ length: 1001 }, (_, k) => [`${k}.csv`, new Uint8Array(0)]));
    expect(codes(zipSync(many))).toEqual(['past-limit']);
  });
});

/** Marsaglia's xorshift, 32 bits. */
function randomOf(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) % below;
  };
}

/** Lengths, places and kinds that break readers. */
const EDGES = [0, 1, 8, 0x7f, 0x80, 0xff] as const;

function broken(bytes: Uint8Array, random: (below: number) => number): Uint8Array {
  let now = new Uint8Array(bytes);
  for (let k = random(4); k >= 0; k--) {
    // Half of the changes hit the list at the end, which is the smaller part.
    const at = random(2) === 0 ? random(now.length) : now.length - 1 - random(Math.min(now.length, 220));
    const kind = random(6);
    if (kind <= 1) now[at] = random(256);
    else if (kind === 2) now[at] = EDGES[random(EDGES.length)]!;
    else if (kind === 3) now.set([0xff, 0xff, 0xff, 0xff].slice(0, now.length - at), at);
    else if (kind === 4) now = now.slice(0, at + 1);
    else now = new Uint8Array([...now.subarray(0, at), ...now.subarray(random(now.length))]);
  }
  return now;
}

test('broken at random it gives files whole and unaltered, or a refusal in words; never more bytes than its bounds', () => {
  const files = [textFile('plan.json', '{"format":"halfcup-plan"}'), textFile('a/b.csv', 'time\n1:00:00\n'.repeat(40))];
  const whole = packed(files);
  const known = new Set(files.map(({ bytes }) => Buffer.from(bytes).toString('latin1')));
  const random = randomOf(20);
  const seen = { opened: 0, refused: 0 };
  for (let k = 0; k < tries(5000) * 5; k++) {
    const read = unpacked(archive(broken(whole, random)));
    if (read.ok) {
      seen.opened++;
      for (const { bytes } of read.value) expect(known).toContain(Buffer.from(bytes).toString('latin1'));
    } else {
      seen.refused++;
      expect(read.findings.map(({ severity }) => severity)).toEqual(['error']);
      expect(read.findings[0]!.message).toMatch(/[Tt]h(?:is|e) ZIP file.*\.$|^This ZIP file.*\.$/u);
    }
  }
  expect(Math.min(seen.opened, seen.refused)).toBeGreaterThan(tries(5000) / 10);
});
