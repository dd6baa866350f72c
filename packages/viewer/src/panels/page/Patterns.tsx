/** Hatch and dots, by which tables are told apart without colour; used by the strip and the sketch. */
import type { JSX } from 'preact';

export const Patterns = (): JSX.Element => (
  <svg class="unseen" width={0} height={0} aria-hidden="true">
    <defs>
      <pattern id="hatch" width={5} height={5} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <rect class="pattern-paper" width={5} height={5} />
        <line class="pattern-line" x1={0} y1={0} x2={0} y2={5} />
      </pattern>
      <pattern id="dots" width={4.5} height={4.5} patternUnits="userSpaceOnUse">
        <rect class="pattern-paper" width={4.5} height={4.5} />
        <circle class="pattern-dot" cx={2.25} cy={2.25} r={1.15} />
      </pattern>
    </defs>
  </svg>
);
