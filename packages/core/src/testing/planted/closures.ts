/** Planted mistakes of the road's clock: when it closes, is swept and reopens, and who is there before. Not part of the package. */
import { clock, km, minutes } from './build.ts';
import { type Planted, all, clockIn, ofClock, ofClocks, ofStation } from './planted.ts';

const LATE = ['closes-late', 'clock-order'];
const EARLY = ['reopens-early', 'clock-order'];
const CREW = ['crew-late', 'drop-late', 'drop-closed'];

const later = (time: string | undefined, by: number): string => clock(minutes(time!) + by);

const closing: readonly Planted[] = [
  {
    name: 'the ring closes at 08:50 for 07:50, after its first wave',
    plan: 'loop',
    plant: ofClocks('ring', () => ({ closes: '08:50' })),
    codes: LATE,
    about: ['ring', 'r'],
  },
  {
    name: 'one place of the ring closes two hours late',
    plan: 'loop',
    plant: ofClock('ring', 3, { closes: '09:50' }),
    codes: LATE,
    about: ['ring', 'r'],
  },
  {
    name: 'the coast closes an hour late all along',
    plan: 'point',
    plant: ofClocks('coast', ({ closes }) => ({ closes: later(closes, 60) })),
    codes: LATE,
    about: ['coast', 'w', 'm'],
  },
  {
    name: 'the coast closes for the runners, not for the wheels before them',
    plan: 'point',
    plant: ofClocks('coast', ({ closes }) => ({ closes: later(closes, 58) })),
    codes: LATE,
    about: ['w', 'coast'],
  },
  {
    name: 'the mall closes at 09:30 a quarter of the way out',
    plan: 'outBack',
    plant: ofClock('mall', 1, { closes: '09:30' }),
    codes: LATE,
    about: ['mall', 't'],
  },
  {
    name: 'the lake closes at 17:10 for 07:10',
    plan: 'laps',
    plant: ofClocks('lake', () => ({ closes: '17:10' })),
    codes: LATE,
    about: ['lake', 'g'],
  },
  {
    name: 'the trail closes ten minutes after its start',
    plan: 'trail',
    plant: ofClock('ridge', 0, { closes: '08:10' }),
    codes: LATE,
    about: ['ridge', 'x'],
  },
  {
    name: 'the short course closes before its own start, but after the long race has come on the same road',
    plan: 'shared',
    plant: ofClocks('short', () => ({ closes: '08:25' })),
    codes: LATE,
    about: ['l', 'k', 'long', 'short'],
  },
];

const reopening: readonly Planted[] = [
  {
    name: 'the ring reopens at its finish before the sweep',
    plan: 'loop',
    plant: ofClock('ring', 4, { reopens: '11:35' }),
    codes: EARLY,
    about: ['ring', 'r'],
  },
  {
    name: 'the ring reopens two minutes after the sweep, the crews still in the road',
    plan: 'loop',
    plant: ofClocks('ring', ({ sweep }) => ({ reopens: later(sweep, 2) })),
    codes: EARLY,
    about: ['ring', 'r', 's1', 's2', 's3', 's4', 's5'],
  },
  {
    name: 'the coast reopens four minutes after the sweep',
    plan: 'point',
    plant: ofClocks('coast', ({ sweep }) => ({ reopens: later(sweep, 4) })),
    codes: EARLY,
    about: ['coast', 'm'],
  },
  {
    name: 'the mall reopens behind the runners on their way out',
    plan: 'outBack',
    plant: ofClocks('mall', ({ sweep }) => ({ reopens: later(sweep, 70) })),
    codes: EARLY,
    about: ['mall', 't'],
  },
  {
    name: 'the lake road reopens after the first of three laps',
    plan: 'laps',
    plant: ofClocks('lake', ({ sweep }) => ({ reopens: later(sweep, 75) })),
    codes: EARLY,
    about: ['lake', 'g'],
  },
  {
    name: 'the shared road reopens behind the short race while the long one still comes home',
    plan: 'shared',
    plant: ofClocks('short', () => ({ reopens: '11:50' })),
    codes: EARLY,
    about: ['long', 'short', 'l', 'k'],
  },
  {
    name: 'the trail reopens an hour early at its last quarter',
    plan: 'trail',
    plant: ofClock('ridge', 3, { reopens: '10:55' }),
    codes: EARLY,
    about: ['ridge', 'x', 't3'],
  },
];

const order: readonly Planted[] = [
  {
    name: 'closing and reopening are swapped at one place of the ring',
    plan: 'loop',
    plant: ofClock('ring', 1, { closes: '13:10', reopens: '07:50' }),
    codes: ['clock-order', 'closes-late', 'reopens-early'],
    about: ['ring', 'r'],
  },
  {
    name: 'sweep and reopening are swapped at one place of the coast',
    plan: 'point',
    plant: (plan) => {
      const entry = clockIn(plan, 'coast')[3]!;
      [entry.sweep, entry.reopens] = [entry.reopens!, entry.sweep!];
    },
    codes: ['clock-order', 'reopens-early', 'sweep-impossible'],
    about: ['coast', 'm', 'w'],
  },
  {
    name: 'access to the trail opens half an hour after it has closed',
    plan: 'trail',
    plant: ofClocks('ridge', ({ closes }) => ({ accessOpens: later(closes, 30) })),
    codes: ['clock-order', ...CREW],
    about: ['ridge'],
  },
  {
    name: 'a place of the coast is typed 1.99 km for 19.9 km',
    plan: 'point',
    plant: ofClock('coast', 2, { measure: '1.99 km' }),
    codes: ['clock-order', 'sweep-impossible'],
    about: ['coast', 'm', 'w'],
  },
  {
    name: 'the sweep of the lake is at half way before a quarter',
    plan: 'laps',
    plant: (plan) => {
      const [, quarter, half] = clockIn(plan, 'lake');
      [quarter!.sweep, half!.sweep] = [half!.sweep!, quarter!.sweep!];
    },
    codes: ['clock-order', 'sweep-impossible'],
    about: ['lake', 'g'],
  },
  {
    name: 'the sweep of the mall leaves before its last wave',
    plan: 'outBack',
    plant: ofClock('mall', 0, { sweep: '09:03' }),
    codes: ['sweep-impossible', 'clock-order'],
    about: ['mall', 't'],
  },
  {
    name: 'a clock of the ring is typed 80:00 for 08:00',
    plan: 'loop',
    plant: ofClock('ring', 2, { closes: '80:00' }),
    codes: LATE,
    about: ['ring', 'r'],
  },
  {
    name: 'the long course reopens before it has closed, at its start',
    plan: 'shared',
    plant: ofClock('long', 0, { reopens: '07:00' }),
    codes: ['clock-order', 'reopens-early'],
    about: ['long', 'l'],
  },
];

const early: readonly Planted[] = [
  {
    name: 'the crew of the Weighhouse comes with the runners',
    plan: 'loop',
    plant: ofStation('s4', { crew: { ready: '0 min', setUp: '0 min' } }),
    codes: CREW,
    about: ['s4'],
  },
  {
    name: 'the crew of Limekiln comes a quarter of an hour before its runners, long after the road is closed',
    plan: 'shared',
    plant: ofStation('d2', { crew: { ready: '5 min', setUp: '10 min' } }),
    codes: CREW,
    about: ['d2'],
  },
  {
    name: 'the crew of the Pilot House comes after the wheels',
    plan: 'point',
    plant: ofStation('p9', { crew: { ready: '0 min', setUp: '15 min' } }),
    codes: CREW,
    about: ['p9'],
  },
  {
    name: 'the police close the coast at five, before the crews come',
    plan: 'point',
    plant: ofClocks('coast', () => ({ closes: '05:00' })),
    codes: CREW,
    about: ['p1', 'p5', 'p10'],
  },
  {
    name: 'the trucks of the mall leave after it has closed',
    plan: 'outBack',
    plant: (plan) => {
      for (const vehicle of plan.vehicles) vehicle.from = '08:20';
    },
    codes: CREW,
    about: ['b1', 'b2', 'b3', 'b4'],
  },
  {
    name: 'the truck of the lake is loaded after the first crew is due',
    plan: 'laps',
    plant: (plan) => {
      plan.vehicles[0]!.from = '06:40';
    },
    codes: CREW,
    about: ['c1', 'c2', 'c3'],
  },
  {
    name: 'the truck of the trail is planned at 3 km/h for 30',
    plan: 'trail',
    plant: (plan) => {
      plan.vehicles[0]!.kmh = 3;
    },
    codes: CREW,
    about: ['t2', 't3'],
  },
  {
    name: 'access to the short and the long course opens at seven, when crews should be there',
    plan: 'shared',
    plant: all(
      ofClocks('long', () => ({ accessOpens: '07:15' })),
      ofClocks('short', () => ({ accessOpens: '07:15' })),
    ),
    codes: [...CREW, 'clock-order'],
    about: ['d1', 'd2', 'd3', 'd4', 'd5', 'long'],
  },
  {
    name: 'the ring has closed 20 minutes into the set-up of its first station',
    plan: 'loop',
    plant: (plan, ground) => {
      plan.clock.push({ course: 'ring', measure: km(ground.length('ring') * 0.15), closes: '06:20' });
    },
    codes: [...CREW, 'clock-order'],
    about: ['s1', 'ring'],
  },
];

export const CLOSURES: readonly Planted[] = [...closing, ...reopening, ...order, ...early];
