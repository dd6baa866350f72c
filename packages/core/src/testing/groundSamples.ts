/** Parameters of every sentence on the ground, for the tests of texts. Not part of the package. */
import type { GroundParams } from '../text/params/reviewGround.ts';

const map = '2026-10-02';
const on = { map, items: ['sign', 'water'], name: 'Mill Lane', overlap: 3.4 } as const;
const one = { map: null, items: ['sign'], name: null, overlap: 1 } as const;
const near = { map, items: ['trash'], name: null, measured: 2.1, limit: 4.572 } as const;
const house = { map: null, items: ['sportsDrink', 'water'], name: 'Quay House', measured: 0, limit: 22.86 } as const;
const stretch = { from: 1200, to: 1320 } as const;

export const GROUND_SAMPLES: { readonly [C in keyof GroundParams]: readonly GroundParams[C][] } = {
  'ground-missing': [{ file: 'ground.geojson' }],
  'ground-silent': [
    { map, lacks: ['buildings'] },
    { map: null, lacks: ['hydrants'] },
    { map, lacks: ['buildings', 'hydrants'] },
  ],
  'map-old': [
    { map, age: 3.2, most: 2 },
    { map: null, age: null, most: 2 },
  ],
  'off-map': [
    { map, course: 'c', stretches: [stretch], share: 0.02, most: false },
    { map: null, course: 'c', stretches: [stretch, stretch, stretch, stretch], share: 0.3, most: false },
    { map, course: 'c', stretches: [{ from: 0, to: 9000 }], share: 0.9, most: true },
  ],
  'item-in-mouth': [on, one],
  'item-on-bridge': [on, one],
  'item-in-tunnel': [on, one],
  'item-on-steps': [on, one],
  'item-on-level-crossing': [
    { ...on, room: 15.24 },
    { ...one, room: 15.24 },
  ],
  'item-at-stop': [
    { ...on, stop: 'bus' },
    { ...one, stop: 'tram' },
  ],
  'item-on-crossing': [on, one],
  'hydrant-blocked': [near],
  'fire-station-blocked': [near, house],
  'hospital-blocked': [
    { ...near, of: 'hospital' },
    { ...near, of: 'ambulance' },
    { ...house, of: 'hospital' },
  ],
  'gate-on-course': [
    { map, course: 'c', measures: [1200] },
    { map: null, course: 'c', measures: [1200, 2400, 3600, 4800] },
  ],
  'steps-with-wheels': [
    { map, races: ['w'], measures: [1200] },
    { map: null, races: ['w', 'v'], measures: [1200, 1300] },
  ],
  'rough-surface': [
    { map, course: 'c', races: [], stretches: [{ ...stretch, surface: 'cobblestone' }] },
    {
      map: null,
      course: 'c',
      races: ['w'],
      stretches: [
        { ...stretch, surface: 'fine_gravel' },
        { ...stretch, surface: 'grass' },
      ],
    },
    { map, course: 'c', races: ['w', 'v'], stretches: [{ ...stretch, surface: 'sett' }] },
  ],
  'width-from-map': [
    { map, stations: [{ station: 's1', width: 7 }] },
    { map: null, stations: ['s1', 's2', 's3', 's4', 's5'].map((station) => ({ station, width: 6.5 })) },
  ],
  'narrow-by-map': [
    { map, measured: 2.74, limit: 3, road: 4 },
    { map: null, measured: -0.2, limit: 3, road: 1.1 },
  ],
  'sign-unseen': [
    { map, within: 30 },
    { map: null, within: 30 },
  ],
  'tables-unseen': [
    { map, distance: 91.44 },
    { map: null, distance: 91.44 },
  ],
};
