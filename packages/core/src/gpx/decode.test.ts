import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type DecodeProblem, createByteDecoder } from './decode.ts';
import { createTrouble } from './trouble.ts';
import { tries } from '../testing/tries.ts';

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const latin1 = (text: string): Uint8Array => Uint8Array.from(Buffer.from(text, 'latin1'));
const utf16 = (text: string, big: boolean, mark: boolean): Uint8Array => {
  const bytes = Buffer.from((mark ? '\u{FEFF}' : '') + text, 'utf16le');
  return Uint8Array.from(big ? bytes.swap16() : bytes);
};

/** The sentence that people read. */
function sentenceOf(problem: DecodeProblem): string | undefined {
  const trouble = createTrouble('a.gpx');
  trouble.refuse(problem, { line: 1, column: 1 });
  return trouble.findings()[0]?.message;
}

function decodeIn(
  bytes: Uint8Array,
  step: number,
): { readonly text: string; readonly code: string | undefined; readonly message: string | undefined } {
  const decoder = createByteDecoder();
  let text = '';
  for (let at = 0; at < bytes.length; at += step) text += decoder.decode(bytes.subarray(at, at + step), false);
  text += decoder.decode(new Uint8Array(0), true);
  const problem = decoder.problem();
  return { text, code: problem?.code, message: problem === null ? undefined : sentenceOf(problem) };
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
    for (const step of [bytes.length, 1, 7])
      expect(decodeIn(bytes, step)).toEqual({ text: SAMPLE, code: undefined, message: undefined });
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
    [
      'a high byte in US-ASCII',
      latin1('<?xml version="1.0" encoding="us-ascii"?>\u{E9}'),
      '<?xml version="1.0" encoding="us-ascii"?>',
      'gpx-encoding',
      'US-ASCII',
    ],
    ['an odd byte at the end of UTF-16', utf16('<a>', false, true).slice(0, 7), '<a', 'gpx-encoding', 'UTF-16LE'],
    ['a lone surrogate in UTF-16', utf16('<a\u{DC00}b', true, true), '<a', 'gpx-encoding', 'UTF-16BE'],
    [
      'an encoding not supported',
      utf8('<?xml version="1.0" encoding="EBCDIC-CP-US"?><gpx/>'),
      '',
      'gpx-encoding',
      'EBCDIC-CP-US',
    ],
    ['UTF-32', Uint8Array.of(0xff, 0xfe, 0, 0, 0x3c, 0, 0, 0), '', 'gpx-encoding', 'UTF-32'],
    [
      'a declaration of UTF-16 in single bytes',
      utf8('<?xml version="1.0" encoding="utf-16"?><gpx/>'),
      '',
      'gpx-encoding',
      'not in UTF-16',
    ],
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
  const unit = fc.oneof(
    fc.constantFrom(0x41, 0x3e, 0x80, 0xbf, 0xc2, 0xc3, 0xe0, 0xed, 0xef, 0xf0, 0xf4, 0xa0, 0x9f, 0x90, 0x8f),
    fc.integer({ min: 1, max: 255 }),
  );
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
    { seed: 11, numRuns: tries(3000) },
  );
});

/** Longer than what is held back until the encoding is known, with characters of one to four bytes. */
const LONG = `<?xml version="1.0"?><gpx>${'<name>Île Ōkü 🏃 日本</name>'.repeat(60)}${'日本語🏃'.repeat(60)}</gpx>`;

describe('A file that comes in pieces', () => {
  test.each([
    ['UTF-8', utf8(LONG)],
    ['UTF-16 LE', utf16(LONG, false, true)],
    ['UTF-16 BE', utf16(LONG, true, true)],
  ])('in %s has no character cut in two, wherever the pieces end.', (_, bytes) => {
    for (const step of [1, 3, 7, 64, 1031])
      expect(decodeIn(bytes, step)).toEqual({ text: LONG, code: undefined, message: undefined });
  });

  test('is given out up to the last tag, so that the parser sees whole tags; what follows comes with the next piece.', () => {
    const decoder = createByteDecoder();
    const first = `<gpx>${'<wpt/>'.repeat(200)}`;
    expect(decoder.decode(utf8(`${first}<na`), false)).toBe(first);
    expect(decoder.decode(utf8('me>'), false)).toBe('<name>');
    expect(decoder.decode(utf8('Kelp '), false)).toBe('Kelp ');
    expect(decoder.decode(utf8('Bay'), true)).toBe('Bay');
  });

  test('gives no more text after what cannot be decoded, and keeps its reason.', () => {
    const decoder = createByteDecoder();
    const good = `<gpx>${'<wpt/>'.repeat(200)}`;
    expect(decoder.decode(Uint8Array.from([...utf8(good), 0xff, 0x3e]), false)).toBe(good);
    const problem = decoder.problem();
    expect(problem).toMatchObject({ code: 'gpx-encoding', params: { byte: '0xFF' } });
    expect(decoder.decode(utf8('<wpt/>'), true)).toBe('');
    expect(decoder.problem()).toBe(problem);
  });

  test.each([
    ['a byte that continues nothing', [0x80, 0x80, 0x80, 0x80], '0x80'],
    ['a lead byte that nothing follows', [0xf0, 0x41], '0xF0'],
    ['a lead byte that is none', [0xf5], '0xF5'],
  ])('has %s told also after the first kilobyte.', (_, tail, word) => {
    const good = `<gpx>${'x'.repeat(1100)}`;
    for (const step of [1, 5, 4096]) {
      const decoded = decodeIn(Uint8Array.from([...utf8(good), ...tail]), step);
      expect(decoded).toMatchObject({ text: good, code: 'gpx-encoding' });
      expect(decoded.message).toContain(word);
    }
  });
});

// The oracle is the platform's own decoder (WHATWG Encoding Standard), which refuses or accepts the whole.
test('Any units are taken as UTF-16 exactly when the platform takes them, however they are cut.', () => {
  const unit = fc.oneof(
    fc.constantFrom(0x41, 0x3e, 0xd7ff, 0xd800, 0xdbff, 0xdc00, 0xdfff, 0xe000),
    fc.integer({ min: 1, max: 0xffff }),
  );
  fc.assert(
    fc.property(
      fc.array(unit, { maxLength: 8 }),
      fc.integer({ min: 1, max: 5 }),
      fc.boolean(),
      fc.boolean(),
      fc.boolean(),
      (tail, step, big, odd, long) => {
        const units = [0xfeff, 0x3c, 0x61, 0x3e, ...Array.from({ length: long ? 520 : 0 }, () => 0x62), ...tail];
        const whole = units.flatMap((one) => (big ? [one >> 8, one & 0xff] : [one & 0xff, one >> 8]));
        const bytes = Uint8Array.from(odd ? whole.slice(0, -1) : whole);
        let expected: string | null = null;
        try {
          expected = new TextDecoder(big ? 'utf-16be' : 'utf-16le', { fatal: true }).decode(bytes);
        } catch {}
        const decoded = decodeIn(bytes, step);
        expect(decoded.code).toBe(expected === null ? 'gpx-encoding' : undefined);
        if (expected !== null) expect(decoded.text).toBe(expected);
      },
    ),
    { seed: 12, numRuns: tries(1000) },
  );
});

describe('Encodings of one byte a character', () => {
  const declared = (label: string, bytes: readonly number[]): Uint8Array =>
    Uint8Array.from([...utf8(`<?xml version="1.0" encoding="${label}"?><gpx>`), ...bytes]);
  const head = (label: string): string => `<?xml version="1.0" encoding="${label}"?><gpx>`;

  test('are read by their own tables: ISO-8859-5 and windows-1251 have Cyrillic (ISO/IEC 8859-5; WHATWG index-windows-1251).', () => {
    expect(decodeIn(declared('ISO-8859-5', [0xbc, 0xde, 0xe0, 0xd5]), 3).text).toBe(`${head('ISO-8859-5')}Море`);
    expect(decodeIn(declared('windows-1251', [0xcc, 0xee, 0xf0, 0xe5]), 3).text).toBe(`${head('windows-1251')}Море`);
  });

  test('refuse a byte that their table leaves free: 0xA5 in ISO-8859-3.', () => {
    const decoded = decodeIn(declared('ISO-8859-3', [0xa1, 0xa5, 0x41]), 200);
    expect(decoded).toMatchObject({ text: `${head('ISO-8859-3')}Ħ`, code: 'gpx-encoding' });
    expect(decoded.message).toContain('0xA5');
  });

  test('that the platform does not know are refused by name: ISO-8859-12 was never made.', () => {
    expect(decodeIn(declared('ISO-8859-12', []), 200)).toMatchObject({
      text: '',
      code: 'gpx-encoding',
      message: expect.stringContaining('“ISO-8859-12”') as string,
    });
  });

  test('US-ASCII refuses its first byte over 0x7F wherever it stands.', () => {
    const good = `${head('ascii')}${'x'.repeat(1100)}`;
    expect(decodeIn(Uint8Array.from([...utf8(good), 0xc3, 0xa9]), 100)).toMatchObject({
      text: good,
      code: 'gpx-encoding',
      message: expect.stringContaining('0xC3') as string,
    });
  });
});

test('UTF-32 is refused in both orders of bytes, by its mark (XML 1.0 appendix F).', () => {
  for (const bytes of [
    [0xff, 0xfe, 0, 0],
    [0, 0, 0xfe, 0xff],
  ])
    expect(decodeIn(Uint8Array.from([...bytes, 0, 0, 0, 0x3c]), 8)).toMatchObject({
      text: '',
      code: 'gpx-encoding',
      message: expect.stringContaining('UTF-32') as string,
    });
});
