/** The grade at the tables of each served pass, at the foot of the ground; heavier where it is steeper than tables may stand. */
import type { Course } from '@halfcup/core/stages';
import type { JSX } from 'preact';
import { gradeText } from '../words.ts';
import type { StripPass, StripScale } from './geometry.ts';
import { gradeAtTables } from './steep.ts';

/** Room that the words take, pixels. */
const ROOM = 46;

interface Props {
  readonly course: Course;
  readonly passes: readonly StripPass[];
  readonly scale: StripScale;
  readonly base: number;
  readonly limit: number;
}

export function Grades({ course, passes, scale, base, limit }: Props): JSX.Element {
  const [low = 0, high = 0] = scale.range();
  const found = passes.flatMap((pass) => {
    const x = scale(pass.measure);
    const grade = pass.served && x >= low && x <= high ? gradeAtTables(course, pass.items) : null;
    return grade === null ? [] : [{ key: `${pass.id}-${pass.nth}`, x, grade, steep: Math.abs(grade) > limit }];
  });
  // Where there is no room for all, the steeper stays.
  const kept: typeof found = [];
  for (const one of found.toSorted((a, b) => Math.abs(b.grade) - Math.abs(a.grade)))
    if (!kept.some(({ x }) => Math.abs(x - one.x) < ROOM)) kept.push(one);
  return (
    <g class="strip-grades" aria-hidden="true">
      {kept.map(({ key, x, grade, steep }) => (
        <text key={key} class={steep ? 'steep' : ''} x={x} y={base - 2} text-anchor="middle">
          {gradeText(grade)}
        </text>
      ))}
    </g>
  );
}
