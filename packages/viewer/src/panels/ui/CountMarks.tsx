/** How many findings of each severity there are, each number beside its shape; read out in words. */
import type { JSX } from 'preact';
import type { Counts, Waived } from '../../state/view/derive.ts';
import { countWords, waivedWords } from '../../words.ts';
import { SeverityMark } from './SeverityMark.tsx';

interface Props {
  readonly counts: Counts;
  /** Only errors among them are shown; others are read out. */
  readonly waived?: Waived;
}

export function CountMarks({ counts, waived }: Props): JSX.Element {
  const words = [countWords(counts), waived === undefined ? '' : waivedWords(waived)].filter((part) => part !== '');
  return (
    <span class="counts" title={words.join(', ')}>
      {(['error', 'warning', 'note'] as const).map((severity) =>
        counts[severity] === 0 ? null : (
          <span key={severity} class={`state state-${severity}`} aria-hidden="true">
            <SeverityMark severity={severity} />
            {counts[severity]}
          </span>
        ),
      )}
      {waived === undefined || waived.errors === 0 ? null : (
        <span class="state state-waived" aria-hidden="true">
          <SeverityMark severity="waived" />
          {waived.errors} waived
        </span>
      )}
      <span class="unseen">{words.join(', ')}</span>
    </span>
  );
}
