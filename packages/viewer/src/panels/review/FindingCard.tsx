/**
 * One finding: whom it is about, what is the matter, what it should be and what to do, with the measured value and its
 * limit. Choosing it goes there. What only few readers want (code, place in the files, source) is folded away.
 */
import { type Finding } from '@halfcup/core';
import { sourceText } from '@halfcup/core/sentences';
import type { JSX } from 'preact';
import { useStore } from '../../state/store/store.ts';
import { filePlace, partsOf } from '../../state/view/voice.ts';
import { dateText, figuresOf, SEVERITY_WORD } from '../../words.ts';
import { openPlanSection, sectionOf } from '../ui/openPlanSection.ts';
import { SeverityMark } from '../ui/SeverityMark.tsx';
import { RemedyButtons } from './RemedyButtons.tsx';
import { WaiveTools } from './WaiveTools.tsx';
import { chooseFinding } from '../../state/view/choose.ts';

interface Props {
  readonly finding: Finding;
  /** Whom it is about; empty where the list is about one station already, or the finding about none. */
  readonly subject: string;
  /** Id of the heading that takes the focus where a remedy has removed the card; absent: no remedies are offered. */
  readonly heading?: string;
  /** Somebody asks for it on the map or the strip. */
  readonly sought?: boolean;
  /** With its waiver. */
  readonly tools?: boolean;
}

const hasPlace = ({ where }: Finding): boolean =>
  where.station !== undefined || where.at !== undefined || (where.course !== undefined && where.measure !== undefined);

const waivedText = ({ by, reason, date }: NonNullable<Finding['waived']>): string =>
  `${by}${date === undefined ? '' : `, ${dateText(date)}`}: ${reason}`;

type Row = readonly [name: string, value: string | null | undefined];

const Rows = ({ rows }: { readonly rows: readonly Row[] }): JSX.Element => (
  <dl class="finding-figures">
    {rows.map(([name, value]) =>
      value === null || value === undefined || value === '' ? null : (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ),
    )}
  </dl>
);

function Sentence({ finding }: { readonly finding: Finding }): JSX.Element {
  const store = useStore();
  const [matter, ...rest] = partsOf(store, finding);
  return (
    <>
      <span class="finding-matter">{matter}</span>
      {rest.map((part) =>
        part === null || part === undefined || part === '' ? null : (
          <span key={part} class="finding-part">
            {' '}
            {part}
          </span>
        ),
      )}
    </>
  );
}

function Details({ finding }: { readonly finding: Finding }): JSX.Element {
  const { code, source, where } = finding;
  return (
    <details class="finding-details">
      <summary>Details</summary>
      <Rows
        rows={[
          ['Code', code],
          ['Source', source === undefined ? null : sourceText(source, 'en')],
          ['In the file', filePlace(finding).replace(/: $/u, '')],
          ['In the plan', where.path],
        ]}
      />
    </details>
  );
}

/** Goes to the field of the plan that a finding is about. */
function ShowField({ path = '' }: { readonly path?: string | undefined }): JSX.Element | null {
  const store = useStore();
  const section = sectionOf(path);
  return section === null ? null : (
    <button type="button" class="link-button" onClick={() => openPlanSection(store, section, path)}>
      Show where
    </button>
  );
}

export function FindingCard({ finding, subject, heading, sought, tools }: Props): JSX.Element {
  const store = useStore();
  const { waived } = finding;
  const { measured, limit } = figuresOf(finding, store.units.value);
  const severity = waived === undefined ? finding.severity : 'waived';
  return (
    <li
      class={`finding finding-${severity}${sought === true ? ' finding-sought' : ''}`}
      tabindex={sought === true ? -1 : undefined}
    >
      <p class="finding-head">
        <SeverityMark severity={severity} />
        {subject === '' ? null : <span class="finding-subject">{subject}</span>}
        <span class="finding-severity">{waived === undefined ? SEVERITY_WORD[finding.severity] : 'Waived'}</span>
        {finding.built === true ? <span class="finding-built">As built</span> : null}
      </p>
      {hasPlace(finding) ? (
        <button type="button" class="finding-message" onClick={() => chooseFinding(store, finding)}>
          <Sentence finding={finding} /> <span class="finding-go">Show</span>
        </button>
      ) : (
        <p class="finding-message">
          <Sentence finding={finding} />
        </p>
      )}
      <Rows
        rows={[
          ['Measured', measured],
          ['Limit', limit],
          ['Waived by', waived === undefined ? null : waivedText(waived)],
        ]}
      />
      <ShowField path={finding.where.path} />
      {heading === undefined ? null : <RemedyButtons finding={finding} subject={subject} heading={heading} />}
      <Details finding={finding} />
      {tools === true ? <WaiveTools finding={finding} subject={subject} /> : null}
    </li>
  );
}
