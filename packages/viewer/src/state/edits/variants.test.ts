import { analyse, withVariant, type Analysis } from '@halfcup/core';
import { describe, expect, test } from 'vitest';
import { openDemo, openedFrom, straightPlan } from '../../testing.ts';
import { rawPlan, setValue, valueAt } from './edits.ts';
import { followed } from '../view/followed.ts';
import { saveImproved, stillOf, applyImproved } from './improved.ts';
import { nudge } from './moves.ts';
import { openFiles } from '../open/open.ts';
import { createStore, type Improved, type OpenPlan, type Store } from '../store/store.ts';
import {
  comparisonOf,
  deleteVariant,
  followPlan,
  saveAsVariant,
  compareWith,
  nameTrouble,
  renameVariant,
  applyToPlan,
  newVariant,
} from './variants.ts';
import { run, showVariant, undo } from './workbench.ts';
import { receive } from '../open/receive.ts';

function opened(plan: OpenPlan = openDemo()): Store {
  const store = createStore();
  receive(store, ['demo'], { kind: 'opened', plan });
  return store;
}

const now = (store: Store): OpenPlan => {
  if (store.open.value === null) throw new Error('no plan is open');
  return store.open.value;
};
const text = (store: Store): string => now(store).document.text;
const names = (store: Store): string[] => now(store).document.plan.variants.map(({ name }) => name);
const places = ({ stations }: Pick<Analysis, 'stations'>): unknown[] => stations.map(({ at }) => at);

/** Of a variant of the text, from nothing. */
function afresh({ document, files }: OpenPlan, variant: string): Analysis {
  const laid = withVariant(document, variant);
  const made = laid.ok ? analyse(laid.value.plan, files) : laid;
  if (!made.ok) throw new Error(made.findings[0]?.message);
  return made.value;
}

describe('variants', () => {
  test('those kept while a variant is shown stand where the variant has them, whatever becomes of the plan', () => {
    const store = opened();
    const [first] = names(store);
    expect(showVariant(store, first!)).toEqual([]);
    const shown = places(now(store).analysis);
    expect(saveAsVariant(store, 'copy')).toEqual([]);
    expect(now(store).variant).toBe(first);
    showVariant(store, null);
    nudge(store, 's4', 300);
    expect(places(afresh(now(store), 'copy'))).toEqual(shown);
  });

  test('a plan without variants takes its first, and undo gives the bytes', () => {
    const store = opened(openedFrom(openFiles([straightPlan({ stations: [{ id: 's1', at: [0.05, 0] }] })], null)));
    const before = text(store);
    expect(newVariant(store, 'one')).toEqual([]);
    expect(now(store).variant).toBe('one');
    expect(valueAt(rawPlan(now(store).document), ['variants'])).toEqual([{ name: 'one', stations: {} }]);
    undo(store);
    expect(text(store)).toBe(before);
    expect(now(store).variant).toBeNull();
  });

  test('what was moved in a variant is taken into the plan as one step, a pin in place of a course distance too', () => {
    const store = opened();
    newVariant(store, 'other');
    run(
      store,
      setValue(
        ['variants', names(store).indexOf('other'), 'stations', 's1'],
        { at: [-17.4255, -33.2291], side: 'left' },
        'pin',
      ),
    );
    nudge(store, 's4', 120);
    const [shown, before] = [places(now(store).analysis), text(store)];
    expect(applyToPlan(store, 'other')).toEqual([]);
    expect(now(store).variant).toBeNull();
    expect(places(now(store).analysis)).toEqual(shown);
    expect(now(store).document.plan.stations[0]).toMatchObject({ at: [-17.4255, -33.2291] });
    expect(now(store).document.plan.stations[0]!.on).toBeUndefined();
    undo(store);
    expect(text(store)).toBe(before);
  });

  test('a renamed one stays shown and beside, through undo; a deleted one is let go', () => {
    const store = opened();
    const stop = followPlan(store);
    const [first, second] = names(store);
    showVariant(store, first!);
    compareWith(store, second);
    renameVariant(store, first!, 'new');
    renameVariant(store, second!, 'newer');
    expect([now(store).variant, store.against.value?.variant]).toEqual(['new', 'newer']);
    undo(store);
    undo(store);
    expect([now(store).variant, store.against.value?.variant]).toEqual([first, second]);
    deleteVariant(store, second!);
    expect(store.against.value).toBeNull();
    deleteVariant(store, first!);
    expect(now(store).variant).toBeNull();
    stop();
  });

  test('what is compared follows every change of the plan', () => {
    const store = opened();
    const stop = followPlan(store);
    const [first] = names(store);
    compareWith(store, first);
    nudge(store, 's4', 250);
    expect(store.against.value!.document).toBe(now(store).document);
    expect(places(store.against.value!.analysis)).toEqual(places(afresh(now(store), first!)));
    expect(comparisonOf(store.against.value!, now(store)).variants).toEqual([first, 'Main plan']);
    stop();
  });

  test('a name is refused where it is empty, taken in any case, or that of the main plan', () => {
    const open = openDemo();
    const [first] = open.document.plan.variants;
    expect(nameTrouble(open, '')).toMatch(/Type a name/u);
    expect(nameTrouble(open, first!.name.toUpperCase())).toMatch(/already/u);
    for (const own of ['Main plan', 'As planned']) expect(nameTrouble(open, own)).toMatch(/means the plan itself/u);
    expect(nameTrouble(open, first!.name, first!.name)).toBeNull();
    expect(nameTrouble(open, first!.name.toUpperCase(), first!.name)).toBeNull();
    expect(nameTrouble(open, 'another')).toBeNull();
  });

  test('a variant is followed to a new name only where nothing else was changed among them', () => {
    const { plan } = openDemo().document;
    const [first, ...rest] = plan.variants;
    const renamed = { ...plan, variants: [{ ...first!, name: 'x' }, ...rest] };
    expect(followed(plan, renamed, first!.name)).toBe('x');
    expect(followed(plan, { ...plan, variants: rest }, first!.name)).toBeUndefined();
    expect(
      followed(
        plan,
        { ...plan, variants: renamed.variants.map((one, index) => ({ ...one, name: `${index}` })) },
        first!.name,
      ),
    ).toBeUndefined();
    expect(followed(plan, renamed, null)).toBeNull();
  });
});

describe('better positions that were found', () => {
  const improvedOf = (open: OpenPlan): Improved => {
    const { plan } = open.analysis;
    const s4 = plan.stations.findIndex(({ id }) => id === 's4');
    const s2 = plan.stations.findIndex(({ id }) => id === 's2');
    const moved = plan.stations
      .with(s4, { ...plan.stations[s4]!, on: { ...plan.stations[s4]!.on!, measure: 16_200 } })
      .with(s2, { ...plan.stations[s2]!, at: [-17.4404, -33.195] });
    const move = { from: [0, 0], to: [0, 0], measure: 0, course: 'full', shift: 0, moved: 0, walked: false } as const;
    const standing = { error: 0, warning: 0, note: 0, waived: 0, idle: 0, longest: [] };
    const moves = [
      { ...move, station: 's2', name: 'Stennick Chapel', dropped: ['sign' as const] },
      { ...move, station: 's4', name: 'Norra Slip', dropped: [] },
    ];
    return {
      before: standing,
      after: standing,
      moves,
      proof: 'optimal',
      tried: 0,
      step: 25,
      stepBeyond: 25,
      stays: [],
      stopped: false,
      text: open.document.text,
      variant: open.variant,
      within: 500,
      stations: moved,
    };
  };
  const signByHand = ({ stations }: Analysis): boolean =>
    stations.find(({ id }) => id === 's2')!.station.items.sign !== undefined;

  for (const variant of [null, 'Green station nearer the park']) {
    test(`are taken into ${variant === null ? 'the plan' : 'the variant shown'}, or kept beside it, with hand-placed items given up`, () => {
      const store = opened();
      showVariant(store, variant);
      expect(now(store).variant).toBe(variant);
      const improved = improvedOf(now(store));
      const before = text(store);
      expect(signByHand(now(store).analysis)).toBe(true);
      expect(applyImproved(store, improved)).toEqual([]);
      expect(now(store).analysis.plan.stations.map(({ at, on }) => at ?? on)).toEqual(
        improved.stations.map(({ at, on }) => at ?? on),
      );
      expect(signByHand(now(store).analysis)).toBe(false);
      expect(stillOf(now(store), improved)).toBe(false);
      undo(store);
      expect(text(store)).toBe(before);
      expect(stillOf(now(store), improved)).toBe(true);
      expect(saveImproved(store, improved, 'found')).toEqual([]);
      expect(now(store).variant).toBe('found');
      expect(now(store).analysis.plan.stations.map(({ at, on }) => at ?? on)).toEqual(
        improved.stations.map(({ at, on }) => at ?? on),
      );
      expect(signByHand(now(store).analysis)).toBe(false);
      undo(store);
      expect(text(store)).toBe(before);
    });
  }
});
