/** Named parameters of the findings on what a plan leaves out, and on slips in it. Lengths in metres, clock times in seconds; ids, not names. */
import type { Served } from '../../kinds.ts';
import type { PointRef } from './shared.ts';

type Heat = 'cool' | 'warm' | 'hot';

/** Who answers in an emergency. */
export type Contact = 'emergency' | 'raceControl' | 'radioChannel';

/** Rules of the crew without which nobody is there. */
export type CrewRule = 'pourers' | 'minimum';

/** Rules of the practice and of the crew that can be looser than the usual, by their keys in the plan. */
export type RuleName =
  | CrewRule
  | 'signAhead'
  | 'signTolerance'
  | 'trashFrom'
  | 'trashTo'
  | 'boxEvery'
  | 'kerb'
  | 'setback'
  | 'clearWidth'
  | 'snapRadius'
  | 'sideConfidence'
  | 'maxSpacing'
  | 'minSpacing'
  | 'maxGrade'
  | 'bendClear';

/** A rule of the practice that is looser than the usual; `station`: where it is the station's own. */
export interface LooseRule {
  readonly rule: RuleName;
  readonly station: string | null;
  readonly value: number;
  readonly usual: number;
}

/** Less ordered at a station than it was or is asked for. */
export interface ShortSupply {
  readonly station: string;
  readonly item: Served;
  readonly ordered: number;
  readonly asked: number;
}

export interface AbsenceParams {
  /** Courses without a medical point in their second half; `none`: the plan has no medical point at all. */
  readonly 'no-medical': { readonly none: boolean; readonly courses: readonly string[] };
  readonly 'no-widths': { readonly all: boolean; readonly stations: readonly string[] };
  readonly 'no-elevations': { readonly courses: readonly string[] };
  readonly 'no-entrants': { readonly races: readonly string[]; readonly all: boolean };
  readonly 'no-contacts': { readonly missing: readonly Contact[] };
  /** Stations without a captain, and those whose captain cannot be reached. */
  readonly 'no-captain': {
    readonly all: boolean;
    readonly unnamed: readonly string[];
    readonly unreached: readonly string[];
  };
  /** Fewest of the roster who are there while the station serves, and from when; clock time. */
  readonly 'roster-short': { readonly there: number; readonly at: number; readonly needed: number };
  readonly 'shared-contact': {
    readonly what: 'captain' | 'radio' | 'phone';
    /** As the plan writes it. */
    readonly value: string;
    readonly stations: readonly string[];
  };
  readonly 'no-water': {
    readonly races: readonly string[];
    /** Where there is some, but none for so long, metres; `end`: where the race has it again. */
    readonly dry?: { readonly length: number; readonly end: number; readonly limit: number } | null;
  };
  readonly 'same-name': { readonly name: string; readonly count: number };
  /** `said`: the distance in the name; `measure`: where the race comes by, nearest to it. */
  readonly 'name-distance': { readonly said: number; readonly race: string; readonly measure: number };
  readonly 'far-from-courses': {
    readonly limit: number;
    /** `distance`: to the nearest course, metres. */
    readonly things: readonly {
      readonly is: 'zone' | 'point';
      readonly name: string;
      readonly station: string | null;
      readonly distance: number;
      readonly swapped: boolean;
    }[];
  };
  readonly 'zone-large': { readonly zone: string; readonly across: number; readonly limit: number };
  /** `point`: the farthest of `count`; `other`: the station at which it lies; `away`: metres from its own. */
  readonly 'points-elsewhere': {
    readonly point: PointRef;
    readonly count: number;
    readonly other: string;
    readonly away: number;
  };
  /** `hidden`: how many errors and warnings would come with the usual values; `absurd`: one of them is beyond any road. */
  readonly 'rule-loose': {
    readonly rules: readonly LooseRule[];
    readonly hidden: number;
    readonly absurd?: boolean;
    /** So loose that it is a warning, whatever it hides. */
    readonly grave?: true;
  };
  /** `show`: the share of entrants who are counted on; `least`: of that, the usual least. */
  readonly 'show-low': { readonly race: string; readonly show: number; readonly least: number };
  /** A heat level that is cooler than the temperature given with it, or a temperature that no thermometer shows; °C. `station`: where it is the station's own. */
  readonly 'heat-doubtful':
    | {
        readonly is: 'cooler';
        readonly station: string | null;
        readonly heat: Heat;
        readonly wbgtC: number;
        readonly asks: Heat;
      }
    | { readonly is: 'beyond'; readonly station: string | null; readonly wbgtC: number; readonly most: number };
  /** `waivers`: whose dates are not checked. */
  readonly 'no-date': { readonly waivers: number };
  /** Stations that were walked after race day, or years before it; the worst first. Dates in ISO 8601. */
  readonly 'walked-date': {
    readonly is: 'after' | 'before';
    readonly stations: readonly { readonly station: string; readonly date: string }[];
    /** Of the race. */
    readonly date: string;
  };
  /** Far more tables than are needed, the worst first. */
  readonly 'tables-many': {
    readonly stations: readonly {
      readonly station: string;
      readonly item: 'water' | 'sportsDrink';
      readonly tables: number;
      readonly needed: number;
    }[];
  };
  /** `apart`: metres from box to box; `least`: of one box along the road. */
  readonly 'boxes-tight': {
    readonly boxes: number;
    readonly apart: number;
    readonly least: number;
    /** The tightest first. */
    readonly stations: readonly string[];
  };
  /** Of cups and gels; the shortest first. */
  readonly 'supplies-short': { readonly by: 'used' | 'heat'; readonly short: readonly ShortSupply[] };
  readonly 'drop-far':
    | { readonly is: 'far'; readonly name: string | null; readonly distance: number; readonly limit: number }
    | { readonly is: 'zone'; readonly name: string | null; readonly zone: string };
}
