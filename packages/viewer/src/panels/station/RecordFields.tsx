/** People, what is written down about the place, and what was counted after the day. */
import type { Finding } from '@halfcup/core';
import type { Served } from '@halfcup/core/plan';
import type { JSX } from 'preact';
import { useStore } from '../../state/store/store.ts';
import { SERVED_WORD } from '../../words.ts';
import { CheckField } from '../ui/fields/CheckField.tsx';
import { NumberField } from '../ui/fields/NumberField.tsx';
import { TextField } from '../ui/fields/TextField.tsx';
import { ownField, ownRaw, setOwn, type Editing } from './editing.ts';

export const PeopleFields = (editing: Editing): JSX.Element => (
  <>
    <TextField {...ownField(editing, ['people', 'captain'], 'Captain')} />
    <TextField {...ownField(editing, ['people', 'radio'], 'Radio call sign')} />
    <TextField {...ownField(editing, ['people', 'phone'], 'Phone')} />
  </>
);

export function NoteFields(editing: Editing): JSX.Element {
  const store = useStore();
  const hasWalked = ownRaw(editing, ['walked']) !== undefined;
  const saveBy = (value: unknown): readonly Finding[] =>
    setOwn(store, editing, value === undefined ? ['walked'] : ['walked', 'by'], value, 'change checked on foot by');
  return (
    <>
      <TextField {...ownField(editing, ['note'], 'Note')} rows={3} />
      <TextField {...ownField(editing, ['why'], 'Why it is here')} rows={2} />
      <CheckField {...ownField(editing, ['fixed'], 'Fixed: leave it out when searching for better places')} />
      <TextField {...ownField(editing, ['walked', 'by'], 'Checked on foot by')} save={saveBy} />
      {hasWalked ? (
        <TextField {...ownField(editing, ['walked', 'date'], 'Checked on foot on')} hint="A date such as 2027-06-20." />
      ) : null}
    </>
  );
}

const KINDS: readonly Served[] = ['water', 'sportsDrink', 'gel'];

export const UsedFields = (editing: Editing): JSX.Element => (
  <>
    <p class="soft">Count what was used: it helps to plan the next race.</p>
    {KINDS.map((kind) => (
      <NumberField
        key={kind}
        {...ownField(editing, ['used', kind], `Used: ${SERVED_WORD[kind]}`)}
        unit={kind === 'gel' ? 'gels' : 'cups'}
      />
    ))}
  </>
);
