/** The shape of what a station is doing, for strip, map and table alike: each is told by its shape without its colour. */
import type { StationPhase } from '@halfcup/core/raceday';

export interface PhaseShape {
  /** Paths in a square of 14. */
  readonly outline: string;
  readonly filled: string;
  readonly dashed: boolean;
  /** Of the palette. */
  readonly colour: 'warn' | 'pick' | 'ink';
}

const CIRCLE = 'M7 1.5a5.5 5.5 0 1 1 0 11a5.5 5.5 0 1 1 0 -11Z';
const HALF = 'M7 1.5a5.5 5.5 0 1 0 0 11Z';
const SQUARE = 'M2 2H12V12H2Z';

export const PHASE_SHAPE: Readonly<Record<StationPhase, PhaseShape>> = {
  before: { outline: CIRCLE, filled: '', dashed: true, colour: 'warn' },
  settingUp: { outline: CIRCLE, filled: HALF, dashed: false, colour: 'warn' },
  ready: { outline: CIRCLE, filled: 'M7 4a3 3 0 1 1 0 6a3 3 0 1 1 0 -6Z', dashed: false, colour: 'pick' },
  open: { outline: CIRCLE, filled: CIRCLE, dashed: false, colour: 'pick' },
  breakingDown: { outline: SQUARE, filled: 'M2 12H12V2Z', dashed: false, colour: 'ink' },
  packed: { outline: SQUARE, filled: '', dashed: false, colour: 'ink' },
};
