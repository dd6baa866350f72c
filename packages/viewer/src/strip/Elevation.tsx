/** The ground's height behind the course, in grey; darker where it is steeper than tables may stand. */
import type { Course } from '@halfcup/core/stages';
import { area } from 'd3-shape';
import type { JSX } from 'preact';
import { samplesOf } from '../state/view/derive.ts';
import { steepOf } from './steep.ts';
import { profile, type StripScale } from './geometry.ts';

/** The band in which heights are drawn, pixels above the foot of the strip. */
const FOOT = 8;
const TALL = 54;
/** A flatter course is drawn flat, metres. */
const LEAST_SPAN = 20;

/** Where heights of a course are drawn; `flat`: too little between lowest and highest to tell them apart. */
export function groundBand(
  heights: Float64Array,
  base: number,
): { readonly low: number; readonly high: number; readonly flat: boolean; readonly y: (height: number) => number } {
  const low = heights.reduce((least, height) => Math.min(least, height), Number.POSITIVE_INFINITY);
  const high = heights.reduce((most, height) => Math.max(most, height), Number.NEGATIVE_INFINITY);
  const span = Math.max(LEAST_SPAN, high - low);
  const y = (height: number): number => base - FOOT - ((height - low) / span) * TALL;
  return { low, high, flat: y(low) - y(high) < 14, y };
}

export function Elevation({
  course,
  limit,
  scale,
  base,
}: {
  readonly course: Course;
  /** Steepest grade allowed at tables. */
  readonly limit: number;
  readonly scale: StripScale;
  readonly base: number;
}): JSX.Element | null {
  const samples = samplesOf(course);
  const drawn = profile(samples, scale);
  if (drawn === null || samples.elevation === null) return null;
  const { y } = groundBand(samples.elevation, base);
  const path = area<readonly [number, number]>()
    .x(([x]) => x)
    .y0(base)
    .y1(([, height]) => y(height))(drawn.points as [number, number][]);
  const [left = 0, right = 0] = scale.range();
  const steep = steepOf(course, limit)
    .map(({ from, to }) => [Math.max(left, scale(from)), Math.min(right, scale(to))] as const)
    .filter(([from, to]) => to > from);
  return (
    <>
      <clipPath id="strip-ground-shape">
        <path d={path ?? ''} />
      </clipPath>
      <path class="strip-elevation" d={path ?? ''} />
      <g clip-path="url(#strip-ground-shape)">
        {steep.map(([from, to]) => (
          <rect key={from} class="strip-steep" x={from} y={0} width={Math.max(1, to - from)} height={base} />
        ))}
      </g>
    </>
  );
}
