/** Planted mistakes of the field: cutoffs, waves, speeds, crowds. Not part of the package. */
import { clock, minutes } from './build.ts';
import { type Plant, type Planted, all, clockIn, ofClock, ofClocks, ofRace, raceIn } from './planted.ts';

const STOPS = ['cutoff-stops-many', 'cutoff-early'];

/** Boxes, trucks and room for a field as large as a mistake makes it, so that nothing else is wrong. */
const roomFor =
  (count: number): Plant =>
  (plan) => {
    for (const station of plan.stations) {
      station.boxes = count;
      delete station.used;
    }
    for (const vehicle of plan.vehicles) vehicle.kg = 40_000;
    plan.zones = [];
  };

const cutoffs: readonly Planted[] = [
  {
    name: 'the cutoff of the ring is before its last wave',
    plan: 'loop',
    plant: ofRace('r', { cutoff: '08:35' }),
    codes: ['cutoff-early'],
    about: ['r'],
  },
  {
    name: 'the cutoff of the trail is typed 01:45 for 11:45',
    plan: 'trail',
    plant: ofRace('x', { cutoff: '01:45' }),
    codes: ['cutoff-early'],
    about: ['x'],
  },
  {
    name: 'the cutoff of the long race is its start',
    plan: 'shared',
    plant: ofRace('l', { cutoff: '08:00' }),
    codes: ['cutoff-early'],
    about: ['l'],
  },
  {
    name: 'the mall is swept an hour and a quarter too soon',
    plan: 'outBack',
    plant: all(
      ofRace('t', { cutoff: '10:16' }),
      ofClocks('mall', ({ sweep }) => ({ sweep: clock(554 + ((minutes(sweep!) - 554) * 62) / 136) })),
    ),
    codes: STOPS,
    about: ['t'],
  },
  {
    name: 'the cutoff of the marathon is typed 12:10 for 15:10',
    plan: 'point',
    plant: ofRace('m', { cutoff: '12:10' }),
    codes: STOPS,
    about: ['m'],
  },
  {
    name: 'the sweep of the lake is at half way an hour early',
    plan: 'laps',
    plant: all(ofClock('lake', 1, { sweep: '08:35' }), ofClock('lake', 2, { sweep: '08:56' })),
    codes: STOPS,
    about: ['g'],
  },
  {
    name: 'the short race is given an hour for 12 km',
    plan: 'shared',
    plant: (plan) => {
      raceIn(plan, 'k').cutoff = '09:50';
      clockIn(plan, 'short').forEach((entry, k) => Object.assign(entry, { sweep: clock(535 + k * 13) }));
    },
    codes: STOPS,
    about: ['k'],
  },
];

const waves: readonly Planted[] = [
  {
    name: 'walkers of the short race start five minutes before the long one',
    plan: 'shared',
    plant: ofRace('k', {
      division: 'walk',
      waves: [{ time: '07:55', entrants: 500 }],
      finish: { median: '2:05:00', spread: 0.12 },
    }),
    codes: ['slow-wave-first'],
    about: ['k', 'l'],
  },
  {
    name: 'the wheels start two minutes behind the first runners',
    plan: 'point',
    plant: ofRace('w', { waves: [{ time: '08:02', entrants: 30 }] }),
    codes: ['slow-wave-first'],
    about: ['w', 'm'],
  },
  {
    name: 'the slow wave of the ring goes first',
    plan: 'loop',
    plant: ofRace('r', {
      waves: [
        { time: '08:30', entrants: 350, finish: { median: '1:55:00', spread: 0.09 } },
        { time: '08:40', entrants: 350, finish: { median: '1:22:00', spread: 0.09 } },
      ],
    }),
    codes: ['slow-wave-first'],
    about: ['r'],
  },
  {
    name: 'joggers of the lake start six minutes before the fast',
    plan: 'laps',
    plant: ofRace('g', {
      waves: [
        { time: '08:00', entrants: 180, finish: { median: '2:15:00', spread: 0.08 } },
        { time: '08:06', entrants: 180, finish: { median: '1:32:00', spread: 0.08 } },
      ],
    }),
    codes: ['slow-wave-first'],
    about: ['g'],
  },
];

const speeds: readonly Planted[] = [
  {
    name: 'a median of 28 minutes is typed for the ring',
    plan: 'loop',
    plant: ofRace('r', { finish: { median: '0:28:00', spread: 0.17 } }),
    codes: ['speed-impossible'],
    about: ['r'],
  },
  {
    name: 'the wheels are to do the coast in under an hour',
    plan: 'point',
    plant: ofRace('w', { finish: { median: '0:58:00', spread: 0.14 } }),
    codes: ['speed-impossible'],
    about: ['w'],
  },
  {
    name: 'the trail is to take nine hours at the median',
    plan: 'trail',
    plant: all(ofRace('x', { finish: { median: '9:00:00', spread: 0.05 }, cutoff: '22:00' }), (plan) =>
      clockIn(plan, 'ridge').forEach((entry, k) =>
        Object.assign(entry, { sweep: clock(500 + k * 200), reopens: clock(600 + k * 200) }),
      ),
    ),
    codes: ['speed-impossible'],
    about: ['x'],
  },
  {
    name: 'the spread of the mall is typed 0.8 for 0.18',
    plan: 'outBack',
    plant: ofRace('t', { finish: { median: '1:10:00', spread: 0.8 } }),
    codes: ['speed-impossible'],
    about: ['t'],
  },
  {
    name: 'the lake’s median is typed 0:45 for 1:52',
    plan: 'laps',
    plant: ofRace('g', { finish: { median: '0:45:00', spread: 0.16 } }),
    codes: ['speed-impossible'],
    about: ['g'],
  },
];

const crowds: readonly Planted[] = [
  {
    name: 'sixteen thousand start at once on the mall',
    plan: 'outBack',
    plant: all(ofRace('t', { waves: [{ time: '09:00', entrants: 16_000 }], startFlow: 8000 }), roomFor(300)),
    codes: ['crowded-road'],
    about: ['t', 'b1', 'mall'],
  },
  {
    name: 'two large fields meet where the courses join',
    plan: 'shared',
    plant: all(
      ofRace('l', { waves: [{ time: '08:00', entrants: 12_000 }], startFlow: 1500 }),
      ofRace('k', { waves: [{ time: '08:45', entrants: 16_000 }], startFlow: 1500 }),
      roomFor(400),
    ),
    codes: ['crowded-road'],
    about: ['l', 'k', 'd4', 'd1', 'long', 'short'],
  },
  {
    name: 'the ring’s waves have a zero too many, and an old start line',
    plan: 'loop',
    plant: all(ofRace('r', { waves: [{ time: '08:30', entrants: 14_000 }], startFlow: 5000 }), roomFor(400)),
    codes: ['crowded-road'],
    about: ['r', 's1', 'ring'],
  },
];

export const PACES: readonly Planted[] = [...cutoffs, ...waves, ...speeds, ...crowds];
