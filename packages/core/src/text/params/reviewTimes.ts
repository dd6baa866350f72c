/** Named parameters of the findings on times and closures. Lengths in metres, clock times in seconds after midnight; ids, not names. */

/** A place on a course; `station`: its id, where there is one. */
export interface RoadAt {
  readonly course: string;
  readonly measure: number;
  readonly station: string | null;
}

/** What a clock says of a place. */
export type ClockTime = 'accessOpens' | 'closes' | 'sweep' | 'reopens';

/** Two times of a clock that cannot both be true. */
export type ClockFault =
  | {
      readonly is: 'order';
      readonly measure: number;
      /** Which should come before the other, and does not. */
      readonly before: { readonly key: ClockTime; readonly time: number };
      readonly after: { readonly key: ClockTime; readonly time: number };
    }
  | {
      readonly is: 'falls';
      readonly key: 'sweep' | 'reopens';
      readonly from: { readonly measure: number; readonly time: number };
      readonly to: { readonly measure: number; readonly time: number };
    }
  /** The cutoff of a race, and what the clock says at its finish. */
  | {
      readonly is: 'cutoff';
      readonly race: string;
      readonly cutoff: number;
      readonly key: 'sweep' | 'reopens';
      readonly time: number;
      readonly measure: number;
    };

/** A station whose crew is due too late, and what comes before it: the closing of the road, or the first of a race. */
export interface LateCrew {
  readonly station: string;
  readonly crewAt: number;
  readonly before: { readonly is: 'closes' | 'first'; readonly time: number };
  /** Where it is `first`. */
  readonly race: string | null;
}

export interface TimeParams {
  /** The worst place first. */
  readonly 'closes-late': {
    readonly places: readonly (RoadAt & { readonly closes: number; readonly race: string; readonly first: number })[];
  };
  /** An entry of the road times beyond the end of its course, or before its start. */
  readonly 'clock-beyond': {
    readonly course: string;
    readonly measure: number;
    readonly start: number;
    readonly length: number;
    /** Of such entries. */
    readonly count: number;
  };
  /** Where the road times of a course begin or end, far from its start or its finish; `left`: metres of which nothing is known. */
  readonly 'clock-short': {
    readonly course: string;
    readonly end: 'start' | 'finish';
    readonly keys: readonly ('closes' | 'reopens')[];
    readonly measure: number;
    readonly left: number;
  };
  /** `clear`: how long the crew clears, seconds; 0 where there is none. */
  readonly 'reopens-early': {
    readonly places: readonly (RoadAt & {
      readonly reopens: number;
      readonly race: string;
      readonly last: number;
      readonly clear: number;
    })[];
  };
  readonly 'clock-order': { readonly course: string; readonly faults: readonly ClockFault[] };
  /** The worst first. */
  readonly 'crew-late': { readonly stations: readonly LateCrew[] };
  readonly 'cutoff-stops-many': {
    readonly race: string;
    readonly stopped: number;
    readonly starters: number;
    /** Of the starters. */
    readonly most: number;
  };
  /** Speeds in metres a second; `apart`: seconds between the guns at one start, else between the first of each where they meet, to the minute. */
  readonly 'slow-wave-first': {
    readonly slow: { readonly race: string; readonly wave: number; readonly speed: number };
    readonly fast: { readonly race: string; readonly wave: number; readonly speed: number };
    readonly apart: number;
  };
  readonly 'speed-impossible':
    | {
        readonly is: 'fast';
        readonly race: string;
        readonly time: number;
        readonly best: number;
        readonly length: number;
        /** The time stands so in the plan. */
        readonly typed?: true;
      }
    | {
        readonly is: 'slow';
        readonly race: string;
        readonly time: number;
        readonly most: number;
        readonly length: number;
        /** The time stands so in the plan. */
        readonly typed?: true;
      };
  readonly 'crowded-road': {
    readonly runners: number;
    readonly most: number;
    /** Of course, metres. */
    readonly over: number;
    /** Of road, metres. */
    readonly width: number;
    readonly at: number;
    readonly races: readonly string[];
  };
}
