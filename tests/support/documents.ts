/** What the tests read of the documents that the command line prints. */
import type { Position } from './courses.ts';

export interface Pass {
  readonly measure: number;
  readonly distance: number;
  readonly offset: number;
  readonly side: string;
  readonly confidence: number;
  readonly azimuthDeg: number;
  readonly foot: Position;
}
export interface Item {
  readonly kind: string;
  readonly from: number;
  readonly to: number;
  readonly along: readonly [number, number];
  readonly at: readonly (Position | null)[];
  readonly wording?: string;
  readonly boxes?: readonly object[];
}
export interface LayoutDocument {
  readonly stations: readonly {
    readonly id: string;
    readonly passes: readonly Pass[];
    readonly directions: readonly { readonly items: readonly Item[] }[];
  }[];
  readonly findings: readonly {
    readonly code: string;
    readonly severity: string;
    readonly where: {
      readonly file?: string;
      readonly line?: number;
      readonly column?: number;
      readonly item?: string;
    };
  }[];
}
export interface SnapDocument {
  readonly points: readonly {
    readonly at: Position;
    readonly name: string | null;
    readonly passes: readonly Pass[];
    readonly nearest: { readonly measure: number; readonly distance: number };
  }[];
}
