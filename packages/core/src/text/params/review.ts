/** Named parameters of the findings on the layout: the checks of review/, by code. Lengths in metres, times in seconds; ids, not names. */
import type { DeclaredSide, ItemKind, Served } from '../../kinds.ts';
import type { AbsenceParams } from './reviewAbsence.ts';
import type { GroundParams } from './reviewGround.ts';
import type { FlowParams, PlacingParams } from './reviewFlows.ts';
import type { TimeParams } from './reviewTimes.ts';
import type { Bounded, PassAt, PointRef } from './shared.ts';

export type { PassAt, PointRef } from './shared.ts';

/** Of items: signs, tables, trash, and where they stand. */
export interface ItemsParams {
  readonly 'courses-disagree': Bounded & {
    readonly item: ItemKind;
    readonly courses: readonly [string, string];
  };
  readonly 'item-across': {
    readonly item: ItemKind;
    /** All that stand so, the first among them. */
    readonly items: readonly ItemKind[];
    readonly offset: number;
    readonly side: DeclaredSide;
    readonly tables: DeclaredSide;
  };
  readonly 'item-in-zone': {
    readonly item: ItemKind;
    /** All that are as deep in it as is grave, the deepest among them. */
    readonly items: readonly ItemKind[];
    /** The user's own name of it; may be empty. */
    readonly zone: string;
    /** Into the zone; negative outside. */
    readonly depth: number;
    readonly betweenBoxes: boolean;
    readonly sure: boolean;
    /** All of them stand in it, from end to end. */
    readonly inside?: boolean;
  };
  readonly 'item-off-course': Bounded & { readonly item: ItemKind; readonly items: readonly ItemKind[] };
  readonly 'item-outside': {
    readonly item: ItemKind;
    /** All that would, the farthest among them. */
    readonly items: readonly ItemKind[];
    readonly beyond: 'start' | 'finish' | 'gap';
    /** Past the start or the finish; 0 at a gap. */
    readonly by: number;
    /** Of the runners whom the tables are for: others run another way than the station would be moved. */
    readonly lead: boolean;
  };
  readonly 'item-outside-allowed': {
    readonly item: ItemKind;
    /** All that are, the farthest among them. */
    readonly items: readonly ItemKind[];
    readonly away: number;
    readonly sure: boolean;
  };
  readonly 'items-overlap': {
    /** The station that runners meet before. */
    readonly before: string;
    readonly overlap: number;
    /** Whether it reaches the tables of one of them. */
    readonly atTables: boolean;
    readonly sideUnclear: boolean;
    /** How many other stations reach into the same stretch, where there are many. */
    readonly others?: number;
  };
  readonly 'sign-distance': {
    /** Negative behind them. */
    readonly measured: number;
    readonly limit: readonly [number, number];
    readonly to: 'table' | 'handOut';
    readonly byHand: boolean;
    /** The distance that the station itself asks for. */
    readonly own: number | null;
  };
  /** `passes`: all that miss it, the first among them. */
  readonly 'sign-missed': PassAt & { readonly passes: readonly PassAt[] };
  /** `road`: its width, where the plan gives one: the tables stand at its edge. */
  readonly 'tables-far-off': Bounded & { readonly road?: number | null };
  readonly 'tables-hidden': Bounded;
  readonly 'tables-mismatch': { readonly item: Served; readonly tables: number };
  readonly 'two-way-road': Bounded & {
    readonly courses: readonly string[];
    readonly items: readonly ItemKind[];
    readonly sure: boolean;
  };
  /** `offset`: of the line that folds; `null` where a skipped gap is in the way. */
  readonly 'wheel-folds': {
    readonly item: ItemKind;
    readonly items: readonly ItemKind[];
    readonly offset: number | null;
  };
}

/** Of the road and the points beside it. */
export interface RoadParams {
  readonly 'access-missing': object;
  readonly 'bend-near-tables': {
    /** Degrees, left positive. */
    readonly turn: number;
    readonly most: number;
    /** How near the tables that counts. */
    readonly within: number;
    /** From the tables along the course, upstream negative; 0 beside them. */
    readonly away: number;
    /** On which side of the bend the tables stand; `null` where it has none. */
    readonly tables: 'inside' | 'outside' | null;
  };
  readonly 'clear-width': Bounded & { readonly road: number; readonly taken: number; readonly crew: number };
  readonly 'descent-with-wheels': Bounded & { readonly race: string; readonly over: number };
  readonly 'drop-side': { readonly point: PointRef } & (
    | { readonly is: 'across'; readonly offset: number; readonly side: DeclaredSide; readonly tables: DeclaredSide }
    | { readonly is: 'far'; readonly radius: number }
    | { readonly is: 'tables-unclear' }
    | { readonly is: 'unclear'; readonly offset: number; readonly confidence: number }
  );
  /** Shares of 1; `around`: course before and after the tables that counts. */
  readonly 'grade-at-tables': Bounded & { readonly climbs: boolean; readonly around: number };
  readonly 'medical-without-access': {
    readonly point: PointRef;
    readonly nearest: {
      readonly point: PointRef;
      /** Where it is that of another station. */
      readonly station: string | null;
      readonly distance: number;
    } | null;
    readonly limit: number;
    /** Too far to be of any use. */
    readonly far: boolean;
  };
  /** Of the narrowest, `station`; `stations`: all that are too narrow, in the plan's order. */
  readonly 'responders-width': Bounded & {
    readonly road: number;
    readonly station?: string;
    readonly stations?: readonly string[];
  };
  readonly 'trash-blocks-medical': { readonly medical: PointRef } & (
    | { readonly is: 'between'; readonly overlap: number; readonly side: DeclaredSide | null }
    | { readonly is: 'far'; readonly point: PointRef; readonly radius: number }
  );
}

/** Of stations and whom they serve. */
export interface ServiceParams {
  /** `other`: who comes the other way than those whom the tables are for. */
  readonly 'crosses-flow': {
    readonly other: readonly PassAt[];
    /** Who runs farther from the tables and by how much; `null` where both ways run on one line. */
    readonly farther: { readonly passes: readonly PassAt[]; readonly by: number } | null;
    readonly sideUnclear: boolean;
    /** Stations, the finding's own first, that serve one way each and stand on one kerb. */
    readonly kerb?: readonly string[];
  };
  readonly 'gel-without-water': PassAt & {
    /** To the next water; `null` where none follows. */
    readonly next: number | null;
    readonly within: number;
    /** Whether these runners meet water before the gel. */
    readonly waterBefore: boolean;
  };
  readonly 'lead-far': {
    readonly led: number;
    readonly near: number;
    readonly pass: PassAt;
    /** The how manieth time that race comes past, from 1. */
    readonly time: number;
    /** By what that pass leads without the plan's word; `null` where another does. */
    readonly taken: 'pin' | 'side' | null;
  };
  readonly 'leg-long': LegParams;
  readonly 'leg-short': LegParams;
  readonly 'length-differs': {
    readonly stated: number;
    readonly line: number;
    readonly allowed: number;
    readonly recorded: boolean;
    /** Of what is allowed, metres: by how much more the wander of a recorded line may make it longer. */
    readonly wander: number;
    /** Whether distances are stretched to the stated length: not where the line is surely another. */
    readonly used: boolean;
    /** The line is surely another: what depends on it is not told until it is corrected. */
    readonly waits?: boolean;
    /** The unit that the stated length seems to be typed in, instead of the other: as many times too long or too short as a mile has kilometres. */
    readonly typed?: 'mi' | 'km';
  };
  /** `time`: the how manieth one, from 1; `count`: how often the race comes past. */
  readonly 'pass-unknown': { readonly race: string; readonly time: number; readonly count: number };
  readonly 'race-unserved': { readonly length: number };
  readonly 'seen-not-served': {
    /** All on the way back, all the other way, or not all against those whom the tables are for. */
    readonly way: 'back' | 'other' | 'again';
    readonly passes: readonly (PassAt & { readonly time: number })[];
  };
  /** Kinds in the order in which each way's runners meet them. */
  readonly 'served-both-ways': {
    readonly lead: readonly ItemKind[];
    readonly other: readonly ItemKind[];
    readonly passes: readonly PassAt[];
  };
  readonly 'side-change': Bounded & {
    readonly race: string;
    readonly before: string;
    readonly beforeSide: DeclaredSide;
    readonly side: DeclaredSide;
  };
  readonly 'side-contradicted': {
    readonly declared: DeclaredSide;
    readonly side: DeclaredSide;
    readonly offset: number;
    readonly confidence: number;
    /** Who comes the other way and has the pin on the declared side, if anybody. */
    readonly fits: PassAt | null;
    /** The course, where it is so at most of its stations, and those stations. */
    readonly turned: {
      readonly course: string;
      readonly stations: readonly string[];
      /** Stations of other courses that it passes against their runners, where that tells it. */
      readonly against?: readonly string[];
    } | null;
  };
  readonly 'side-unclear': {
    readonly offset: number;
    readonly confidence: number;
    readonly wanted: number;
    readonly why: 'position' | 'turn' | 'onLine';
    /** Served passes of the direction that is meant; `null` where it is the lead. */
    readonly other: readonly PassAt[] | null;
    /** The pin's side is clear, but by the declared side the tables do not stand where the pin is. */
    readonly placed: boolean;
  };
  readonly 'station-off-course': Bounded & {
    readonly course: string;
    readonly measure: number;
    /** Longitude and latitude, exchanged, where that would fit. */
    readonly swapped: readonly [number, number] | null;
  };
  readonly 'station-unserved': { readonly beyondEnd: boolean };
  /** `near`: the code that was perhaps meant, where there is none such. */
  readonly 'waiver-unmatched': WaiverRef & { readonly near?: string };
  readonly 'waiver-refused': WaiverRef & {
    /** What it has to have: `earlierDate` where its date is after the race. */
    readonly lacks: 'by' | 'reason' | 'date' | 'earlierDate';
  };
  /** `worse`: the same thing, but farther off than it was. */
  readonly 'waiver-outgrown': WaiverRef & { readonly worse: boolean };
  readonly 'waiver-unbound': WaiverRef;
}

export interface ReviewParams
  extends ItemsParams, RoadParams, ServiceParams, FlowParams, PlacingParams, TimeParams, AbsenceParams, GroundParams {}

/** The code of what was waived, and who did. */
interface WaiverRef {
  readonly waived: string;
  readonly by: string;
}

/** `from` and `to`: a station's id, or `null` for the start and the finish; `here`: which of them the finding is about. */
interface LegParams extends Bounded {
  readonly race: string;
  readonly from: string | null;
  readonly to: string | null;
  readonly here: 'from' | 'to' | null;
  readonly end: number;
}
