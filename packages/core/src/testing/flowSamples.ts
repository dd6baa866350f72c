/** What findings on flows and on what stands where can be made of, for tests of their sentences. Not part of the package. */
import type { FlowParams, PlacingParams } from '../text/params/reviewFlows.ts';

type Params = FlowParams & PlacingParams;

const full = { race: 'm', measure: 41_393.4 };
const half = { race: 'h', measure: 20_301 };
const tent = { kind: 'medical', name: 'Tent' } as const;
const gate = { kind: 'access', name: null } as const;

/** Every sentence that these checks can say, by what it is made of. */
export const FLOW_SAMPLES: { readonly [C in keyof Params]: readonly Params[C][] } = {
  'after-descent': [
    { measured: 0.062, limit: 0.04, races: ['m'], over: 100 },
    { measured: 0.0402, limit: 0.04, races: ['m', 'h'], over: 100 },
  ],
  'box-distance': [
    { end: 'first', measured: 20, limit: [36.6, 54.9], byHand: true, own: null },
    { end: 'last', measured: 130, limit: [82.3, 100.6], byHand: false, own: 130 },
    { end: 'first', measured: -6, limit: [36.6, 54.9], byHand: false, own: null },
  ],
  'box-in-bend': [
    { turn: 90, most: 45, after: 62 },
    { turn: -45.2, most: 45, after: -2 },
  ],
  'box-on-leg': [
    { boxes: 1, courses: ['b'], at: 5200, measured: 1.2, limit: 4 },
    { boxes: 2, courses: ['a', 'b'], at: 5200, measured: 3.98, limit: 4 },
  ],
  'boxes-few': [
    { boxes: 1, needed: 6, cups: 5400, perBag: 300, bags: 3 },
    { boxes: 3, needed: 6, cups: 5400, perBag: 300, bags: 3 },
  ],
  'boxes-missing': [{ every: 20 }],
  'flows-share-width': [
    { other: [full], measured: 5.2, road: 6.5, limit: 6, each: 3 },
    { other: [full, half, half], measured: null, road: null, limit: 6, each: 3 },
  ],
  'fork-in-stretch': [
    { races: ['h'], how: 'parts', away: 20, meets: ['sign', 'tables'], misses: ['boxes'] },
    { races: ['h', 'm'], how: 'joins', away: 0, meets: [], misses: ['sign', 'tables'] },
  ],
  'item-order': [
    { met: ['water', 'gel', 'trash'], wanted: ['gel', 'water', 'trash'], byHand: ['gel'] },
    { met: ['water', 'gel'], wanted: ['gel', 'water'], byHand: [] },
  ],
  'items-on-top': [
    { items: ['gel', 'water'], overlap: 1.83, byHand: ['gel'] },
    { items: ['sign', 'trash'], overlap: 0.4, byHand: [] },
  ],
  'leg-crosses': [
    { courses: ['b'], measure: 12_300, touches: false, away: -40 },
    { courses: ['a', 'b'], measure: 12_300, touches: true, away: 0 },
    { courses: ['b'], measure: 12_300, touches: true, away: 8 },
  ],
  'medical-way-blocked': [
    { medical: tent, access: gate, by: 'items', items: ['water'] },
    { medical: tent, access: gate, by: 'items', items: ['sportsDrink', 'water'] },
    { medical: tent, access: gate, by: 'flow', side: 'left' },
  ],
  'near-finish': [
    { measured: 400, limit: 800, races: ['m'] },
    { measured: 799.9, limit: 800, races: ['m', 'h'] },
  ],
  'near-start': [
    { measured: 700, limit: 1200, races: ['m'] },
    { measured: 700, limit: 1200, races: ['m', 'h'] },
  ],
  'passers-not-served': [{ passes: [half] }, { passes: [half, full, full] }],
  'point-blocked': [
    { items: ['water'], point: tent, station: null, measured: 0.3, limit: 2 },
    { items: ['sign', 'trash'], point: gate, station: 's2', measured: 1.98, limit: 2 },
  ],
  'sign-hard-to-read': [
    { is: 'bend', turn: 60, most: 45, within: 30 },
    { is: 'bend', turn: -60, most: 45, within: 30 },
    { is: 'descent', measured: 0.07, limit: 0.04, over: 100 },
  ],
  'sign-in-road': [
    { measured: 1.5, limit: 4, road: 8, sure: true },
    { measured: 1.2, limit: 1.5, road: null, sure: false },
  ],
  'stations-face': [
    { other: 's2', measured: 2.2, road: 6, limit: 3 },
    { other: 's2', measured: -0.4, road: 2, limit: 3 },
    { other: 's2', measured: null, road: null, limit: 3 },
  ],
};
