/** The measure of the review: six good plans of which nothing is said, and mistakes planted in them one at a time. */
import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import { inverseLength } from '../geodesy/karney.ts';
import { PLANTED } from '../testing/planted/all.ts';
import type { Lines } from '../testing/planted/build.ts';
import { PLAN_NAMES, type PlanName, goodPlan } from '../testing/planted/goodPlans.ts';
import { CROSSINGS } from '../testing/planted/flows.ts';
import { type Judged, judge, lineOf } from '../testing/planted/judge.ts';
import { reviewPlan } from '../whole.ts';

const MOST_NOTES = 2;
/** Findings that a mistake may have beside its own. */
const MOST_OTHERS = 3;
const CAUGHT = 0.95;

const findingsOf = (name: PlanName, lines: Lines): readonly Finding[] => {
  const { text, files } = goodPlan(name, lines);
  const result = reviewPlan({ plan: JSON.stringify(text), files });
  expect(result.ok).toBe(true);
  return result.findings;
};
const linesOf = (findings: readonly Finding[]): string[] =>
  findings.map(({ code, severity, message }) => `${severity} ${code}: ${message}`);

describe.each(PLAN_NAMES)('the good plan %s', (name) => {
  it('has no error, no warning and at most two notes on drawn lines', () => {
    const found = findingsOf(name, 'drawn');
    expect(linesOf(found.filter(({ severity }) => severity !== 'note'))).toEqual([]);
    expect(linesOf(found).slice(MOST_NOTES)).toEqual([]);
  });

  it('has no error and no warning on lines recorded with 2 m of wander', () => {
    const loud = findingsOf(name, 'recorded').filter(({ severity }) => severity !== 'note');
    expect(linesOf(loud)).toEqual([]);
  });

  it('gives every station what a complete plan says of it', () => {
    for (const { width, points, people, boxes } of goodPlan(name).text.stations) {
      expect(Object.keys(people).sort()).toEqual(['captain', 'phone', 'radio']);
      expect(points.some(({ kind }) => kind === 'drop')).toBe(true);
      expect([width, boxes]).not.toContain(undefined);
    }
  });
});

describe('planted mistakes', () => {
  const planted = Object.values(PLANTED).flat();
  const judged: readonly Judged[] = planted.map((one) => judge(one));
  const table = (failing: readonly Judged[]): string => failing.map((one) => lineOf(one)).join('\n');

  it('are many, of all themes, in all plans, each with a name of its own and a change that shows in the text', () => {
    expect(planted.length).toBeGreaterThanOrEqual(130);
    expect(new Set(planted.map(({ name }) => name)).size).toBe(planted.length);
    for (const name of PLAN_NAMES) expect(planted.filter(({ plan }) => plan === name).length).toBeGreaterThan(15);
    for (const list of Object.values(PLANTED)) expect(list.length).toBeGreaterThan(10);
    for (const { plan, plant, name } of planted) {
      const { text, files, ground } = goodPlan(plan);
      const [changed, changedFiles] = JSON.parse(JSON.stringify([text, files])) as [typeof text, typeof files];
      plant(changed, ground, changedFiles);
      expect({ name, changed: JSON.stringify([changed, changedFiles]) !== JSON.stringify([text, files]) }).toEqual({
        name,
        changed: true,
      });
    }
  });

  it('know where streets cross themselves', () => {
    for (const [plan, course] of [
      ['loop', 'ring'],
      ['point', 'coast'],
    ] as const) {
      const { ground } = goodPlan(plan);
      const [first, second] = CROSSINGS[course](ground).map((measure) => ground.at(course, measure));
      expect(inverseLength(...first!, ...second!)).toBeLessThan(0.5);
    }
  });

  it('are caught by an error or a warning that names what was changed, at least 95 in 100', () => {
    const wanted = judged.filter((one) => one.planted.note !== true);
    const missed = wanted.filter(({ verdict }) => verdict !== 'caught');
    const share = 1 - missed.length / wanted.length;
    expect(share, `${missed.length} of ${wanted.length} are not caught:\n${table(missed)}`).toBeGreaterThanOrEqual(
      CAUGHT,
    );
  });

  it('give a note at least, each of them', () => {
    const silent = judged.filter(({ verdict }) => verdict === 'nothing');
    expect(silent.length, `nothing is said of ${silent.length}:\n${table(silent)}`).toBe(0);
  });

  it('give at most three findings that are not their own', () => {
    const noisy = judged.filter(({ others }) => others.length > MOST_OTHERS);
    expect(noisy.length, `too much is said of ${noisy.length}:\n${table(noisy)}`).toBe(0);
  });
});
