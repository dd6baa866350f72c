import { describe, expect, it } from 'vitest';
import type { Finding, LonLat } from '../finding.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import type { Check } from './check.ts';
import { itemOrder } from './itemOrder.ts';
import { itemsOnTop } from './itemsOnTop.ts';

/** By the right of the road, so many metres past the pin at 1500 m. */
const beside = (along: number, right: number = 5): LonLat => from(from(ORIGIN, 90, 1500 + along), 180, right);
const found = (check: Check, items: PlanStation['items'], keys: Partial<PlanStation> = {}): readonly Finding[] =>
  check.find(
    layoutOf(
      [turtle(ORIGIN, [[90, 3000]])],
      [{ at: beside(0), side: 'right', serves: ['gel', 'sportsDrink', 'water'], items, ...keys }],
    ),
  );
// Gel from -9.4488 m to -7.62 m, sports drink from 0 m to 1.8288 m, water from 4.8768 m to 6.7056 m, boxes from 52.4256 m on.

describe('item-order', () => {
  it('is an error where gel comes after a drink, with the order in which runners meet them', () => {
    expect(found(itemOrder, { gel: { at: beside(9) } })).toEqual([
      expect.objectContaining({
        code: 'item-order',
        severity: 'error',
        params: {
          met: ['sportsDrink', 'water', 'gel', 'trash'],
          wanted: ['gel', 'sportsDrink', 'water', 'trash'],
          byHand: ['gel'],
        },
        where: expect.objectContaining({ path: '/stations/0/items/gel', item: 'gel' }),
      }),
    ]);
  });

  it('is told from one end of a table to the next', () => {
    expect(found(itemOrder, { water: { at: beside(-1.9) } })).toHaveLength(1);
    expect(found(itemOrder, { water: { at: beside(1.9) } })).toEqual([]);
    expect(found(itemOrder, { gel: { at: beside(-1.9) } })).toEqual([]);
  });

  it('is an error where boxes begin before the last table ends', () => {
    expect(found(itemOrder, { trash: { at: beside(6.6) } }, { boxes: 2 })).toEqual([]);
    expect(found(itemOrder, { trash: { at: beside(3.5) } })).toHaveLength(1);
    expect(found(itemOrder, { trash: { at: beside(7) } })).toEqual([]);
  });

  it('is silent as the practice lays out, without boxes, and about an item that strayed', () => {
    expect(found(itemOrder, {})).toEqual([]);
    expect(found(itemOrder, { trash: { at: beside(-60) } }, { boxes: 0 })).toEqual([]);
    expect(found(itemOrder, { gel: { at: beside(9, 80) } })).toEqual([]);
  });
});

describe('items-on-top', () => {
  it('is an error where a hand has put one table on another, with their common length', () => {
    expect(found(itemsOnTop, { gel: { at: beside(5.8768) } })).toEqual([
      expect.objectContaining({
        code: 'items-on-top',
        severity: 'error',
        measured: expect.closeTo(0.8288, 2),
        limit: 0,
        unit: 'm',
        params: expect.objectContaining({ items: ['gel', 'water'], byHand: ['gel'] }),
        where: expect.objectContaining({ path: '/stations/0/items/gel', item: 'gel' }),
      }),
    ]);
  });

  it('ends where one begins where the other ends, and two rows apart', () => {
    expect(found(itemsOnTop, { gel: { at: beside(6.69) } })).toHaveLength(1);
    expect(found(itemsOnTop, { gel: { at: beside(6.72) } })).toEqual([]);
    expect(found(itemsOnTop, { gel: { at: beside(5.8768, 6.9) } })).toHaveLength(1);
    expect(found(itemsOnTop, { gel: { at: beside(5.8768, 7.1) } })).toEqual([]);
  });

  it('is found without a hand too, where the plan’s distances say so', () => {
    expect(found(itemsOnTop, {}, { practice: { trashFrom: 0 } })).toHaveLength(1);
    expect(found(itemsOnTop, {}, { practice: { trashFrom: 0.51 } })).toEqual([]);
    expect(found(itemsOnTop, {}, { practice: { signAhead: 0.4 } })).toHaveLength(1);
  });

  it('leaves the order to it, and is silent about what strayed', () => {
    expect(found(itemOrder, { gel: { at: beside(5.8768) } })).toEqual([
      expect.objectContaining({ params: expect.objectContaining({ met: ['sportsDrink', 'water', 'gel', 'trash'] }) }),
    ]);
    expect(found(itemOrder, { gel: { at: beside(1) } })).toEqual([]);
    expect(found(itemsOnTop, { gel: { at: beside(5.8768, 80) } })).toEqual([]);
  });
});
