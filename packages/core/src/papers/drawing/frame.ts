/** What a drawing of a station is made of: its sizes, its inks, and what it is asked to show. */
import type { LaidDirection } from '../../layout/layout.ts';
import type { PointKind } from '../../plan/plan.ts';
import type { SheetText } from '../../text/sheetText.ts';
import type { UnitSystem } from '../../units.ts';
import type { KerbScale } from '../kerbScale.ts';

/** A point of the station near its kerb. */
export interface KerbPoint {
  readonly kind: PointKind;
  /** What it is called on paper. */
  readonly word: string;
  /** From the pin's foot along the course, metres. */
  readonly along: number;
}

/** Ground beside the tables that must stay clear: a drive, a gate. */
export interface KerbGate {
  /** What it is called; a plan's own word. */
  readonly word: string;
  /** From the pin's foot along the course, metres. */
  readonly along: readonly [number, number];
}

/** Where another street meets the road, by the plan's map. */
export interface KerbMouth {
  /** What the street is called. */
  readonly word: string;
  /** On the tables' side, across the road from them, or both. */
  readonly kerb: 'near' | 'far' | 'both';
  /** From the pin's foot along the course, metres. */
  readonly along: readonly [number, number];
}

/** Persons by what they do. */
export interface KerbPeople {
  readonly handOut: number;
  readonly pour: number;
  readonly gel: number;
}

/** A column of a page, half a page of paper, a page laid across. */
export type DrawingSize = 'panel' | 'half' | 'full';
/** Black on white, or in colour. */
export type DrawingLook = 'ink' | 'colour';

export interface DrawingInput {
  readonly direction: LaidDirection;
  /** Metres. */
  readonly tableLength: number;
  readonly points: readonly KerbPoint[];
  readonly units: UnitSystem;
  readonly text: SheetText;
  /** Millimetres, at least 60. */
  readonly width: number;
  readonly size?: DrawingSize;
  readonly look?: DrawingLook;
  readonly gates?: readonly KerbGate[];
  readonly mouths?: readonly KerbMouth[];
  /** Drawn where they stand. */
  readonly people?: KerbPeople;
  /** Metres. */
  readonly roadWidth?: number;
  /** Lines that say how long each stretch is. */
  readonly dimensions?: boolean;
  /** What the signs of the drawing mean, under it. */
  readonly note?: boolean;
}

/** Places `v` millimetres out from the kerb on a drawing so high, whichever side the verge is on. */
export type Out = (v: number) => number;

/** What pieces of a drawing are placed with. */
export interface Board {
  readonly input: DrawingInput;
  readonly scale: KerbScale;
  readonly inks: Inks;
  /** Points of a label's text. */
  readonly points: number;
}

/** Millimetres out from the kerb, over the verge. */
export const OUT = {
  road: -11,
  handOut: 1.2,
  table: 2.4,
  tableEnd: 5.6,
  box: 2.4,
  boxEnd: 5.4,
  boxLine: 6.1,
  people: 6.6,
  verge: 6,
  bend: 7.5,
  keys: 7.6,
  point: 9.2,
  pointEnd: 10.9,
  rows: 11.2,
} as const;

/** Points of a label's text. */
export const SIZES: Readonly<Record<DrawingSize, number>> = { panel: 9, half: 10, full: 11 };

export interface Inks {
  readonly road: string;
  readonly gel: string;
  readonly sportsDrink: string;
  readonly water: string;
  readonly sign: string;
  readonly boxes: string;
  readonly hands: string;
  readonly people: string;
}

export const INKS: Readonly<Record<DrawingLook, Inks>> = {
  ink: {
    road: '#ececec',
    gel: '#000',
    sportsDrink: '#bbb',
    water: '#fff',
    sign: '#000',
    boxes: '#fff',
    hands: '#000',
    people: '#fff',
  },
  colour: {
    road: '#e4e4e0',
    gel: '#8a4fa3',
    sportsDrink: '#f0b429',
    water: '#8ecae6',
    sign: '#14532d',
    boxes: '#d6c7ae',
    hands: '#b3261e',
    people: '#fff',
  },
};
