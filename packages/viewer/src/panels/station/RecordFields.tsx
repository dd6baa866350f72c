/** People, what is written down about the place, and what was counted after the day. */
import type { Finding, Served } from '@halfcup/core';
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
    <TextField {...ownField(editing, ['people', 'radio'], 'Radio name')} />
    <TextField {...ownField(editing, ['people', 'phone'], 'Telephone')} />
  </>
);

export function NoteFields(editing: Editing): JSX.Element {
  const store = useStore();
  const hasWalked = ownRaw(editing, ['walked']) !== undefined;
  const saveBy = (value: unknown): readonly Finding[] =>
    setOwn(store, editing, value === undefined ? ['walked'] : ['walked', 'by'], value, 'change walked by');
  return (
    <>
      <TextField {...ownField(editing, ['note'], 'Note')} rows={3} />
      <TextField {...ownField(editing, ['why'], 'Placed so because')} rows={2} />
      <CheckField {...ownField(editing, ['fixed'], 'Fixed: better positions are not looked for')} />
      <TextField {...ownField(editing, ['walked', 'by'], 'Walked by')} save={saveBy} />
      {hasWalked ? (
        <TextField {...ownField(editing, ['walked', 'date'], 'Walked on')} hint="A date such as 2027-06-20." />
      ) : null}
    </>
  );
}

const KINDS: readonly Served[] = ['water', 'sportsDrink', 'gel'];

export const UsedFields = (editing: Editing): JSX.Element => (
  <>
    <p class="soft">Counted after the day; next year’s take rates are learnt from it.</p>
    {KINDS.map((kind) => (
      <NumberField
        key={kind}
        {...ownField(editing, ['used', kind], `Used: ${SERVED_WORD[kind]}`)}
        unit={kind === 'gel' ? 'gels' : 'cups'}
      />
    ))}
  </>
);
