/**
 * Numbers as they are printed into documents: lengths to 1e-6 m, degrees to 1e-9 (0.1 mm),
 * never a negative zero. What is not finite is a fault of the code and throws.
 */
import type { LonLat } from '../finding.ts';

function rounded(value: number, pieces: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`expected a finite number for a document, got ${value}`);
  // Adding nought turns -0 into 0.
  return Math.round(value * pieces) / pieces + 0;
}

/** Metres (or any plain number) to 1e-6. */
export const toMicro = (value: number): number => rounded(value, 1e6);

/** Degrees (or a factor) to 1e-9. */
export const toNano = (value: number): number => rounded(value, 1e9);

/** A position, each part to 1e-9 of a degree. */
export const toPosition = ([lon, lat]: LonLat): LonLat => [toNano(lon), toNano(lat)];
