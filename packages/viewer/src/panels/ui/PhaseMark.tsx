/** What a station is doing, by the shape of its mark. */
import type { StationPhase } from '@halfcup/core/raceday';
import type { JSX } from 'preact';
import { PHASE_SHAPE } from '../../state/view/phases.ts';

/** For a drawing; 14 pixels wide and high. */
export function PhaseMark({ phase }: { readonly phase: StationPhase }): JSX.Element {
  const { outline, filled, dashed, colour } = PHASE_SHAPE[phase];
  return (
    <g class={`phase phase-${colour}`}>
      <path class="phase-ground" d={outline} {...(dashed ? { 'stroke-dasharray': '2.4 2' } : {})} />
      {filled === '' ? null : <path class="phase-fill" d={filled} />}
    </g>
  );
}

/** The same in a line of words. */
export const PhaseIcon = ({ phase }: { readonly phase: StationPhase }): JSX.Element => (
  <svg class="phase-icon" width={14} height={14} viewBox="0 0 14 14" aria-hidden="true">
    <PhaseMark phase={phase} />
  </svg>
);
