/** Named parameters of the findings on courses, by code. Lengths in metres, times in seconds; ids, not names. */
import type { Found } from '../found.ts';

/** A gap between two segments; `point`: the last one before it, from 1; `from`, `to`: longitude and latitude of its ends. */
interface Gap {
  readonly length: number;
  readonly point: number;
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
}

/** What a calibrated stretch begins or ends at: a mark goes by its name, else by its distance. */
export type Knot = 'start' | 'finish' | { readonly name: string } | { readonly measure: number };

/** A flaw of a track by its points, both from 1 within the segment, itself from 1. */
export interface FlawAt {
  readonly size: number;
  readonly segment: number;
  readonly first: number;
  readonly last: number;
}

/** What of a plan or a call is to stand at a course distance. */
type Placed = 'station' | 'partStart' | 'partEnd';

/** How a measure misses its course: past its finish, before its start, or in a gap that the course skips. */
type Beyond =
  | { readonly problem: 'past'; readonly length: number }
  | { readonly problem: 'before'; readonly start: number }
  | { readonly problem: 'gap' };

/** Something else than GeoJSON allows; `nested`: collections within collections. */
type GeoJsonFault =
  | { readonly problem: 'object' | 'type' | 'coordinates' | 'list'; readonly found: Found }
  | { readonly problem: 'holes'; readonly holes: number }
  | { readonly problem: 'corners'; readonly corners: number }
  | { readonly problem: 'nested' };

/** What building a course from points can find. */
export interface LineParams {
  /** `seam`: between two parts of a course, by its course distance, and how often the same two ends meet. */
  'gap-joined': Gap & {
    readonly asked: boolean;
    readonly seam?: { readonly measure: number; readonly times: number };
  };
  'gap-skipped': Gap;
  'gap-refused': Gap & { readonly most: number };
  /** `point`: its number in the line, from 1, where the line is a list of points. */
  position: { readonly lon: Found; readonly lat: Found; readonly point?: number; readonly swapped?: true };
  'course-too-short':
    | { readonly problem: 'none' | 'onePlace' | 'noLength' }
    | { readonly problem: 'few'; readonly points: number };
  /** `point`: the one before the longest step, from 1. */
  'course-too-long': { readonly length: number; readonly most: number; readonly step: number; readonly point: number };
}

export interface CourseParams extends LineParams {
  /** `within`: the share by which they may differ. */
  'mark-factor': {
    readonly from: Knot;
    readonly to: Knot;
    readonly marks: number;
    readonly line: number;
    readonly within: number;
  };
  'mark-off-course': { readonly mark: Knot; readonly distance: number; readonly most: number };
  /** `places`: where each of the first marks stands along the line; `more`: how many marks follow; `length`: where it is alone. */
  'marks-no-order':
    | {
        readonly places: readonly { readonly mark: Knot; readonly along: readonly number[] }[];
        readonly more: number;
      }
    | { readonly length: number };
  /** `course`: absent where only one is meant. */
  'measure-beyond-course': { readonly what: Placed; readonly measure: number; readonly course?: string } & Beyond;
  'part-backwards': { readonly course: string; readonly from: number; readonly to: number };
  'parts-apart': { readonly length: number; readonly most: number };
  geojson: GeoJsonFault;
  'track-spike': FlawAt;
  'track-jump': FlawAt;
  'track-sparse-bend': FlawAt & { readonly most: number };
  /** `from`, `to`: along the line, where it is told of a course. */
  'track-tangle': FlawAt | { readonly size: number; readonly from: number; readonly to: number };
}
