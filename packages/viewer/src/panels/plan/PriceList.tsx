/** What supplies cost and how long they take to come: from it follows the supply order. */
import type { Plan } from '@halfcup/core';
import type { PlanPrice } from '@halfcup/core/plan';
import type { JSX } from 'preact';
import { ChoiceField } from '../ui/fields/ChoiceField.tsx';
import { NumberField } from '../ui/fields/NumberField.tsx';
import { TextField } from '../ui/fields/TextField.tsx';
import { EntryList } from './EntryList.tsx';

const KIND_WORD: Readonly<Record<PlanPrice['kind'], string>> = {
  cups: 'Pack of cups',
  waterJug: 'Jug of water',
  sportsDrinkJug: 'Jug of sports drink',
  gels: 'Box of gels',
  gloves: 'Box of gloves',
  bags: 'Roll of trash bags',
  towels: 'Pack of towels',
  stackingSheets: 'Pack of stacking sheets',
  table: 'Table',
  box: 'Trash box',
  sign: 'Sign',
};
const KINDS = Object.keys(KIND_WORD) as PlanPrice['kind'][];

const CHOICES = KINDS.map((kind) => ({ value: kind, label: KIND_WORD[kind] }));

export const PriceList = ({ plan }: { readonly plan: Plan }): JSX.Element => {
  const items = plan.prices?.items ?? [];
  const free = KINDS.find((kind) => items.every((one) => one.kind !== kind));
  return (
    <>
      <TextField label="Currency" path={['prices', 'currency']} hint="As it is printed after an amount, such as EUR" />
      <EntryList
        path={['prices', 'items']}
        word="price"
        title={(index) => (items[index] === undefined ? `${index + 1}` : KIND_WORD[items[index].kind])}
        none="What a jug, a pack or a box costs. The supply order then has its cost, and the last day to order each line."
        {...(free === undefined ? {} : { fresh: () => ({ kind: free, price: 0 }) })}
        entry={(index) => {
          const field = (key: string): { readonly path: readonly (string | number)[] } => ({
            path: ['prices', 'items', index, key],
          });
          return (
            <>
              <ChoiceField label="What" {...field('kind')} choices={CHOICES} required />
              <NumberField label="Price of one" {...field('price')} required hint="Of one jug, pack, box or piece" />
              <NumberField label="Sold together" {...field('sold')} fallback={1} hint="As many are ordered at a time" />
              <NumberField label="Days of delivery" {...field('leadDays')} hint="From the order until it is there" />
            </>
          );
        }}
      />
    </>
  );
};
