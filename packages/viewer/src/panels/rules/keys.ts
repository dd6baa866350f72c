/** The keys of practice, supplies and crew as fields, in the order in which one reads them. */
import type { Crew, Packs, Practice } from '@halfcup/core';

export interface Row<Key extends string> {
  readonly key: Key;
  readonly label: string;
  readonly kind: 'length' | 'long' | 'duration' | 'number' | 'volume' | 'small' | 'mass';
  /** What a plain number counts. */
  readonly unit?: string;
}

export const PRACTICE_ROWS: readonly Row<keyof Practice>[] = [
  { key: 'signAhead', label: 'Sign ahead of the first table', kind: 'length' },
  { key: 'signTolerance', label: 'Sign may be off by', kind: 'length' },
  { key: 'gelAhead', label: 'Gel ahead of the drinks', kind: 'length' },
  { key: 'tableGap', label: 'Gap between kinds', kind: 'length' },
  { key: 'tableLength', label: 'Length of a table', kind: 'length' },
  { key: 'trashFrom', label: 'First box past the last table', kind: 'length' },
  { key: 'trashTo', label: 'Last box past the last table', kind: 'length' },
  { key: 'boxEvery', label: 'A box at least every', kind: 'length' },
  { key: 'kerb', label: 'Kerb from the course line', kind: 'length' },
  { key: 'setback', label: 'Tables back from the kerb', kind: 'length' },
  { key: 'clearWidth', label: 'Clear width for runners', kind: 'length' },
  { key: 'bendClear', label: 'Tables clear of a bend by', kind: 'length' },
  { key: 'maxGrade', label: 'Steepest grade at tables', kind: 'number', unit: 'rise over run' },
  { key: 'maxSpacing', label: 'Longest leg', kind: 'long' },
  { key: 'minSpacing', label: 'Shortest leg', kind: 'long' },
  { key: 'snapRadius', label: 'A course passes within', kind: 'length' },
  { key: 'pinR95', label: 'Pins are good to (95 %)', kind: 'length' },
  { key: 'courseR95', label: 'Course is good to (95 %)', kind: 'length' },
  { key: 'sideConfidence', label: 'Side is sure from', kind: 'number', unit: 'of 1' },
];

export const CREW_ROWS: readonly Row<keyof Crew>[] = [
  { key: 'pourers', label: 'Pourers to a direction, at least', kind: 'number' },
  { key: 'pourRate', label: 'One pours', kind: 'number', unit: 'cups/min' },
  { key: 'handRate', label: 'One hands out', kind: 'number', unit: 'cups/min' },
  { key: 'handSpacing', label: 'Between two who hand out', kind: 'length' },
  { key: 'gelRate', label: 'One hands out gels', kind: 'number', unit: 'a min' },
  { key: 'cleanPer', label: 'One clears up after', kind: 'number', unit: 'cups/h' },
  { key: 'ready', label: 'Ready before the first runner', kind: 'duration' },
  { key: 'setUp', label: 'Time to set up', kind: 'duration' },
  { key: 'minimum', label: 'Crew at least', kind: 'number' },
  { key: 'longest', label: 'Longest shift', kind: 'duration' },
];

export const SUPPLY_ROWS: readonly Row<'gelOrder' | 'waste' | 'cup' | 'fill' | 'cupsPerLayer' | 'layers' | 'cupsPerBag' | 'prePourSafety'>[] = [
  { key: 'cup', label: 'A cup holds', kind: 'small' },
  { key: 'fill', label: 'It is filled to', kind: 'number', unit: 'of 1' },
  { key: 'waste', label: 'Wasted', kind: 'number', unit: 'of 1' },
  { key: 'gelOrder', label: 'Gels ordered for a runner', kind: 'number' },
  { key: 'cupsPerLayer', label: 'Cups on a table, one layer', kind: 'number' },
  { key: 'layers', label: 'Layers', kind: 'number' },
  { key: 'cupsPerBag', label: 'Used cups to a bag', kind: 'number' },
  { key: 'prePourSafety', label: 'Pre-pour times', kind: 'number' },
];

export const PACK_ROWS: readonly Row<keyof Packs>[] = [
  { key: 'cups', label: 'Cups to a pack', kind: 'number' },
  { key: 'waterJug', label: 'A jug of water', kind: 'volume' },
  { key: 'sportsDrinkJug', label: 'A jug of sports drink', kind: 'volume' },
  { key: 'gels', label: 'Gels to a box', kind: 'number' },
  { key: 'gloves', label: 'Gloves to a box', kind: 'number' },
  { key: 'bags', label: 'Bags to a roll', kind: 'number' },
  { key: 'towels', label: 'Towels to a pack', kind: 'number' },
  { key: 'stackingSheets', label: 'Stacking sheets to a pack', kind: 'number' },
];

/** Kilograms of one pack or piece. */
export const WEIGHT_ROWS: readonly Row<string>[] = [
  { key: 'cups', label: 'A pack of cups', kind: 'mass' },
  { key: 'waterJug', label: 'A jug of water', kind: 'mass' },
  { key: 'sportsDrinkJug', label: 'A jug of sports drink', kind: 'mass' },
  { key: 'gels', label: 'A box of gels', kind: 'mass' },
  { key: 'gloves', label: 'A box of gloves', kind: 'mass' },
  { key: 'bags', label: 'A roll of bags', kind: 'mass' },
  { key: 'towels', label: 'A pack of towels', kind: 'mass' },
  { key: 'stackingSheets', label: 'A pack of stacking sheets', kind: 'mass' },
  { key: 'table', label: 'A table', kind: 'mass' },
  { key: 'sign', label: 'A sign', kind: 'mass' },
  { key: 'box', label: 'A trash box', kind: 'mass' },
];
