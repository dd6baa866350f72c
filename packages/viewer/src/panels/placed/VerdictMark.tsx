/** A shape for each verdict, so that none is told by colour alone. */
import type { Verdict } from '@halfcup/core';
import type { JSX } from 'preact';

const SHAPES: Readonly<Record<Verdict, JSX.Element>> = {
  holds: <path d="M2 7.5l3.4 3.6L12 3.4" />,
  fails: (
    <>
      <rect x={1.5} y={1.5} width={11} height={11} />
      <path d="M4.6 4.6l4.8 4.8M9.4 4.6l-4.8 4.8" />
    </>
  ),
  'cannot tell': <path d="M1.5 7h2.4M5.8 7h2.4M10.1 7h2.4" />,
};

export const VerdictMark = ({ verdict }: { readonly verdict: Verdict }): JSX.Element => (
  <svg class="mark" width={14} height={14} viewBox="0 0 14 14" aria-hidden="true">
    {SHAPES[verdict]}
  </svg>
);
