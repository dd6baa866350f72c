/** Planted mistakes that reviews have found before: zones, sides, spacing, lengths, legs, gels, loads. Not part of the package. */
import { placeBy } from './build.ts';
import { type Planted, byHand, moved, ofRace, ofStation, stationIn } from './planted.ts';

const ground: readonly Planted[] = [
  {
    name: 'the fire station gate lies at the tables of Samphire Lane',
    plan: 'loop',
    plant: (plan, on) => {
      const foot = on.foot('s2');
      plan.zones[0]!.polygon = [
        placeBy(foot, on, 2, -1),
        placeBy(foot, on, 12, -1),
        placeBy(foot, on, 12, 8),
        placeBy(foot, on, 2, 8),
      ];
    },
    codes: ['item-in-zone'],
    about: ['s2', 'Fire station gate'],
  },
  {
    name: 'the spring of the trail is an allowed zone by mistake',
    plan: 'trail',
    plant: (plan) => {
      plan.zones[0]!.rule = 'allowed';
    },
    codes: ['item-outside-allowed'],
    about: ['t1', 't2', 't3'],
  },
  {
    name: 'Tern Quay is declared on the right',
    plan: 'point',
    plant: ofStation('p1', { side: 'right' }),
    codes: ['side-contradicted'],
    about: ['p1'],
  },
  {
    name: 'the Boathouse’s pin is across the road',
    plan: 'laps',
    plant: (plan, on) => {
      stationIn(plan, 'c1').at = placeBy(on.foot('c1'), on, 0, -10);
    },
    codes: ['side-contradicted'],
    about: ['c1'],
  },
  {
    name: 'the Pilot House is a digit off',
    plan: 'point',
    plant: (plan) => {
      const station = stationIn(plan, 'p9');
      station.at = [station.at![0], station.at![1] + 0.01];
    },
    codes: ['station-off-course', 'far-from-courses'],
    about: ['p9'],
  },
  {
    name: 'the track at the Charcoal Yard is 3.5 m wide',
    plan: 'trail',
    plant: ofStation('t1', { width: '3.5 m' }),
    codes: ['clear-width'],
    about: ['t1'],
  },
  {
    name: 'Kelp Works’ tables stand at a corner',
    plan: 'point',
    plant: moved('p4', 805),
    codes: ['bend-near-tables'],
    about: ['p4'],
  },
  {
    name: 'the sign of the Boathouse is 40 m ahead',
    plan: 'laps',
    plant: byHand('c1', 'sign', -40),
    codes: ['sign-distance'],
    about: ['c1'],
  },
  {
    name: 'Almshouse stands among the boxes of Mill Race',
    plan: 'shared',
    plant: moved('d5', (on) => on.foot('d4').measure + 100),
    codes: ['items-overlap'],
    about: ['d4', 'd5'],
  },
];

const along: readonly Planted[] = [
  {
    name: 'Tollgate is left out',
    plan: 'shared',
    plant: (plan) => {
      plan.stations = plan.stations.filter(({ id }) => id !== 'd3');
    },
    codes: ['leg-long'],
    about: ['l', 'd4', 'd2'],
  },
  {
    name: 'the Fold is 700 m behind the Charcoal Yard',
    plan: 'trail',
    plant: moved('t2', (on) => on.foot('t1').measure + 700),
    codes: ['leg-long', 'leg-short'],
    about: ['t1', 't2', 't3'],
  },
  {
    name: 'the length of the ring has two digits turned',
    plan: 'loop',
    plant: (plan) => {
      plan.courses[0]!.length = '16.266 km';
    },
    codes: ['length-differs'],
    about: ['ring'],
  },
  {
    name: 'the length of the trail is typed 12.4 km for 12.04 km',
    plan: 'trail',
    plant: (plan) => {
      plan.courses[0]!.length = '12.4 km';
    },
    codes: ['length-differs'],
    about: ['ridge'],
  },
  {
    name: 'nobody serves the short race',
    plan: 'shared',
    plant: (plan) => {
      for (const station of plan.stations) station.races = ['l'];
    },
    codes: ['race-unserved', 'passers-not-served', 'no-water'],
    about: ['k', 'd1', 'd4', 'd5'],
  },
  {
    name: 'a fifth of a gel is ordered for each runner of the ring',
    plan: 'loop',
    plant: (plan) => {
      plan.supplies = { ...plan.supplies, gelOrder: 0.2 };
    },
    codes: ['gels-short', 'supplies-short'],
    about: ['s3'],
  },
  {
    name: 'Tollgate hands out gel and no water',
    plan: 'shared',
    plant: ofStation('d3', { serves: ['gel', 'sportsDrink'] }),
    codes: ['gel-without-water'],
    about: ['d3'],
  },
  {
    name: 'the Palm House serves gel and gives it no table',
    plan: 'outBack',
    plant: ofStation('b2', { tables: { gel: 0 } }),
    codes: ['tables-mismatch'],
    about: ['b2'],
  },
  {
    name: 'the trucks of the mall carry 0.35 kg for 350',
    plan: 'outBack',
    plant: (plan) => {
      for (const vehicle of plan.vehicles) vehicle.kg = 0.35;
    },
    codes: ['load-too-heavy'],
    about: ['b1', 'b2', 'b3', 'b4'],
  },
  {
    name: 'Saltpan has one table of water and nobody to pour',
    plan: 'point',
    plant: ofStation('p2', { tables: { sportsDrink: 9, water: 1 }, crew: { pourers: 0 } }),
    codes: ['pre-pour-room', 'cups-run-out'],
    about: ['p2'],
  },
  {
    name: 'Curlew Road’s measure says one side and its key the other',
    plan: 'loop',
    plant: ofStation('s1', { side: 'left' }),
    codes: ['side-contradicted', 'plan-value'],
    about: ['s1', '/stations/0/side', '/stations/0'],
  },
  {
    name: 'the marathon’s waves start ten seconds apart',
    plan: 'point',
    plant: ofRace('m', {
      waves: [
        { time: '08:00:00', entrants: 300 },
        { time: '08:00:10', entrants: 300 },
      ],
    }),
    codes: ['waves-overlap'],
    about: ['m'],
    note: true,
  },
  {
    name: 'nobody can bring anything to the Ropewalk',
    plan: 'loop',
    plant: (plan) => {
      stationIn(plan, 's3').points = [];
    },
    codes: ['access-missing'],
    about: ['s3'],
    note: true,
  },
];

export const BEFORE: readonly Planted[] = [...ground, ...along];
