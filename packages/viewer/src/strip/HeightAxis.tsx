/** Heights of the ground behind the course, at the right end of the strip. */
import { type Course } from '@halfcup/core/stages';
import { lengthIn } from '@halfcup/core/units';
import { scaleLinear } from 'd3-scale';
import type { JSX } from 'preact';
import { samplesOf } from '../state/view/derive.ts';
import { useStore } from '../state/store/store.ts';
import { groundBand } from './Elevation.tsx';
import type { StripScale } from './geometry.ts';

/** Words closer than this would touch, pixels. */
const LINE = 12;

export function HeightAxis({
  course,
  scale,
  base,
}: {
  readonly course: Course;
  readonly scale: StripScale;
  readonly base: number;
}): JSX.Element | null {
  const { units } = useStore();
  const heights = samplesOf(course).elevation;
  if (heights === null) return null;
  const band = groundBand(heights, base);
  const unit = units.value === 'metric' ? 'm' : 'ft';
  const x = scale.range()[1] ?? 0;
  const ends = band.flat ? [band.low] : [band.low, band.high];
  const [low, high] = [lengthIn(band.low, unit), lengthIn(band.high, unit)];
  const between = scaleLinear()
    .domain([low, high])
    .ticks(4)
    .map((tick) => band.low + ((tick - low) / Math.max(1e-9, high - low)) * (band.high - band.low))
    .filter((tick) => ends.every((end) => Math.abs(band.y(end) - band.y(tick)) >= LINE));
  return (
    <g
      class="strip-axis strip-heights"
      role="img"
      aria-label={`Elevation ${ends.map((end) => label(end, unit)).join(' to ')}`}
    >
      <line x1={x + 4} x2={x + 4} y1={band.y(band.low)} y2={band.y(band.high)} />
      {[...ends, ...between].map((end) => (
        <g key={end}>
          <line x1={x + 4} x2={x + 8} y1={band.y(end)} y2={band.y(end)} />
          <text x={x + 11} y={band.y(end) + 4}>
            {label(end, unit)}
          </text>
        </g>
      ))}
    </g>
  );
}

const label = (metres: number, unit: 'm' | 'ft'): string => `${Math.round(lengthIn(metres, unit)) + 0} ${unit}`;
