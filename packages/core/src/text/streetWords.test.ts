import { expect, it } from 'vitest';
import { en } from './en.ts';
import { es } from './es.ts';
import { crossingInWords, placeInWords } from './streetWords.ts';

const street = 'Harbour Road';
const places = (after: string | null, before: string | null): (string | null)[] =>
  [en, es].map((text) => placeInWords({ street, after, before }, text.frame.street));

it('says of a place the street and the cross-streets that are known', () => {
  expect(places('Mill Lane', 'Quay Street')).toEqual([
    'Harbour Road, between Mill Lane and Quay Street',
    'Harbour Road, entre Mill Lane y Quay Street',
  ]);
  expect(places('Mill Lane', null)).toEqual(['Harbour Road, past Mill Lane', 'Harbour Road, después de Mill Lane']);
  expect(places(null, 'Quay Street')).toEqual([
    'Harbour Road, before Quay Street',
    'Harbour Road, antes de Quay Street',
  ]);
  expect(places(null, null)).toEqual([street, street]);
});

it('does not say “between” of one street that comes before and after, such as a crescent', () =>
  expect(places('Gull Crescent', 'Gull Crescent')).toEqual([
    'Harbour Road, by Gull Crescent',
    'Harbour Road, junto a Gull Crescent',
  ]));

it('says nothing where the street is not known, whatever crosses it', () =>
  expect(placeInWords({ street: null, after: 'Mill Lane', before: 'Quay Street' }, en.frame.street)).toBeNull());

it('calls what meets a course by its names, else by what it is', () => {
  const crossing = (names: readonly string[], vehicles: boolean, access: boolean): string =>
    crossingInWords({ names, vehicles, access }, en.frame.street);
  expect(crossing(['Mill Lane', 'Quay Street'], true, false)).toBe('Mill Lane, Quay Street');
  expect(crossing(['Mill Lane'], true, true)).toBe('Mill Lane');
  expect(crossing([], true, true)).toBe('driveway');
  expect(crossing([], true, false)).toBe('side street');
  expect(crossing([], false, false)).toBe('path');
});
