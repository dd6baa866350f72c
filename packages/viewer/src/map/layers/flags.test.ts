import type { Finding } from '@halfcup/core';
import { pointAt } from '@halfcup/core/geometry';
import { expect, test } from 'vitest';
import type { OpenPlan } from '../../state/store/store.ts';
import { coursesOf } from '../../state/view/derive.ts';
import { openDemo } from '../../testing.ts';
import { createScenes } from '../scene.ts';
import { FLAGS } from '../flagImages.ts';
import { flagOf, flagPlace, flagPoints } from './flags.ts';

const demo = openDemo();
const finding = (severity: Finding['severity'], where: Finding['where'] = {}, waived = false): Finding => ({
  code: 'x',
  severity,
  message: '',
  where,
  ...(waived ? { waived: { by: 'Ada Kelp', reason: 'seen' } } : {}),
});

test('a mark is that of the gravest open finding, with a second one where an error is waived', () => {
  expect(flagOf([])).toBe('');
  expect(flagOf([finding('note'), finding('error'), finding('warning')])).toBe('error');
  expect(flagOf([finding('note'), finding('error', {}, true)])).toBe('note-waived');
  expect(flagOf([finding('error', {}, true)])).toBe('waived');
  expect(flagOf([finding('warning', {}, true)])).toBe('');
});

test('every mark has a shape of its own', () => {
  const severities = ['error', 'warning', 'note'] as const;
  const all = [
    [finding('error', {}, true)],
    ...severities.flatMap((severity) => [[finding(severity)], [finding(severity), finding('error', {}, true)]]),
  ].map((findings) => `flag-${flagOf(findings)}`);
  expect(all.toSorted()).toEqual(Object.keys(FLAGS).toSorted());
});

test('the mark stands at the corner of the ring that stem and name leave free', () => {
  for (let bearing = 0; bearing < 360; bearing += 15) {
    const { offset, anchor } = flagPlace(bearing);
    expect(anchor).toBe(offset[0] > 0 ? 'left' : 'right');
    const corner = (Math.atan2(offset[0] > 0 ? 1 : -1, offset[1] < 0 ? 1 : -1) * 180) / Math.PI;
    const apart = Math.abs(((((corner - bearing) % 180) + 270) % 180) - 90);
    expect(apart).toBeGreaterThanOrEqual(45 - 1e-9);
  }
});

test('findings about no station are marked where they are, or where their course is; the gravest on top', () => {
  const measured = { course: 'full', measure: 5000 };
  const list = [
    finding('error', { at: [-17.4, -33.2] }),
    finding('note', measured),
    finding('error', { station: 's1', at: [-17.4, -33.2] }),
    finding('warning', {}),
    finding('warning', { at: [-17.5, -33.3] }, true),
    finding('error', { at: [-17.6, -33.3] }, true),
    finding('note', { course: 'none', measure: 1 }),
  ];
  const there = pointAt(
    coursesOf(demo.analysis).find(({ id }) => id === 'full')!,
    5000,
  )!.at;
  expect(flagPoints(demo, list).map(({ geometry, properties }) => [geometry.coordinates, properties])).toEqual([
    [[...there], { flag: 'note', finding: 1 }],
    [[-17.4, -33.2], { flag: 'error', finding: 0 }],
    [[-17.6, -33.3], { flag: 'waived', finding: 5 }],
  ]);
});

test('a station is drawn anew only where its mark changes', () => {
  const scenes = createScenes();
  const seen = (open: OpenPlan) => scenes({ open, course: 'full', units: 'metric' }).stations.features;
  const before = seen(demo);
  expect(before.find(({ properties }) => properties.id === 's2')?.properties.flag).toBe('error');
  const waived = demo.findings.map((one) =>
    one.where.station === 's2' ? { ...one, waived: { by: 'Ada Kelp', reason: 'seen' } } : one,
  );
  const after = seen({ ...demo, findings: waived });
  expect(after.find(({ properties }) => properties.id === 's2')?.properties.flag).toBe('waived');
  expect(after.filter((feature, index) => feature !== before[index]).map(({ properties }) => properties.id)).toEqual([
    's2',
  ]);
});
