import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createByteDecoder } from './decode.ts';

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const latin1 = (text: string): Uint8Array => Uint8Array.from(Buffer.from(text, 'latin1'));
const utf16 = (text: string, big: boolean, mark: boolean): Uint8Array => {
  const bytes = Buffer.from((mark ? '\u{FEFF}' : '') + text, 'utf16le');
  return Uint8Array.from(big ? bytes.swap16() : bytes);
};

function decodeIn(bytes: Uint8Array, step: number): { readonly text: string; readonly code: string | undefined; readonly message: string | undefined } {
  const decoder = createByteDecoder();
  let text = '';
  for (let at = 0; at < bytes.length; at += step) text += decoder.decode(bytes.subarray(at, at + step), false);
  text += decoder.decode(new Uint8Array(0), true);
  return { text, code: decoder.problem()?.code, message: decoder.problem()?.message };
}

const SAMPLE = '<?xml version="1.0"?><gpx><name>Île Ōkü 🏃 日本</name></gpx>';

describe('The encoding is found by the first bytes (XML 1.0 appendix F):', () => {
  test.each([
    ['UTF-8', utf8(SAMPLE)],
    ['UTF-8 with a byte order mark', utf8(`\u{FEFF}${SAMPLE}`)],
    ['UTF-16 LE with a mark', utf16(SAMPLE, false, true)],
    ['UTF-16 BE with a mark', utf16(SAMPLE, true, true)],
    ['UTF-16 LE without one', utf16(SAMPLE, false, false)],
    ['UTF-16 BE without one', utf16(SAMPLE, true, false)],
  ])('%s, whole or byte by byte.', (_, bytes) => {
    for (const step of [bytes.length, 1, 7]) expect(decodeIn(bytes, step)).toEqual({ text: SAMPLE, code: undefined, message: undefined });
  });

  // WHATWG Encoding Standard, index windows-1252: 0x80 is the euro sign, also under the label iso-8859-1.
  test.each(['ISO-8859-1', 'windows-1252', 'iso-8859-1'])('%s by the declaration.', (label) => {
    const text = `<?xml version='1.0' encoding='${label}'?><gpx>Caf\u{E9} \u{80}</gpx>`;
    expect(decodeIn(latin1(text), 5).text).toBe(text.replace('\u{80}', '€'));
  });

  test('US-ASCII by the declaration.', () => {
    const text = '<?xml version="1.0" encoding="US-ASCII"?><gpx/>';
    expect(decodeIn(utf8(text), 9).text).toBe(text);
  });
});

describe('What cannot be decoded gives the text before it and a reason:', () => {
  test.each([
    ['an invalid UTF-8 byte', latin1('<gpx>ab\u{E9}cd'), '<gpx>ab', 'gpx-encoding', '0xE9'],
    ['an overlong form', Uint8Array.of(0x3c, 0x61, 0xc0, 0xaf), '<a', 'gpx-encoding', '0xC0'],
    ['a surrogate in UTF-8', Uint8Array.of(0x3c, 0x61, 0xed, 0xa0, 0x80), '<a', 'gpx-encoding', '0xED'],
    ['a character cut off at the end', utf8('<a>é').subarray(0, 4), '<a>', 'gpx-encoding', '0xC3'],
    ['a high byte in US-ASCII', latin1('<?xml version="1.0" encoding="us-ascii"?>\u{E9}'), '<?xml version="1.0" encoding="us-ascii"?>', 'gpx-encoding', 'US-ASCII'],
    ['an odd byte at the end of UTF-16', utf16('<a>', false, true).slice(0, 7), '<a', 'gpx-encoding', 'UTF-16LE'],
    ['a lone surrogate in UTF-16', utf16('<a\u{DC00}b', true, true), '<a', 'gpx-encoding', 'UTF-16BE'],
    ['an encoding not supported', utf8('<?xml version="1.0" encoding="EBCDIC-CP-US"?><gpx/>'), '', 'gpx-encoding', 'EBCDIC-CP-US'],
    ['UTF-32', Uint8Array.of(0xff, 0xfe, 0, 0, 0x3c, 0, 0, 0), '', 'gpx-encoding', 'UTF-32'],
    ['a declaration of UTF-16 in single bytes', utf8('<?xml version="1.0" encoding="utf-16"?><gpx/>'), '', 'gpx-encoding', 'not in UTF-16'],
    ['gzip', Uint8Array.of(0x1f, 0x8b, 8, 0, 0), '', 'gpx-binary', 'compressed'],
    ['ZIP', Uint8Array.of(0x50, 0x4b, 3, 4, 0), '', 'gpx-binary', 'compressed'],
    ['binary data', Uint8Array.of(0x0e, 0x10, 0, 0xff, 0xfe), '\u{E}\u{10}\0', 'gpx-binary', 'binary'],
  ])('%s.', (_, bytes, text, code, word) => {
    for (const step of [bytes.length, 1]) {
      const decoded = decodeIn(bytes, step);
      expect(decoded).toMatchObject({ text, code });
      expect(decoded.message).toContain(word);
    }
  });
});

// The oracle is the platform's own decoder (WHATWG Encoding Standard), which refuses or accepts the whole.
test('Any bytes are taken as UTF-8 exactly when the platform takes them, however they are cut.', () => {
  const unit = fc.oneof(fc.constantFrom(0x41, 0x3e, 0x80, 0xbf, 0xc2, 0xc3, 0xe0, 0xed, 0xef, 0xf0, 0xf4, 0xa0, 0x9f, 0x90, 0x8f), fc.integer({ min: 1, max: 255 }));
  fc.assert(
    fc.property(fc.array(unit, { maxLength: 12 }), fc.integer({ min: 1, max: 5 }), (tail, step) => {
      const bytes = Uint8Array.from([...utf8('<a>'), ...tail]);
      let expected: string | null = null;
      try {
        expected = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
      } catch {}
      const decoded = decodeIn(bytes, step);
      expect(decoded.code).toBe(expected === null ? 'gpx-encoding' : undefined);
      if (expected !== null) expect(decoded.text).toBe(expected);
    }),
    { seed: 11, numRuns: 3000 },
  );
});
