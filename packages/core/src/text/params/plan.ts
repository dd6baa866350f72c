/** Named parameters of the findings on plans, by code. Lengths in metres, times in seconds; ids, not names. */
import type { Found } from '../found.ts';
import type { ListParams } from './list.ts';
import type { Unknown } from './unknown.ts';

/** Which value of a plan: its keys, e.g. `races[].waves[].time`, and what stands between the brackets, counted from 1. */
export interface Thing {
  readonly keys: string;
  readonly numbers: readonly number[];
}

/** Kinds of values that need no more than their name. */
export type PlainKind =
  | 'text'
  | 'number'
  | 'whole'
  | 'boolean'
  | 'list'
  | 'object'
  | 'other'
  | 'filledText'
  | 'id'
  | 'file'
  | 'date'
  | 'timeZone'
  | 'language'
  | 'clock'
  | 'position'
  | 'positionWithElevation'
  | 'track'
  | 'finish'
  | 'passes';

/** What a quantity of a plan measures. */
export type QuantityKind = 'length' | 'duration' | 'volume' | 'mass';

/** What would be accepted in place of a value. */
export type Accepted =
  | { readonly kind: PlainKind }
  /** `units`: those that a text may have, where the value has another or none; `colons`: it has colons, but is no H:MM:SS. */
  | {
      readonly kind: QuantityKind;
      readonly positive?: true;
      readonly units?: readonly string[];
      readonly colons?: true;
    }
  | { readonly kind: 'oneOf'; readonly values: readonly Found[]; readonly near?: string }
  /** Of a quantity in SI units. `meant`: the same digits with a unit by which they would be in range. */
  | {
      readonly kind: 'within';
      readonly quantity?: QuantityKind;
      readonly range: readonly [from: number, to: number];
      readonly meant?: string;
    }
  | { readonly kind: 'over' | 'atLeast' | 'under' | 'atMost'; readonly bound: number }
  | { readonly kind: 'fewest' | 'most'; readonly count: number; readonly of: 'entries' | 'characters' };

/** What keys that exclude one another are about. */
export type Choice = 'gpx' | 'line' | 'parts' | 'at' | 'on';

/** A value that cannot be used, alone or beside others. */
export type ValueProblem =
  | { readonly problem: 'value'; readonly found: Found; readonly accepted: Accepted }
  | { readonly problem: 'noSuchDay'; readonly found: Found }
  | { readonly problem: 'latitude' | 'longitude'; readonly found: number; readonly swapped?: true }
  | { readonly problem: 'elevation'; readonly found: number; readonly range: readonly [number, number] }
  | { readonly problem: 'tooManyEntrants'; readonly entrants: number; readonly most: number }
  | { readonly problem: 'markUnplaced' | 'markUnmeasured' }
  | { readonly problem: 'firstShare' | 'lastShare'; readonly found: number }
  | { readonly problem: 'shareFalls'; readonly found: number; readonly before: number }
  | { readonly problem: 'timeFalls' }
  | { readonly problem: 'rangeUpsideDown'; readonly low: string; readonly from: number; readonly to: number }
  | { readonly problem: 'tooManyBoxes'; readonly boxes: number; readonly most: number }
  | { readonly problem: 'partBackwards'; readonly from: number; readonly to: number }
  /** Clock times. */
  | { readonly problem: 'timesBackwards'; readonly from: number; readonly to: number }
  | { readonly problem: 'heatStepsFall'; readonly steps: readonly [number, number] }
  | { readonly problem: 'noneOf'; readonly choices: readonly Choice[] }
  | { readonly problem: 'together'; readonly found: readonly Choice[]; readonly choices: readonly Choice[] };

/** An entry that a plan does not have there. */
export type KeyProblem = { readonly problem: 'unknown'; readonly key: Unknown } | { readonly problem: 'fixedId' };

type Kind = 'course' | 'race' | 'station';

/** What one part of a plan says of another. */
export type ReferenceProblem =
  /** `number`: of the entry that has it already, from 1. */
  | { readonly problem: 'twice'; readonly found: Found; readonly number: number }
  | { readonly problem: 'missing'; readonly of: Kind; readonly name: Unknown }
  | { readonly problem: 'notServed'; readonly name: Unknown }
  /** Ids of two stations that are to keep one number. */
  | { readonly problem: 'sameNumber'; readonly number: number; readonly stations: readonly [string, string] }
  | { readonly problem: 'circle'; readonly way: readonly string[] };

export type VersionProblem =
  | { readonly problem: 'noPlan'; readonly found: Found; readonly version: number }
  | { readonly problem: 'format'; readonly found: Found }
  | { readonly problem: 'version'; readonly found: Found; readonly current: number }
  | { readonly problem: 'later'; readonly found: number; readonly current: number };

/** What strict JSON expects where it breaks off. */
export type JsonExpected =
  | 'value'
  | 'number'
  | 'key'
  | 'colon'
  | 'comma'
  | 'brace'
  | 'bracket'
  | 'end'
  | 'noComment'
  | 'quote'
  | 'digits'
  | 'unicode'
  | 'escape'
  | 'noControl'
  | 'noComma';

export type JsonProblem =
  | { readonly problem: 'empty' | 'markup' }
  | { readonly problem: 'deep'; readonly most: number }
  | { readonly problem: 'half'; readonly found: string }
  | { readonly problem: 'cutOff'; readonly expected: JsonExpected }
  | { readonly problem: 'found'; readonly found: Found; readonly expected: JsonExpected };

/** Bytes that are no UTF-8: another encoding of two or four bytes, or the first byte that does not fit, `at` from 1. */
export type EncodingProblem =
  | { readonly problem: 'wide'; readonly encoding: 'UTF-16' | 'UTF-32' }
  | { readonly problem: 'invalid' | 'binary'; readonly byte: string; readonly at: number };

/** What a plan's courses can miss in the files that it names. */
export interface SourceParams {
  'text-encoding': EncodingProblem;
  'gpx-missing': { readonly gpx: string };
  'mark-unknown':
    | { readonly problem: 'unmeasured'; readonly name?: string; readonly waypoint?: Unknown }
    | {
        readonly problem: 'unplaced';
        readonly name?: string;
        /** The GPX file, and how many waypoints of it have the name; absent: the course has no file of its own. */
        readonly gpx?: { readonly file: string; readonly waypoints: number };
        readonly waypoint?: Unknown;
      };
}

export interface PlanParams extends SourceParams, ListParams {
  'plan-value': Thing & ValueProblem;
  'plan-key': KeyProblem;
  'plan-reference': Thing & ReferenceProblem;
  'plan-version': VersionProblem;
  'plan-not-json': JsonProblem;
  'plan-duplicate-key': { readonly key: string; readonly problem: 'twice' | 'hidden' };
  'plan-variant': { readonly variant: Unknown };
  'start-places':
    | { readonly problem: 'everyAndAt' | 'noWaypoints' | 'noStations' }
    | { readonly problem: 'every'; readonly every: Found; readonly length: number; readonly most: number }
    | { readonly problem: 'repeated'; readonly measure: number }
    | { readonly problem: 'unusedMarks'; readonly names: readonly string[]; readonly more: number };
  'start-waypoint':
    | { readonly problem: 'mark'; readonly name: string }
    | { readonly problem: 'end'; readonly name: string; readonly end: 'start' | 'finish' }
    | { readonly problem: 'offCourse' | 'unordered'; readonly name: string };
  'setup-race':
    | {
        readonly problem: 'value';
        readonly field: 'turnAt' | 'laps' | 'start' | 'entrants' | 'finish' | 'cutoff' | 'cutoffAt';
        readonly found: Found;
      }
    | { readonly problem: 'noName' | 'noEntrants' | 'twoCutoffs' | 'twoShapes' }
    | { readonly problem: 'turnPast'; readonly measure: number; readonly length: number }
    | { readonly problem: 'noStart'; readonly of: 'entrants' | 'cutoff' }
    | { readonly problem: 'cutoffFirst'; readonly start: number; readonly cutoff: number }
    | {
        readonly problem: 'pace';
        readonly field: 'finish' | 'cutoff';
        readonly found: Found;
        readonly time: number;
        readonly length: number;
      };
  'setup-file': { readonly problem: 'course' | 'race'; readonly gpx: string };
  'setup-every': { readonly every: number; readonly most: number };
}
