/** Named parameters of the findings on flows of runners and on how things stand to one another. Lengths in metres; ids, not names. */
import type { DeclaredSide, ItemKind } from '../../kinds.ts';
import type { Bounded, PassAt, PointRef } from './shared.ts';

/** What a station's stretch of road is made of. */
export type StretchPart = 'sign' | 'tables' | 'boxes';

/** Of ways that runners take. */
export interface FlowParams {
  readonly 'flows-share-width': {
    /** Who comes the other way. */
    readonly other: readonly PassAt[];
    /** Clear beside the tables, and the road's width; `null` where the plan gives none. */
    readonly measured: number | null;
    readonly road: number | null;
    /** For both ways together. */
    readonly limit: number;
    /** For one. */
    readonly each: number;
  };
  readonly 'fork-in-stretch': {
    /** Whose runners join the road, or leave it. */
    readonly races: readonly string[];
    readonly how: 'joins' | 'parts';
    /** From the tables along the course, upstream negative; 0 beside them. */
    readonly away: number;
    readonly meets: readonly StretchPart[];
    readonly misses: readonly StretchPart[];
  };
  readonly 'leg-crosses': {
    readonly courses: readonly string[];
    /** Of the first of them. */
    readonly measure: number;
    /** It comes up to the road and does not cross it. */
    readonly touches: boolean;
    /** From the tables along the course, upstream negative; 0 beside them. */
    readonly away: number;
  };
  readonly 'passers-not-served': { readonly passes: readonly PassAt[] };
  readonly 'stations-face': {
    readonly other: string;
    readonly measured: number | null;
    readonly road: number | null;
    readonly limit: number;
  };
}

/** Of what stands where. */
export interface PlacingParams {
  readonly 'after-descent': Bounded & { readonly races: readonly string[]; readonly over: number };
  readonly 'box-distance': {
    readonly end: 'first' | 'last';
    /** Negative before the end of the tables. */
    readonly measured: number;
    readonly limit: readonly [number, number];
    readonly byHand: boolean;
    /** The distance that the station itself asks for. */
    readonly own: number | null;
  };
  readonly 'box-in-bend': { readonly turn: number; readonly most: number; readonly after: number };
  readonly 'box-on-leg': Bounded & {
    readonly boxes: number;
    readonly courses: readonly string[];
    /** Of the first of them. */
    readonly at: number;
  };
  readonly 'boxes-few': {
    readonly boxes: number;
    readonly needed: number;
    readonly cups: number;
    readonly perBag: number;
    readonly bags: number;
  };
  readonly 'boxes-missing': { readonly every: number };
  readonly 'item-order': {
    readonly met: readonly ItemKind[];
    readonly wanted: readonly ItemKind[];
    readonly byHand: readonly ItemKind[];
  };
  readonly 'items-on-top': {
    readonly items: readonly ItemKind[];
    readonly overlap: number;
    readonly byHand: readonly ItemKind[];
  };
  readonly 'medical-way-blocked': { readonly medical: PointRef; readonly access: PointRef } & (
    | { readonly by: 'items'; readonly items: readonly ItemKind[] }
    | { readonly by: 'flow'; readonly side: DeclaredSide }
  );
  /** `limit`: of the practice. */
  readonly 'near-finish': Bounded & { readonly races: readonly string[] };
  readonly 'near-start': Bounded & { readonly races: readonly string[] };
  readonly 'point-blocked': Bounded & {
    readonly items: readonly ItemKind[];
    readonly point: PointRef;
    /** Where it is that of another station. */
    readonly station: string | null;
  };
  /** `road`: its width; `null` where the plan gives none and every road is as wide as `limit` asks. */
  readonly 'sign-in-road': Bounded & { readonly road: number | null; readonly sure: boolean };
  readonly 'sign-hard-to-read':
    | { readonly is: 'bend'; readonly turn: number; readonly most: number; readonly within: number }
    | ({ readonly is: 'descent'; readonly over: number } & Bounded);
}
