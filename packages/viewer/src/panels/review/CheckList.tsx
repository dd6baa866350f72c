/** Every check of the review: what it asks, and whether it found something, found nothing, or could not run. */
import type { CheckRun } from '@halfcup/core';
import type { JSX } from 'preact';
import { useStore } from '../../state/store/store.ts';
import { reviewChecks } from '../../state/view/placed.ts';
import { counted } from '../../words.ts';

function outcome({ ran, reason, found, cannotTell }: CheckRun): string {
  if (!ran) return `not run: ${reason ?? 'no data'}`;
  if (found === 0) return 'no problems';
  return cannotTell === 0 ? counted(found, 'finding') : `${counted(found, 'finding')}, ${cannotTell} of them unclear`;
}

/** What found something first, then what could not run, then the rest, each in the review's order. */
const rank = ({ ran, found }: CheckRun): number => (!ran ? 1 : found > 0 ? 0 : 2);

export function CheckList(): JSX.Element | null {
  const { open, placed } = useStore();
  const checks = open.value === null ? [] : reviewChecks(open.value, placed.value);
  if (checks.length === 0) return null;
  const idle = checks.filter((check) => !check.ran).length;
  return (
    <details class="checks">
      <summary>
        {counted(checks.length - idle, 'check')} ran{idle === 0 ? '' : `, ${idle} could not run`}
      </summary>
      <ul>
        {checks
          .toSorted((a, b) => rank(a) - rank(b))
          .map((check) => (
            <li key={check.code} class={check.ran ? '' : 'soft'}>
              <span>{check.title}</span>
              <span class="soft">{outcome(check)}</span>
            </li>
          ))}
      </ul>
    </details>
  );
}
