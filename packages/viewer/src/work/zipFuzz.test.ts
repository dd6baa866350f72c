/**
 * Archives with an odd structure by a fixed seed: records cut, counts and lengths made up, bytes of the list and of the files
 * changed. Each is unpacked or refused in words. `FULL=1` tries 5,000.
 */
import { zipSync } from 'fflate';
import { expect, it } from 'vitest';
import { unpacked } from './zip.ts';

const CASES = process.env['FULL'] ? 5000 : process.env['CI'] ? 1000 : 200;

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

const NAMES = [
  'plan.json',
  'c.gpx',
  'ways/c.gpx',
  '../up.gpx',
  '/root.csv',
  'é.json',
  '.hidden',
  'folder/',
  'x'.repeat(300),
  '',
];
/** Beginnings of records: local header, list, end, end and locator of 64 bits (APPNOTE 6.3.10, section 4.3). */
const RECORDS = [0x04034b50, 0x02014b50, 0x06054b50, 0x06064b50, 0x07064b50];
const COUNTS = [0, 1, 8, 255, 0xffff, 0x7fffffff, 0xffffffff];

function oddArchive(random: (below: number) => number): Uint8Array<ArrayBuffer> {
  const files = Array.from({ length: random(5) }, (_, k) => {
    const content = new Uint8Array(random(random(3) === 0 ? 5000 : 60)).fill(random(256));
    return [`${random(4) === 0 ? k : ''}${NAMES[random(NAMES.length)]!}`, content] as const;
  });
  let bytes = zipSync(Object.fromEntries(files), { level: random(2) === 0 ? 0 : 6 });
  for (let times = random(4); times > 0 && bytes.length > 8; times--) {
    const at = random(bytes.length - 4);
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    const kind = random(6);
    if (kind === 0) bytes[at] = random(256);
    else if (kind === 1) view.setUint32(at, COUNTS[random(COUNTS.length)]!, true);
    else if (kind === 2) view.setUint32(at, RECORDS[random(RECORDS.length)]!, true);
    else if (kind === 3) bytes = bytes.slice(0, at);
    else if (kind === 4)
      bytes = new Uint8Array([...bytes.subarray(0, at), ...bytes.subarray(Math.max(0, at - random(40)))]);
    // The lengths and counts of the last record, which says where the list is.
    else view.setUint32(Math.max(0, bytes.length - 4 - random(22)), COUNTS[random(COUNTS.length)]!, true);
  }
  return bytes;
}

it(`unpacks or refuses each of ${CASES} odd archives in words, and holds no more than the archive can`, () => {
  const random = randomOf(20_261_205);
  const said = { read: 0, refused: 0 };
  for (let k = 0; k < CASES; k++) {
    const bytes = oddArchive(random);
    const result = unpacked({ name: 'plan.zip', bytes });
    said[result.ok ? 'read' : 'refused'] += 1;
    for (const { message } of result.findings) {
      expect(message.length, `case ${k}`).toBeGreaterThan(10);
      expect(message, `case ${k}`).not.toMatch(/\b(?:NaN|Infinity|undefined|RangeError|TypeError)\b|\[object/u);
    }
    if (!result.ok) {
      expect(result.findings.some(({ severity }) => severity === 'error'), `case ${k}`).toBe(true); // prettier-ignore
      continue;
    }
    // Deflate makes at most 1,032 bytes of one (RFC 1951: 258 bytes from two bits); several names may stand for the same bytes.
    const held = result.value.reduce((sum, file) => sum + file.bytes.length, 0);
    expect(held, `case ${k}`).toBeLessThanOrEqual(1032 * bytes.length * result.value.length);
  }
  expect(Math.min(said.read, said.refused)).toBeGreaterThan(CASES / 50);
});
