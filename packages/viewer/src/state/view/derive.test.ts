import { courseLength } from '@halfcup/core/geometry';
import { expect, test } from 'vitest';
import { openDemo, openedFrom, straightPlan } from '../../testing.ts';
import { coursesOf, keep, nearestSample, samplesOf, stationRows } from './derive.ts';
import { openFiles } from '../open/open.ts';
import { createStore } from '../store/store.ts';
import { chooseFinding, chooseStation } from './choose.ts';
import { receive } from '../open/receive.ts';

const demo = openDemo();

/** Metres of a degree of longitude on the equator of WGS 84: 6,378,137 · π / 180. */
const DEGREE = 111_319.490793;

test('a row for each station of the plan, in its order, numbered from 1', () => {
  const rows = stationRows(demo);
  expect(rows.map((row) => row.id)).toEqual(demo.document.plan.stations.map((station) => station.id));
  expect(rows.map((row) => row.number)).toEqual(rows.map((_, index) => index + 1));
});

test('a row carries the legs of each race in the plan’s order, and none where the race does not come', () => {
  const rows = stationRows(demo);
  const [full, half] = rows[3]!.legs;
  expect(full).toHaveLength(1);
  expect(half).toEqual([]);
  const sum = rows.flatMap((row) => row.legs[0] ?? []).reduce((total, leg) => total + leg.length, 0);
  const last = demo.analysis.spacing[0]!.legs.at(-1)!;
  expect(sum + last.length).toBeCloseTo(courseLength(coursesOf(demo.analysis)[0]!), 6);
});

test('the sign’s distance is measured to the first table, also where gel stands before the drinks', () => {
  const rows = stationRows(demo);
  // Three stations of the demo serve gel; only the second has its sign placed by hand. 100 yd is 91.44 m.
  for (const row of rows.filter((row) => row.id !== 's2')) expect(row.signAlong).toBeCloseTo(90, 6);
  expect(rows[1]!.signAlong).toBeLessThan(90 - 9);
  expect(rows[1]!.sign).toBe('error');
});

test('a leg that is too long is flagged itself, not its neighbours', () => {
  const flagged = stationRows(demo).flatMap((row) =>
    row.legs.flatMap((legs) => legs.filter((leg) => leg.flag === 'warning')),
  );
  expect(flagged.length).toBeGreaterThan(0);
  for (const leg of flagged) expect(leg.length).toBeGreaterThan(demo.document.plan.practice.maxSpacing);
});

test('samples begin at the start, end at the finish and ascend', () => {
  const course = coursesOf(demo.analysis)[0]!;
  const { measure, elevation } = samplesOf(course);
  expect(measure[0]).toBe(0);
  expect(measure.at(-1)).toBeCloseTo(courseLength(course), 6);
  expect(measure.every((value, index) => index === 0 || value > (measure[index - 1] ?? 0))).toBe(true);
  expect(elevation).toHaveLength(measure.length);
});

test('pointing at a place finds the course’s measure there', () => {
  const plan = openedFrom(openFiles([straightPlan({})], null));
  const near = nearestSample(samplesOf(coursesOf(plan.analysis)[0]!), 0.05, 0.0001);
  expect(near.measure).toBeGreaterThan(0.05 * DEGREE - 6);
  expect(near.measure).toBeLessThan(0.05 * DEGREE + 6);
  expect(near.distance).toBeGreaterThan(10);
  expect(near.distance).toBeLessThan(13);
});

test('a kept result is computed once for each argument', () => {
  let calls = 0;
  const kept = keep((given: object) => ({ given, call: ++calls }));
  const [one, two] = [{}, {}];
  expect(kept(one)).toBe(kept(one));
  expect(kept(two)).not.toBe(kept(one));
  expect(calls).toBe(2);
});

test('choosing a station sends the map there and brings the strip to a pass of it', () => {
  const store = createStore();
  receive(store, [], { kind: 'opened', plan: demo });
  store.course.value = 'half';
  store.stripView.value = [0, 500];
  chooseStation(store, 's6');
  expect(store.selected.value).toBe('s6');
  expect(store.destination.value).toEqual({ kind: 'station', station: 's6' });
  expect(store.course.value).toBe('full');
  expect(store.stripView.value).toBeNull();
});

test('the strip moves only as far as needed to show a chosen station, and keeps its scale', () => {
  const store = createStore();
  receive(store, [], { kind: 'opened', plan: demo });
  store.stripView.value = [0, 1000];
  chooseStation(store, 's1');
  const [from, to] = store.stripView.value ?? [0, 0];
  expect(to - from).toBeCloseTo(1000, 6);
  expect((from + to) / 2).toBeCloseTo(2620, 3);
});

test('choosing a finding goes to its station, or to its place on the course', () => {
  const store = createStore();
  receive(store, [], { kind: 'opened', plan: demo });
  chooseFinding(
    store,
    demo.findings.find((finding) => finding.where.station === 's2')!,
  );
  expect(store.selected.value).toBe('s2');
  chooseFinding(store, { code: 'x', severity: 'note', message: '', where: { course: 'half', measure: 1200 } });
  expect(store.selected.value).toBe('s2');
  expect(store.course.value).toBe('half');
  expect(store.cursor.value).toEqual({ course: 'half', measure: 1200 });
  expect(store.destination.value).toEqual({ kind: 'place', course: 'half', measure: 1200, at: null });
});
