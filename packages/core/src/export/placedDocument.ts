/** Verdicts on recorded points as the review document prints them: lengths in metres to 1e-6. */
import type { PlacedVerdict } from '../review/placed.ts';
import { toMicro, toPosition } from './rounding.ts';

/** Verdicts with their numbers rounded, keys in the usual order. */
export const placedDocument = (verdicts: readonly PlacedVerdict[]): PlacedVerdict[] =>
  verdicts.map(({ station, item, end, course, verdict, measured, limit, margin, move, at, by, reference, side, confidence }) => ({
    station,
    item,
    ...(end === undefined ? {} : { end }),
    course,
    verdict,
    measured: toMicro(measured),
    limit: [toMicro(limit[0]), toMicro(limit[1])],
    margin: toMicro(margin),
    move: toMicro(move),
    at: toPosition(at),
    by,
    reference,
    side,
    confidence: toMicro(confidence),
  }));
