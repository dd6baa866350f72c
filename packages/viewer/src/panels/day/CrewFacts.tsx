/** Volunteers at a time, by task. */
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
      {crew.total > sum ? <Fact name="More, to the plan’s minimum">{String(crew.total - sum)}</Fact> : null}
      <Fact name="At a time">{String(crew.total)}</Fact>
      <Fact name="On the ground">{`${crew.hours.toFixed(1)} h, ${counted(crew.shifts, 'shift')}`}</Fact>
    </dl>
  );
}
