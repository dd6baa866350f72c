import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { fnv128, foldedLine, instantValue, textValue, uidOf } from './iCalendarText.ts';
import { tries } from '../testing/tries.ts';

// RFC 5545, 3.3.11: its own example of a text.
it('escapes texts as the standard does', () => {
  expect(textValue('Project XYZ Final Review\nConference Room - 3B\r\nCome Prepared.')).toBe(
    'Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.',
  );
  expect(textValue('a\\b;c,d:e"f\rg')).toBe('a\\\\b\\;c\\,d:e"f\\ng');
  expect(textValue('a\u0000b\u0007\uD800c\td')).toBe('a\uFFFDb\uFFFD\uFFFDc\td');
});

it('writes instants as UTC', () => {
  expect(instantValue(Date.UTC(2027, 8, 12, 9, 5, 7, 999))).toBe('20270912T090507Z');
});

// RFC 5545, 3.1: lines of 75 octets at most, without the line break.
it('folds at 75 octets, between letters, and unfolds to the same line', () => {
  const bytes = new TextEncoder();
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 300 }).map(textValue), (text) => {
      const folded = foldedLine(`SUMMARY:${text}`);
      expect(folded.endsWith('\r\n')).toBe(true);
      const lines = folded.slice(0, -2).split('\r\n');
      for (const line of lines) expect(bytes.encode(line).length).toBeLessThanOrEqual(75);
      for (const line of lines.slice(0, -1)) expect(bytes.encode(line).length).toBeGreaterThan(71);
      expect(folded.replaceAll('\r\n ', '')).toBe(`SUMMARY:${text}\r\n`);
    }),
    { seed: 20260714, numRuns: tries(300) },
  );
});

// Test vectors of FNV-1a, 128 bits: the offset basis is the hash of nothing, and that of "a" (IETF draft-eastlake-fnv; from memory).
it('hashes as FNV-1a does', () => {
  expect(fnv128('').toString(16)).toBe('6c62272e07bb014262b821756295c58d');
  expect(fnv128('a').toString(16)).toBe('d228cb696f1a8caf78912b704e4a8964');
});

it('makes UUIDs of version 8 (RFC 9562, 5.8), the same for the same texts and others for others', () => {
  const plans = ['Island', 'Island 2', 'محطة', '🚰', '\uD800'];
  const uids = plans.flatMap((plan) => Array.from({ length: 200 }, (_, k) => uidOf(plan, '2027-09-12', `s${k}`)));
  for (const uid of uids) expect(uid).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/u);
  expect(new Set(uids).size).toBe(uids.length);
  expect(uidOf('a', 'bc')).not.toBe(uidOf('ab', 'c'));
  expect(uidOf('Island', '2027-09-12', 's7')).toBe(uids[7]);
});
