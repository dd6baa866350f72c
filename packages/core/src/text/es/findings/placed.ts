import type { PlacedParams } from '../../params/placed.ts';
import type { TextsOf } from '../../sentence.ts';

export const placed: TextsOf<PlacedParams> = {};
