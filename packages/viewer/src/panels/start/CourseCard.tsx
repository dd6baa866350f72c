/** One file of the start sheet: its length, the faults of its track, and what to do about them. */
import type { Finding } from '@halfcup/core';
import type { GapRule } from '@halfcup/core/plan';
import type { JSX } from 'preact';
import { useStore, type CourseFile } from '../../state/store/store.ts';
import { messageOf } from '../../state/view/voice.ts';
import { counted, farText } from '../../words.ts';
import { SeverityMark } from '../ui/SeverityMark.tsx';
import type { CourseDraft } from './draft.ts';
import type { Offer } from './offers.ts';
import { TypedChoice, TypedField } from '../ui/fields/TypedField.tsx';

const GAPS = [
  ['refuse', 'none allowed'],
  ['join', 'join with a straight line'],
  ['skip', 'skip, adding no distance'],
] as const;

const Faults = ({ findings }: { readonly findings: readonly Finding[] }): JSX.Element | null => {
  const store = useStore();
  if (findings.length === 0) return null;
  return (
    <ul class="start-faults">
      {findings.map((finding, k) => (
        <li key={k}>
          <SeverityMark severity={finding.severity} />
          <span>{messageOf(store, finding)}</span>
        </li>
      ))}
    </ul>
  );
};

interface Props {
  readonly original: CourseFile;
  readonly offer: Offer;
  readonly draft: CourseDraft;
  readonly change: (course: Partial<CourseDraft>) => void;
}

/** Spikes and tangles: fixed, or left as they are. */
function FaultChoice({ offer, draft, change }: Omit<Props, 'original'>): JSX.Element {
  return (
    <fieldset class="start-choice">
      <legend>{draft.fixed ? 'Faults of the track' : `Faults of the track: ${offer.fixable.length}`}</legend>
      <label>
        <input type="radio" checked={draft.fixed} onChange={() => change({ fixed: true })} /> Fix: take out spikes and
        tangles (saved as a new file, {draft.file} stays as it is)
      </label>
      <label>
        <input type="radio" checked={!draft.fixed} onChange={() => change({ fixed: false })} /> Leave
      </label>
      {offer.fixable.length > 6 ? (
        <details>
          <summary>{counted(offer.fixable.length, 'fault')}</summary>
          <Faults findings={offer.fixable} />
        </details>
      ) : (
        <Faults findings={offer.fixable} />
      )}
    </fieldset>
  );
}

export function CourseCard({ original, offer, draft, change }: Props): JSX.Element {
  const units = useStore().units.value;
  const lines = [...original.document.tracks, ...original.document.routes];
  const title = draft.name.trim() === '' ? draft.file : draft.name;
  return (
    <section class="start-card" aria-label={`Course ${title}`}>
      <h3>
        {draft.file}
        <span class="start-length">
          {offer.length === null ? 'cannot be used as it is' : farText(offer.length, units)}
        </span>
      </h3>
      <TypedField label="Course name" value={draft.name} wide change={(name) => change({ name })} />
      {lines.length > 1 ? (
        <TypedChoice
          label="Track"
          value={draft.track}
          choices={[
            ['', 'the first with points'],
            ...lines.map(({ name }, k) => [`${k}`, name ?? `Track ${k + 1}`] as const),
          ]}
          change={(track) => change({ track })}
        />
      ) : null}
      {offer.fixable.length > 0 || draft.fixed ? <FaultChoice offer={offer} draft={draft} change={change} /> : null}
      <Faults findings={offer.others} />
      {draft.gaps !== 'refuse' || offer.others.some(({ code }) => code.includes('gap')) ? (
        <TypedChoice
          label="Gaps in the track"
          value={draft.gaps}
          choices={GAPS}
          change={(gaps) => change({ gaps: gaps as GapRule })}
        />
      ) : null}
      <label class="start-check">
        <input
          type="checkbox"
          checked={draft.reverse}
          onChange={(event) => change({ reverse: event.currentTarget.checked })}
        />{' '}
        Run in reverse
      </label>
    </section>
  );
}
