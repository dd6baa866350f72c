import { expect, test } from 'vitest';
import { createStore, type OpenPlan } from '../state/store/store.ts';
import { freePlacement } from '../state/edits/placing.ts';
import { openDemo } from '../testing.ts';
import { createScenes, KEPT_IDS, SOURCES, type Scene, type Seen } from './scene.ts';
import { sourceDiff } from './sourceDiff.ts';
import { beginTrial, trialAt } from '../state/trial/trial.ts';

const demo = openDemo();
const seen = (open: OpenPlan, more: Partial<Seen> = {}): Seen => ({ open, course: 'full', units: 'metric', ...more });

/** Sources of which the map is told anything. */
const changed = (before: Scene, after: Scene): string[] =>
  SOURCES.filter((name) =>
    KEPT_IDS.has(name)
      ? sourceDiff(before[name].features, after[name].features) !== null
      : before[name] !== after[name],
  );

/** A store with a trial of station s4, and the plan with it 30 m farther north. */
function onTrial(): { readonly trial: NonNullable<Seen['trial']>; readonly moved: OpenPlan } {
  const store = createStore();
  store.open.value = demo;
  beginTrial(store, 's4');
  const station = demo.analysis.stations.find(({ id }) => id === 's4')!;
  const moved = trialAt(store, freePlacement(demo.analysis, station, [station.at[0], station.at[1] + 0.00027]));
  return { trial: store.trial.value!, moved: moved! };
}

test('the scene of the same plan is made of the same records', () => {
  const scenes = createScenes();
  const [first, second] = [scenes(seen(demo)), scenes(seen(demo))];
  expect(changed(first, second)).toEqual([]);
});

test('a move of the station on trial touches its own source alone, and shows its old place and the difference', () => {
  const scenes = createScenes();
  const { trial, moved } = onTrial();
  const before = scenes(seen(demo, { trial }));
  const after = scenes(seen(moved, { trial }));
  // The next station's tables and boxes may change too, as its runners have gone without a drink for longer.
  expect(changed(before, after).filter((name) => name !== 'items' && name !== 'stations')).toEqual(['trial']);
  expect(after.stations.features.some((feature) => feature.properties.id === 's4')).toBe(false);
  expect(before.trial.features.some((feature) => feature.properties?.['draw'] === 'said')).toBe(false);
  const said = after.trial.features.find((feature) => feature.properties?.['draw'] === 'said');
  expect(said?.properties?.['text']).toMatch(/along|from where it was/u);
  expect(after.trial.features.filter((feature) => feature.properties?.['draw'] === 'old')).toHaveLength(1);
});

test('every feature of a source that is told of changes has an id of its own', () => {
  const { trial, moved } = onTrial();
  const scene = createScenes()(seen(moved, { trial }));
  for (const name of ['items', 'stations', 'trial'] as const) {
    const ids = scene[name].features.map(({ id }) => id);
    expect(ids.every((id) => typeof id === 'number')).toBe(true);
    expect(new Set(ids).size).toBe(ids.length);
  }
});

test('of other positions those that differ are drawn, with the name of the variant', () => {
  const { moved } = onTrial();
  const scene = createScenes()(seen(demo, { against: { ...moved, variant: 'Farther north' } }));
  const old = scene.against.features.filter((feature) => feature.properties?.['draw'] === 'old');
  expect(old.map((feature) => String(feature.properties?.['name']))).toEqual([
    expect.stringMatching(/: Farther north$/u),
  ]);
  expect(createScenes()(seen(demo, { against: demo })).against.features).toEqual([]);
});

test('the runs that stop at a station are numbered in the order of their stops', () => {
  const run = demo.analysis.day?.runs.find(({ kind }) => kind === 'drop');
  expect(run).toBeDefined();
  const scene = createScenes()(seen(demo, { runsOf: run!.stops[0]!.station }));
  const stops = scene.runs.features.filter(
    (feature) => feature.properties?.['draw'] === 'stop' && feature.properties['kind'] === 'drop',
  );
  expect(stops.map((feature) => Number(/, stop (\d+)/u.exec(String(feature.properties?.['label']))?.[1]))).toEqual(
    run!.stops.map((_, index) => index + 1),
  );
});
