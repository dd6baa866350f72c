/** Named parameters of the findings on race day, by code. Lengths in metres, times in seconds, masses in kilograms; ids, not names. */
import type { Supply, WeatherBy, WeatherLevel } from '../../kinds.ts';
import type { Found } from '../found.ts';

type Drink = 'water' | 'sportsDrink';

/** A line of past results that cannot be read. */
type Unread =
  | { readonly problem: 'openQuote' | 'afterQuote' }
  | { readonly problem: 'tooMany'; readonly fields: number; readonly header: number }
  | { readonly problem: 'tooFew'; readonly fields: number; readonly header: number }
  | { readonly problem: 'noTime'; readonly found: Found }
  /** How many lines more cannot be read. */
  | { readonly problem: 'more'; readonly rows: number };

/** `is`: the last start or the race's cutoff; absent: a sweep time of the clock. */
interface SweepAt {
  readonly measure: number;
  readonly time: number;
  readonly is?: 'start' | 'cutoff';
}

export interface RacedayParams {
  'race-without-waves': Readonly<Record<string, never>>;
  /** `show`: the share of entrants who start. */
  'race-without-starters': { readonly show: number };
  'race-too-large': { readonly starters: number; readonly most: number };
  /** `wave`: its number in the plan, from 1. */
  'race-without-times': { readonly wave: number };
  /** `after`: from the first start to the last finish; `null` where nobody can say how long. */
  'race-endless': { readonly after: number | null; readonly most: number };
  /** Clock times; `flow`: persons a minute over the line. */
  'waves-overlap': { readonly wave: number; readonly until: number; readonly next: number; readonly flow: number };
  'results-missing': { readonly csv: string; readonly column: string };
  'results-empty':
    | { readonly problem: 'noLine'; readonly column: string }
    | { readonly problem: 'noTimes'; readonly column: string; readonly rows: number };
  'results-unread': Unread;
  'results-column':
    | { readonly problem: 'several'; readonly column: string; readonly count: number }
    | { readonly problem: 'none'; readonly column: string; readonly header: readonly string[]; readonly more: number };
  /** Splits that are not used, and why; `found`: what stands in the first cell. Metres. */
  'splits-left-out':
    | { readonly problem: 'twice'; readonly columns: readonly string[] }
    | {
        readonly problem: 'unread';
        readonly column: string;
        readonly rows: number;
        readonly found: Found;
        readonly used: boolean;
      }
    | { readonly problem: 'beyond'; readonly columns: readonly string[]; readonly length: number }
    | { readonly problem: 'runners' | 'all'; readonly runners: number; readonly of: number };
  'results-left-out': { readonly leftOut: number; readonly rows: number; readonly column: string };
  'gradient-unknown': { readonly course: string };
  /** Rise over run. */
  'gradient-too-steep': { readonly course: string; readonly grade: number; readonly most: number };
  /** Clock times; `start`: when the last crosses the start line. */
  'cutoff-early': { readonly cutoff: number; readonly start: number };
  'sweep-impossible':
    | { readonly problem: 'early'; readonly leaves: number; readonly wave: number }
    | {
        readonly problem: 'backwards';
        readonly from: SweepAt;
        readonly to: SweepAt;
        readonly course: string;
      };
  /** Degrees Celsius. */
  'heat-steps': { readonly steps: readonly [number, number] };
  /** `wbgtC`: the temperature that is given, without the steps that it would need. */
  'heat-assumed': { readonly assumed: 'cool' | 'warm' | 'hot'; readonly wbgtC?: number };
  /** The hottest that is expected, °C, at a clock time, and how it is known. */
  'weather-level': {
    readonly level: WeatherLevel;
    readonly at: number;
    readonly celsius: number;
    readonly by: WeatherBy;
  };
  'weather-wind': { readonly at: number; readonly kmh: number };
  'gels-short': { readonly ordered: number; readonly taken: number; readonly each: number };
  /** Cups; `pourers`: how many would do instead of more tables, where they would. */
  'pre-pour-room': {
    readonly drink: Drink;
    readonly tables: number;
    readonly hold: number;
    readonly wanted: number;
    readonly more: number;
    readonly pourers?: number;
    /** Where it is more than one: each station, the worst first. */
    readonly all?: readonly {
      readonly station: string;
      readonly drink: Drink;
      readonly hold: number;
      readonly wanted: number;
    }[];
  };
  /** `at`: clock time; `short`: cups in that minute; `pourers`: how many keep up. */
  'cups-run-out': {
    readonly drink: Drink;
    readonly at: number;
    readonly short: number;
    readonly hold: number;
    readonly pourers: number;
  };
  /** Tables and metres that the day asks for, those planned, and the room; `pourers`: `null` where the plan says how many. */
  'tables-room': {
    readonly wanted: number;
    readonly tables: number;
    readonly length: number;
    readonly room: number;
    readonly pourers: number | null;
    /** Ids, where it is more than one: the worst first. */
    readonly stations?: readonly string[];
  };
  'crew-many': { readonly crew: number; readonly arrivals: number; readonly most: number };
  'pour-late': { readonly cups: number; readonly people: number; readonly takes: number; readonly most: number };
  /** Ids of stations, that with the fewest first; drinks a runner; metres between stations. */
  'drinks-few': {
    readonly stations: readonly string[];
    readonly ordered: number;
    readonly least: number;
    readonly apart: number;
  };
  /** `rules`: keys of the plan that have no effect. */
  'rule-unused': { readonly rules: readonly string[]; readonly because: 'bottles' | 'cups' };
  'station-no-arrivals': { readonly problem: 'unpassed' | 'nobody' };
  /** `vehicle`: its name; `late`: the worst; `stations`: ids, the worst first, where it is more than one. */
  'drop-closed': {
    readonly kg: number;
    readonly vehicle: string;
    readonly late: number;
    readonly stations?: readonly string[];
  };
  /** Clock times; `stations` as before. */
  'drop-late': {
    readonly vehicle: string;
    readonly done: number;
    readonly due: number;
    readonly stations?: readonly string[];
  };
  /** `trips`: to the heaviest station; `used`: runs are planned with it, as there is no other; `count`: of such vehicles, of which it is the worst. */
  'vehicle-doubtful':
    | {
        readonly problem: 'light';
        readonly vehicle: string;
        readonly kg: number;
        readonly trips: number;
        readonly used: boolean;
        readonly count: number;
      }
    | {
        readonly problem: 'fast';
        readonly vehicle: string;
        readonly kmh: number;
        readonly most: number;
        readonly count: number;
      };
  'load-too-heavy': { readonly supply: Supply; readonly kg: number; readonly most: number };
  'clock-missing': { readonly course: string; readonly times: readonly ('accessOpens' | 'closes' | 'reopens')[] };
  'vehicles-missing': { readonly stations: number; readonly kg: number };
  'drop-nowhere': Readonly<Record<string, never>>;
}
