import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findingLine } from '../finding.ts';
import { tries } from '../testing/tries.ts';
import { textFrom } from './utf8.ts';

const bytesOf = (text: string, encoding: BufferEncoding): Uint8Array => new Uint8Array(Buffer.from(text, encoding));
const lines = (bytes: Uint8Array): string[] => textFrom(bytes, 'plan.json').findings.map(findingLine);

describe('textFrom', () => {
  it('gives the very text of UTF-8, with its byte order mark', () => {
    for (const text of ['', 'Café – 水 🏃', '\uFEFF{"name":"Café"}', 'a\r\nb'])
      expect(textFrom(bytesOf(text, 'utf8'), 'x')).toEqual({ ok: true, value: text, findings: [] });
  });

  it('refuses Latin-1 with the place of its first byte that does not fit', () => {
    expect(lines(bytesOf('{\n  "name": "Café"\n}', 'latin1'))).toEqual([
      'plan.json:2:15: Byte 17 of this file (hex E9) is not valid UTF-8. Save the file again as UTF-8, so that no letter is lost.',
    ]);
  });

  it('counts characters, not bytes, to the column', () => {
    const bytes = new Uint8Array([...bytesOf('é水🏃', 'utf8'), 0xff]);
    expect(textFrom(bytes, 'x').findings[0]?.where).toEqual({ file: 'x', line: 1, column: 4 });
  });

  it.each([
    ['UTF-16, little end first, with its mark', new Uint8Array([0xff, 0xfe, 0x7b, 0]), 'This file is in UTF-16.'],
    ['UTF-16, big end first, with its mark', new Uint8Array([0xfe, 0xff, 0, 0x7b]), 'This file is in UTF-16.'],
    ['UTF-16 without a mark', bytesOf('{"name":1}', 'utf16le'), 'This file is in UTF-16.'],
    ['UTF-32', new Uint8Array([0xff, 0xfe, 0, 0, 0x7b, 0, 0, 0]), 'This file is in UTF-32.'],
    [
      'a picture',
      new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0]),
      'binary data, not text: byte 1 is',
    ],
  ])('names %s', (_, bytes, words) => {
    expect(lines(bytes)).toHaveLength(1);
    expect(lines(bytes)[0]).toContain(words);
  });

  it('agrees with the platform on which bytes are UTF-8', () => {
    const strict = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
    fc.assert(
      fc.property(
        fc.array(
          fc.oneof(fc.constantFrom(0xc3, 0xa9, 0xe6, 0xb0, 0xb4, 0xed, 0xf0, 0x9f), fc.integer({ min: 1, max: 255 })),
          { maxLength: 12 },
        ),
        (list) => {
          const bytes = new Uint8Array(list);
          let expected: string | null = null;
          try {
            expected = strict.decode(bytes);
          } catch {
            // Refused there too.
          }
          const read = textFrom(bytes, 'x');
          if (read.ok) expect(read.value).toBe(expected);
          else if (read.findings[0]!.message.includes('UTF-16')) expect([0xff, 0xfe]).toContain(bytes[0]);
          else expect(expected).toBeNull();
        },
      ),
      { seed: 20, numRuns: tries(1000) },
    );
  });
});
