/** A file that is read piece by piece: its findings and places are those of the whole, wherever it is cut. */
import { describe, expect, it } from 'vitest';
import type { Finding, Result } from '../finding.ts';
import type { GpxDocument } from './document.ts';
import { createGpxReader, readGpx } from './read.ts';

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

function inPieces(pieces: readonly (string | Uint8Array)[]): Result<GpxDocument> {
  const reader = createGpxReader('cut.gpx');
  for (const piece of pieces) reader.write(piece);
  return reader.close();
}
const told = ({ findings }: Result<GpxDocument>): (readonly [string, number | undefined, number | undefined])[] =>
  findings.map(({ code, where }: Finding) => [code, where.line, where.column]);

/** All on one line, with letters of one to four bytes; a latitude over 90, a longitude that is none, an element that is not closed rightly. */
const FAULTS: Readonly<Record<string, string>> = {
  'positions that are none':
    '<gpx version="1.1" creator="Île 🏃"><wpt lat="95" lon="2"><name>日本 &amp; Ōkü</name></wpt><wpt lat="é🏃" lon="2"/></gpx>',
  'a tag that closes what is not open':
    '<gpx version="1.1" creator="é">\n<trk><name>🏃</name>\r\n<trkseg><trkpt lat="1" lon="2"/></tkseg></trk></gpx>',
  'an entity that XML has not':
    '<gpx version="1.1" creator="é"><wpt lat="1" lon="2"><name>é &nbsp; 🏃</name></wpt></gpx>',
  'an end that is missing': '<gpx version="1.1" creator="é"><trk><trkseg>\n<trkpt lat="1" lon="2"/>',
};

describe.each(Object.entries(FAULTS))('a file with %s', (_, text) => {
  const whole = told(readGpx(text, 'cut.gpx'));

  it('has findings with line and column', () => {
    expect(whole.length).toBeGreaterThan(0);
    for (const [, line, column] of whole) expect([typeof line, typeof column]).toEqual(['number', 'number']);
  });

  it('has the same findings at the same places, wherever it is cut in two', () => {
    for (let at = 0; at <= text.length; at++)
      expect([at, told(inPieces([text.slice(0, at), text.slice(at)]))]).toEqual([at, whole]);
    const bytes = bytesOf(text);
    for (let at = 0; at <= bytes.length; at++)
      expect([at, told(inPieces([bytes.subarray(0, at), bytes.subarray(at)]))]).toEqual([at, whole]);
  });
});

it('a tag that is longer than a piece is read and placed like the shorter ones', () => {
  const long = 'x'.repeat(70_000);
  const text = `<gpx version="1.1" creator="é"><metadata><name>${long}</name></metadata><wpt lat="95" lon="2"/></gpx>`;
  const whole = readGpx(text, 'cut.gpx');
  expect(told(whole)).toEqual([[expect.any(String), 1, text.indexOf('<wpt') + 1]]);
  expect(told(inPieces([text.slice(0, 40), text.slice(40, 69_000), text.slice(69_000)]))).toEqual(told(whole));
  expect(told(inPieces([bytesOf(text)]))).toEqual(told(whole));
  const attribute = `<gpx version="1.1" creator="${long}"><wpt lat="1" lon="2"/></gpx>`;
  const read = inPieces(Array.from(attribute.match(/[\s\S]{1,9000}/gu)!));
  expect(read.ok && [read.value.creator!.length, read.value.waypoints.length]).toEqual([70_000, 1]);
});

it('a file of nothing but white space is empty, however it comes', () => {
  for (const pieces of [[], [''], [' \n', '\t'], [bytesOf(' '), bytesOf('\n')]])
    expect(told(inPieces(pieces)).map(([code]) => code)).toEqual(['gpx-empty']);
});

it('a file that ends before its outermost element was cut off', () => {
  expect(told(inPieces(['<?xml version="1.0"?>\n', '<!-- nothing -->'])).map(([code]) => code)).toEqual([
    'gpx-truncated',
  ]);
  expect(told(inPieces(['<?xml version="1.0"?>\n<gp'])).map(([code]) => code)).toEqual(['gpx-truncated']);
});
