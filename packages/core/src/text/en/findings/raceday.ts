import type { RacedayParams } from '../../params/raceday.ts';
import type { TextsOf } from '../../sentence.ts';

export const raceday: TextsOf<RacedayParams> = {};
