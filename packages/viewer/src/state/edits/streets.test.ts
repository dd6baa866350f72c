import { groundText, readGround } from '@halfcup/core/ground';
import { expect, test } from 'vitest';
import { createStore, type Store } from '../store/store.ts';
import { openDemo } from '../../testing.ts';
import { addStreets } from './streets.ts';
import { redo, undo } from './workbench.ts';

/** One street under the demo's start. */
const map = (name: string) => {
  const text = JSON.stringify({
    type: 'FeatureCollection',
    date: '2027-06-01',
    features: [
      {
        type: 'Feature',
        id: 'way/1',
        properties: { highway: 'residential', name },
        geometry: {
          type: 'LineString',
          coordinates: [
            [-17.388, -33.2289],
            [-17.407, -33.2308],
          ],
        },
      },
    ],
  });
  const read = readGround(text, 'town.geojson');
  if (!read.ok) throw new Error('no ground');
  return { ground: read.value, file: new Blob([groundText(read.value)]), findings: [] };
};

const opened = (): Store => {
  const store = createStore();
  store.open.value = openDemo();
  return store;
};
const streetsOf = (store: Store): (string | null)[] => [
  ...new Set(store.open.value!.analysis.ground?.along.get('full')?.streets.map(({ name }) => name)),
];

test('streets become a file of the plan, one step that can be taken back and forth', () => {
  const store = opened();
  const before = store.open.value!.document.text;
  expect(addStreets(store, 'town.osm', map('Old Road'))).toEqual([]);
  expect(store.open.value!.document.plan.ground).toBe('ground.geojson');
  expect(store.history.value.past.map(({ label }) => label)).toEqual(['add streets from town.osm']);
  expect(streetsOf(store)).toContain('Old Road');
  undo(store);
  expect(store.open.value!.document.text).toBe(before);
  expect(streetsOf(store)).not.toContain('Old Road');
  redo(store);
  expect(streetsOf(store)).toContain('Old Road');
});

test('a second map has a name of its own, so that a step back finds the first', () => {
  const store = opened();
  addStreets(store, 'town.osm', map('Old Road'));
  addStreets(store, 'newer.osm', map('New Road'));
  expect(store.open.value!.document.plan.ground).toBe('ground-2.geojson');
  expect([...store.open.value!.files.originals.keys()]).toEqual(
    expect.arrayContaining(['ground.geojson', 'ground-2.geojson']),
  );
  expect(streetsOf(store)).toContain('New Road');
  undo(store);
  expect(streetsOf(store)).toContain('Old Road');
});

test('without an open plan nothing is added', () => {
  const store = createStore();
  expect(addStreets(store, 'town.osm', map('Old Road'))).toEqual([]);
  expect(store.open.value).toBeNull();
});
