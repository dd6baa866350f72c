/** The place that is pointed at, here or on the map. */
import type { Junction } from '@halfcup/core/ground';
import { type Course } from '@halfcup/core/stages';
import { formatMeasure } from '@halfcup/core/units';
import type { JSX } from 'preact';
import { useStore } from '../state/store/store.ts';
import type { StripScale } from './geometry.ts';
import { crossingAt } from './junctions.ts';

export function Cursor({
  course,
  scale,
  bottom,
  junctions,
}: {
  readonly course: Course;
  readonly scale: StripScale;
  readonly bottom: number;
  /** Of the course. */
  readonly junctions: readonly Junction[];
}): JSX.Element | null {
  const { cursor, units } = useStore();
  const place = cursor.value;
  if (place === null || place.course !== course.id) return null;
  const x = scale(place.measure);
  const [low = 0, high = 0] = scale.range();
  if (x < low - 1 || x > high + 1) return null;
  const crossing = crossingAt(junctions, place.measure, scale);
  const end = x > high - (crossing === null ? 80 : 200);
  return (
    <g class="strip-cursor" aria-hidden="true">
      <line x1={x} x2={x} y1={4} y2={bottom} />
      <text x={end ? x - 5 : x + 5} y={13} text-anchor={end ? 'end' : 'start'}>
        {formatMeasure(place.measure, units.value)}
        {crossing === null ? null : ` · ${crossing}`}
      </text>
    </g>
  );
}
