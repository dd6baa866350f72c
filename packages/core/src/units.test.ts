import * as fc from 'fast-check';
import { describeValue } from './wants.ts';
import { describe, expect, test } from 'vitest';
import {
  lengthIn,
  litres,
  massIn,
  metres,
  parseClock,
  parseDuration,
  parseLength,
  parseMass,
  parseVolume,
  volumeIn,
  type Parsed,
} from './units.ts';
import { tries } from './testing/tries.ts';

const seed = { seed: 20_270_912, numRuns: tries(300) };
const valueOf = (parsed: Parsed): number => {
  if (!parsed.ok) throw new Error(parsed.message);
  return parsed.value;
};
const messageOf = (parsed: Parsed): string => {
  if (parsed.ok) throw new Error(`accepted as ${parsed.value}`);
  return parsed.message;
};

describe('reading lengths', () => {
  // NIST Handbook 44, appendix C: 1 yd = 0.9144 m, 1 ft = 0.3048 m, 1 mi = 1609.344 m, 1 in = 2.54 cm, all exact.
  test.each([
    ['1 yd', 0.9144],
    ['1 ft', 0.3048],
    ['1 mi', 1609.344],
    ['1 in', 0.0254],
    ['100 yd', 91.44],
    ['25ft', 7.62],
    ['6 ft', 1.8288],
    ['10 ft', 3.048],
    ['5 km', 5000],
    ['3.1 mi', 4988.9664],
    ['80 m', 80],
    ['6 in', 0.1524],
    ['9 cm', 0.09],
    ['42.195 km', 42_195],
    ['21.0975 km', 21_097.5],
    ['.5 km', 500],
    ['  5\u00A0km ', 5000],
    ['1760 yd', 1609.344],
  ])('%s is exactly %d m', (text, expected) => {
    expect(valueOf(parseLength(text))).toBe(expected);
  });

  test('a number is metres, and minus nought is nought', () => {
    expect(valueOf(parseLength(12.5))).toBe(12.5);
    expect(Object.is(valueOf(parseLength(-0)), 0)).toBe(true);
  });

  test.each([
    ['', 'An empty text'],
    ['   ', '“   ”'],
    ['100', 'has no unit'],
    ['5 furlong', 'unit “furlong” is not known'],
    ['100 yards', 'unit “yards”'],
    ['5 KM', 'unit “KM”'],
    ['-5 m', '“-5 m”'],
    ['1,000 m', '“1,000 m”'],
    ['1e3 m', '“1e3 m”'],
    ['NaN m', '“NaN m”'],
    ['5 constructor', 'unit “constructor”'],
    ['5. m', '“5. m”'],
    [`${'9'.repeat(400)} km`, 'too large'],
  ])('refuses the text %j and says what was found and what should be there', (text, found) => {
    const message = messageOf(parseLength(text));
    expect(message).toContain(found);
    expect(message).toContain('m, km, cm, in, ft, yd and mi');
  });

  test.each([[-1], [Number.NaN], [Number.POSITIVE_INFINITY], [null], [true], [[]], [{}], [undefined]])(
    'refuses %s',
    (value) => {
      expect(messageOf(parseLength(value))).not.toMatch(/NaN|Infinity|\[object/u);
    },
  );
});

describe('reading other quantities', () => {
  test('a gallon is 231 cubic inches and 128 fluid ounces (NIST Handbook 44, appendix C)', () => {
    expect(valueOf(parseVolume('1 gal'))).toBe(3.785411784);
    expect(231 * 2.54 ** 3).toBeCloseTo(valueOf(parseVolume('1 gal')) * 1000, 9);
    expect(valueOf(parseVolume('128 fl oz'))).toBe(3.785411784);
    expect(valueOf(parseVolume('1 fl oz'))).toBe(0.0295735295625);
  });

  test('millilitres, litres and bare numbers are litres', () => {
    expect([parseVolume('200 ml'), parseVolume('1.5l'), parseVolume(2), parseVolume('7  fl  oz')].map(valueOf)).toEqual(
      [0.2, 1.5, 2, 0.2070147069375],
    );
  });

  test('a pound is 0.45359237 kg (NIST Handbook 44, appendix C)', () => {
    expect(valueOf(parseMass('1 lb'))).toBe(0.45359237);
    expect(valueOf(parseMass('3.9 kg'))).toBe(3.9);
    expect(messageOf(parseMass('3 stone'))).toContain('kg and lb');
  });

  test('durations are seconds, minutes, hours or hours:minutes:seconds', () => {
    expect(['30 min', '4 h', '4:25:00', '3:59:10.5', '90 s', 45].map((text) => valueOf(parseDuration(text)))).toEqual([
      1800, 14_400, 15_900, 14_350.5, 90, 45,
    ]);
  });

  test.each(['4:25', '4:60:00', '4:00:60', '-1:00:00', '1:2:3', 'half an hour', '30', ''])(
    'refuses %j as a duration',
    (text) => {
      expect(messageOf(parseDuration(text))).toContain('should be a duration');
    },
  );

  test('clock times may pass midnight', () => {
    expect(['08:00', '08:00:30', '8:05', '24:00', '26:15'].map((text) => valueOf(parseClock(text)))).toEqual([
      28_800, 28_830, 29_100, 86_400, 94_500,
    ]);
  });

  test.each([['8'], ['08:60'], ['08:00:60'], ['08.00'], ['-1:00'], [''], ['8 am'], [28_800], [null]])(
    'refuses %j as a clock time',
    (value) => {
      expect(messageOf(parseClock(value))).toContain('such as 08:00');
    },
  );
});

describe('what was found', () => {
  test('is told without dumping it', () => {
    expect([
      describeValue('x'.repeat(99)).length,
      describeValue([1, 2]),
      describeValue({}),
      describeValue(null),
    ]).toEqual([43, 'a list of 2', 'an object', 'null']);
  });
});

describe('properties', () => {
  test('whole counts of a unit survive going to SI and back', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 20_000 }),
        fc.constantFrom('ft' as const, 'yd' as const, 'mi' as const, 'in' as const),
        (count, unit) => {
          expect(lengthIn(metres(count, unit), unit)).toBeCloseTo(count, 9);
          expect(valueOf(parseLength(`${count} ${unit}`))).toBe(metres(count, unit));
          expect(volumeIn(litres(count, 'fl oz'), 'gal')).toBeCloseTo(count / 128, 9);
          expect(massIn(valueOf(parseMass(`${count} lb`)), 'lb')).toBeCloseTo(count, 9);
        },
      ),
      seed,
    );
  });

  test('no text makes it throw, and what it accepts is finite and not negative', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.anything()), (value) => {
        for (const parse of [parseLength, parseDuration, parseVolume, parseMass, parseClock]) {
          const parsed = parse(value);
          expect(
            parsed.ok
              ? Number.isFinite(parsed.value) && parsed.value >= 0
              : /^\P{Ll}.* cannot be used\. It should be /su.test(parsed.message),
          ).toBe(true);
        }
      }),
      seed,
    );
  });
});
