/** Everything about supplies: heat, what runners take, cups, packs, weights; of the plan or of one station. */
import type { Supplies } from '@halfcup/core';
import type { JSX } from 'preact';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { DurationField } from '../fields/DurationField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { NumbersField } from '../fields/NumbersField.tsx';
import { useTarget } from '../fields/target.ts';
import { PACK_ROWS, SUPPLY_ROWS, WEIGHT_ROWS } from './keys.ts';
import { RuleFields } from './RuleFields.tsx';

const HEATS = [{ value: 'cool', label: 'cool' }, { value: 'warm', label: 'warm' }, { value: 'hot', label: 'hot' }] as const;
const DIVISIONS = [['run', 'A runner'], ['walk', 'A walker'], ['wheels', 'A wheelchair racer']] as const;
const TAKEN = [['water', 'cups of water'], ['sportsDrink', 'cups of sports drink'], ['gel', 'gels']] as const;

interface Props {
  readonly holds: Supplies;
  readonly station?: string | undefined;
  readonly about?: string | undefined;
}

function Take({ holds, station, about }: Props): JSX.Element {
  return (
    <>
      {DIVISIONS.flatMap(([division, who]) =>
        TAKEN.map(([kind, what]) => (
          <NumberField key={`${division}-${kind}`} label={`${who} takes ${what}`} path={['supplies', 'take', division, kind]} station={station} about={about} fallback={holds.take[division]?.[kind]} />
        )),
      )}
    </>
  );
}

function Resupply({ holds, station, about }: Props): JSX.Element {
  const target = useTarget({ label: 'resupply', path: ['supplies', 'resupply'], station, about });
  if (target.raw === undefined) {
    return (
      <button type="button" onClick={() => void target.save({ at: 0.25, takes: '40 min' })}>
        Say when to call for more
      </button>
    );
  }
  return (
    <>
      <NumberField label="Call for more when left" path={['supplies', 'resupply', 'at']} station={station} about={about} required unit="of 1" fallback={holds.resupply?.at} />
      <DurationField label="It takes" path={['supplies', 'resupply', 'takes']} station={station} about={about} required fallback={holds.resupply?.takes} />
      <button type="button" onClick={() => void target.save(undefined)}>Do not say when to call for more</button>
    </>
  );
}

export function SupplyFields({ holds, station, about }: Props): JSX.Element {
  const own = { station, about };
  return (
    <>
      <ChoiceField label="Heat" path={['supplies', 'heat']} {...own} choices={HEATS} fallback="by the WBGT, else cool" />
      <NumberField label="WBGT expected" path={['supplies', 'wbgtC']} {...own} unit="°C" fallback={holds.wbgtC} />
      <NumbersField label="Warm from, hot from" path={['supplies', 'heatSteps']} {...own} unit="°C" fallback={holds.heatSteps?.join(', ')} />
      <RuleFields rows={SUPPLY_ROWS} at={['supplies']} holds={{ ...holds }} {...own} />
      <NumbersField label="Poured before the first, at least: bunched, spread" path={['supplies', 'prePourFloor']} {...own} unit="of 1" fallback={holds.prePourFloor.join(', ')} />
      <Resupply holds={holds} {...own} />
      <details class="more">
        <summary>What people take</summary>
        <Take holds={holds} {...own} />
      </details>
      <details class="more">
        <summary>Packs</summary>
        <RuleFields rows={PACK_ROWS} at={['supplies', 'packs']} holds={{ ...holds.packs }} {...own} />
      </details>
      <details class="more">
        <summary>Weights</summary>
        <RuleFields rows={WEIGHT_ROWS} at={['supplies', 'weights']} holds={holds.weights} {...own} />
      </details>
    </>
  );
}
