/** The shapes of what stations are doing, on a ground that sets them off from the map. */
import type { StationPhase } from '@halfcup/core/raceday';
import { PHASE_SHAPE } from '../state/view/phases.ts';
import type { Drawing } from './pen.ts';

const PHASES = Object.keys(PHASE_SHAPE) as StationPhase[];

const drawn = (phase: StationPhase): Drawing => ({
  width: 20,
  height: 20,
  draw: (pen, palette) => {
    const { outline, filled, dashed, colour } = PHASE_SHAPE[phase];
    pen.fillStyle = palette.sheet;
    pen.strokeStyle = palette.sheet;
    pen.lineWidth = 5;
    pen.translate(3, 3);
    const [around, inside] = [new Path2D(outline), new Path2D(filled)];
    pen.stroke(around);
    pen.fill(around);
    pen.fillStyle = palette[colour];
    pen.strokeStyle = palette[colour];
    pen.lineWidth = 1.8;
    pen.fill(inside);
    if (dashed) pen.setLineDash([2.4, 2]);
    pen.stroke(around);
  },
});

export const PHASE_IMAGES: readonly (readonly [string, Drawing])[] = PHASES.map((phase) => [
  `phase-${phase}`,
  drawn(phase),
]);
