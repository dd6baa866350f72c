import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type LengthStyle,
  formatClock,
  formatDuration,
  formatLength,
  formatMass,
  formatMeasure,
  formatMinute,
  formatVolume,
} from './format.ts';
import { type Parsed, type UnitSystem, metres, parseClock, parseDuration, parseLength } from './units.ts';
import { real } from './testing/numbers.ts';
import { tries } from './testing/tries.ts';

const seed = { seed: 20_270_912, numRuns: tries(300) };
const valueOf = (parsed: Parsed): number => {
  if (!parsed.ok) throw new Error(parsed.message);
  return parsed.value;
};

describe('printing for people', () => {
  test('lengths take the unit of their use', () => {
    expect(formatLength(91.44, 'imperial', 'wheel')).toBe('100 yd');
    expect(formatLength(91.44, 'metric', 'wheel')).toBe('91.4 m');
    expect(formatLength(88.2, 'metric', 'wheel', 0)).toBe('88 m');
    expect(formatLength(7.62, 'imperial', 'table')).toBe('25 ft');
    expect(formatLength(1.8288, 'metric', 'table')).toBe('1.83 m');
    expect(formatLength(5000, 'metric', 'long')).toBe('5.00 km');
    expect(formatMeasure(5012.3, 'metric')).toBe('5.012 km');
    expect(formatMeasure(5012.3, 'imperial')).toBe('3.114 mi');
    expect(formatVolume(3.785411784, 'imperial')).toBe('1.0 gal');
    expect(formatMass(3.9, 'imperial')).toBe('8.6 lb');
  });

  test('nothing prints as minus nought or as not a number', () => {
    expect([
      formatLength(-0.001, 'metric', 'wheel'),
      formatMeasure(-0.2, 'metric'),
      formatClock(-0.2),
      formatDuration(-0.4),
    ]).toEqual(['0 m', '0.000 km', '00:00:00', '0 s']);
    const notFinite = [Number.NaN, Number.POSITIVE_INFINITY];
    expect(
      notFinite.flatMap((x) => [
        formatLength(x, 'metric', 'long'),
        formatClock(x),
        formatMinute(x),
        formatDuration(x),
        formatVolume(x, 'metric'),
      ]),
    ).toEqual(Array.from({ length: 10 }, () => '–'));
  });

  test('clocks go past midnight and before it', () => {
    expect([
      formatClock(29_999.6),
      formatClock(94_500),
      formatClock(-1800),
      formatMinute(33_179.9),
      formatMinute(-1),
    ]).toEqual(['08:20:00', '26:15:00', '-00:30:00', '09:12', '-00:01']);
  });
});

describe('properties', () => {
  const system = fc.constantFrom<UnitSystem>('metric', 'imperial');
  const style = fc.constantFrom<LengthStyle>('long', 'wheel', 'table');

  test('a printed length reads back within half of its last digit', () => {
    fc.assert(
      fc.property(real(0, 200_000), system, style, fc.integer({ min: 0, max: 6 }), (length, units, use, decimals) => {
        const text = formatLength(length, units, use, decimals);
        const unit = text.split(' ')[1] as 'km' | 'mi' | 'm' | 'yd' | 'ft';
        expect(Math.abs(valueOf(parseLength(text)) - length)).toBeLessThanOrEqual(
          metres(0.5 * 10 ** -decimals, unit) * (1 + 1e-9) + 1e-9,
        );
      }),
      seed,
    );
  });

  test('a printed duration or clock time reads back exactly to the second', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 999 * 3600 }), (seconds) => {
        expect(valueOf(parseDuration(formatDuration(seconds)))).toBe(seconds);
        expect(valueOf(parseClock(formatClock(seconds)))).toBe(seconds);
      }),
      seed,
    );
  });
});
