/** Every limit of every reader: what is just within is read, what is one past is refused with the limit; nothing is done beyond it. */
import { describe, expect, it } from 'vitest';
import { createGpxReader } from './gpx/read.ts';
import { passedIn } from './jsonExtent.ts';
import { type Counted, type Limits, LIMITS, type Reader } from './limits.ts';
import { readPlan } from './plan/read.ts';
import { LIMIT_CASES } from './testing/limitCases.ts';

/** What has its limit held elsewhere: archives by the viewer's tests; depth of a plan is a finding on JSON (`plan/read.test.ts`). */
const ELSEWHERE: ReadonlySet<string> = new Set(['zip bytes', 'zip files', 'zip unpacked', 'plan depth']);

const ALL = (Object.keys(LIMITS) as Reader[]).flatMap((reader) =>
  (Object.entries(LIMITS[reader] as Limits) as [Counted, number][]).map(([what, most]) => ({ reader, what, most })),
);

describe('the limit of', () => {
  it.each(ALL.filter(({ reader, what }) => !ELSEWHERE.has(`${reader} ${what}`)))(
    '$reader $what is kept at $most, and one more is refused',
    ({ reader, what, most }) => {
      const read = LIMIT_CASES[reader as keyof typeof LIMIT_CASES][what];
      if (read === undefined) throw new Error(`the limit ${reader} ${what} has no case in testing/limitCases.ts`);
      expect(read(most).filter(({ code }) => code === 'past-limit')).toEqual([]);
      const findings = read(most + 1);
      expect(findings.map(({ code, severity, params }) => ({ code, severity, params }))).toEqual([
        { code: 'past-limit', severity: 'error', params: expect.objectContaining({ reader, what, most }) as object },
      ]);
      expect(findings[0]!.message).not.toMatch(/undefined|NaN|Infinity/u);
    },
  );
});

describe('what is past a limit', () => {
  it('costs no more of the file: a reader that is fed on takes nothing in', () => {
    const reader = createGpxReader('c.gpx');
    reader.write(
      `<gpx version="1.1" creator="c" ${Array.from({ length: 2000 }, (_, k) => `xmlns:a${k}="u"`).join(' ')}>`,
    );
    for (let k = 0; k < 1000; k++) reader.write('<trk><trkseg>');
    const read = reader.close();
    expect(read.findings.map(({ code, where }) => [code, where.line])).toEqual([['past-limit', 1]]);
  });

  it('is told with its place: the first entry too many, the tag, the cell', () => {
    const stations = Array.from({ length: LIMITS.plan.stations + 3 }, (_, k) => ({ id: `s${k}`, at: [0, 0] }));
    const course = { id: 'c', line: [[0, 0], [1, 0]] }; // prettier-ignore
    const value = {
      format: 'halfcup-plan',
      version: 1,
      courses: [course],
      races: [{ id: 'r', course: 'c' }],
      stations,
    };
    const [finding] = readPlan(JSON.stringify(value, null, 1), 'p.json').findings;
    expect(finding!.where.path).toBe(`/stations/${LIMITS.plan.stations}`);
    expect(finding!.where.line).toBeGreaterThan(LIMITS.plan.stations);
    expect(finding!.message).toBe(
      `The plan has ${stations.length} stations. It should have at most ${LIMITS.plan.stations}. Delete what is not needed, keep courses in GPX files, or make several plans.`,
    );
    expect(readPlan(value as never).findings[0]!.where.path).toBe(`/stations/${LIMITS.plan.stations}`);
  });
});

describe('a plan in which very much is wrong', () => {
  const line = Array.from({ length: 20_000 }, () => ['x']);
  const plan = (more: object): string =>
    JSON.stringify({
      format: 'halfcup-plan',
      version: 1,
      courses: [{ id: 'c', line: [[0, 0], [1, 0]] }], // prettier-ignore
      races: [{ id: 'r', course: 'c' }],
      stations: [],
      ...more,
    });

  it.each([
    ['a line of words', plan({ courses: [{ id: 'c', line }] })],
    [
      'unknown keys at every station',
      plan({
        stations: Array.from({ length: 500 }, (_, k) => ({
          id: `s${k}`,
          at: [0, 0],
          ...Object.fromEntries(Array.from({ length: 100 }, (__, j) => [`k${j}`, 1])),
        })),
      }),
    ],
    ['the same key again and again', `{${'"a":1,'.repeat(20_000)}"a":1}`],
    [
      'variants that are all wrong',
      plan({
        stations: [{ id: 's', at: [0, 0] }],
        variants: Array.from({ length: 50 }, (_, k) => ({
          name: `v${k}`,
          stations: Object.fromEntries(Array.from({ length: 100 }, (__, j) => [`x${j}`, {}])),
        })),
      }),
    ],
  ])('has the first 200 problems listed, and that there are more: %s', (_title, text) => {
    const { findings } = readPlan(text, 'p.json');
    const last = findings.at(-1)!;
    expect(findings.length).toBeLessThanOrEqual(201);
    expect(findings.length).toBeGreaterThan(50);
    if (findings.length === 201)
      expect([last.code, last.message]).toEqual([
        'more-problems',
        'Only 200 problems are listed, and there are more. Fix these, then look again.',
      ]);
  });
});

describe('the extent of a JSON text', () => {
  const values = (json: string): number => {
    for (let most = 0; ; most++) if (passedIn(json, { values: most }) === null) return most;
  };

  it.each([
    ['1', 1],
    ['[1, "a,b[{", {"k": [null, true]}]', 7],
    ['{"a": {"b": 1, "c": 2}}', 4],
    ['[[1, 2], [1.5e3, -2, 7]]', 1],
    ['[1, 2, 3, 4]', 5],
    ['"a \\" , [ , "', 1],
  ])('counts the values of %s as %i', (json, count) => expect(values(json)).toBe(count));

  it('says where a limit is passed', () => {
    expect(passedIn('[[0,0],[0,0]]', { points: 1 })).toEqual({ what: 'points', offset: 11 });
    expect(passedIn('[[[]]]', { depth: 2 })).toEqual({ what: 'depth', offset: 2 });
    expect(passedIn('{"a":1,"b":2}', { values: 2 })).toEqual({ what: 'values', offset: 7 });
  });
});
