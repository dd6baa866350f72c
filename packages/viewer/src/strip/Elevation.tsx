/** The ground's height behind the course, in grey. */
import type { Course } from '@halfcup/core';
import { area } from 'd3-shape';
import type { JSX } from 'preact';
import { samplesOf } from '../state/view/derive.ts';
import { profile, type StripScale } from './geometry.ts';

export function Elevation({
  course,
  scale,
  base,
}: {
  readonly course: Course;
  readonly scale: StripScale;
  readonly base: number;
}): JSX.Element | null {
  const drawn = profile(samplesOf(course), scale);
  if (drawn === null) return null;
  const span = Math.max(20, drawn.high - drawn.low);
  const path = area<readonly [number, number]>()
    .x(([x]) => x)
    .y0(base)
    .y1(([, height]) => base - 8 - ((height - drawn.low) / span) * 54)(drawn.points as [number, number][]);
  return <path class="strip-elevation" d={path ?? ''} />;
}
