/** One finding: what was found, measured against which limit, on whose word. Choosing it goes there. */
import { findingLine, type Finding } from '@halfcup/core';
import type { JSX } from 'preact';
import { useStore } from '../../state/store/store.ts';
import { dateText, figuresOf, SEVERITY_WORD } from '../../words.ts';
import { SeverityMark } from '../ui/SeverityMark.tsx';
import { WaiveTools } from './WaiveTools.tsx';
import { chooseFinding } from '../../state/view/choose.ts';

interface Props {
  readonly finding: Finding;
  /** The station's name, where the list is not already about one. */
  readonly station: string | null;
  /** With what may be done about it. */
  readonly tools?: boolean;
}

const hasPlace = ({ where }: Finding): boolean =>
  where.station !== undefined || where.at !== undefined || (where.course !== undefined && where.measure !== undefined);

function placeInFile(finding: Finding): string | null {
  const { file, line, column } = finding.where;
  return file === undefined
    ? null
    : findingLine({
        ...finding,
        message: '',
        where: { file, ...(line === undefined ? {} : { line }), ...(column === undefined ? {} : { column }) },
      }).replace(/: $/u, '');
}

const waivedText = ({ by, reason, date }: NonNullable<Finding['waived']>): string =>
  `${by}${date === undefined ? '' : `, ${dateText(date)}`}: ${reason}`;

export function FindingCard({ finding, station, tools }: Props): JSX.Element {
  const store = useStore();
  const { measured, limit } = figuresOf(finding, store.units.value);
  const severity = finding.waived === undefined ? finding.severity : 'waived';
  const file = placeInFile(finding);
  return (
    <li class={`finding finding-${severity}`}>
      <p class="finding-head">
        <SeverityMark severity={severity} />
        <span class="finding-severity">
          {finding.waived === undefined ? SEVERITY_WORD[finding.severity] : 'waived'}
        </span>
        {station === null ? null : <span class="finding-station">{station}</span>}
        <code>{finding.code}</code>
      </p>
      {hasPlace(finding) ? (
        <button type="button" class="finding-message" onClick={() => chooseFinding(store, finding)}>
          {finding.message} <span class="finding-go">Show</span>
        </button>
      ) : (
        <p class="finding-message">{finding.message}</p>
      )}
      <dl class="finding-figures">
        {measured === null ? null : (
          <div>
            <dt>Measured</dt>
            <dd>{measured}</dd>
          </div>
        )}
        {limit === null ? null : (
          <div>
            <dt>Limit</dt>
            <dd>{limit}</dd>
          </div>
        )}
        {finding.source === undefined ? null : (
          <div>
            <dt>Source</dt>
            <dd>{finding.source}</dd>
          </div>
        )}
        {file === null ? null : (
          <div>
            <dt>In the file</dt>
            <dd class="file-place">{file}</dd>
          </div>
        )}
        {finding.waived === undefined ? null : (
          <div>
            <dt>Waived by</dt>
            <dd>{waivedText(finding.waived)}</dd>
          </div>
        )}
      </dl>
      {tools === true ? <WaiveTools finding={finding} station={station} /> : null}
    </li>
  );
}
