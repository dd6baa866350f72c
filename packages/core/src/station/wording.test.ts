import { describe, expect, it } from 'vitest';
import * as fc from 'fast-check';
import type { Served } from '../plan/plan.ts';
import { boxCount, itemWord, signWording } from './wording.ts';
import { tries } from '../testing/tries.ts';

describe('the text on the advance sign', () => {
  it('names what runners meet: water where there is water, gel where there is gel', () => {
    const cases: [Served[], string][] = [
      [['sportsDrink', 'water'], 'Water ahead'],
      [['water'], 'Water ahead'],
      [['gel', 'sportsDrink', 'water'], 'Water and gel ahead'],
      [['water', 'gel'], 'Water and gel ahead'],
      [['sportsDrink'], 'Sports drink ahead'],
      [['gel', 'sportsDrink'], 'Sports drink and gel ahead'],
      [['gel'], 'Gel ahead'],
    ];
    for (const [serves, text] of cases) expect(signWording(serves, 'en')).toBe(text);
  });

  it('speaks the language of the plan, and English where Halfcup does not speak it', () => {
    expect(signWording(['gel', 'water'], 'es')).toBe('Agua y gel más adelante');
    expect(signWording(['sportsDrink'], 'es-MX')).toBe('Isotónica más adelante');
    expect(signWording(['water'], 'tlh')).toBe('Water ahead');
  });
});

describe('the number of trash boxes', () => {
  it('is four over 50 yards at 20 m, ends included', () => {
    expect(boxCount(45.72, 20)).toBe(4);
  });

  it('counts a whole multiple exactly, also where rounding has touched it', () => {
    for (const length of [60, 60 + 1e-10, 60 - 1e-10, 3 * (0.1 + 0.2) * (200 / 3)])
      expect(boxCount(length, 20)).toBe(4);
  });

  it('is never less than the two ends', () => {
    expect([boxCount(5, 20), boxCount(0, 20)]).toEqual([2, 2]);
  });

  it('is the least number that leaves no two farther apart than asked', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 500, noNaN: true }),
        fc.double({ min: 1, max: 100, noNaN: true }),
        (length, every) => {
          const count = boxCount(length, every);
          expect(length / (count - 1)).toBeLessThanOrEqual(every * (1 + 1e-8));
          if (count > 2) expect(length / (count - 2)).toBeGreaterThan(every);
        },
      ),
      { seed: 6, numRuns: tries(1000) },
    );
  });
});

it('every kind of item has its word', () => {
  expect((['sign', 'gel', 'sportsDrink', 'water', 'handOut', 'trash'] as const).map(itemWord)).toEqual([
    'Sign',
    'Gel',
    'Sports drink',
    'Water',
    'Hand-out line',
    'Trash',
  ]);
});
