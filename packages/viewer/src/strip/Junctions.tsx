/** Ticks on the course line where other streets meet it; the cursor says their names. */
import type { Junction } from '@halfcup/core/ground';
import type { JSX } from 'preact';
import type { StripScale } from './geometry.ts';
import { junctionTicks } from './junctions.ts';

interface Props {
  readonly junctions: readonly Junction[];
  readonly scale: StripScale;
}

export const Junctions = ({ junctions, scale }: Props): JSX.Element | null =>
  junctions.length === 0 ? null : <path class="strip-junctions" d={junctionTicks(junctions, scale)} />;
