/**
 * What a street file is, by its first bytes: names lie.
 * Sources: RFC 1952 (gzip), APPNOTE.TXT 4.3.7 (ZIP), the OpenStreetMap wiki's "PBF Format".
 */
import { excerpt } from '../gpx/trouble.ts';
import type { GroundFormat } from '../text/params/ground.ts';

/** A format, or what it is instead; `null` where more bytes are needed. */
export type FirstBytes =
  | GroundFormat
  | null
  | { readonly kind: 'empty' | 'zip' | 'binary' }
  | { readonly kind: 'text'; readonly found: string };

declare const TextDecoder: new (label: string) => { decode(bytes: Uint8Array): string };

/** Bytes of another window or thread are bytes too, so no `instanceof`. */
export const isBytes = (chunk: unknown): boolean =>
  ArrayBuffer.isView(chunk) && 'subarray' in chunk && 'BYTES_PER_ELEMENT' in chunk && chunk.BYTES_PER_ELEMENT === 1;

/** Bytes that must show what a file is. */
const ENOUGH = 1024;
const OSM_HEADER = 'OSMHeader';

const isSpace = (byte: number): boolean => byte === 32 || (byte >= 9 && byte <= 13);

/** The format by the first bytes; `last`: there are no more. */
export function formatOf(bytes: Uint8Array, last: boolean): FirstBytes {
  if (bytes.length < ENOUGH && !last) {
    // Short of that, a small file is told when it ends.
    return null;
  }
  const [a = -1, b = -1, c = -1, d = -1] = bytes;
  if (a === 0x1f && b === 0x8b) return 'gzip';
  if (a === 0x50 && b === 0x4b && c === 3 && d === 4) return { kind: 'zip' };
  const head = String.fromCharCode(...bytes.subarray(0, 64));
  if (a === 0 && b === 0 && head.indexOf(OSM_HEADER) >= 6) return 'pbf';
  if ((a === 0xff && b === 0xfe) || (a === 0xfe && b === 0xff)) return utf16(a === 0xff ? c : d);
  if ((a === 0x3c && b === 0) || (a === 0 && b === 0x3c)) return 'xml';
  let at = a === 0xef && b === 0xbb && c === 0xbf ? 3 : 0;
  while (at < bytes.length && isSpace(bytes[at]!)) at++;
  if (at === bytes.length) return last ? { kind: 'empty' } : { kind: 'binary' };
  const mark = String.fromCharCode(bytes[at]!);
  if (mark === '<') return 'xml';
  if (mark === '{' || mark === '[') return 'geojson';
  const text = bytes.subarray(at, at + 80);
  return text.some((byte) => byte < 9)
    ? { kind: 'binary' }
    : { kind: 'text', found: excerpt(new TextDecoder('utf-8').decode(text)) };
}

const utf16 = (first: number): FirstBytes => (first === 0x7b || first === 0x5b ? 'geojson' : 'xml');
