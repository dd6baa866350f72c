/** Whom the station serves: races, the first way past, each time past. */
import { type Finding } from '@halfcup/core';
import { type StationPass } from '@halfcup/core/stages';
import type { JSX } from 'preact';
import { useStore } from '../../state/store/store.ts';
import { compassWord, farText, timePast } from '../../words.ts';
import { ChoiceField, type Choice } from '../ui/fields/ChoiceField.tsx';
import { SetField } from '../ui/fields/SetField.tsx';
import { ownField, ownRaw, setOwn, type Editing } from './editing.ts';

const keyOf = ({ race, pass }: { readonly race: string; readonly pass: number }): string =>
  JSON.stringify([race, pass]);
const passFrom = (key: string): { readonly race: string; readonly pass: number } => {
  const [race, pass] = JSON.parse(key) as [string, number];
  return { race, pass };
};

const WAYS = [
  { value: 'lead', label: 'the first way only' },
  { value: 'all', label: 'every way past' },
  { value: 'list', label: 'as chosen below' },
];

function usePassChoices({ station, open }: Editing): readonly Choice[] {
  const { units } = useStore();
  const label = ({ race, pass, measure, azimuthDeg }: StationPass): string =>
    `${open.analysis.plan.races.find(({ id }) => id === race)?.name ?? race}${timePast(pass)}, ${farText(measure, units.value)}, heading ${compassWord(azimuthDeg)}`;
  return station.passes.map((pass) => ({ value: keyOf(pass), label: label(pass) }));
}

function ChosenPasses(
  editing: Editing & {
    readonly choices: readonly Choice[];
    readonly list: readonly { readonly race: string; readonly pass: number }[];
  },
): JSX.Element {
  const store = useStore();
  const save = (value: unknown): readonly Finding[] =>
    setOwn(
      store,
      editing,
      ['passes'],
      Array.isArray(value) ? value.map((key) => passFrom(String(key))) : undefined,
      'change which runners are served',
    );
  return (
    <SetField
      {...ownField(editing, ['passes'], 'Served when they come past')}
      raw={editing.list.map(keyOf)}
      save={save}
      choices={editing.choices}
      fallback={[]}
    />
  );
}

export function ServedFields(editing: Editing): JSX.Element {
  const store = useStore();
  const { station, open } = editing;
  const { races } = open.analysis.plan;
  const choices = usePassChoices(editing);
  const lead = station.station.lead;
  const { passes } = station.station;
  const savePasses = (value: unknown): readonly Finding[] => {
    const served = station.passes.filter((pass) => pass.served).map(({ race, pass }) => ({ race, pass }));
    return setOwn(store, editing, ['passes'], value === 'list' ? served : value, 'change which runners are served');
  };
  const saveLead = (value: unknown): readonly Finding[] =>
    setOwn(
      store,
      editing,
      ['lead'],
      typeof value === 'string' ? passFrom(value) : undefined,
      'change the first way past',
    );
  const raw = ownRaw(editing, ['passes']);
  return (
    <>
      <SetField
        {...ownField(editing, ['races'], 'Races served')}
        choices={races.map(({ id, name }) => ({ value: id, label: name }))}
        fallback={races.map(({ id }) => id)}
      />
      <ChoiceField
        {...ownField(editing, ['lead'], 'First way past')}
        raw={lead === undefined ? undefined : keyOf(lead)}
        save={saveLead}
        choices={choices}
        fallback="when the first race first comes past"
        stack
      />
      <ChoiceField
        {...ownField(editing, ['passes'], 'Serves runners who come')}
        raw={Array.isArray(raw) ? 'list' : raw}
        save={savePasses}
        choices={WAYS.filter(({ value }) => value !== 'lead' || raw === 'lead')}
        fallback="the first way only"
        stack
      />
      {typeof passes === 'string' ? null : <ChosenPasses {...editing} choices={choices} list={passes} />}
    </>
  );
}
