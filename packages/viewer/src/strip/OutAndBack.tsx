/** Out-and-back stretches: the course as two lanes, as on the map, with the words where there is room. */
import type { Course } from '@halfcup/core/stages';
import type { JSX } from 'preact';
import { LINE_Y } from './frame.ts';
import type { StripPass, StripScale } from './geometry.ts';
import { markedStretches, retracedStretches } from './outAndBack.ts';

interface Props {
  readonly course: Course;
  readonly passes: readonly StripPass[];
  readonly scale: StripScale;
}

export const OutAndBack = ({ course, passes, scale }: Props): JSX.Element => (
  <g class="strip-back" aria-hidden="true">
    {markedStretches(retracedStretches(course), passes, scale).map(({ from, to, words }) => (
      <g key={from}>
        <line class="strip-lanes-edge" x1={from} x2={to} y1={LINE_Y} y2={LINE_Y} />
        <line class="strip-lanes-gap" x1={from} x2={to} y1={LINE_Y} y2={LINE_Y} />
        {words === null ? null : (
          <text x={words} y={LINE_Y + 4} text-anchor="middle">
            out and back
          </text>
        )}
      </g>
    ))}
  </g>
);
