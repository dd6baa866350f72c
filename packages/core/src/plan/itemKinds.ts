/** The kinds of items, and the form that each has on the ground, on paper and on a map. What draws or counts items asks for the form. */

/** Kinds of items in the order in which the lead's runners usually meet them. */
export const ITEM_KINDS = ['sign', 'gel', 'sportsDrink', 'water', 'handOut', 'trash'] as const;

/** One thing laid out on the ground; `handOut` is the line where cups change hands, `trash` a stretch with boxes. */
export type ItemKind = (typeof ITEM_KINDS)[number];

/**
 * What an item looks like: a `board` stands at one place; a `table` is as long as its tables; the `line` is where cups change hands;
 * `boxes` stand along a stretch. Tables and the line are one thing for all directions, boards and boxes are each direction's own.
 */
export type ItemForm = 'board' | 'table' | 'line' | 'boxes';

const FORMS: Readonly<Record<ItemKind, ItemForm>> = {
  sign: 'board',
  gel: 'table',
  sportsDrink: 'table',
  water: 'table',
  handOut: 'line',
  trash: 'boxes',
};

/**
 * The form of a kind of item.
 * @example
 * ```ts
 * import { ITEM_KINDS, formOf } from '@halfcup/core';
 * ITEM_KINDS.filter((kind) => formOf(kind) === 'table'); // → ['gel', 'sportsDrink', 'water']
 * ```
 */
export const formOf = (kind: ItemKind): ItemForm => FORMS[kind];
