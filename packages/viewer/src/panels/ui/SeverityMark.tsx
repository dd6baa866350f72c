/** A shape for each severity, so that none is told by colour alone; `map/flagImages.ts` draws the same on the map. */
import type { JSX } from 'preact';
import type { Severity } from '@halfcup/core';

/** In a square of 14. */
export const SHAPES: Readonly<Record<Severity | 'waived', JSX.Element>> = {
  error: (
    <>
      <rect x={1.5} y={1.5} width={11} height={11} />
      <path d="M4.6 4.6l4.8 4.8M9.4 4.6l-4.8 4.8" />
    </>
  ),
  warning: (
    <>
      <path d="M7 1.6L13 12.4H1z" />
      <path d="M7 5.4v3.6M7 10.3v.9" />
    </>
  ),
  note: (
    <>
      <circle cx={7} cy={7} r={5.6} />
      <path d="M7 6.2v3.8M7 3.8v.9" />
    </>
  ),
  waived: (
    <>
      <rect x={1.5} y={1.5} width={11} height={11} stroke-dasharray="2.2 1.47" />
      <path d="M4.4 7h5.2" />
    </>
  ),
};

export const SeverityMark = ({ severity }: { readonly severity: Severity | 'waived' }): JSX.Element => (
  <svg class={`mark mark-${severity}`} width={14} height={14} viewBox="0 0 14 14" aria-hidden="true">
    {SHAPES[severity]}
  </svg>
);
