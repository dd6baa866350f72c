/** Passes that are merely seen: a short tick across the course, the number in brackets. */
import type { JSX } from 'preact';
import { LINE_Y } from './frame.ts';
import { awayOf, type StripPass, type StripScale } from './geometry.ts';

export const Seen = ({
  passes,
  scale,
}: {
  readonly passes: readonly StripPass[];
  readonly scale: StripScale;
}): JSX.Element => {
  const [low = 0, high = 0] = scale.range();
  return (
    <g class="strip-seen" aria-hidden="true">
      {passes
        .filter((pass) => !pass.served && scale(pass.measure) >= low && scale(pass.measure) <= high)
        .map((pass) => {
          const sign = awayOf(pass.side);
          const x = scale(pass.measure);
          return (
            <g key={`${pass.id}-${pass.measure}`}>
              <line x1={x} x2={x} y1={LINE_Y} y2={LINE_Y + (sign === 0 ? 8 : sign * 10)} />
              <text x={x} y={LINE_Y + (sign === -1 ? -14 : 22)} text-anchor="middle">
                ({pass.number})
              </text>
            </g>
          );
        })}
    </g>
  );
};
