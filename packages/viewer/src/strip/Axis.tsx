/** Course distance along the foot of the strip. */
import type { JSX } from 'preact';
import { useStore } from '../state/store/store.ts';
import { axisTicks, type StripScale } from './geometry.ts';

export function Axis({ scale, y }: { readonly scale: StripScale; readonly y: number }): JSX.Element {
  const { units } = useStore();
  const [low = 0, high = 1] = scale.range();
  return (
    <g class="strip-axis" aria-hidden="true">
      <line x1={low} x2={high} y1={y} y2={y} />
      {axisTicks(scale, units.value).map((tick) => (
        <g key={tick.label}>
          <line x1={tick.x} x2={tick.x} y1={y} y2={y + 4} />
          <text x={tick.x} y={y + 16} text-anchor={tick.x < low + 12 ? 'start' : tick.x > high - 20 ? 'end' : 'middle'}>
            {tick.label}
          </text>
        </g>
      ))}
    </g>
  );
}
