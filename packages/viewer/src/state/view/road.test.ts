import { reviewPlaced } from '@halfcup/core';
import { pointAt } from '@halfcup/core/geometry';
import { readGpx } from '@halfcup/core/gpx';
import { expect, test } from 'vitest';
import { openDemo } from '../../testing.ts';
import { coursesOf } from './derive.ts';
import { keepRecord, keptRecord, nextPeg, pegsOf, recordGpx, wayTo, wayWords, type Stood } from './road.ts';

const { analysis } = openDemo();
const pegs = pegsOf(analysis);
const stood = (name: string, move = 0): Stood => {
  const peg = pegs.find((one) => one.name === name)!;
  const course = coursesOf(analysis).find(({ id }) => id === peg.course)!;
  const at = move === 0 ? peg.at : pointAt(course, peg.measure + move, peg.offset)!.at;
  return { name, at, accuracy: 2, time: Date.UTC(2027, 8, 12, 5), wheeled: null };
};

test('things are placed in running order, sign before tables before trash', () => {
  const own = pegs.filter((peg) => peg.station.id === 's3').map((peg) => peg.name);
  expect(own).toEqual([
    's3 sign',
    's3 gel table',
    's3 sports drink table',
    's3 water table',
    's3 trash first box',
    's3 trash last box',
  ]);
  expect(pegs.map((peg) => peg.measure)).toEqual(pegs.map((peg) => peg.measure).toSorted((a, b) => a - b));
});

test('the way to a thing is told along the course, with its side', () => {
  const peg = pegs.find((one) => one.name === 's3 gel table')!;
  const course = coursesOf(analysis).find(({ id }) => id === peg.course)!;
  const from = (by: number): string =>
    wayWords(
      wayTo(analysis, peg, { at: pointAt(course, peg.measure - by, peg.offset)!.at, accuracy: 3, time: 0 }),
      peg.side,
      'metric',
    );
  expect(from(31)).toBe('31 m further on, left-hand side');
  const there = pointAt(course, peg.measure - 31, peg.offset)!.at;
  expect(wayTo(analysis, peg, { at: there, accuracy: 3, time: 0 }).straight).toBeCloseTo(31, 0);
  expect(from(-12)).toBe('12 m back, left-hand side');
  expect(from(0)).toBe('Here, left-hand side');
  expect(wayTo(analysis, peg, { at: [0, 0], accuracy: 3, time: 0 })).toMatchObject({ along: null, wheel: null });
});

test('exact places read holds, a sign moved 20 m fails, and hdop is a fifth of the accuracy', () => {
  const names = [
    's3 sign',
    's3 trash first box',
    's3 trash last box',
    's4 sign',
    's4 trash first box',
    's4 trash last box',
  ];
  const verdicts = (record: readonly Stood[]): readonly string[] => {
    const text = recordGpx('Plan', record);
    expect(text).toContain('<hdop>0.4</hdop>');
    const read = readGpx(text, 'placed.gpx');
    if (!read.ok) throw new Error(read.findings[0]?.message);
    return reviewPlaced(analysis, read.value).verdicts.map(
      ({ station, item, verdict }) => `${station} ${item} ${verdict}`,
    );
  };
  const exact = verdicts(names.map((name) => stood(name)));
  for (const name of ['s3 sign holds', 's3 trash holds', 's4 sign holds', 's4 trash holds'])
    expect(exact).toContain(name);
  expect(verdicts([stood('s3 sign', 20)])).toContain('s3 sign fails');
});

test('the next thing is the first that is not recorded, and the record outlives the page', () => {
  const held = new Map<string, string>();
  const storage = (): Storage =>
    ({
      getItem: (key: string) => held.get(key) ?? null,
      setItem: (key: string, value: string) => held.set(key, value),
    }) as unknown as Storage;
  const record = [stood(pegs[0]!.name)];
  expect(nextPeg(pegs, record)?.name).toBe(pegs[1]!.name);
  expect(keepRecord(storage, 'Plan', record)).toBeNull();
  expect(keptRecord(storage, 'Plan')).toEqual(record);
  held.set('halfcup-as-placed:Plan', '{"a":1}');
  expect(keptRecord(storage, 'Plan')).toEqual([]);
});
