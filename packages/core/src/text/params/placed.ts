/** Named parameters of the findings on points recorded on the ground, by code. Lengths in metres, times in seconds; ids, not names. */
import type { DeclaredSide, ItemKind } from '../../kinds.ts';

/** A recorded point by its name in the file; `null` where it has none. */
type PointName = string | null;

/** An item, and which end of it, where only one is meant. */
interface Thing {
  readonly item: ItemKind;
  readonly end: 'from' | 'to' | null;
}

/** An item of a station; `measure`: where its own runners pass, where others pass too. */
export interface StationItem {
  readonly station: string;
  readonly item: ItemKind;
  readonly measure: number | null;
}

export interface PlacedParams {
  readonly 'placed-ambiguous':
    | { readonly is: 'stations'; readonly point: PointName; readonly stations: readonly string[] }
    | { readonly is: 'between'; readonly point: PointName; readonly of: readonly StationItem[]; readonly r95: number }
    /** `lines` of the file, where the points stand: no part of the sentence. */
    | {
        readonly is: 'twice';
        readonly points: readonly PointName[];
        readonly lines: readonly number[];
        readonly of: StationItem;
      };
  /** 95 % errors: without hdop, and of a distance between two such points. */
  readonly 'placed-assumptions': {
    readonly perHdop: number;
    readonly r95: number;
    readonly between: number;
    readonly wheelShare: number;
    readonly wheelFixed: number;
  };
  readonly 'placed-distance': Thing & {
    readonly measured: number;
    readonly limit: readonly [number, number];
    readonly margin: number;
    /** Downstream positive; `null` where the error leaves open whether it stands right. */
    readonly move: number | null;
  };
  readonly 'placed-far': {
    readonly measured: number;
    readonly limit: number;
    readonly margin: number;
    /** Along the course, downstream positive; `null` where most of it is to the side, or the course is not near. */
    readonly along: number | null;
    readonly sure: boolean;
  };
  readonly 'placed-hdop': { readonly point: PointName; readonly hdop: number; readonly r95: number };
  readonly 'placed-missing':
    | { readonly is: 'all' }
    | { readonly is: 'one'; readonly item: ItemKind; readonly measure: number | null };
  readonly 'placed-off-course': { readonly point: PointName; readonly item: ItemKind; readonly radius: number };
  readonly 'placed-order': {
    /** Kinds that runners meet before those that should come before them. */
    readonly pairs: readonly (readonly [first: ItemKind, then: ItemKind])[];
    readonly by: number;
    readonly planned: readonly ItemKind[];
  };
  readonly 'placed-side':
    | {
        readonly is: 'wrong';
        readonly item: ItemKind;
        readonly side: DeclaredSide;
        readonly planned: DeclaredSide;
        readonly confidence: number;
      }
    | { readonly is: 'unclear'; readonly items: readonly ItemKind[] };
  /** Ids of two stations, each recorded where the plan has the other. */
  readonly 'placed-swapped': { readonly station: string; readonly other: string };
  readonly 'placed-unknown':
    | { readonly is: 'nothing'; readonly point: PointName; readonly station: string }
    | { readonly is: 'far'; readonly point: PointName; readonly near: number };
  readonly 'placed-wheel-differs': Thing & {
    readonly wheel: number;
    readonly positions: number;
    readonly margin: number;
  };
  readonly 'placed-wheel-needed': Thing & {
    readonly by: 'position' | 'wheel';
    readonly margin: number;
    readonly tolerance: number;
  };
  readonly 'placed-wheel-unread': { readonly point: PointName; readonly text: string };
  readonly 'placed-wheel-unused': Thing;
}
