import { expect, test } from 'vitest';
import { openDemo } from '../testing.ts';
import { nudge } from '../state/edits/moves.ts';
import { createStore, type Store } from '../state/store/store.ts';
import { receive } from '../state/open/receive.ts';
import { dropPlaced, takeDropped, takePlaced } from './placed.ts';
import { placedView, reviewList } from '../state/view/placed.ts';

function opened(): Store {
  const store = createStore();
  receive(store, ['demo'], { kind: 'opened', plan: openDemo() });
  return store;
}

/** The first station's sign and tables where the plan has them. */
function points(store: Store): File {
  const [station] = store.open.value!.analysis.stations;
  const items = station!.directions[0]!.items.filter(({ kind }) => kind === 'sign' || kind === 'water');
  const waypoints = items
    .map(
      ({ kind, at }) =>
        `<wpt lat="${at[0]![1]}" lon="${at[0]![0]}"><name>${station!.id} ${kind}</name><hdop>0.2</hdop></wpt>`,
    )
    .join('');
  return new File(
    [`<gpx version="1.1" creator="t" xmlns="http://www.topografix.com/GPX/1/1">${waypoints}</gpx>`],
    'points.gpx',
  );
}

test('points are held against the plan as shown, and judged again as it changes, without a change of the plan', async () => {
  const store = opened();
  const { text } = store.open.value!.document;
  await takePlaced(store, points(store));
  const placed = store.placed.value!;
  expect(placedView(store.open.value!, placed).verdicts.map(({ item, verdict }) => [item, verdict])).toEqual([
    ['sign', 'holds'],
  ]);
  expect(placedView(store.open.value!, placed)).toBe(placedView(store.open.value!, placed));
  expect(reviewList(store.open.value!, placed).length).toBeGreaterThan(store.open.value!.findings.length);
  expect(store.open.value!.document.text).toBe(text);
  const before = placedView(store.open.value!, placed);
  nudge(store, 's1', 200);
  expect(placedView(store.open.value!, placed)).not.toBe(before);
  dropPlaced(store);
  expect(store.placed.value).toBeNull();
});

test('a dropped file is held at once in the review, asked about elsewhere, and never replaces the plan by itself', async () => {
  const store = opened();
  const plan = store.open.value;
  await takeDropped(store, [points(store)]);
  expect(store.placed.value).toBeNull();
  expect(store.open.value).toBe(plan);
  expect(store.arrived.value!.name).toBe('points.gpx');
  store.arrived.value = null;
  store.pane.value = 'review';
  await takeDropped(store, [points(store)]);
  expect(store.placed.value!.file).toBe('points.gpx');
});

test('a file without points, or that cannot be read, is told, and what was held stays', async () => {
  const store = opened();
  await takePlaced(store, points(store));
  const held = store.placed.value;
  await takePlaced(
    store,
    new File(['<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1"></gpx>'], 'none.gpx'),
  );
  expect(store.refusal.value!.findings[0]!.message).toMatch(/has no waypoints\. It needs one/u);
  await takePlaced(store, new File(['<gpx'], 'broken.gpx'));
  expect(store.refusal.value!.files).toEqual(['broken.gpx']);
  expect(store.placed.value).toBe(held);
});
