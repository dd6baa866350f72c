/**
 * What a street file is by its first bytes, and that each of them is read.
 * Sources: XML 1.0 (5th ed.), appendix F, and Unicode 15, section 23.8, for the marks of byte order; RFC 8259, section 2, for white space of JSON.
 */
import { gzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { findingLine } from '../finding.ts';
import { ORIGIN, courseThrough, from, valueOf } from '../testing/courses.ts';
import { createGroundClipper } from './clipper.ts';
import { formatOf } from './format.ts';

const COURSE = courseThrough([ORIGIN, from(ORIGIN, 90, 1000)]);
const clipped = (bytes: Uint8Array) => {
  const clipper = createGroundClipper('town', [COURSE], 300);
  clipper.write(bytes);
  return clipper.close();
};
const said = (bytes: Uint8Array): string | undefined => clipped(bytes).findings.map(findingLine)[0];

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
/** UTF-16 by hand, so that the test does not go by the decoder it tries. */
const utf16 = (text: string, little: boolean): Uint8Array => {
  const bytes = new DataView(new ArrayBuffer(2 * text.length));
  for (let k = 0; k < text.length; k++) bytes.setUint16(2 * k, text.charCodeAt(k), little);
  return new Uint8Array(bytes.buffer);
};

const NAME = 'Straße der Äpfel';
const [lon, lat] = ORIGIN;
const XML = `<osm version="0.6"><node id="1" lat="${lat}" lon="${lon}"><tag k="barrier" v="gate"/><tag k="name" v="${NAME}"/></node></osm>`;
const GATE = {
  type: 'Feature',
  id: 'node/1',
  properties: { barrier: 'gate', name: NAME },
  geometry: { type: 'Point', coordinates: ORIGIN },
};
const JSON_TEXT = JSON.stringify({ type: 'FeatureCollection', features: [GATE] });

describe('a street file of text', () => {
  it.each([
    ['xml', XML],
    ['geojson', JSON_TEXT],
  ] as const)('is %s in UTF-8 or UTF-16, with a mark or after white space', (format, text) => {
    const whole = valueOf(clipped(utf8(text)));
    expect([whole.format, whole.ground.points.map(({ tags }) => tags['name'])]).toEqual([format, [NAME]]);
    const marked = `\u{FEFF}${text}`;
    for (const bytes of [utf8(marked), utf16(marked, true), utf16(marked, false), utf8(`\r\n\t ${text}`)])
      expect(valueOf(clipped(bytes))).toEqual(whole);
  });

  it('is XML where UTF-16 begins with its < and has no mark', () => {
    for (const little of [true, false]) {
      const { format, ground } = valueOf(clipped(utf16(XML, little)));
      expect([format, ground.points.length]).toEqual(['xml', 1]);
    }
  });

  it('is empty where it holds white space alone, in UTF-16 and packed too', () => {
    for (const blank of [utf8('\u{FEFF} \n'), utf16('\u{FEFF} \n', true), gzipSync(utf8(' \n ')), gzipSync(utf8(''))])
      expect(said(blank)).toContain('town:1:1: The street file is empty.');
  });

  it('is of an unknown kind where a kilobyte of it has nothing but white space', () => {
    expect(formatOf(utf8(' '.repeat(1024)), false)).toEqual({ kind: 'binary' });
    expect(formatOf(utf8(' '.repeat(1023)), false)).toBeNull();
  });

  it('is named by its first words where it is neither, packed or not', () => {
    const words = 'town:1:1: The file begins with “id;lat;lon”.';
    for (const table of ['id;lat;lon', '\u{FEFF}id;lat;lon'].map(utf8)) {
      expect(said(table)).toContain(words);
      expect(said(gzipSync(table))).toContain(words);
    }
  });
});

it('bytes that only begin like a mark are none', () => {
  for (const bytes of [
    [0xef, 0xbb, 0x20, 0x3c],
    [0xef, 0x3c, 0, 0],
    [0xff, 0x3c, 0, 0],
    [0xfe, 0x3c, 0, 0],
    [0, 0x20, 0x3c, 0],
  ])
    expect(formatOf(Uint8Array.from(bytes), true)).not.toBe('xml');
});

it('a zip begins with PK and the numbers 3 and 4, and gzip with 1F 8B', () => {
  // Sources: APPNOTE.TXT 4.3.7; RFC 1952, section 2.3.1.
  expect(formatOf(Uint8Array.of(0x50, 0x4b, 3, 4), true)).toEqual({ kind: 'zip' });
  expect(formatOf(utf8('PK is no zip'), true)).toEqual({ kind: 'text', found: 'PK is no zip' });
  expect(formatOf(Uint8Array.of(0x1f, 0x8b, 8, 0), true)).toBe('gzip');
  expect(formatOf(Uint8Array.of(0x1f, 7, 8, 0), true)).toEqual({ kind: 'binary' });
});
