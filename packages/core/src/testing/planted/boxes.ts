/** Planted mistakes of boxes: too few, too near, too far, in a bend or on another leg. Not part of the package. */
import { type Planted, byHand, moved, ofStation } from './planted.ts';

export const BOXES: readonly Planted[] = [
  ...(
    [
      ['loop', 's2', 'Samphire Lane'],
      ['point', 'p4', 'Kelp Works'],
      ['trail', 't3', 'Sawpit'],
    ] as const
  ).map(([plan, id, name]): Planted => ({
    name: `${name} has no boxes`,
    plan,
    plant: ofStation(id, { boxes: 0 }),
    codes: ['boxes-missing'],
    about: [id],
  })),
  ...(
    [
      ['loop', 's1', 'Curlew Road', 1],
      ['laps', 'c1', 'the Boathouse', 1],
      ['shared', 'd1', 'Dovecote', 1],
      ['point', 'p6', 'Ferry Cross', 1],
    ] as const
  ).map(([plan, id, name, count]): Planted => ({
    name: `${name} has ${count} boxes for all its cups`,
    plan,
    plant: ofStation(id, { boxes: count }),
    codes: ['boxes-few'],
    about: [id],
  })),
  ...(
    [
      ['shared', 'd2', 'Limekiln', 30],
      ['laps', 'c2', 'the Sluice', 175],
      ['outBack', 'b3', 'the Observatory', 32],
      ['point', 'p2', 'Saltpan', 190],
    ] as const
  ).map(([plan, id, name, along]): Planted => ({
    name: `the boxes of ${name} are dragged to ${along} m`,
    plan,
    plant: byHand(id, 'trash', along),
    codes: ['box-distance'],
    about: [id],
  })),
  {
    name: 'the boxes of the Ropewalk stand round a corner',
    plan: 'loop',
    plant: moved('s3', 145),
    codes: ['box-in-bend'],
    about: ['s3'],
  },
  {
    name: 'the boxes of Kelp Works stand round a corner',
    plan: 'point',
    plant: moved('p4', 750),
    codes: ['box-in-bend'],
    about: ['p4'],
  },
  {
    name: 'the boxes of Curlew Road stand in the corner at its end',
    plan: 'loop',
    plant: moved('s1', 1660),
    codes: ['box-in-bend'],
    about: ['s1'],
  },
  {
    name: 'the boxes of the Reed Beds stand in the last corner of the lap',
    plan: 'laps',
    plant: moved('c3', ({ length }) => length('lake') / 3 - 114),
    codes: ['box-in-bend'],
    about: ['c3'],
  },
  {
    name: 'the boxes of Mole Head stand on the street that the ring comes out by',
    plan: 'loop',
    plant: moved('s5', ({ length }) => length('ring') - 250 - 70),
    codes: ['box-on-leg', 'leg-crosses'],
    about: ['s5'],
  },
  {
    name: 'the boxes of the Bandstand stand across the road, by those who come back',
    plan: 'outBack',
    plant: byHand('b1', 'trash', 95, -12.5),
    codes: ['box-on-leg', 'item-across', 'two-way-road'],
    about: ['b1'],
  },
];
