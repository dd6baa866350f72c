/** Which side is which, at the strip's left end. */
import type { JSX } from 'preact';
import { MARGIN } from './frame.ts';

export const SideWords = ({ top, bottom }: { readonly top: number; readonly bottom: number }): JSX.Element => (
  <g class="strip-sides" aria-hidden="true">
    <text x={MARGIN} y={top}>
      left-hand side
    </text>
    <text x={MARGIN} y={bottom}>
      right-hand side
    </text>
  </g>
);
