/** Values of courses, races and variants that are refused, each with what was found and what is accepted. */
import { describe, expect, it } from 'vitest';
import { nearest, suggestion } from './nearest.ts';
import { MINIMAL_PLAN as minimal } from '../testing/plans.ts';
import { readPlan } from './read.ts';

const messages = (over: object): (readonly [string | undefined, string])[] => {
  const read = readPlan(JSON.stringify({ ...minimal, ...over }), 'plan.json');
  return read.ok ? [] : read.findings.map(({ where, message }) => [where.path, message]);
};
const withMark = (mark: object): object => ({ courses: [{ id: 'full', gpx: 'full.gpx', marks: [mark] }] });
const withQuantiles = (quantiles: unknown): object => ({ races: [{ id: 'm', course: 'full', finish: { quantiles } }] });

describe('a mark of a plan', () => {
  it.each([
    [{ at: [1, 2], measure: '5 km' }],
    [{ name: '10 km' }],
    [{ name: 'Well', measure: 5000 }],
    [{ at: [1, 2], name: '10 km' }],
    [{ at: [1, 2], measure: 0, name: 'Well' }],
  ])('may be %j', (mark) => {
    expect(messages(withMark(mark))).toEqual([]);
  });

  const place = 'The mark no. 1 has no place. It should have one, or the name of a GPX waypoint that gives a distance.';
  const distance = 'The mark no. 1 has no course distance. It should have one, or a name such as “10 km”.';

  it.each<[mark: object, said: string]>([
    [{}, place],
    [{ measure: 5000 }, place],
    [{ name: 'Well' }, place],
    [{ at: [1, 2] }, distance],
    [{ at: [1, 2], name: 'Well' }, distance],
  ])('is refused as %j, with what is missing', (mark, said) => {
    expect(messages(withMark(mark))).toEqual([['/courses/0/marks/0', said]]);
  });
});

describe('quantiles of finish times', () => {
  it('begin with the fastest and end with the slowest, both rising', () => {
    expect(
      messages(
        withQuantiles([
          [0, '2:00:00'],
          [0.5, '2:00:00'],
          [1, '5:00:00'],
        ]),
      ),
    ).toEqual([]);
    expect(
      messages(
        withQuantiles([
          [0.1, 3600],
          [0.9, 7200],
        ]),
      ),
    ).toEqual([
      ['/races/0/finish/quantiles/0', 'The first share is 0.1. It should be 0, for the fastest finisher.'],
      ['/races/0/finish/quantiles/1', 'The last share is 0.9. It should be 1, for the slowest finisher.'],
    ]);
    expect(
      messages(
        withQuantiles([
          [0, 3600],
          [0.5, 7200],
          [0.5, 7000],
          [1, 8000],
        ]),
      ),
    ).toEqual([
      ['/races/0/finish/quantiles/2', 'The share 0.5 comes after 0.5. Shares should rise from one entry to the next.'],
      [
        '/races/0/finish/quantiles/2',
        'This finish time is shorter than the one before. Times should not fall from one entry to the next.',
      ],
    ]);
  });

  it('are two or more', () => {
    expect(messages(withQuantiles([[0, 3600]]))[0]![1]).toContain('at least 2 entries');
  });
});

describe('bounds', () => {
  it('are said as they are: included or not, of numbers, lists and texts', () => {
    const said = (over: object): string => messages(over)[0]![1];
    expect(said({ races: [{ id: 'm', course: 'full', show: 2 }] })).toBe(
      'The share of entrants who start is 2. It should be from 0 to 1.',
    );
    expect(said({ races: [{ id: 'm', course: 'full', startFlow: 0 }] })).toContain(
      'is 0. It should be from 1 to 1,000,000.',
    );
    expect(said({ courses: [{ id: 'full', line: [[1, 2]] }] })).toBe(
      'The line of the course is a list of 1. It should have at least 2 entries.',
    );
    expect(said({ courses: [] })).toBe('The list of courses is an empty list. It should have at least 1 entry.');
    expect(said({ races: [{ id: 'm', course: 'full', finish: { times: [] } }] })).toContain(
      'It should have at least 1 entry.',
    );
  });
});

describe('a variant', () => {
  const variant = (stations: object): object => ({
    stations: [
      { id: 's1', at: [-150, -48], serves: ['water'] },
      { id: 's2', at: [-150, -48] },
    ],
    variants: [{ name: 'b', stations }],
  });

  it('is checked with its keys laid over its station, and what is wrong with it points at the variant', () => {
    expect(
      messages(
        variant({ s1: { side: 'left', on: { course: 'full', measure: 5, side: 'left' } }, s2: { width: '7 m' } }),
      ),
    ).toEqual([]);
    expect(messages(variant({ s1: { at: [-150, 95] } }))).toEqual([
      ['/variants/0/stations/s1/at', expect.stringContaining('95')],
    ]);
    expect(messages(variant({ s1: { on: { course: 'ful', measure: 5, side: 'left' } } }))[0]).toEqual([
      '/variants/0/stations/s1/on/course',
      expect.stringContaining('Did you mean “full”?'),
    ]);
    expect(messages(variant({ s1: { id: 's3' } }))[0]![1]).toBe(
      'A variant cannot change the id of a station. Delete the id.',
    );
  });

  it('does not hide that the stations themselves are no list', () => {
    expect(messages({ stations: 7, variants: [{ name: 'b', stations: { s1: { side: 'left' } } }] })).toEqual([
      ['/stations', 'The list of stations is 7. It should be a list.'],
      ['/variants/0/stations/s1', expect.stringContaining('“s1”')],
    ]);
    expect(
      messages({ stations: [7], variants: [{ name: 'b' }, 7, { name: 'c', stations: 5 }] }).map(([path]) => path),
    ).toEqual(['/stations/0', '/variants/1', '/variants/2/stations']);
  });
});

it('parts that come together again are no circle; those that come back are, each circle once by its shortest way', () => {
  const parts = (id: string, ...of: readonly string[]): object => ({ id, parts: of.map((one) => ({ of: one })) });
  const full = { id: 'full', gpx: 'full.gpx' };
  expect(
    messages({ courses: [full, parts('a', 'b', 'c'), parts('b', 'd'), parts('c', 'd'), parts('d', 'full')] }),
  ).toEqual([]);
  expect(
    messages({ courses: [full, parts('a', 'b', 'c'), parts('b', 'd'), parts('c', 'd'), parts('d', 'a')] }),
  ).toEqual([
    [
      '/courses/1/parts',
      'Parts of courses go round in a circle: “a” → “b” → “d” → “a”. A part should come from a course that does not lead back here.',
    ],
    ['/courses/3/parts', expect.stringContaining('“c” → “d” → “a” → “c”')],
  ]);
});

it('a vehicle is called by its name, else by its id', () => {
  const read = readPlan(
    JSON.stringify({ ...minimal, vehicles: [{ id: 'v1' }, { id: 'v2', name: 'Van' }] }),
    'plan.json',
  );
  expect(read.ok && read.value.plan.vehicles.map(({ name }) => name)).toEqual(['v1', 'Van']);
});

describe('the nearest word', () => {
  it('is none for a word that is far from all, or far too long', () => {
    expect(nearest('wtaer', ['water', 'gel'])).toBe('water');
    expect(nearest('zebra', ['water', 'gel'])).toBeUndefined();
    expect(nearest('a'.repeat(61), ['a'.repeat(61)])).toBeUndefined();
  });

  it('of two that are as near is the one that begins alike', () => {
    expect(nearest('half', ['calf', 'hale'])).toBe('hale');
  });

  it('gives way to all that there are, at most twelve, or to their being none', () => {
    expect(suggestion('x', [], 'tracks')).toBe('there are no tracks');
    expect(
      suggestion(
        'zebra',
        Array.from({ length: 14 }, (_, k) => `track ${k}`),
        'tracks',
      ),
    ).toMatch(/^tracks: "track 0", .*"track 11" and 2 more$/u);
  });
});
