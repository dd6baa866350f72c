/** What is left at a station after the race, as people count it; what was used follows and goes into the plan as one step. */
import type { Finding, StationDay } from '@halfcup/core';
import { leftFields, usedOfTexts, type LeftField, type LeftKey, type Used } from '@halfcup/core/raceday';
import { formatVolume } from '@halfcup/core/units';
import type { JSX } from 'preact';
import { useEffect, useId, useState } from 'preact/hooks';
import { countUsed } from '../../state/edits/year.ts';
import { run } from '../../state/edits/workbench.ts';
import { useStore, type OpenPlan } from '../../state/store/store.ts';
import { firstMessage, messageOf } from '../../state/view/voice.ts';
import { describedBy, FieldFrame } from '../ui/fields/FieldFrame.tsx';
import { grouped } from './words.ts';
import { LEFT_WORD, usedText } from './yearWords.ts';

type Texts = { readonly [key in LeftKey]?: string };

const isLoose = (key: LeftKey): boolean => key === 'cupsLoose' || key === 'gelsLoose';
const isEmpty = (key: LeftKey): boolean => key === 'waterEmpty' || key === 'sportsDrinkEmpty';

interface CountProps {
  readonly field: LeftField;
  readonly value: string;
  readonly trouble: string | null;
  readonly put: (text: string) => void;
}

function Count({ field: { key, sent, pack }, value, trouble, put }: CountProps): JSX.Element {
  const { units } = useStore();
  const id = useId();
  const jug = key.startsWith('water') || key.startsWith('sports');
  const size = jug ? formatVolume(pack, units.value) : grouped(pack);
  const unit = isLoose(key) || isEmpty(key) ? '' : `of ${grouped(sent)} sent, ${size} each`;
  return (
    <FieldFrame id={id} label={LEFT_WORD[key]} unit={unit} trouble={trouble}>
      <input
        id={id}
        type="text"
        inputMode="decimal"
        class="entry-figure"
        autocomplete="off"
        value={value}
        aria-invalid={trouble !== null}
        aria-describedby={describedBy(id, { unit, trouble })}
        onInput={(event) => put(event.currentTarget.value)}
      />
    </FieldFrame>
  );
}

interface Props {
  readonly own: StationDay;
  readonly name: string;
  readonly open: OpenPlan;
}

export function LeftoversForm({ own, name, open }: Props): JSX.Element {
  const store = useStore();
  const [texts, setTexts] = useState<Texts>({});
  const [faults, setFaults] = useState<readonly Finding[]>([]);
  const clear = (): void => {
    setTexts({});
    setFaults([]);
  };
  useEffect(clear, [own.id]);
  const { plan } = open.analysis;
  const used: Used | undefined = plan.stations.find(({ id }) => id === own.id)?.used;
  const take = (event: Event): void => {
    event.preventDefault();
    const counted = usedOfTexts(plan, own, texts);
    setFaults(counted.findings);
    if (!counted.ok) return;
    const refused = run(store, countUsed(`count what was used, ${name}`, [{ station: own.id, used: counted.value }]));
    if (refused.length === 0) clear();
    store.notice.value = { text: firstMessage(store, refused) ?? `Used at ${name}: ${usedText(counted.value)}.` };
  };
  const troubleOf = (key: LeftKey): string | null =>
    firstMessage(
      store,
      faults.filter(({ where }) => where.item === key),
    );
  return (
    <form class="leftovers" noValidate onSubmit={take} aria-label={`Left at ${name} after the race`}>
      <p class="soft">
        {used === undefined ? 'Not counted yet.' : `Counted: ${usedText(used)} used.`} Count when the last runner is
        through. An open jug counts half; leave empty what nobody counted.
      </p>
      {leftFields(own).map((field) => (
        <Count
          key={field.key}
          field={field}
          value={texts[field.key] ?? ''}
          trouble={troubleOf(field.key)}
          put={(text) => setTexts({ ...texts, [field.key]: text })}
        />
      ))}
      {faults
        .filter(({ where }) => where.item === undefined)
        .map((fault) => (
          <p key={fault.code} class="entry-trouble" role="alert">
            {messageOf(store, fault)}
          </p>
        ))}
      <button type="submit">Save counts</button>
    </form>
  );
}
