import { describe, expect, it } from 'vitest';
import { analyse } from '../analyse.ts';
import { reanalyse } from '../reanalyse.ts';
import { readPlan } from '../plan/read.ts';
import type { Plan } from '../plan/plan.ts';
import { numberOf } from './layout.ts';

interface Wanted {
  readonly stations: readonly (readonly [id: string, course: string, km: number])[];
  readonly numbers?: Readonly<Record<string, unknown>>;
}

/** Two courses in the invented sea, a long one and one of its own farther north; text of the plan. */
const text = ({ stations, numbers }: Wanted): string =>
  JSON.stringify({
    format: 'halfcup-plan',
    version: 1,
    courses: [
      {
        id: 'long',
        line: [
          [-17.4, -33.2],
          [-17.3, -33.2],
        ],
      },
      {
        id: 'short',
        line: [
          [-17.4, -33.1],
          [-17.35, -33.1],
        ],
      },
    ],
    races: [
      { id: 'l', course: 'long' },
      { id: 's', course: 'short' },
    ],
    stations: stations.map(([id, course, km]) => ({ id, on: { course, measure: `${km} km`, side: 'right' } })),
    ...(numbers === undefined ? {} : { numbers }),
  });

function planOf(wanted: Wanted): Plan {
  const read = readPlan(text(wanted), 'plan.json');
  if (!read.ok) throw new Error(read.findings[0]?.message);
  return read.value.plan;
}

function numbersOf(plan: Plan): Record<string, number> {
  const made = analyse(plan, { gpx: new Map() });
  if (!made.ok) throw new Error(made.findings[0]?.message);
  return Object.fromEntries(made.value.stations.map((station) => [station.id, numberOf(station)]));
}

const MIXED: Wanted['stations'] = [
  ['c', 'long', 6],
  ['n', 'short', 1],
  ['a', 'long', 2],
  ['b', 'long', 4],
];

describe('numbers of stations', () => {
  it('go along the first race, whatever the order in the plan, and then along the next', () => {
    expect(numbersOf(planOf({ stations: MIXED }))).toEqual({ a: 1, b: 2, c: 3, n: 4 });
  });

  it('stay where the plan keeps them, and the others come after along the course', () => {
    expect(numbersOf(planOf({ stations: MIXED, numbers: { c: 1, a: 7 } }))).toEqual({ c: 1, a: 7, b: 8, n: 9 });
  });

  it('are the same after a move as in a plan read anew, and leave stations alone whose number stays', () => {
    const plan = planOf({ stations: MIXED });
    const before = analyse(plan, { gpx: new Map() });
    if (!before.ok) throw new Error('the plan cannot be analysed');
    const moved = planOf({ stations: [['c', 'long', 3], ...MIXED.slice(1)] });
    const after = reanalyse(before.value, moved, { gpx: new Map() });
    if (!after.ok) throw new Error('the moved plan cannot be analysed');
    expect(Object.fromEntries(after.value.stations.map((one) => [one.id, numberOf(one)]))).toEqual(numbersOf(moved));
    expect(after.value.stations[2]).toBe(before.value.stations[2]);
    expect(after.value.stations[3]).not.toBe(before.value.stations[3]);
  });

  it('are refused where two stations keep one, where there is no such station, and where they are no whole numbers', () => {
    const codes = (numbers: Wanted['numbers']): readonly (readonly [string, string | undefined])[] => {
      const read = readPlan(text({ stations: MIXED, ...(numbers === undefined ? {} : { numbers }) }), 'plan.json');
      return read.ok ? [] : read.findings.map(({ code, where }) => [code, where.path]);
    };
    expect(codes({ a: 2, b: 2 })).toEqual([['plan-reference', '/numbers/b']]);
    expect(codes({ z: 1 })).toEqual([['plan-reference', '/numbers/z']]);
    expect(codes({ a: 1.5 })).toEqual([['plan-value', '/numbers/a']]);
    expect(codes({ a: 0 })).toEqual([['plan-value', '/numbers/a']]);
  });
});
