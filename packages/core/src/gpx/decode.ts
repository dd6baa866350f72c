/**
 * Bytes to text, piece by piece, for XML: byte order marks, then the encoding of the XML declaration,
 * then UTF-8. Sources: XML 1.0 (5th ed.) appendix F for the recognition; WHATWG Encoding Standard for
 * the labels (its `iso-8859-1` is windows-1252); Unicode 15 table 3-7 for well-formed UTF-8.
 */

import { excerpt, type RefusalOf } from './trouble.ts';

declare const TextDecoder: new (
  label: string,
  options: { readonly fatal: boolean; readonly ignoreBOM: boolean },
) => { decode(bytes: Uint8Array): string };

export type DecodeProblem = RefusalOf<'gpx-binary' | 'gpx-encoding'>;

export interface ByteDecoder {
  /** The text of these bytes, as far as it is whole and valid, up to the last tag; `last` gives out what was held back. */
  decode(bytes: Uint8Array, last: boolean): string;
  /** Why no more text comes; it stands right after the text given out so far. */
  problem(): DecodeProblem | null;
}

interface Encoding {
  readonly name: string;
  readonly decoder: { decode(bytes: Uint8Array): string };
  /** The longest part that does not end within a character. */
  readonly whole: (bytes: Uint8Array) => number;
  /** How many bytes are valid, from the beginning. */
  readonly valid: (bytes: Uint8Array) => number;
}

const HEAD = 1024;
const NONE = new Uint8Array(0);

/** A decoder that finds the encoding by the first bytes; a mark at the beginning is not given out. */
export function createByteDecoder(): ByteDecoder {
  let encoding: Encoding | null = null;
  let problem: DecodeProblem | null = null;
  let held = NONE;

  const start = (bytes: Uint8Array): number => {
    const found = recognise(bytes);
    if ('code' in found) {
      problem = found;
      return 0;
    }
    encoding = found.encoding;
    return found.markBytes;
  };

  const decode = (more: Uint8Array, last: boolean): string => {
    if (problem !== null) return '';
    let bytes = joined(held, more);
    held = NONE;
    if (encoding === null) {
      if (bytes.length < HEAD && !last) {
        held = bytes.slice();
        return '';
      }
      bytes = bytes.subarray(start(bytes));
    }
    if (encoding === null) return '';
    const end = last ? bytes.length : afterLastTag(encoding, bytes) || encoding.whole(bytes);
    held = bytes.slice(end);
    const body = bytes.subarray(0, end);
    const text = attempt(encoding, body);
    if (text !== null) return text;
    const valid = encoding.valid(body);
    problem = invalid(encoding.name, body, valid);
    return encoding.decoder.decode(body.subarray(0, valid));
  };

  return { decode, problem: () => problem };
}

/** Text that ends with a tag can go to the parser as it is: joined text is slower to read there, by a third. */
const afterLastTag = (encoding: Encoding, bytes: Uint8Array): number =>
  encoding.name.startsWith('UTF-16') ? 0 : bytes.lastIndexOf(0x3e) + 1;

function attempt(encoding: Encoding, body: Uint8Array): string | null {
  if (encoding.name === 'US-ASCII' && encoding.valid(body) < body.length) return null;
  try {
    return encoding.decoder.decode(body);
  } catch {
    return null;
  }
}

function joined(held: Uint8Array<ArrayBuffer>, more: Uint8Array): Uint8Array {
  if (held.length === 0) return more;
  const all = new Uint8Array(held.length + more.length);
  all.set(held);
  all.set(more, held.length);
  return all;
}

type Recognised = { readonly encoding: Encoding; readonly markBytes: number } | DecodeProblem;

function recognise(bytes: Uint8Array): Recognised {
  const [a = -1, b = -1, c = -1, d = -1] = bytes;
  if ((a === 0x1f && b === 0x8b) || (a === 0x50 && b === 0x4b && c === 3 && d === 4))
    return { code: 'gpx-binary', params: { kind: 'compressed' } };
  if ((a === 0xff && b === 0xfe && c === 0 && d === 0) || (a === 0 && b === 0 && c === 0xfe && d === 0xff))
    return unsupported('UTF-32');
  if (a === 0xef && b === 0xbb && c === 0xbf) return { encoding: utf8(), markBytes: 3 };
  if (a === 0xff && b === 0xfe) return { encoding: utf16('UTF-16LE'), markBytes: 2 };
  if (a === 0xfe && b === 0xff) return { encoding: utf16('UTF-16BE'), markBytes: 2 };
  if (a === 0x3c && b === 0 && c !== 0 && d === 0) return { encoding: utf16('UTF-16LE'), markBytes: 0 };
  if (a === 0 && b === 0x3c && c === 0 && d > 0) return { encoding: utf16('UTF-16BE'), markBytes: 0 };
  return declared(bytes);
}

function declared(bytes: Uint8Array): Recognised {
  const head = String.fromCharCode(...bytes.subarray(0, HEAD));
  const label = /^\s*<\?xml\s[^>]*?\bencoding\s*=\s*["']([^"'<>]*)["']/.exec(head)?.[1]?.trim() ?? 'UTF-8';
  const lower = label.toLowerCase();
  if (lower === 'utf-8' || lower === 'utf8') return { encoding: utf8(), markBytes: 0 };
  if (lower.startsWith('utf-16'))
    return { code: 'gpx-encoding', params: { problem: 'notUtf16', encoding: excerpt(label) } };
  if (lower === 'us-ascii' || lower === 'ascii')
    return { encoding: { ...utf8(), name: 'US-ASCII', whole: length, valid: asciiValid }, markBytes: 0 };
  const single = /^(iso-8859-\d{1,2}|windows-125\d|latin1)$/.test(lower) ? decoderFor(lower) : null;
  if (single === null) return unsupported(label);
  return { encoding: { name: label, decoder: single, whole: length, valid: singleValid(single) }, markBytes: 0 };
}

const unsupported = (label: string): DecodeProblem => ({
  code: 'gpx-encoding',
  params: { problem: 'unsupported', encoding: excerpt(label) },
});

/** 0x80 to 0x9F of windows-1252 (WHATWG index-windows-1252): some versions of Node.js decode them as ISO-8859-1. */
const C1 = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008DŽ\u008F\u0090‘’“”•–—˜™š›œ\u009DžŸ';

function decoderFor(label: string): Encoding['decoder'] | null {
  try {
    const decoder = new TextDecoder(label, { fatal: true, ignoreBOM: true });
    if (!/^(iso-8859-1|windows-1252|latin1)$/.test(label)) return decoder;
    return {
      decode: (bytes) =>
        decoder.decode(bytes).replaceAll(/[\u0080-\u009F]/g, (mark) => C1.charAt(mark.charCodeAt(0) - 0x80)),
    };
  } catch {
    return null;
  }
}

function invalid(name: string, body: Uint8Array, at: number): DecodeProblem {
  if (body.includes(0) && !name.startsWith('UTF-16')) return { code: 'gpx-binary', params: { kind: 'binary' } };
  const byte = `0x${body[at]!.toString(16).toUpperCase().padStart(2, '0')}`;
  return { code: 'gpx-encoding', params: { problem: 'invalid', encoding: name, byte } };
}

const length = (bytes: Uint8Array): number => bytes.length;

const utf8 = (): Encoding => ({
  name: 'UTF-8',
  decoder: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }),
  whole: utf8Whole,
  valid: utf8Valid,
});

function utf8Tail(lead: number): number {
  if (lead >= 0xc2 && lead <= 0xdf) return 1;
  if (lead >= 0xe0 && lead <= 0xef) return 2;
  return lead >= 0xf0 && lead <= 0xf4 ? 3 : 0;
}

function utf8Whole(bytes: Uint8Array): number {
  for (let back = 1; back <= Math.min(3, bytes.length); back++) {
    const byte = bytes[bytes.length - back]!;
    if (byte < 0x80) break;
    if (byte >= 0xc0) return utf8Tail(byte) >= back ? bytes.length - back : bytes.length;
  }
  return bytes.length;
}

/** How many bytes from the beginning are well-formed UTF-8. */
export function utf8Valid(bytes: Uint8Array): number {
  let i = 0;
  while (i < bytes.length) {
    const lead = bytes[i]!;
    const tail = lead < 0x80 ? 0 : utf8Tail(lead);
    if (lead >= 0x80 && tail === 0) return i;
    for (let k = 1; k <= tail; k++) {
      const low = k > 1 ? 0x80 : lead === 0xe0 ? 0xa0 : lead === 0xf0 ? 0x90 : 0x80;
      const high = k > 1 ? 0xbf : lead === 0xed ? 0x9f : lead === 0xf4 ? 0x8f : 0xbf;
      const byte = bytes[i + k] ?? 0;
      if (byte < low || byte > high) return i;
    }
    i += tail + 1;
  }
  return i;
}

function utf16(name: 'UTF-16LE' | 'UTF-16BE'): Encoding {
  const high = name === 'UTF-16LE' ? 1 : 0;
  const surrogate = (bytes: Uint8Array, at: number): 'lead' | 'tail' | null => {
    const top = bytes[at + high]! & 0xfc;
    return top === 0xd8 ? 'lead' : top === 0xdc ? 'tail' : null;
  };
  const whole = (bytes: Uint8Array): number => {
    const even = bytes.length - (bytes.length % 2);
    return even >= 2 && surrogate(bytes, even - 2) === 'lead' ? even - 2 : even;
  };
  const valid = (bytes: Uint8Array): number => {
    let i = 0;
    while (i + 1 < bytes.length) {
      const kind = surrogate(bytes, i);
      if (kind === 'tail' || (kind === 'lead' && (i + 3 >= bytes.length || surrogate(bytes, i + 2) !== 'tail')))
        return i;
      i += kind === null ? 2 : 4;
    }
    return i;
  };
  return { name, decoder: new TextDecoder(name.toLowerCase(), { fatal: true, ignoreBOM: true }), whole, valid };
}

function asciiValid(bytes: Uint8Array): number {
  const at = bytes.findIndex((byte) => byte >= 0x80);
  return at === -1 ? bytes.length : at;
}

/** Some ISO-8859 sets leave bytes unassigned; one byte at a time shows which. */
function singleValid(decoder: Encoding['decoder']): (bytes: Uint8Array) => number {
  return (bytes) => {
    const at = bytes.findIndex((_, i) => {
      try {
        decoder.decode(bytes.subarray(i, i + 1));
        return false;
      } catch {
        return true;
      }
    });
    return at === -1 ? bytes.length : at;
  };
}
