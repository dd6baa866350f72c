import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { readPlan } from '../../plan/read.ts';
import { planJsonSchema } from './plan.ts';

const contract = JSON.parse(readFileSync(new URL('../../plan/contract.plan.json', import.meta.url), 'utf8')) as object;
const validate = new Ajv2020({
  strict: true,
  strictTypes: false,
  strictRequired: false,
  strictTuples: false,
  allErrors: true,
}).compile(planJsonSchema());
const station = { id: 's1', at: [-150, -48] };
const minimal = {
  format: 'halfcup-plan',
  version: 1,
  courses: [{ id: 'full', gpx: 'full.gpx' }],
  races: [{ id: 'm', course: 'full' }],
  stations: [station],
};

const withStation = (keys: object): object => ({ ...minimal, stations: [{ ...station, ...keys }] });
const withCourse = (keys: object): object => ({ ...minimal, courses: [{ id: 'full', gpx: 'full.gpx', ...keys }] });
const withRace = (keys: object): object => ({ ...minimal, races: [{ id: 'm', course: 'full', ...keys }] });

describe('the JSON Schema of a plan', () => {
  test("takes the contract's example", () => {
    expect(validate(contract), JSON.stringify(validate.errors)).toBe(true);
  });

  test('says which draft it is, and is a new object each time', () => {
    expect(planJsonSchema()).toMatchObject({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      additionalProperties: false,
      required: ['format', 'version', 'courses', 'races', 'stations'],
    });
    expect(planJsonSchema()).not.toBe(planJsonSchema());
  });

  test.each<[title: string, plan: unknown, good: boolean]>([
    ['the least there can be', minimal, true],
    ['no stations yet', { ...minimal, stations: [] }, true],
    [
      'lengths as numbers and texts',
      { ...minimal, practice: { kerb: 4, setback: '.5 m', tableGap: '10ft', maxSpacing: '3.1 mi' } },
      true,
    ],
    ['fluid ounces', { ...minimal, supplies: { cup: '7 fl oz' } }, true],
    ['a duration in hours', { ...minimal, crew: { longest: '6 h', ready: '0:30:00', setUp: 3600 } }, true],
    [
      'a line',
      withCourse({
        gpx: undefined,
        line: [
          [0, 0],
          [1, 1, 5],
        ],
      }),
      true,
    ],
    ['a track by name', withCourse({ track: 'Full' }), true],
    ['all passes', withStation({ passes: 'all' }), true],
    ['hours past 24', withRace({ cutoff: '26:30' }), true],
    [
      'a variant',
      { ...minimal, variants: [{ name: 'v', stations: { s1: { on: { course: 'full', measure: 5, side: 'left' } } } }] },
      true,
    ],
    ['a folder below', withCourse({ gpx: 'tracks/full..2.gpx' }), true],
    ['not an object', [], false],
    ['another version', { ...minimal, version: 2 }, false],
    ['another format', { ...minimal, format: 'plan' }, false],
    ['no races', { ...minimal, races: undefined }, false],
    ['an empty list of courses', { ...minimal, courses: [] }, false],
    ['an unknown key', { ...minimal, colour: 'red' }, false],
    ['an unknown key of a station', withStation({ colour: 'red' }), false],
    [
      'an unknown key in a variant',
      { ...minimal, variants: [{ name: 'v', stations: { s1: { colour: 'red' } } }] },
      false,
    ],
    ['an id in a variant', { ...minimal, variants: [{ name: 'v', stations: { s1: { id: 's2' } } }] }, false],
    [
      'at and on in a variant',
      {
        ...minimal,
        variants: [{ name: 'v', stations: { s1: { at: [1, 1], on: { course: 'full', measure: 5, side: 'left' } } } }],
      },
      false,
    ],
    ['a unit of another kind', { ...minimal, practice: { kerb: '4 kg' } }, false],
    ['a length without unit', { ...minimal, practice: { kerb: '4' } }, false],
    ['a negative length', { ...minimal, practice: { kerb: -4 } }, false],
    ['nought where it divides', { ...minimal, practice: { boxEvery: 0 } }, false],
    ['a latitude over 90', withStation({ at: [0, 91] }), false],
    ['a longitude over 180', withStation({ at: [181, 0] }), false],
    ['three coordinates of a pin', withStation({ at: [1, 2, 3] }), false],
    ['a coordinate as text', withStation({ at: ['1', 2] }), false],
    ['neither at nor on', { ...minimal, stations: [{ id: 's1' }] }, false],
    ['at and on', withStation({ on: { course: 'full', measure: 5, side: 'left' } }), false],
    [
      'gpx and line',
      withCourse({
        line: [
          [0, 0],
          [1, 1],
        ],
      }),
      false,
    ],
    ['a reserved id', withStation({ id: 'start' }), false],
    ['a blank id', withStation({ id: ' ' }), false],
    ['a way up', withCourse({ gpx: 'a/../../b.gpx' }), false],
    ['an absolute file', withCourse({ gpx: '/b.gpx' }), false],
    ['an address', withCourse({ gpx: 'https://example.org/b.gpx' }), false],
    ['a drive', withCourse({ gpx: 'C:b.gpx' }), false],
    ['a folder for a file', withCourse({ gpx: 'a/' }), false],
    ['a date that is no date', { ...minimal, date: '1 May' }, false],
    ['a clock time as number', withRace({ cutoff: 54_000 }), false],
    ['a clock time in words', withRace({ cutoff: '3 pm' }), false],
    ['two forms of finish times', withRace({ finish: { median: 9000, spread: 0.2, times: [1] } }), false],
    ['half a form of finish times', withRace({ finish: { median: 9000 } }), false],
    ['one kind too many', withStation({ serves: ['beer'] }), false],
    ['a fraction of a table', withStation({ tables: { water: 1.5 } }), false],
    ['a share over 1', withRace({ show: 1.1 }), false],
    [
      'a polygon of two',
      {
        ...minimal,
        zones: [
          {
            rule: 'allowed',
            polygon: [
              [0, 0],
              [1, 1],
            ],
          },
        ],
      },
      false,
    ],
  ])('and the reader agree on %s', (_title, plan, good) => {
    const text = JSON.stringify(plan);
    expect(readPlan(text, 'plan.json').ok).toBe(good);
    expect(validate(JSON.parse(text))).toBe(good);
  });

  test.each<[title: string, plan: object]>([
    ['references', withRace({ course: 'none' })],
    ['ids that are there twice', { ...minimal, stations: [station, station] }],
    ['the calendar', { ...minimal, date: '2027-02-30' }],
    ['time zones', { ...minimal, timeZone: 'Ember/Island' }],
    ['ranges upside down', { ...minimal, practice: { trashFrom: 90, trashTo: 45 } }],
  ])('leaves %s to the reader', (_title, plan) => {
    expect(validate(plan)).toBe(true);
    expect(readPlan(JSON.stringify(plan), 'plan.json').ok).toBe(false);
  });
});
