/** Named parameters of the findings on the ground, as a map knows it. Lengths in metres; ids, not names. */
import type { ItemKind } from '../../kinds.ts';
import type { Bounded } from './shared.ts';

/** The day of the map's data that a finding rests on, `2026-10-02`; `null` where the map does not tell. */
export interface ByMap {
  readonly map: string | null;
}

/** Things of a station on a stretch of the course; `name`: of what is there, as the map has it. */
export interface OnStretch extends ByMap {
  readonly items: readonly ItemKind[];
  readonly name: string | null;
  /** Over so much of the course they stand there. */
  readonly overlap: number;
}

/** Things of a station too near to a place that must stay reachable. */
export interface NearKept extends ByMap, Bounded {
  readonly items: readonly ItemKind[];
  readonly name: string | null;
}

/** A stretch of a course. */
export interface StretchOf {
  readonly from: number;
  readonly to: number;
}

/** Of what the map has on the course and beside it. */
export interface GroundParams {
  readonly 'ground-missing': { readonly file: string };
  readonly 'ground-silent': ByMap & { readonly lacks: readonly ('buildings' | 'hydrants')[] };
  /** `age`: years from the map to the race. */
  readonly 'map-old': ByMap & { readonly age: number | null; readonly most: number };
  readonly 'off-map': ByMap & {
    readonly course: string;
    readonly stretches: readonly StretchOf[];
    /** Of the course, 0 to 1. */
    readonly share: number;
    /** So much of it that the map seems to be of another place. */
    readonly most: boolean;
  };
  /** `name`: of the street that comes out there. */
  readonly 'item-in-mouth': OnStretch;
  readonly 'item-on-bridge': OnStretch;
  readonly 'item-in-tunnel': OnStretch;
  readonly 'item-on-steps': OnStretch;
  readonly 'item-on-level-crossing': OnStretch & { readonly room: number };
  readonly 'item-at-stop': OnStretch & { readonly stop: 'bus' | 'tram' };
  readonly 'item-on-crossing': OnStretch;
  readonly 'hydrant-blocked': NearKept;
  readonly 'fire-station-blocked': NearKept;
  readonly 'hospital-blocked': NearKept & { readonly of: 'hospital' | 'ambulance' };
  readonly 'gate-on-course': ByMap & { readonly course: string; readonly measures: readonly number[] };
  readonly 'steps-with-wheels': ByMap & { readonly races: readonly string[]; readonly measures: readonly number[] };
  readonly 'rough-surface': ByMap & {
    readonly course: string;
    /** Races on wheels that come there; none: all are on foot. */
    readonly races: readonly string[];
    readonly stretches: readonly (StretchOf & { readonly surface: string })[];
  };
  readonly 'width-from-map': ByMap & {
    readonly stations: readonly { readonly station: string; readonly width: number }[];
  };
  readonly 'narrow-by-map': ByMap & Bounded & { readonly road: number };
  /** `within`: from so far before it. */
  readonly 'sign-unseen': ByMap & { readonly within: number };
  /** `distance`: from the sign. */
  readonly 'tables-unseen': ByMap & { readonly distance: number };
}
