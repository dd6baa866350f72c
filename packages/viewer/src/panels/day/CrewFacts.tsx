/** Volunteers needed at once, by task. */
import type { StationDay } from '@halfcup/core';
import type { JSX } from 'preact';
import { TASK_WORD } from './words.ts';
import { counted } from '../../words.ts';
import { Fact } from '../ui/Fact.tsx';

const TASKS = ['captain', 'pour', 'handOut', 'gel', 'clean'] as const;

export function CrewFacts({ crew }: { readonly crew: StationDay['crew'] }): JSX.Element {
  const sum = TASKS.reduce((all, task) => all + crew[task], 0);
  return (
    <dl class="facts">
      {TASKS.filter((task) => crew[task] > 0).map((task) => (
        <Fact key={task} name={TASK_WORD[task]}>
          {String(crew[task])}
        </Fact>
      ))}
      {crew.total > sum ? <Fact name="Extra, to reach the minimum">{String(crew.total - sum)}</Fact> : null}
      <Fact name="Needed at once">{String(crew.total)}</Fact>
      <Fact name="On duty">{`${crew.hours.toFixed(1)} h, ${counted(crew.shifts, 'shift')}`}</Fact>
    </dl>
  );
}
