import { describe, expect, it } from 'vitest';
import { FLOW_SAMPLES } from '../testing/flowSamples.ts';
import { GROUND_SAMPLES } from '../testing/groundSamples.ts';
import { findings as english } from './en/findings.ts';
import { words as englishWords } from './en/words.ts';
import { findings as spanish } from './es/findings.ts';
import { words as spanishWords } from './es/words.ts';
import type { PlacedParams } from './params/placed.ts';
import type { ReviewParams } from './params/review.ts';
import type { AbsenceParams } from './params/reviewAbsence.ts';
import type { TimeParams } from './params/reviewTimes.ts';
import { type Say, sayIn } from './say.ts';
import { type Sentence, joined } from './sentence.ts';
import type { Names } from './voice.ts';

const names: Names = { station: (id) => `Station ${id}`, race: (id) => `Race ${id}`, course: (id) => `Course ${id}` };
const full = { race: 'm', measure: 41_393.4 };
const half = { race: 'h', measure: 20_301 };
const drop = { kind: 'drop', name: null } as const;
const tent = { kind: 'medical', name: 'Tent' } as const;
const leg = { race: 'm', from: null, to: 's1', here: 'to', end: 5012, measured: 5012, limit: 5000 } as const;

const quay = { course: 'c', measure: 12_000, station: 's1' } as const;
const road = { course: 'c', measure: 12_000, station: null } as const;
const many = ['s1', 's2', 's3', 's4', 's5', 's6'] as const;

const TIMES: { readonly [C in keyof TimeParams]: readonly TimeParams[C][] } = {
  'closes-late': [
    { places: [{ ...quay, closes: 28_800, race: 'm', first: 28_000 }] },
    { places: [road, quay, road].map((place) => ({ ...place, closes: 28_800, race: 'm', first: 28_799 })) },
  ],
  'reopens-early': [
    { places: [{ ...quay, reopens: 50_000, race: 'm', last: 51_000, clear: 600 }] },
    { places: [road, quay].map((place) => ({ ...place, reopens: 50_000, race: 'm', last: 51_000, clear: 0 })) },
  ],
  'clock-order': [
    {
      course: 'c',
      faults: [
        {
          is: 'order',
          measure: 12_000,
          before: { key: 'closes', time: 28_800 },
          after: { key: 'sweep', time: 25_200 },
        },
      ],
    },
    {
      course: 'c',
      faults: [
        {
          is: 'order',
          measure: 12_000,
          before: { key: 'accessOpens', time: 28_800 },
          after: { key: 'closes', time: 25_200 },
        },
        {
          is: 'falls',
          key: 'reopens',
          from: { measure: 0, time: 40_000 },
          to: { measure: 12_000, time: 39_000 },
        },
      ],
    },
    {
      course: 'c',
      faults: [
        { is: 'falls', key: 'sweep', from: { measure: 0, time: 40_000 }, to: { measure: 12_000, time: 39_000 } },
      ],
    },
    ...(['sweep', 'reopens'] as const).map((key) => ({
      course: 'c',
      faults: [{ is: 'cutoff' as const, race: 'm', cutoff: 47_700, key, time: 42_480, measure: 12_000 }],
    })),
  ],
  'clock-beyond': [
    { course: 'c', measure: 25_000, start: 0, length: 20_000, count: 1 },
    { course: 'c', measure: 25_000, start: 0, length: 20_000, count: 3 },
    { course: 'c', measure: 0, start: 5000, length: 20_000, count: 2 },
  ],
  'clock-short': [
    { course: 'c', end: 'finish', keys: ['closes', 'reopens'], measure: 15_960, left: 14_040 },
    { course: 'c', end: 'start', keys: ['closes'], measure: 5000, left: 5000 },
  ],
  'crew-late': [
    { stations: [{ station: 's1', crewAt: 28_800, before: { is: 'closes', time: 27_000 }, race: null }] },
    {
      stations: ['s1', 's2'].map((station) => ({
        station,
        crewAt: 28_800,
        before: { is: 'first', time: 27_000 },
        race: 'm',
      })),
    },
    {
      stations: ['s1', 's2', 's3'].map((station) => ({
        station,
        crewAt: 28_800,
        before: { is: 'closes', time: 27_000 },
        race: null,
      })),
    },
  ],
  'cutoff-stops-many': [{ race: 'm', stopped: 380, starters: 1900, most: 0.1 }],
  'slow-wave-first': [
    {
      slow: { race: 'h', wave: 28_800, speed: 2 },
      fast: { race: 'm', wave: 29_100, speed: 3 },
      apart: 290,
    },
  ],
  'speed-impossible': [
    { is: 'fast', race: 'm', time: 5400, best: 7235, length: 42_195 },
    { is: 'slow', race: 'm', time: 60_000, most: 50_634, length: 42_195 },
    { is: 'fast', race: 'm', time: 480, best: 1897, length: 12_000, typed: true },
    { is: 'slow', race: 'm', time: 60_000, most: 50_634, length: 42_195, typed: true },
  ],
  'crowded-road': [{ runners: 120, most: 86, over: 20, width: 4, at: 28_900, races: ['m', 'h'] }],
};

const ABSENCE: { readonly [C in keyof AbsenceParams]: readonly AbsenceParams[C][] } = {
  'no-medical': [
    { none: true, courses: [] },
    { none: false, courses: ['c', 'd'] },
  ],
  'no-widths': [
    { all: true, stations: many },
    { all: false, stations: many },
  ],
  'no-elevations': [{ courses: ['c'] }],
  'no-entrants': [
    { races: ['m'], all: true },
    { races: ['m', 'h'], all: false },
  ],
  'no-contacts': [{ missing: ['emergency', 'raceControl', 'radioChannel'] }, { missing: ['raceControl'] }],
  'roster-short': [
    { there: 0, at: 30_000, needed: 6 },
    { there: 1, at: 30_000, needed: 2 },
    { there: 9, at: 30_000, needed: 12 },
  ],
  'no-captain': [
    { all: true, unnamed: many, unreached: [] },
    { all: false, unnamed: ['s1'], unreached: ['s2'] },
    { all: false, unnamed: ['s1'], unreached: [] },
    { all: false, unnamed: [], unreached: ['s1', 's2'] },
    { all: false, unnamed: [], unreached: ['s1'] },
  ],
  'shared-contact': (['captain', 'radio', 'phone'] as const).map((what) => ({
    what,
    value: 'R. Gull',
    stations: ['s1', 's2'],
  })),
  'no-water': [
    { races: ['m', 'h'] },
    { races: ['m', 'h'], dry: null },
    { races: ['m'], dry: { length: 19_870, end: 19_870, limit: 5000 } },
    { races: ['m'], dry: { length: 5000.4, end: 19_870, limit: 5000 } },
  ],
  'zone-large': [
    { zone: 'Clinic', across: 5_000_000, limit: 10_000 },
    { zone: '', across: 10_001, limit: 10_000 },
  ],
  'points-elsewhere': [
    { point: tent, count: 1, other: 's2', away: 6140 },
    { point: drop, count: 2, other: 's2', away: 301 },
    { point: drop, count: 3, other: 's2', away: 6140 },
  ],
  'same-name': [
    { name: 'Kelp', count: 2 },
    { name: 'Kelp', count: 3 },
  ],
  'name-distance': [{ said: 19_312.128, race: 'm', measure: 21_000 }],
  'far-from-courses': [
    {
      limit: 1000,
      things: [{ is: 'zone', name: 'Hydrant', station: null, distance: 2_000_000, swapped: true }],
    },
    {
      limit: 1000,
      things: [
        { is: 'point', name: '', station: 's1', distance: 1100, swapped: false },
        { is: 'zone', name: '', station: null, distance: 1200, swapped: false },
        { is: 'zone', name: '', station: null, distance: 1300, swapped: false },
      ],
    },
    {
      limit: 1000,
      things: [
        { is: 'point', name: 'Tent', station: 's1', distance: 1100, swapped: false },
        { is: 'zone', name: '', station: null, distance: 1200, swapped: false },
      ],
    },
  ],
  'rule-loose': [
    { rules: [{ rule: 'maxSpacing', station: null, value: 8000, usual: 5000 }], hidden: 0 },
    {
      rules: [
        { rule: 'signTolerance', station: null, value: 40, usual: 9.144 },
        { rule: 'clearWidth', station: 's1', value: 2, usual: 3 },
        { rule: 'maxGrade', station: null, value: 0.08, usual: 0.04 },
        { rule: 'sideConfidence', station: null, value: 0.6, usual: 0.95 },
      ],
      hidden: 1,
    },
    { rules: [{ rule: 'kerb', station: null, value: 40, usual: 4 }], hidden: 0, absurd: true },
    { rules: [{ rule: 'maxGrade', station: 's1', value: 0.08, usual: 0.04 }], hidden: 3 },
    { rules: [{ rule: 'pourers', station: 's1', value: 0, usual: 2 }], hidden: 0, grave: true },
    {
      rules: [
        { rule: 'trashFrom', station: null, value: 5, usual: 45.72 },
        { rule: 'minimum', station: null, value: 0, usual: 6 },
      ],
      hidden: 0,
      grave: true,
    },
  ],
  'show-low': [{ race: 'm', show: 0.09, least: 0.5 }],
  'heat-doubtful': [
    { is: 'cooler', station: null, heat: 'cool', wbgtC: 28, asks: 'hot' },
    { is: 'cooler', station: 's1', heat: 'warm', wbgtC: 28.5, asks: 'hot' },
    { is: 'beyond', station: null, wbgtC: 58, most: 45 },
    { is: 'beyond', station: 's1', wbgtC: 58, most: 45 },
  ],
  'no-date': [{ waivers: 0 }, { waivers: 1 }, { waivers: 3 }],
  'walked-date': (['after', 'before'] as const).flatMap((is) =>
    [['s1'], [...many]].map((ids) => ({
      is,
      stations: ids.map((station) => ({ station, date: '2028-10-01' })),
      date: '2027-10-17',
    })),
  ),
  'tables-many': [1, 2, 3].map((count) => ({
    stations: many.slice(0, count).map((station) => ({ station, item: 'water', tables: 40, needed: 2 })),
  })),
  'boxes-tight': [1, 2, 3].map((count) => ({
    boxes: 80,
    apart: 0.57,
    least: 0.9,
    stations: many.slice(0, count),
  })),
  'supplies-short': [
    { by: 'used', short: [{ station: 's1', item: 'water', ordered: 2400, asked: 3050 }] },
    {
      by: 'heat',
      short: [
        { station: 's1', item: 'sportsDrink', ordered: 2400, asked: 3050 },
        { station: 's2', item: 'water', ordered: 2400, asked: 3050 },
      ],
    },
    {
      by: 'used',
      short: ['s1', 's2', 's3'].map((station) => ({ station, item: 'gel', ordered: 100, asked: 120 })),
    },
  ],
  'drop-far': [
    { is: 'far', name: 'Yard', distance: 120, limit: 100 },
    { is: 'far', name: null, distance: 100.2, limit: 100 },
    { is: 'zone', name: 'Yard', zone: 'Hydrant' },
    { is: 'zone', name: null, zone: '' },
  ],
};

/** Every sentence that a check can say, by what it is made of. */
const REVIEW: { readonly [C in keyof ReviewParams]: readonly ReviewParams[C][] } = {
  ...FLOW_SAMPLES,
  ...GROUND_SAMPLES,
  'access-missing': [{}],
  'bend-near-tables': [
    { turn: 60.4, most: 45, within: 30, away: -12, tables: 'inside' },
    { turn: -45.3, most: 45, within: 30, away: 0, tables: 'outside' },
    { turn: 170, most: 45, within: 30, away: 3, tables: null },
  ],
  'clear-width': [
    { measured: 2.7, limit: 3, road: 4, taken: 1.3, crew: 1 },
    { measured: -0.2, limit: 3, road: 1, taken: 1.2, crew: 1 },
  ],
  'courses-disagree': [{ measured: 1.2, limit: 0.5, item: 'sign', courses: ['a', 'b'] }],
  'crosses-flow': [
    { other: [full, half], farther: null, sideUnclear: false },
    { other: [full], farther: { passes: [full], by: 3 }, sideUnclear: true },
    { other: [full], farther: null, sideUnclear: false, kerb: ['s1', 's2'] },
    { other: [full], farther: null, sideUnclear: false, kerb: ['s1', 's2', 's3'] },
  ],
  'descent-with-wheels': [{ measured: 0.062, limit: 0.05, race: 'w', over: 100 }],
  'drop-side': [
    { is: 'across', point: drop, offset: 8, side: 'left', tables: 'right' },
    { is: 'far', point: { ...drop, name: 'Yard' }, radius: 60 },
    { is: 'tables-unclear', point: drop },
    { is: 'unclear', point: drop, offset: -1, confidence: 0.663 },
  ],
  'gel-without-water': [
    { ...full, next: 2500, within: 1600, waterBefore: false },
    { ...full, next: null, within: 1600, waterBefore: true },
  ],
  'grade-at-tables': [
    { measured: 0.0504, limit: 0.05, climbs: true, around: 25 },
    { measured: 0.08, limit: 0.05, climbs: false, around: 25 },
  ],
  'item-across': [
    { item: 'water', items: ['water'], offset: 6, side: 'left', tables: 'right' },
    { item: 'water', items: ['gel', 'water'], offset: 6, side: 'left', tables: 'right' },
  ],
  'item-in-zone': [
    { item: 'sign', items: ['sign'], zone: 'Hydrant', depth: 5, betweenBoxes: false, sure: true },
    { item: 'trash', items: ['sign', 'trash'], zone: '', depth: 0, betweenBoxes: true, sure: false },
    { item: 'gel', items: ['gel', 'water'], zone: 'Hydrant', depth: -0.5, betweenBoxes: false, sure: false },
    { item: 'gel', items: ['gel'], zone: 'Hydrant', depth: 3.5, betweenBoxes: false, sure: true, inside: true },
    { item: 'sign', items: ['sign'], zone: '', depth: 3.5, betweenBoxes: false, sure: false, inside: true },
  ],
  'item-off-course': [
    { measured: 61, limit: 60, item: 'sportsDrink', items: ['sportsDrink'] },
    { measured: 8e6, limit: 60, item: 'sign', items: ['sign', 'gel'] },
  ],
  'item-outside': [
    { item: 'sign', items: ['sign', 'gel'], beyond: 'start', by: 41.4, lead: true },
    { item: 'trash', items: ['trash'], beyond: 'finish', by: 28.1, lead: false },
    { item: 'water', items: ['water', 'trash'], beyond: 'gap', by: 0, lead: true },
  ],
  'item-outside-allowed': [
    { item: 'handOut', items: ['handOut', 'water'], away: 5, sure: true },
    { item: 'sign', items: ['sign'], away: 0.4, sure: false },
  ],
  'items-overlap': [
    { before: 's1', overlap: 39.6, atTables: true, sideUnclear: false },
    { before: 's1', overlap: 39.6, atTables: false, sideUnclear: true },
    { before: 's1', overlap: 39.6, atTables: true, sideUnclear: false, others: 12 },
  ],
  'lead-far': [
    { led: 25.4, near: 4.9, pass: full, time: 1, taken: null },
    { led: 25.4, near: 4.9, pass: full, time: 3, taken: null },
    { led: 25.4, near: 4.9, pass: full, time: 2, taken: 'pin' },
    { led: 5, near: 5, pass: full, time: 1, taken: 'side' },
  ],
  'leg-long': [leg, { ...leg, from: 's2', to: null, here: 'from' }, { ...leg, to: null, here: null }],
  'leg-short': [
    { ...leg, from: 's2', measured: 1000, limit: 1600 },
    { ...leg, from: 's1', measured: 1000, limit: 1600 },
  ],
  'length-differs': [
    { stated: 42_000, line: 42_195, allowed: 42, recorded: true, wander: 0, used: true },
    { stated: 42_000, line: 43_195, allowed: 542, recorded: true, wander: 500, used: true },
    { stated: 42_195, line: 42_000, allowed: 42.195, recorded: false, wander: 0, used: false },
    { stated: 21_097.5, line: 42_195, allowed: 21.0975, recorded: false, wander: 0, used: false, waits: true },
    { stated: 19_312, line: 12_000, allowed: 19.3, recorded: false, wander: 0, used: false, typed: 'mi' },
    { stated: 7456, line: 12_000, allowed: 7.5, recorded: true, wander: 0, used: false, typed: 'km' },
  ],
  'medical-without-access': [
    { point: tent, nearest: null, limit: 60, far: true },
    {
      point: tent,
      nearest: { point: { kind: 'access', name: null }, station: null, distance: 60.2 },
      limit: 60,
      far: false,
    },
    {
      point: tent,
      nearest: { point: { kind: 'access', name: 'Lane' }, station: 's2', distance: 300 },
      limit: 60,
      far: true,
    },
    {
      point: tent,
      nearest: { point: { kind: 'access', name: 'Lane' }, station: 's2', distance: 25_000 },
      limit: 60,
      far: true,
    },
  ],
  'pass-unknown': [
    { race: 'm', time: 3, count: 2 },
    { race: 'm', time: 1, count: 0 },
  ],
  'race-unserved': [{ length: 10_000 }],
  'responders-width': [
    { measured: 2.7, limit: 6.096, road: 4 },
    { measured: 2.7, limit: 6.096, road: 4, station: 's1', stations: ['s1'] },
    { measured: 2.7, limit: 6.096, road: 4, station: 's2', stations: ['s1', 's2'] },
    { measured: 2.7, limit: 6.096, road: 4, station: 's2', stations: many },
  ],
  'seen-not-served': [
    {
      way: 'back',
      passes: [
        { ...full, time: 2 },
        { ...half, time: 2 },
      ],
    },
    { way: 'other', passes: [{ ...full, time: 1 }] },
    {
      way: 'again',
      passes: [
        { ...full, time: 2 },
        { ...full, time: 11 },
      ],
    },
  ],
  'served-both-ways': [{ lead: ['gel', 'water'], other: ['water', 'gel'], passes: [half] }],
  'side-change': [{ measured: 800, limit: 1600, race: 'm', before: 's1', beforeSide: 'left', side: 'right' }],
  'side-contradicted': [
    { declared: 'left', side: 'right', offset: -9, confidence: 0.999, fits: null, turned: null },
    { declared: 'left', side: 'right', offset: -2, confidence: 0.93, fits: full, turned: null },
    {
      declared: 'left',
      side: 'right',
      offset: -9,
      confidence: 0.99,
      fits: null,
      turned: { course: 'c', stations: ['s1', 's2', 's3'] },
    },
    {
      declared: 'left',
      side: 'right',
      offset: -9,
      confidence: 0.99,
      fits: null,
      turned: { course: 'c', stations: ['s1'], against: ['s2', 's3', 's4'] },
    },
    {
      declared: 'left',
      side: 'right',
      offset: -9,
      confidence: 0.99,
      fits: null,
      turned: { course: 'c', stations: many, against: ['s2', 's3'] },
    },
  ],
  'side-unclear': [
    { offset: 1, confidence: 0.663, wanted: 0.95, why: 'position', other: null, placed: false },
    { offset: 0, confidence: 0.5, wanted: 0.95, why: 'onLine', other: null, placed: false },
    { offset: 6, confidence: 0.99, wanted: 0.95, why: 'turn', other: null, placed: false },
    { offset: 6, confidence: 0.99, wanted: 0.95, why: 'turn', other: [full], placed: false },
    { offset: -3, confidence: 0.9, wanted: 0.95, why: 'position', other: [full, half], placed: false },
    { offset: 7, confidence: 0.99, wanted: 0.95, why: 'position', other: [full], placed: true },
  ],
  'sign-distance': [
    { measured: 70, limit: [82.296, 100.584], to: 'table', byHand: true, own: null },
    { measured: 110, limit: [82.296, 100.584], to: 'handOut', byHand: false, own: 110 },
    { measured: -3, limit: [82.296, 100.584], to: 'table', byHand: false, own: null },
  ],
  'sign-missed': [
    { ...full, passes: [full] },
    { ...full, passes: [full, half] },
  ],
  'station-off-course': [
    { measured: 61, limit: 60, course: 'c', measure: 1500, swapped: null },
    { measured: 9e6, limit: 60, course: 'c', measure: 1500, swapped: [-17.4, -33.2] },
  ],
  'station-unserved': [{ beyondEnd: true }, { beyondEnd: false }],
  'tables-far-off': [
    { measured: 15.5, limit: 15 },
    { measured: 15.5, limit: 15, road: null },
    { measured: 35.5, limit: 15, road: 70 },
  ],
  'tables-hidden': [{ measured: 14, limit: 10 }],
  'tables-mismatch': [
    { item: 'gel', tables: 0 },
    { item: 'sportsDrink', tables: 1 },
    { item: 'water', tables: 2 },
  ],
  'trash-blocks-medical': [
    { is: 'between', medical: tent, overlap: 45.7, side: 'right' },
    { is: 'between', medical: { ...tent, name: null }, overlap: 45.7, side: null },
    { is: 'far', medical: tent, point: { kind: 'access', name: null }, radius: 60 },
  ],
  'two-way-road': [
    { measured: 0.2, limit: 1.5, courses: ['e', 'd'], items: ['sign', 'trash'], sure: true },
    { measured: 1.4, limit: 1.5, courses: ['e'], items: ['sign'], sure: false },
  ],
  'waiver-unmatched': [
    { waived: 'leg-long', by: 'R. Gull' },
    { waived: 'leg-lang', by: 'R. Gull', near: 'leg-long' },
  ],
  'waiver-refused': (['by', 'reason', 'date', 'earlierDate'] as const).map((lacks) => ({
    waived: 'leg-long',
    by: 'R. Gull',
    lacks,
  })),
  'waiver-outgrown': [true, false].map((worse) => ({ waived: 'leg-long', by: 'R. Gull', worse })),
  'waiver-unbound': [{ waived: 'leg-long', by: 'R. Gull' }],
  ...TIMES,
  ...ABSENCE,
  'wheel-folds': [
    { item: 'trash', items: ['sign', 'trash'], offset: -6 },
    { item: 'sign', items: ['sign'], offset: null },
  ],
};

const sign = { item: 'sign', end: null } as const;
const trash = { item: 'trash', end: 'from' } as const;
const some = { station: 's1', item: 'sign', measure: null } as const;
const PLACED: { readonly [C in keyof PlacedParams]: readonly PlacedParams[C][] } = {
  'placed-ambiguous': [
    { is: 'stations', point: 'Kelp sign', stations: ['s1', 's2'] },
    { is: 'between', point: null, of: [some, { ...some, item: 'trash', measure: 1500 }], r95: 5 },
    { is: 'twice', points: ['s1 sign', null], lines: [2, 3], of: some },
  ],
  'placed-assumptions': [{ perHdop: 5, r95: 5, between: 4.75, wheelShare: 0.001, wheelFixed: 0.5 }],
  'placed-distance': [
    { ...sign, measured: 70, limit: [82.3, 100.6], margin: 1, move: -21.4 },
    { ...trash, measured: 30, limit: [36.6, 54.9], margin: 1, move: 15.7 },
    { ...trash, end: 'to', measured: 84, limit: [82.3, 100.6], margin: 4.8, move: null },
  ],
  'placed-far': [
    { measured: 120, limit: 20, margin: 3.4, along: 119, sure: true },
    { measured: 120, limit: 20, margin: 3.4, along: -119, sure: true },
    { measured: 45, limit: 20, margin: 3.4, along: null, sure: true },
    { measured: 22, limit: 20, margin: 4.8, along: 22, sure: false },
  ],
  'placed-hdop': [{ point: 's1 sign', hdop: -1, r95: 5 }],
  'placed-missing': [
    { is: 'all' },
    { is: 'one', item: 'sign', measure: null },
    { is: 'one', item: 'trash', measure: 1500 },
    { is: 'one', item: 'water', measure: null },
  ],
  'placed-off-course': [{ point: 's1 sign', item: 'sign', radius: 60 }],
  'placed-order': [{ pairs: [['water', 'gel']], by: 12, planned: ['gel', 'water'] }],
  'placed-side': [
    { is: 'wrong', item: 'sign', side: 'left', planned: 'right', confidence: 0.97 },
    { is: 'wrong', item: 'sign', side: 'left', planned: 'right', confidence: 0.93 },
    { is: 'unclear', items: ['sign'] },
    { is: 'unclear', items: ['sign', 'water'] },
  ],
  'placed-swapped': [{ station: 's1', other: 's2' }],
  'placed-unknown': [
    { is: 'nothing', point: 's1 toilets', station: 's1' },
    { is: 'far', point: null, near: 60 },
  ],
  'placed-wheel-differs': [{ ...sign, wheel: 91, positions: 85, margin: 3 }],
  'placed-wheel-needed': [
    { ...sign, by: 'position', margin: 12, tolerance: 9.144 },
    { ...trash, by: 'wheel', margin: 12, tolerance: 9.144 },
  ],
  'placed-wheel-unread': [{ point: 's1 sign', text: 'about 90' }],
  'placed-wheel-unused': [sign],
};

type Texts = Readonly<Record<string, (params: unknown, say: Say) => Sentence>>;
const SAMPLES = Object.entries({ ...REVIEW, ...PLACED }) as [string, readonly unknown[]][];
const VOICES = (['metric', 'imperial'] as const).flatMap((units) => [
  { language: 'en', units, texts: english as unknown as Texts, say: sayIn({ units, names }, englishWords) },
  { language: 'es', units, texts: spanish as unknown as Texts, say: sayIn({ units, names }, spanishWords) },
]);
const wordsIn = (text: string): number => text.split(/\s+/u).length;

describe.each(VOICES)(
  'sentences on layouts and recorded points in $language, $units',
  ({ language, units, texts, say }) => {
    const all = SAMPLES.flatMap(([code, samples]) =>
      samples.map((params) => ({ code, parts: texts[code]!(params, say) })),
    );

    it('are short, whole and hold nothing that only a program knows', () => {
      for (const { code, parts } of all) {
        for (const part of parts.filter((one) => one !== null && one !== undefined)) {
          expect(part, code).toMatch(/^[\p{Lu}\d“«¿].*\.$/u);
          expect(wordsIn(part), `${code}: ${part}`).toBeLessThanOrEqual(30);
        }
        const whole = joined(parts);
        expect(whole, code).not.toMatch(/undefined|null|NaN|–|-0\b|"|\[object|pinR95|snapRadius|signAhead|clearWidth/u);
        expect(whole, code).not.toMatch(/\bpass \d|lead(?:'s|’s)? direction|served passes/u);
      }
    });

    it('have the plan’s units alone', () => {
      const foreign = units === 'metric' ? /\d (?:yd|ft|mi)(?!\p{L})/u : /\d (?:m|km)(?!\p{L})/u;
      for (const { code, parts } of all) expect(joined(parts), code).not.toMatch(foreign);
    });

    if (language === 'es')
      it('are not the English ones', () => {
        for (const [code, samples] of SAMPLES)
          for (const params of samples)
            expect(joined(texts[code]!(params, say)), code).not.toBe(
              joined((english as unknown as Texts)[code]!(params, sayIn({ units, names }, englishWords))),
            );
      });
  },
);

it('says who else comes past and is not served, as a race director would', () => {
  const [{ texts, say }] = VOICES as [(typeof VOICES)[0]];
  const seen = (params: ReviewParams['seen-not-served']): string => joined(texts['seen-not-served']!(params, say));
  expect(seen(REVIEW['seen-not-served'][0]!)).toBe(
    'Runners also pass on the way back (Race m at 41.39 km, Race h at 20.30 km) and are not served. If that is intended, confirm it under Runners.',
  );
  expect(seen(REVIEW['seen-not-served'][2]!)).toBe(
    'Runners also pass at other times (Race m at 41.39 km, 2nd time past; Race m at 41.39 km, 11th time past) and are not served. If that is intended, confirm it under Runners.',
  );
});
