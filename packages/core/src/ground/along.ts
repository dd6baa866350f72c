/**
 * What the ground is along one course: the answers that the matching gives and that checks, papers, map and strip use.
 * Measures and offsets are the course's, metres, left positive.
 */
import type { Tags } from './ground.ts';

/** A stretch of a course, `from` ≤ `to`, metres. */
export interface GroundStretch {
  readonly from: number;
  readonly to: number;
}

/** The course on one way. Stretches follow one another; one way passed twice gives two. */
export interface StreetStretch extends GroundStretch {
  readonly way: string;
  /** The street's name, else its `ref`; of an unnamed pavement that of the street beside it; else `null`. */
  readonly name: string | null;
  readonly tags: Tags;
}

/** Where another street meets the course. */
export interface Junction {
  readonly measure: number;
  readonly node: string;
  /** Names of the streets that meet the course there, other than the course's own; empty where they have none. */
  readonly names: readonly string[];
  /** The ways that meet it. */
  readonly ways: readonly string[];
  /** On which side of the course they leave it. */
  readonly sides: readonly ('left' | 'right')[];
  /** Half the other street's width and 5 m, each way along the course. */
  readonly mouth: GroundStretch;
  /** True where what meets carries vehicles; false for footways, cycleways, steps. */
  readonly vehicles: boolean;
  /** True where all that meets leads to premises only: driveways, parking aisles, private service roads. Their mouth is without the 5 m. */
  readonly access: boolean;
}

/** Kinds of things on the course itself that make a place unfit for a station's things. */
export type FeatureKind =
  | 'bridge'
  | 'tunnel'
  | 'steps'
  | 'levelCrossing'
  | 'tramStop'
  | 'busStop'
  | 'gate'
  | 'crossing'
  | 'signals';

export interface Feature extends GroundStretch {
  readonly kind: FeatureKind;
  readonly id: string;
  readonly name: string | null;
  readonly tags: Tags;
}

/** Kinds of things beside the course that must stay reachable. */
export type KeepClearKind = 'hydrant' | 'fireStation' | 'hospital' | 'ambulanceStation';

/** One such thing within 60 m of the course. */
export interface KeepClear {
  readonly kind: KeepClearKind;
  readonly id: string;
  readonly name: string | null;
  readonly lon: number;
  readonly lat: number;
  /** Of its nearest place on the course. */
  readonly measure: number;
  readonly offset: number;
}

/** The road's width as a map has it: never more than "about". */
export interface WidthStretch extends GroundStretch {
  readonly width: number;
  readonly rests: 'width' | 'lanes' | 'class';
}

export interface SurfaceStretch extends GroundStretch {
  readonly surface: string;
}

/** All that a map knows along one course, each list in running order. */
export interface GroundAlong {
  readonly streets: readonly StreetStretch[];
  readonly junctions: readonly Junction[];
  readonly features: readonly Feature[];
  readonly keepClear: readonly KeepClear[];
  readonly widths: readonly WidthStretch[];
  readonly surfaces: readonly SurfaceStretch[];
  /** Stretches over 50 m of the course that follow no way within 20 m. */
  readonly offMap: readonly GroundStretch[];
}

/** A place in the words that people use: "Harbour Road, between Mill Lane and Quay Street". */
export interface StreetPlace {
  /** `null` where the course is on no known street, or on one without a name. */
  readonly street: string | null;
  /** The last named cross-street before the place and the next after it, along the course; `null` where there is none on this street. */
  readonly after: string | null;
  readonly before: string | null;
}
