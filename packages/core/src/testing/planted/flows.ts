/** Planted mistakes of flows: courses that cross, part and join at stations, and who passes unserved. Not part of the package. */
import type { Ground } from './build.ts';
import { type Planted, all, moved, ofStation, stationIn } from './planted.ts';

/** Where streets cross themselves: both measures of one place. */
export const CROSSINGS = {
  ring: ({ length }: Ground): readonly [number, number] => [260, length('ring') - 250],
  coast: ({ stop }: Ground): readonly [number, number] => [
    stop('coast', 'crossed') + 30,
    stop('coast', 'crossed') + 1191,
  ],
} as const;

/** Mole Head is for those who come home, not for those who have just started. */
const SECOND = ofStation('s5', { lead: { race: 'r', pass: 1 } });

const crossings: readonly Planted[] = [
  {
    name: 'Limekiln lists a race that never comes by',
    plan: 'shared',
    plant: ofStation('d2', { races: ['l', 'k'] }),
    codes: ['pass-unknown'],
    about: ['d2'],
  },
  {
    name: 'Mole Head is moved to where the ring crosses itself',
    plan: 'loop',
    plant: all(
      moved('s5', (ground) => CROSSINGS.ring(ground)[1] - 4),
      SECOND,
    ),
    codes: ['leg-crosses'],
    about: ['s5'],
  },
  {
    name: 'the tables of Curlew Road stand where the ring comes home across',
    plan: 'loop',
    plant: moved('s1', (ground) => CROSSINGS.ring(ground)[0] - 40),
    codes: ['leg-crosses'],
    about: ['s1'],
  },
  {
    name: 'the sign of Mole Head stands before the crossing, its tables behind',
    plan: 'loop',
    plant: all(
      moved('s5', (ground) => CROSSINGS.ring(ground)[1] + 45),
      SECOND,
    ),
    codes: ['leg-crosses', 'item-outside'],
    about: ['s5'],
  },
  {
    name: 'Ferry Cross is moved on to the crossing of the coast',
    plan: 'point',
    plant: moved('p6', (ground) => CROSSINGS.coast(ground)[0] - 3),
    codes: ['leg-crosses'],
    about: ['p6'],
  },
  {
    name: 'Netloft is moved back to the crossing of the coast',
    plan: 'point',
    plant: moved('p7', (ground) => CROSSINGS.coast(ground)[1] - 90),
    codes: ['leg-crosses', 'box-on-leg'],
    about: ['p7'],
  },
];

const widths: readonly Planted[] = [
  {
    name: 'the mall is 6 m wide at the Bandstand',
    plan: 'outBack',
    plant: ofStation('b1', { width: '6 m' }),
    codes: ['flows-share-width'],
    about: ['b1'],
  },
  {
    name: 'the mall is 7 m wide at the Chandlery',
    plan: 'outBack',
    plant: ofStation('b4', { width: '7 m' }),
    codes: ['flows-share-width'],
    about: ['b4'],
  },
  {
    name: 'nobody knows how wide the mall is at the Palm House',
    plan: 'outBack',
    plant: (plan) => {
      delete stationIn(plan, 'b2').width;
    },
    codes: ['flows-share-width'],
    about: ['b2'],
  },
  {
    name: 'the authority wants 6 m for each flow at the Observatory',
    plan: 'outBack',
    plant: ofStation('b3', { practice: { clearWidth: '6 m' } }),
    codes: ['flows-share-width'],
    about: ['b3'],
  },
  {
    name: 'Chandlery faces the Bandstand on a road of 8 m',
    plan: 'outBack',
    plant: all(
      moved('b4', ({ length, stop }) => length('mall') - stop('mall', 'b1') - 11, { kerb: 4 }),
      ofStation('b4', { width: '8 m' }),
      ofStation('b1', { width: '8 m' }),
    ),
    codes: ['stations-face'],
    about: ['b1', 'b4'],
  },
  {
    name: 'the Weighhouse faces the Ropewalk on a road of 5 m',
    plan: 'loop',
    plant: all(
      moved('s4', (ground) => ground.foot('s3').measure + 5, { kerb: 2.5 }),
      ofStation('s3', { width: '5 m' }),
      ofStation('s4', { width: '5 m' }),
    ),
    codes: ['stations-face'],
    about: ['s3', 's4'],
  },
  {
    name: 'the Observatory faces the Palm House on a road of 8 m',
    plan: 'outBack',
    plant: all(
      moved('b3', ({ length, stop }) => length('mall') - stop('mall', 'b2') - 12, { kerb: 4 }),
      ofStation('b2', { width: '8 m' }),
      ofStation('b3', { width: '8 m' }),
    ),
    codes: ['stations-face'],
    about: ['b2', 'b3'],
  },
];

const forks: readonly Planted[] = [
  {
    name: 'Limekiln’s sign stands before the fork, its tables behind',
    plan: 'shared',
    plant: moved('d2', ({ stop }) => stop('long', 'fork') + 60),
    codes: ['fork-in-stretch', 'sign-missed'],
    about: ['d2'],
  },
  {
    name: 'Mill Race’s sign stands before the join, its tables behind',
    plan: 'shared',
    plant: moved('d4', ({ stop }) => stop('long', 'join') + 30),
    codes: ['fork-in-stretch', 'sign-missed'],
    about: ['d4'],
  },
  {
    name: 'Tollgate’s boxes lie where the short race joins',
    plan: 'shared',
    plant: moved('d3', ({ stop }) => stop('long', 'join') - 90),
    codes: ['fork-in-stretch', 'leg-crosses', 'box-on-leg'],
    about: ['d3'],
  },
  {
    name: 'Tollgate is moved to the link road, its sign still before the fork',
    plan: 'shared',
    plant: all(
      moved('d3', ({ stop }) => stop('short', 'fork') + 85, { course: 'short' }),
      ofStation('d3', { races: ['k'] }),
    ),
    codes: ['fork-in-stretch'],
    about: ['d3'],
  },
];

const passers: readonly Planted[] = [
  {
    name: 'Mill Race forgets the short race',
    plan: 'shared',
    plant: ofStation('d4', { races: ['l'] }),
    codes: ['passers-not-served'],
    about: ['d4', 'k'],
  },
  {
    name: 'Almshouse forgets the long race',
    plan: 'shared',
    plant: ofStation('d5', { races: ['k'] }),
    codes: ['passers-not-served'],
    about: ['d5', 'l'],
  },
  {
    name: 'Ferry Cross serves runners, and wheels pass it',
    plan: 'point',
    plant: ofStation('p6', { races: ['m'] }),
    codes: ['passers-not-served'],
    about: ['p6', 'w'],
  },
  {
    name: 'Oyster Hard serves wheels alone',
    plan: 'point',
    plant: ofStation('p3', { races: ['w'] }),
    codes: ['passers-not-served'],
    about: ['p3', 'm'],
  },
  {
    name: 'the Sluice lists two of three laps',
    plan: 'laps',
    plant: ofStation('c2', {
      passes: [
        { race: 'g', pass: 0 },
        { race: 'g', pass: 1 },
      ],
    }),
    codes: ['passers-not-served', 'seen-not-served'],
    about: ['c2'],
  },
  {
    name: 'the Reed Beds count laps from one',
    plan: 'laps',
    plant: ofStation('c3', { passes: [1, 2, 3].map((pass) => ({ race: 'g', pass })) }),
    codes: ['pass-unknown'],
    about: ['c3'],
  },
  {
    name: 'the Bandstand serves both flows',
    plan: 'outBack',
    plant: ofStation('b1', { passes: 'all' }),
    codes: ['served-both-ways', 'crosses-flow'],
    about: ['b1'],
  },
  {
    name: 'the Observatory serves the way out, from the kerb of the way back',
    plan: 'outBack',
    plant: ofStation('b3', { passes: [{ race: 't', pass: 0 }] }),
    codes: ['side-contradicted', 'lead-far', 'two-way-road', 'item-across'],
    about: ['b3'],
  },
  {
    name: 'nobody has said that the Palm House is not for the way back',
    plan: 'outBack',
    plant: ofStation('b2', { passes: 'lead' }),
    codes: ['seen-not-served'],
    about: ['b2'],
    note: true,
  },
];

export const FLOWS: readonly Planted[] = [...crossings, ...widths, ...forks, ...passers];
