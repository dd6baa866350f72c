import type { Finding, Severity } from '@halfcup/core';
import { expect, test } from 'vitest';
import { openDemo } from '../../testing.ts';
import { createStore, type OpenPlan } from '../store/store.ts';
import { GROUPINGS, groupsOf, rememberedGrouping } from './grouping.ts';

const demo = openDemo();
const finding = (
  code: string,
  severity: Severity,
  where: Finding['where'] = {},
  more: Partial<Finding> = {},
): Finding => ({
  code,
  severity,
  message: '',
  where,
  ...more,
});
const FINDINGS = [
  finding('leg-long', 'warning', { station: 's8' }),
  finding('no-contacts', 'warning'),
  finding('sign-distance', 'warning', { station: 's2' }),
  finding('sign-distance', 'error', { station: 's3' }),
  finding('sign-distance', 'error', { station: 's1' }),
  finding('tables-hidden', 'note', { station: 'gone' }),
  finding('gpx-elevation', 'note', { file: 'full.gpx' }),
  finding('sign-distance', 'error', { station: 's4' }, { built: true }),
  finding('placed-assumptions', 'note', { file: 'points.gpx' }),
  finding('clear-width', 'error', { station: 's2' }, { waived: { by: 'Ada Kelp', reason: 'seen' } }),
];
const open: OpenPlan = { ...demo, findings: FINDINGS };
const shown = (by: (typeof GROUPINGS)[number]): (readonly [string, string])[] =>
  groupsOf(open, null, by).map(({ title, findings }) => [
    title,
    findings.map(({ severity, where }) => `${severity[0] ?? ''}${where.station ?? ''}`).join(' '),
  ]);

test('by theme groups have the names of core, the gravest first, then in the plan’s order; what is waived is last', () => {
  expect(shown('theme')).toEqual([
    ['Reading the files', 'n'],
    ['Signs, tables and boxes', 'es1 es3 ws2 ngone'],
    ['Distances between stations', 'ws8'],
    ['As built', 'es4 n'],
    ['What the plan leaves out', 'w'],
    ['Waived', 'es2'],
  ]);
});

test('by severity and by station the same findings stand in other groups', () => {
  expect(shown('severity')).toEqual([
    ['Errors', 'es1 es3 es4'],
    ['Warnings', 'w ws2 ws8'],
    ['Notes', 'ngone n n'],
    ['Waived', 'es2'],
  ]);
  expect(shown('station')).toEqual([
    ['The plan as a whole', 'w ngone n n'],
    ['1 · Strand Road', 'es1'],
    ['2 · Stennick Chapel', 'ws2'],
    ['3 · Wrack Fork', 'es3'],
    ['4 · Norra Slip', 'es4'],
    ['8 · Quillet Park', 'ws8'],
    ['Waived', 'es2'],
  ]);
});

test('every grouping holds every finding once, and counts the open ones', () => {
  for (const by of GROUPINGS) {
    const groups = groupsOf(open, null, by);
    expect(new Set(groups.flatMap(({ findings }) => findings))).toEqual(new Set(FINDINGS));
    expect(groups.flatMap(({ findings }) => findings)).toHaveLength(FINDINGS.length);
    expect(groups.reduce((sum, { counts }) => sum + counts.error, 0)).toBe(3);
    expect(new Set(groups.map(({ key }) => key)).size).toBe(groups.length);
  }
});

test('thousands of findings are grouped in the time of a frame or two', () => {
  const many: OpenPlan = {
    ...demo,
    findings: Array.from({ length: 20_000 }, (_, index) =>
      finding('sign-distance', 'error', { station: `s${index % 9}` }),
    ),
  };
  groupsOf(many, null, 'station');
  const start = performance.now();
  expect(groupsOf(many, null, 'station')).toHaveLength(9);
  // Linear in their number: were it their square, it would take minutes.
  expect(performance.now() - start).toBeLessThan(2000);
});

test('the grouping chosen last is remembered; nothing, nonsense or no storage at all is by theme', () => {
  const kept = (value: string | null) => (): Pick<Storage, 'getItem'> => ({ getItem: () => value });
  expect(rememberedGrouping(kept('station'))).toBe('station');
  expect(rememberedGrouping(kept(null))).toBe('theme');
  expect(rememberedGrouping(kept('colour'))).toBe('theme');
  expect(
    rememberedGrouping(() => {
      throw new Error('refused');
    }),
  ).toBe('theme');
  expect(createStore().grouping.value).toBe('theme');
});
