/** The ranges of a plan's numbers, as the published schema shows them: none is without, and both ends hold. */
import { describe, expect, it } from 'vitest';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { planJsonSchema } from '../export/schemas/plan.ts';
import { type Leaf, planLeaves, put, randomBelow } from '../testing/planNumbers.ts';
import { MINIMAL_PLAN } from '../testing/plans.ts';
import { readPlan } from './read.ts';

const numbers = planLeaves().filter(({ kind }) => kind !== 'clock');
const validate = new Ajv2020({
  strict: false,
  allErrors: true,
}).compile(planJsonSchema());

/** The least plan with one more value. */
function planWith(leaf: Leaf, value: unknown): string {
  const plan = structuredClone(MINIMAL_PLAN) as unknown as Record<string, unknown>;
  plan['variants'] = [];
  put(plan, leaf, randomBelow(7), value);
  return JSON.stringify(plan, null, 1);
}

const messagesOf = (text: string): readonly string[] => readPlan(text, 'p.json').findings.map(({ message }) => message);
const isRange = (message: string): boolean => /It should be from /u.test(message);

describe('the numbers of a plan', () => {
  it('are many, and each has a range in the published schema', () => {
    expect(numbers.length).toBeGreaterThan(250);
    const open = numbers.filter(
      ({ node }) => !(Number.isFinite(node.minimum) && Number.isFinite(node.maximum) && node.minimum! < node.maximum!),
    );
    expect(open.map(({ name }) => name)).toEqual([]);
  });

  it('can have both ends of their range', () => {
    const refused = numbers.flatMap((leaf) =>
      [leaf.node.minimum!, leaf.node.maximum!].flatMap((value) =>
        messagesOf(planWith(leaf, value))
          .filter(isRange)
          .map((message) => `${leaf.name} = ${value}: ${message}`),
      ),
    );
    expect(refused).toEqual([]);
  });

  it('are refused outside it by reader and schema alike, with line, column, what was found and what is expected', () => {
    let laid = 0;
    for (const leaf of numbers) {
      const { minimum, maximum } = leaf.node;
      const step = leaf.kind === 'whole' ? 1 : Math.max(Math.abs(minimum!), Math.abs(maximum!)) * 1e-9 + 1e-12;
      for (const value of [minimum! - step, maximum! + step, 1e300]) {
        const text = planWith(leaf, value);
        const { ok, findings } = readPlan(text, 'p.json');
        const found = findings.filter(({ message }) =>
          /from -?\d|out of range|or less|0 or more|It should be/u.test(message),
        );
        expect([leaf.name, value, ok]).toEqual([leaf.name, value, false]);
        expect([leaf.name, found.every(({ where }) => where.line !== undefined && where.column !== undefined)]).toEqual(
          [leaf.name, true],
        );
        expect([leaf.name, validate(JSON.parse(text))]).toEqual([leaf.name, false]);
        expect(findings.map(({ message }) => message).join(' ')).not.toMatch(/\de[+-]?\d|Infinity|NaN|undefined/u);
        laid += found.length > 0 ? 1 : 0;
      }
    }
    expect(laid).toBe(numbers.length * 3);
  });
});

describe('a slip', () => {
  const course = (length: unknown): readonly string[] =>
    messagesOf(JSON.stringify({ ...MINIMAL_PLAN, courses: [{ id: 'full', gpx: 'full.gpx', length }] }));

  it.each<[unknown, string]>([
    ['42195 km', 'The course length is “42195 km”. It should be from 1 m to 10,000 km. Did you mean “42195 m”?'],
    ['1000000000 km', 'The course length is “1000000000 km”. It should be from 1 m to 10,000 km.'],
    [
      '0.042195 m',
      'The course length is “0.042195 m”. It should be from 1 m to 10,000 km. Did you mean “0.042195 km”?',
    ],
    [1e22, 'The course length is a number of 23 digits. It should be from 1 m to 10,000 km.'],
    [1e-320, 'The course length is a number very near 0. It should be from 1 m to 10,000 km.'],
  ])('%s gets a helpful sentence', (length, message) => {
    expect(course(length)).toEqual([message]);
  });

  it('of all entrants together is told at the wave that passes the limit', () => {
    const waves = [900_000, 90_000, 20_000, 5].map((entrants) => ({ time: '08:00', entrants }));
    const { findings } = readPlan(JSON.stringify({ ...MINIMAL_PLAN, races: [{ id: 'm', course: 'full', waves }] }));
    expect(findings.map(({ message, where }) => [where.path, message])).toEqual([
      ['/races/0/waves/2/entrants', 'All waves together have 1,010,005 entrants. There should be at most 1,000,000.'],
    ]);
  });

  it('is told in the units of the plan, rounded inwards', () => {
    const plan = { ...MINIMAL_PLAN, units: 'imperial', practice: { tableLength: 1e-9, kerb: '2 km' } };
    expect(messagesOf(JSON.stringify(plan))).toEqual([
      'The length of a table is a number very near 0. It should be from 3.94 in to 328 ft.',
      'The distance from the course to the kerb is “2 km”. It should be from 0 ft to 3,280 ft. Did you mean “2 m”?',
    ]);
  });
});
