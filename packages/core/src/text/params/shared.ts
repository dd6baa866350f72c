/** What parameters of several findings are made of. Lengths in metres; ids, not names. */
import type { PointKind } from '../../kinds.ts';

/** A race where it passes, by course distance. */
export interface PassAt {
  readonly race: string;
  readonly measure: number;
}

/** A point about a station; `name`: the user's own. */
export interface PointRef {
  readonly kind: PointKind;
  readonly name: string | null;
}

/** A value and the most, or the least, that it should be. */
export interface Bounded {
  readonly measured: number;
  readonly limit: number;
}
