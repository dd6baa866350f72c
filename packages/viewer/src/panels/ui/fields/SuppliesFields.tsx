/** What is bought and poured: rules of the plan, or a station's own. */
import type { Packs, Served, Supplies } from '@halfcup/core/plan';
import type { JSX } from 'preact';
import { SERVED_WORD } from '../../../words.ts';
import { ChoiceField } from './ChoiceField.tsx';
import { NamesField } from './LinesField.tsx';
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
  ['wheels', 'Wheelchair racers'],
] as const;
const HEAT = [
  { value: 'cool', label: 'cool' },
  { value: 'warm', label: 'warm' },
  { value: 'hot', label: 'hot' },
];
const HAND_OUT = [
  { value: 'cups', label: 'cups' },
  { value: 'bottles', label: 'runners’ bottles' },
];
const PIECES: readonly (readonly [key: Exclude<keyof Packs, 'waterJug' | 'sportsDrinkJug'>, label: string])[] = [
  ['cups', 'Cups per pack'],
  ['gels', 'Gels per box'],
  ['gloves', 'Gloves per pack'],
  ['bags', 'Trash bags per pack'],
  ['towels', 'Towels per pack'],
  ['stackingSheets', 'Stacking sheets per pack'],
];
const WEIGHED = [
  ['cups', 'Pack of cups'],
  ['waterJug', 'Water jug'],
  ['sportsDrinkJug', 'Sports-drink jug'],
  ['gels', 'Box of gels'],
  ['gloves', 'Pack of gloves'],
  ['bags', 'Pack of trash bags'],
  ['towels', 'Pack of towels'],
  ['stackingSheets', 'Pack of stacking sheets'],
  ['table', 'Table'],
  ['sign', 'Sign'],
  ['box', 'Trash box'],
] as const;

const Take = (props: SuppliesProps): JSX.Element => (
  <details class="entry-more">
    <summary>What each person takes</summary>
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

/** What hands call out: each name on a line. */
const Flavours = (props: SuppliesProps): JSX.Element => (
  <>
    {(['sportsDrink', 'gel'] as const).map((kind) => (
      <NamesField
        key={kind}
        field={ruleField(props, ['supplies', 'flavours', kind], `Flavours of ${SERVED_WORD[kind]}, one a line`)}
        fallback={props.fallback.flavours?.[kind]}
      />
    ))}
  </>
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
      {...ruleField(props, ['supplies', 'packs', 'waterJug'], 'Water jug holds')}
      fallback={props.fallback.packs.waterJug}
    />
    <VolumeField
      {...ruleField(props, ['supplies', 'packs', 'sportsDrinkJug'], 'Sports-drink jug holds')}
      fallback={props.fallback.packs.sportsDrinkJug}
    />
    {WEIGHED.map(([key, label]) => (
      <MassField
        key={key}
        {...ruleField(props, ['supplies', 'weights', key], `${label}, weight`)}
        fallback={props.fallback.weights[key]}
      />
    ))}
  </details>
);

const SHARES: readonly (readonly [key: 'waste' | 'reserve' | 'waterShare' | 'fill' | 'gelOrder', label: string])[] = [
  ['waterShare', 'Water, where both drinks are served'],
  ['waste', 'Spilt or wasted'],
  ['reserve', 'Ordered in reserve'],
  ['fill', 'Cup filled to'],
  ['gelOrder', 'Gels ordered per gel taken'],
];

/** How hot it is, by a level or by a thermometer. */
function HeatFields(props: SuppliesProps): JSX.Element {
  const { fallback } = props;
  return (
    <>
      <ChoiceField
        {...ruleField(props, ['supplies', 'heat'], 'Heat on the day')}
        choices={HEAT}
        fallback={fallback.heat ?? 'not set'}
      />
      <NumberField
        {...ruleField(props, ['supplies', 'wbgtC'], 'Wet-bulb globe temperature')}
        fallback={fallback.wbgtC}
        unit="°C"
      />
      <PairField
        {...ruleField(props, ['supplies', 'heatSteps'], 'Warm from, hot from (WBGT)')}
        fallback={fallback.heatSteps}
        unit="°C"
      />
    </>
  );
}

export function SuppliesFields(props: SuppliesProps): JSX.Element {
  const { fallback }: { readonly fallback: Supplies } = props;
  return (
    <>
      <HeatFields {...props} />
      <ChoiceField
        {...ruleField(props, ['supplies', 'handOut'], 'Drinks are handed out in')}
        choices={HAND_OUT}
        fallback={fallback.handOut}
      />
      <NumberField
        {...ruleField(props, ['supplies', 'drinkRate'], 'A runner drinks')}
        fallback={fallback.drinkRate}
        unit="l/h"
      />
      <Flavours {...props} />
      <VolumeField {...ruleField(props, ['supplies', 'cup'], 'Cup holds')} fallback={fallback.cup} small />
      {SHARES.map(([key, label]) => (
        <NumberField
          key={key}
          {...ruleField(props, ['supplies', key], label)}
          fallback={fallback[key]}
          unit={key === 'gelOrder' ? '' : '(0–1)'}
        />
      ))}
      <NumberField
        {...ruleField(props, ['supplies', 'cupsPerLayer'], 'Cups per table and layer')}
        fallback={fallback.cupsPerLayer}
        unit="cups"
      />
      <NumberField {...ruleField(props, ['supplies', 'layers'], 'Layers of cups')} fallback={fallback.layers} />
      <NumberField
        {...ruleField(props, ['supplies', 'cupsPerBag'], 'Cups per trash bag')}
        fallback={fallback.cupsPerBag}
        unit="cups"
      />
      <NumberField
        {...ruleField(props, ['supplies', 'cupsPerBox'], 'Cups per trash box')}
        fallback={fallback.cupsPerBox}
        unit="cups"
      />
      <PairField
        {...ruleField(props, ['supplies', 'prePourFloor'], 'Pre-pour, at least: bunched field, spread field')}
        fallback={fallback.prePourFloor}
        unit="(0–1)"
      />
      <NumberField
        {...ruleField(props, ['supplies', 'prePourSafety'], 'Pourers slower than planned by a factor of')}
        fallback={fallback.prePourSafety}
      />
      <ResupplyFields {...props} />
      <Take {...props} />
      <PacksAndWeights {...props} />
    </>
  );
}
