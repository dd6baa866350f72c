/** Long runs of spaces, depth and errors without end cost a reader nothing. */
import { parseTree, type Node } from 'jsonc-parser';
import { describe, expect, it, vi } from 'vitest';
import { LIMITS } from '../limits.ts';
import { placer, readJson } from './json.ts';
import { readPlan } from './read.ts';
import { withoutLongRuns } from './spaces.ts';

const gap = ' '.repeat(5000);

const places = ({ type, offset, length, colonOffset, children = [] }: Node): unknown => [
  type,
  offset,
  length,
  colonOffset,
  children.map(places),
];

describe('A text with long runs of spaces', () => {
  const text = `{${gap}"a${gap}"${gap}:\t${gap}[1,${gap}2${gap}],\n${gap}"b": {"c${gap}\\"": "${gap}"}${gap}}${gap}`;

  it('is parsed without them, those inside texts apart.', () => {
    const { text: short, whole } = withoutLongRuns(text);
    expect(short.length).toBeLessThan(text.length - 7 * 3900);
    expect(JSON.parse(short)).toEqual(JSON.parse(text));
    for (const sign of ['"a', ':\t', '[1', '"b"', '}'])
      expect([sign, whole(short.indexOf(sign))]).toEqual([sign, text.indexOf(sign)]);
  });

  it('has everything at the same places.', () => {
    const read = readJson(text);
    expect(read.ok && places(read.value.root)).toEqual(places(parseTree(text)!));
  });

  it.each([
    ['no value', `{"a":${gap}}`],
    ['a comma too many', `{"a":1,${gap}}`],
    ['an end too early', `{${gap}"a":1${gap}`],
    ['a second value', `{}${gap}{}`],
  ])('has its fault at its place: %s.', (_title, broken) => {
    const faults = (json: string): readonly number[] => {
      const read = readJson(json);
      return read.ok ? [] : read.faults.map(({ offset }) => offset);
    };
    const plain = broken.replaceAll(gap, ' ');
    const [at] = faults(plain);
    const end = plain.slice(0, at).split(' ').length - 1;
    expect(faults(broken)).toEqual([at! + end * (gap.length - 1)]);
  });
});

describe('A plan that is refused', () => {
  it('for its depth is not read at all.', () => {
    const parse = vi.spyOn(JSON, 'parse');
    for (const unit of ['[', '{"a":[', '{"a":{"b": "'.slice(0, 5)]) {
      const { findings } = readPlan(unit.repeat(100_000), 'p.json');
      expect(findings.map(({ code, where }) => [code, where.line])).toEqual([['plan-not-json', 1]]);
      expect(findings[0]!.message).toContain('nested more than 64 deep');
    }
    expect(parse).not.toHaveBeenCalled();
    parse.mockRestore();
  });

  it('for positions outside the range has the first of them told.', () => {
    const plan = (line: readonly unknown[], polygon: readonly unknown[]): string =>
      JSON.stringify({
        format: 'halfcup-plan',
        version: 1,
        courses: [{ id: 'c', line }],
        races: [{ id: 'r', course: 'c' }],
        stations: [],
        zones: [{ rule: 'allowed', polygon }],
      });
    const many = (one: unknown): readonly unknown[] => Array.from({ length: 130_000 }, () => one);
    const few = [[0, 0], [1, 0], [0, 1]]; // prettier-ignore
    for (const [line, polygon] of [
      [many([0, 91]), few],
      [many([181, 0]), few],
      [many([0, 0, 1e9]), few],
      [few, many([200, 0])],
      [few, many([0, 0, 3])],
    ] as const) {
      const { findings } = readPlan(plan(line, polygon), 'p.json');
      expect(findings.length).toBeLessThanOrEqual(201);
      expect(findings.slice(0, 100).map(({ code }) => code)).toEqual(many('plan-value').slice(0, 100));
    }
  });

  it('has a list of lists that is no list of positions held to its limit.', () => {
    const crowded = Array.from({ length: 150_000 }, () => [0, 0]);
    const plan = { format: 'halfcup-plan', version: 1, courses: [], races: [], stations: [], bibs: crowded };
    expect(readPlan(JSON.stringify(plan), 'p.json').findings.map(({ code, params }) => [code, params])).toEqual([
      ['past-limit', expect.objectContaining({ what: 'entries', most: LIMITS.plan.entries })],
    ]);
  });
});

it('Lines are found in a text of nothing but line ends.', () => {
  const placeAt = placer(`\uFEFF${'\n'.repeat(100_000)}${'\r\n'.repeat(10)}\rx`);
  expect([placeAt(1), placeAt(100_001), placeAt(100_022)]).toEqual([
    { line: 1, column: 1 },
    { line: 100_001, column: 1 },
    { line: 100_012, column: 1 },
  ]);
});
