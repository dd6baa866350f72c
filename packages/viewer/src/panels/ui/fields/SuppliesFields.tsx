/** What is bought and poured: rules of the plan, or a station's own. */
import type { Packs, Served, Supplies } from '@halfcup/core';
import type { JSX } from 'preact';
import { SERVED_WORD } from '../../../words.ts';
import { ChoiceField } from './ChoiceField.tsx';
import { MassField } from './MassField.tsx';
import { NumberField } from './NumberField.tsx';
import { PairField } from './PairField.tsx';
import { ResupplyFields } from './ResupplyFields.tsx';
import { ruleField, type SuppliesProps } from './rules.ts';
import { VolumeField } from './VolumeField.tsx';

const KINDS: readonly Served[] = ['water', 'sportsDrink', 'gel'];
const DIVISIONS = [
  ['run', 'Runners'],
  ['walk', 'Walkers'],
  ['wheels', 'Wheels'],
] as const;
const HEAT = [
  { value: 'cool', label: 'cool' },
  { value: 'warm', label: 'warm' },
  { value: 'hot', label: 'hot' },
];
const PIECES: readonly (readonly [key: Exclude<keyof Packs, 'waterJug' | 'sportsDrinkJug'>, label: string])[] = [
  ['cups', 'Cups in a pack'],
  ['gels', 'Gels in a box'],
  ['gloves', 'Gloves in a pack'],
  ['bags', 'Trash bags in a pack'],
  ['towels', 'Towels in a pack'],
  ['stackingSheets', 'Stacking sheets in a pack'],
];
const WEIGHED = [
  ['cups', 'A pack of cups'],
  ['waterJug', 'A jug of water'],
  ['sportsDrinkJug', 'A jug of sports drink'],
  ['gels', 'A box of gels'],
  ['gloves', 'A pack of gloves'],
  ['bags', 'A pack of trash bags'],
  ['towels', 'A pack of towels'],
  ['stackingSheets', 'A pack of stacking sheets'],
  ['table', 'A table'],
  ['sign', 'A sign'],
  ['box', 'A trash box'],
] as const;

const Take = (props: SuppliesProps): JSX.Element => (
  <details class="entry-more">
    <summary>What one takes</summary>
    {DIVISIONS.flatMap(([division, who]) =>
      KINDS.map((kind) => (
        <NumberField
          key={`${division}-${kind}`}
          {...ruleField(props, ['supplies', 'take', division, kind], `${who}: ${SERVED_WORD[kind]}`)}
          fallback={props.fallback.take[division]?.[kind]}
          unit={kind === 'gel' ? 'gels' : 'cups'}
        />
      )),
    )}
  </details>
);

const PacksAndWeights = (props: SuppliesProps): JSX.Element => (
  <details class="entry-more">
    <summary>Packs and weights</summary>
    {PIECES.map(([key, label]) => (
      <NumberField
        key={key}
        {...ruleField(props, ['supplies', 'packs', key], label)}
        fallback={props.fallback.packs[key]}
      />
    ))}
    <VolumeField
      {...ruleField(props, ['supplies', 'packs', 'waterJug'], 'Jug of water holds')}
      fallback={props.fallback.packs.waterJug}
    />
    <VolumeField
      {...ruleField(props, ['supplies', 'packs', 'sportsDrinkJug'], 'Jug of sports drink holds')}
      fallback={props.fallback.packs.sportsDrinkJug}
    />
    {WEIGHED.map(([key, label]) => (
      <MassField
        key={key}
        {...ruleField(props, ['supplies', 'weights', key], `${label} weighs`)}
        fallback={props.fallback.weights[key]}
      />
    ))}
  </details>
);

const SHARES: readonly (readonly [key: 'waste' | 'fill' | 'gelOrder', label: string])[] = [
  ['waste', 'Spilt and wasted'],
  ['fill', 'A cup is filled to'],
  ['gelOrder', 'Gels ordered for each taken'],
];

export function SuppliesFields(props: SuppliesProps): JSX.Element {
  const { fallback }: { readonly fallback: Supplies } = props;
  return (
    <>
      <ChoiceField
        {...ruleField(props, ['supplies', 'heat'], 'Heat of the day')}
        choices={HEAT}
        fallback={fallback.heat ?? 'not said'}
      />
      <NumberField
        {...ruleField(props, ['supplies', 'wbgtC'], 'Wet-bulb globe temperature')}
        fallback={fallback.wbgtC}
        unit="°C"
      />
      <PairField
        {...ruleField(props, ['supplies', 'heatSteps'], 'Warm from, hot from')}
        fallback={fallback.heatSteps}
        unit="°C"
      />
      <VolumeField {...ruleField(props, ['supplies', 'cup'], 'A cup holds')} fallback={fallback.cup} small />
      {SHARES.map(([key, label]) => (
        <NumberField
          key={key}
          {...ruleField(props, ['supplies', key], label)}
          fallback={fallback[key]}
          unit={key === 'gelOrder' ? '' : 'of 1'}
        />
      ))}
      <NumberField
        {...ruleField(props, ['supplies', 'cupsPerLayer'], 'Cups on a table, one layer')}
        fallback={fallback.cupsPerLayer}
        unit="cups"
      />
      <NumberField {...ruleField(props, ['supplies', 'layers'], 'Layers of cups')} fallback={fallback.layers} />
      <NumberField
        {...ruleField(props, ['supplies', 'cupsPerBag'], 'Cups in a trash bag')}
        fallback={fallback.cupsPerBag}
        unit="cups"
      />
      <PairField
        {...ruleField(props, ['supplies', 'prePourFloor'], 'Poured before: bunched, spread')}
        fallback={fallback.prePourFloor}
        unit="of 1"
      />
      <NumberField
        {...ruleField(props, ['supplies', 'prePourSafety'], 'Factor for a late pourer')}
        fallback={fallback.prePourSafety}
      />
      <ResupplyFields {...props} />
      <Take {...props} />
      <PacksAndWeights {...props} />
    </>
  );
}
