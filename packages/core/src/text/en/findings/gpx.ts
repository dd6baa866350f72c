import type { GpxParams } from '../../params/gpx.ts';
import type { TextsOf } from '../../sentence.ts';

export const gpx: TextsOf<GpxParams> = {};
