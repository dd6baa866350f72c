/** What one points at and drags on the strip where nothing else stands: a slider over the course. */
import type { Junction } from '@halfcup/core/ground';
import { type Course } from '@halfcup/core/stages';
import { formatMeasure } from '@halfcup/core/units';
import type { JSX } from 'preact';
import { useStore } from '../state/store/store.ts';
import { wholeView, type StripScale } from './geometry.ts';
import { crossingAt } from './junctions.ts';
import { useGround } from './useGround.ts';

export function Ground({
  course,
  scale,
  base,
  junctions,
}: {
  readonly course: Course;
  readonly scale: StripScale;
  readonly base: number;
  /** Of the course. */
  readonly junctions: readonly Junction[];
}): JSX.Element {
  const store = useStore();
  const [low = 0, high = 1] = scale.range();
  const cursor = store.cursor.value;
  const here = cursor?.course === course.id ? cursor.measure : (scale.domain()[0] ?? 0);
  const crossing = crossingAt(junctions, here, scale);
  return (
    <rect
      class="strip-ground"
      x={low}
      y={0}
      width={high - low}
      height={base}
      role="slider"
      tabindex={0}
      aria-label={`Place on ${course.name}`}
      aria-describedby="strip-ground-keys"
      aria-valuemin={0}
      aria-valuemax={Math.round(wholeView(course)[1])}
      aria-valuenow={Math.round(here)}
      aria-valuetext={`${formatMeasure(here, store.units.value)}${crossing === null ? '' : `, at ${crossing}`}`}
      {...useGround(store, course, scale)}
    />
  );
}
