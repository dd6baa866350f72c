/** Planted mistakes of tables, signs and points: their order, their place, what they stand on. Not part of the package. */
import { placeBy } from './build.ts';
import { type Planted, all, byHand, moved, pointTo } from './planted.ts';

const order: readonly Planted[] = [
  {
    name: 'the gel of the Ropewalk is put behind the water',
    plan: 'loop',
    plant: byHand('s3', 'gel', 34),
    codes: ['item-order', 'gel-without-water'],
    about: ['s3'],
  },
  {
    name: 'the water of Old Customs comes before its sports drink',
    plan: 'point',
    plant: byHand('p5', 'water', -24),
    codes: ['item-order'],
    about: ['p5'],
  },
  {
    name: 'the boxes of the Charcoal Yard stand before its tables',
    plan: 'trail',
    plant: byHand('t1', 'trash', -70),
    codes: ['item-order'],
    about: ['t1'],
  },
  {
    name: 'the gel of Tollgate stands between drink and boxes',
    plan: 'shared',
    plant: byHand('d3', 'gel', 22),
    codes: ['item-order', 'gel-without-water'],
    about: ['d3'],
  },
  {
    name: 'the sign of the Sluice stands behind its tables',
    plan: 'laps',
    plant: byHand('c2', 'sign', 40),
    codes: ['item-order', 'sign-distance'],
    about: ['c2'],
  },
  {
    name: 'the water of Mole Head is put on the sports drink',
    plan: 'loop',
    plant: byHand('s5', 'water', 1),
    codes: ['items-on-top', 'item-order'],
    about: ['s5'],
  },
  {
    name: 'the gel of the Palm House is put on the sports drink',
    plan: 'outBack',
    plant: byHand('b2', 'gel', 2),
    codes: ['items-on-top', 'item-order'],
    about: ['b2'],
  },
  {
    name: 'the boxes of Breakwater begin at its last table',
    plan: 'point',
    plant: byHand('p10', 'trash', 4),
    codes: ['items-on-top', 'box-distance'],
    about: ['p10'],
  },
  {
    name: 'the water of the Reed Beds overlaps the sports drink by half a table',
    plan: 'laps',
    plant: byHand('c3', 'water', 1),
    codes: ['items-on-top'],
    about: ['c3'],
  },
];

const signs: readonly Planted[] = [
  {
    name: 'the sign of the Weighhouse stands in the road',
    plan: 'loop',
    plant: byHand('s4', 'sign', -90, -3.5),
    codes: ['sign-in-road'],
    about: ['s4'],
  },
  {
    name: 'the sign of Netloft stands half a lane in',
    plan: 'point',
    plant: byHand('p7', 'sign', -99, -1.6),
    codes: ['sign-in-road'],
    about: ['p7'],
  },
  {
    name: 'the sign of Almshouse stands on the line of the course',
    plan: 'shared',
    plant: byHand('d5', 'sign', -90, -4.4),
    codes: ['sign-in-road', 'item-across'],
    about: ['d5'],
  },
  {
    name: 'the sign of the Fold stands in the track',
    plan: 'trail',
    plant: byHand('t2', 'sign', -99, -2),
    codes: ['sign-in-road'],
    about: ['t2'],
  },
  {
    name: 'the sign of the Ropewalk stands just behind a corner',
    plan: 'loop',
    plant: moved('s3', -112),
    codes: ['sign-hard-to-read'],
    about: ['s3'],
  },
  {
    name: 'the sign of the Sluice stands 10 m behind a corner',
    plan: 'laps',
    plant: moved('c2', -308),
    codes: ['sign-hard-to-read'],
    about: ['c2'],
  },
  {
    name: 'the sign of Mole Head stands 6 m behind a corner',
    plan: 'loop',
    plant: moved('s5', -424),
    codes: ['sign-hard-to-read'],
    about: ['s5'],
  },
  {
    name: 'the sign of the Reed Beds stands 12 m behind a corner',
    plan: 'laps',
    plant: moved('c3', -218),
    codes: ['sign-hard-to-read'],
    about: ['c3'],
  },
  {
    name: 'the sign of the Fold stands on a slope of 12 %',
    plan: 'trail',
    plant: moved('t2', -545),
    codes: ['sign-hard-to-read', 'after-descent'],
    about: ['t2'],
  },
  {
    name: 'Sawpit’s tables stand at the foot of a descent',
    plan: 'trail',
    plant: moved('t3', -570),
    codes: ['after-descent', 'sign-hard-to-read'],
    about: ['t3'],
  },
];

const points: readonly Planted[] = [
  {
    name: 'the supplies of Curlew Road are dropped where its tables stand',
    plan: 'loop',
    plant: pointTo('s1', 'drop', 6, 0.6),
    codes: ['point-blocked'],
    about: ['s1'],
  },
  {
    name: 'the first aid tent of Limekiln stands among the boxes',
    plan: 'shared',
    plant: all(pointTo('d2', 'medical', 82, 0.6), pointTo('d2', 'access', 84, 20)),
    codes: ['point-blocked', 'medical-way-blocked', 'trash-blocks-medical'],
    about: ['d2'],
  },
  {
    name: 'the ambulance of Signal Hill Foot comes in at the sign',
    plan: 'point',
    plant: pointTo('p8', 'access', -90, 0.6),
    codes: ['point-blocked'],
    about: ['p8'],
  },
  {
    name: 'the supplies of the Reed Beds are dropped at the hand-out line',
    plan: 'laps',
    plant: pointTo('c3', 'drop', 4, 0.4),
    codes: ['point-blocked'],
    about: ['c3'],
  },
  {
    name: 'the first aid tent of the Palm House stands on its gel',
    plan: 'outBack',
    plant: pointTo('b2', 'medical', -9, 0.6),
    codes: ['point-blocked', 'medical-way-blocked'],
    about: ['b2'],
  },
  {
    name: 'the ambulance of the Weighhouse waits across the road',
    plan: 'loop',
    plant: pointTo('s4', 'access', -58, -22),
    codes: ['medical-way-blocked'],
    about: ['s4'],
  },
  {
    name: 'Sawpit’s ambulance waits on the other side of the track',
    plan: 'trail',
    plant: pointTo('t3', 'access', -50, -18),
    codes: ['medical-way-blocked'],
    about: ['t3'],
  },
  {
    name: 'the tables of Oyster Hard stand between tent and ambulance',
    plan: 'point',
    plant: all(pointTo('p3', 'medical', -14, 0.6), pointTo('p3', 'access', 36, 0.7)),
    codes: ['medical-way-blocked'],
    about: ['p3'],
  },
  {
    name: 'the boxes of Mill Race stand between tent and ambulance',
    plan: 'shared',
    plant: all(pointTo('d4', 'medical', 55, 0.6), pointTo('d4', 'access', 112, 0.7)),
    codes: ['medical-way-blocked', 'trash-blocks-medical', 'point-blocked'],
    about: ['d4'],
  },
  {
    name: 'the supplies of Mole Head are dropped 400 m on',
    plan: 'loop',
    plant: pointTo('s5', 'drop', 300, 5),
    codes: ['drop-far'],
    about: ['s5'],
  },
  {
    name: 'the supplies of Tollgate are dropped before the last bend',
    plan: 'shared',
    plant: pointTo('d3', 'drop', -260, 5),
    codes: ['drop-far'],
    about: ['d3'],
  },
  {
    name: 'the supplies of the Sluice are dropped on a field behind it',
    plan: 'laps',
    plant: pointTo('c2', 'drop', -20, 160),
    codes: ['drop-far'],
    about: ['c2'],
  },
  {
    name: 'the supplies of Saltpan are dropped in front of the lifeboat slip',
    plan: 'point',
    plant: (plan, ground) => {
      const foot = ground.foot('p2');
      plan.zones[0]!.polygon = [
        placeBy(foot, ground, -40, 2),
        placeBy(foot, ground, -24, 2),
        placeBy(foot, ground, -24, 12),
        placeBy(foot, ground, -40, 12),
      ];
    },
    codes: ['drop-far'],
    about: ['p2'],
  },
];

const ends: readonly Planted[] = [
  {
    name: 'Curlew Road is typed 0.296 km for 2.956 km',
    plan: 'loop',
    plant: moved('s1', -2660),
    codes: ['near-start'],
    about: ['s1'],
    note: true,
  },
  {
    name: 'the Charcoal Yard stands 300 m after the start',
    plan: 'trail',
    plant: moved('t1', () => 300),
    codes: ['near-start'],
    about: ['t1'],
    note: true,
  },
  {
    name: 'the Chandlery stands just before the finish',
    plan: 'outBack',
    plant: moved('b4', ({ length }) => length('mall') - 190),
    codes: ['near-finish'],
    about: ['b4'],
    note: true,
  },
  {
    name: 'Breakwater stands in the last straight',
    plan: 'point',
    plant: moved('p10', ({ length }) => length('coast') - 160),
    codes: ['near-finish'],
    about: ['p10'],
    note: true,
  },
];

export const ITEMS: readonly Planted[] = [...order, ...signs, ...points, ...ends];
