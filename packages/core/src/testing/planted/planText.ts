/** A plan as a coordinator types it: the file's own shape, which plants change. Not part of the package. */
import type { ItemKind, PointKind } from '../../kinds.ts';

/** Longitude, latitude. */
export type Pair = [number, number];
type Side = 'left' | 'right';
type Kind = 'gel' | 'sportsDrink' | 'water';
type PerKind = { [kind in Kind]?: number };
/** Overrides of practice, supplies or crew, as they are written. */
export type Rules = Record<string, unknown>;

export interface PointText {
  kind: PointKind;
  at: Pair;
  name?: string;
  street?: string;
  note?: string;
}

export interface StationText {
  id: string;
  name: string;
  at?: Pair;
  on?: { course: string; measure: string; side: Side; offset?: string };
  side?: Side;
  lead?: { race: string; pass: number };
  races?: string[];
  passes?: 'lead' | 'all' | { race: string; pass: number }[];
  serves?: Kind[];
  tables?: PerKind;
  boxes?: number;
  width?: string;
  practice?: Rules;
  supplies?: Rules;
  crew?: Rules;
  items?: { [kind in ItemKind]?: { at: Pair } };
  points: PointText[];
  people: { captain?: string; radio?: string; phone?: string };
  used?: PerKind;
}

export interface CourseText {
  id: string;
  name: string;
  gpx?: string;
  line?: number[][];
  drawn?: 'centre' | 'recorded';
  length?: string;
  reverse?: boolean;
}

export interface WaveText {
  time: string;
  entrants: number;
  finish?: { median: string; spread: number };
}

export interface RaceText {
  id: string;
  name: string;
  course: string;
  division?: 'run' | 'walk' | 'wheels';
  waves: WaveText[];
  finish?: { median: string; spread: number };
  show?: number;
  startFlow?: number;
  startWidth?: string;
  cutoff?: string;
  late?: 'out' | 'served';
  gradient?: boolean;
}

export interface ClockText {
  course: string;
  measure: string;
  accessOpens?: string;
  closes?: string;
  sweep?: string;
  reopens?: string;
}

export interface PlanText {
  format: 'halfcup-plan';
  version: 1;
  name: string;
  date?: string;
  timeZone: string;
  units: 'metric' | 'imperial';
  courses: CourseText[];
  races: RaceText[];
  stations: StationText[];
  zones: { name: string; rule: 'keep-clear' | 'allowed'; polygon: Pair[] }[];
  practice?: Rules;
  supplies: Rules;
  crew?: Rules;
  people?: { crew: { name: string; station: string }[] };
  vehicles: {
    id: string;
    name: string;
    kg: number;
    places: number;
    kmh: number;
    stop: string;
    from: string;
  }[];
  clock: ClockText[];
  contacts: { emergency?: string; raceControl?: string; radioChannel?: string };
}

/** The texts of the files that the plan names. */
export type FileTexts = Record<string, string>;
