import { expect, it } from 'vitest';
import { ORIGIN, turtle } from '../testing/courses.ts';
import { eastward } from '../testing/placed.ts';
import { layoutOf } from '../testing/plans.ts';
import { type PlacedName, readName, tokensOf } from './placedNames.ts';

const { stations } = layoutOf(
  [turtle(ORIGIN, [[90, 9000]], 100)],
  [
    { id: 's1', name: 'Água Point', at: eastward(1500) },
    { id: 's2', name: 'Water Street', at: eastward(3500) },
    { id: 's12', name: 'Água Point North', at: eastward(5500) },
  ],
);
const read = (name: string | null): PlacedName => readName(name, stations);
const short = (name: string | null): unknown[] => {
  const { stations: found, kinds, end } = read(name);
  return [
    found.map(({ id }) => id).join(' '),
    typeof kinds === 'string' ? kinds : kinds.join(' '),
    ...(end === null ? [] : [end]),
  ];
};

it('case, punctuation, accents, leading zeros and joined digits do not count', () => {
  expect(tokensOf('S-01: Água_Point')).toEqual(['s', '1', 'agua', 'point']);
  expect(tokensOf(' — ')).toEqual([]);
  for (const name of [
    's1 sign',
    'S1-SIGN',
    's01_Sign',
    'S 1: sign',
    's1sign',
    'Agua point, sign',
    'ÁGUA POINT ahead',
    'station 1 sign',
    'No. 1 sign',
  ]) {
    expect([name, ...short(name)]).toEqual([name, 's1', 'sign']);
  }
});

it('the longest name of a station is meant, and its own words are no items', () => {
  expect(short('Água Point North gel')).toEqual(['s12', 'gel']);
  expect(short('s12 gel')).toEqual(['s12', 'gel']);
  expect(short('Water Street trash')).toEqual(['s2', 'trash']);
  expect(short('Water Street')).toEqual(['s2', 'pin']);
  expect(short('s1 s2 sign')).toEqual(['s1 s2', 'sign']);
});

it('every item has its words; the text on a sign is no table, and boxes are trash', () => {
  expect(short('s1 water and gel ahead')).toEqual(['s1', 'sign']);
  expect(short('s1 sports drink')).toEqual(['s1', 'sportsDrink']);
  expect(short('s1 SportsDrink table')).toEqual(['s1', 'sportsDrink']);
  expect(short('s1 drink')).toEqual(['s1', 'sportsDrink water']);
  expect(short('s1 water table')).toEqual(['s1', 'water']);
  expect(short('s1 table')).toEqual(['s1', 'gel sportsDrink water']);
  expect(short('s1 water box 4')).toEqual(['s1', 'trash']);
  expect(short('s1 trash from')).toEqual(['s1', 'trash', 'from']);
  expect(short('s1 last bin')).toEqual(['s1', 'trash', 'to']);
  expect(short('s1 chalk mark')).toEqual(['s1', 'pin']);
  expect(short('s1')).toEqual(['s1', 'pin']);
});

it('a name that says something else is no item, and no name says nothing', () => {
  expect(short('s1 medical tent')).toEqual(['s1', 'none']);
  expect(short('km 5')).toEqual(['', 'none']);
  expect(short('017')).toEqual(['', 'any']);
  expect(short(null)).toEqual(['', 'any']);
});

it('a number alone may mean a station, and is told apart from one that says so', () => {
  expect(read('sign 2')).toMatchObject({ stations: [], perhaps: { id: 's2' } });
  expect(read('sign 9').perhaps).toBeNull();
  expect(read('2').perhaps).toBeNull();
});

it('a station’s name with nothing but small words is its pin, with words that nobody knows it is any of its things', () => {
  expect(short('the station s1')).toEqual(['s1', 'pin']);
  expect(short('s1 hello')).toEqual(['s1', 'any']);
  expect(short('sign s1')).toEqual(['s1', 'sign']);
  expect(short('station 2 s1 sign')).toEqual(['s1', 'sign']);
  expect(short('water, Água Point North')).toEqual(['s12', 'water']);
  expect(short('hello')).toEqual(['', 'any']);
  expect(short('station')).toEqual(['', 'any']);
  expect(short('s1 drop')).toEqual(['s1', 'none']);
});

it('a drink is for sport where that word stands right before it, and drinks of no kind are both', () => {
  expect(short('s1 sport drinks')).toEqual(['s1', 'sportsDrink']);
  expect(short('s1 drink sports')).toEqual(['s1', 'sportsDrink water']);
  expect(short('drink')).toEqual(['', 'sportsDrink water']);
  expect(short('s1 gel and drink')).toEqual(['s1', 'gel']);
  expect(short('s1 isotonic, water')).toEqual(['s1', 'sportsDrink water']);
  expect(short('s1 sign and trash')).toEqual(['s1', 'sign trash']);
});

it('both ends named are neither, and a number of a station counts from one', () => {
  expect(short('s1 trash from start to end')).toEqual(['s1', 'trash']);
  expect(short('s1 trash begin')).toEqual(['s1', 'trash', 'from']);
  expect(short('stop 3 sign')).toEqual(['s12', 'sign']);
  expect(short('station 9 sign')).toEqual(['', 'sign']);
  expect(short('station 0 sign')).toEqual(['', 'sign']);
  expect(read('sign 1').perhaps).toMatchObject({ id: 's1' });
  expect(read('sign 1 2').perhaps).toBeNull();
  expect(read('km 1').perhaps).toBeNull();
  expect(read('s1 sign 2')).toMatchObject({ stations: [{ id: 's1' }], perhaps: null });
  expect(read('')).toMatchObject({ stations: [], perhaps: null, kinds: 'any', end: null });
});
