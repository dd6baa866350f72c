/** Where things stood when somebody recorded them, each with its verdict: small crosses. Pure. */
import type { PlacedVerdict } from '@halfcup/core';
import { point } from '@turf/turf';
import type { Feature, Point } from 'geojson';
import { placedItem, VERDICT_WORD } from '../../placedWords.ts';

export interface PlacedProps {
  readonly verdict: PlacedVerdict['verdict'];
  /** "Sign: out of place". */
  readonly said: string;
}

export const placedPoints = (verdicts: readonly PlacedVerdict[]): Feature<Point, PlacedProps>[] =>
  verdicts.map((one) =>
    point<PlacedProps>([one.at[0], one.at[1]], {
      verdict: one.verdict,
      said: `${placedItem(one)}: ${VERDICT_WORD[one.verdict]}`,
    }),
  );
