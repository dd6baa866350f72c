/** Planted mistakes of names, places far off, and rules that are looser than usual. Not part of the package. */
import { type Planted, all, byHand, ofStation, stationIn, swappedPair } from './planted.ts';

const names: readonly Planted[] = [
  {
    name: 'Old Customs is called Tern Quay',
    plan: 'point',
    plant: ofStation('p5', { name: 'Tern Quay' }),
    codes: ['same-name'],
    about: ['p1', 'p5'],
  },
  {
    name: 'the Reed Beds are called the Boathouse',
    plan: 'laps',
    plant: ofStation('c3', { name: 'Boathouse' }),
    codes: ['same-name'],
    about: ['c1', 'c3'],
  },
  {
    name: 'the Fold is called the charcoal yard, in small letters',
    plan: 'trail',
    plant: ofStation('t2', { name: 'charcoal yard ' }),
    codes: ['same-name'],
    about: ['t1', 't2'],
  },
  {
    name: 'Samphire Lane is called 3 km',
    plan: 'loop',
    plant: ofStation('s2', { name: '3 km' }),
    codes: ['name-distance'],
    about: ['s2'],
  },
  {
    name: 'Netloft is called km 52',
    plan: 'point',
    plant: ofStation('p7', { name: 'Netloft, km 52' }),
    codes: ['name-distance'],
    about: ['p7'],
  },
  {
    name: 'Limekiln is called mile 10',
    plan: 'shared',
    plant: ofStation('d2', { name: 'Limekiln (mile 10)' }),
    codes: ['name-distance'],
    about: ['d2'],
  },
  {
    name: 'Sawpit is called the 5 km table',
    plan: 'trail',
    plant: ofStation('t3', { name: 'Sawpit 5 km table' }),
    codes: ['name-distance'],
    about: ['t3'],
  },
];

const far: readonly Planted[] = [
  {
    name: 'longitude and latitude of the fire station gate are swapped',
    plan: 'loop',
    plant: (plan) => {
      plan.zones[0]!.polygon = plan.zones[0]!.polygon.map((corner) => swappedPair(corner));
    },
    codes: ['far-from-courses'],
    about: ['Fire station gate', '/zones/0', '/zones/0/polygon'],
  },
  {
    name: 'the ferry gate lies a degree off',
    plan: 'point',
    plant: (plan) => {
      plan.zones[1]!.polygon = plan.zones[1]!.polygon.map(([lon, lat]) => [lon + 1, lat]);
    },
    codes: ['far-from-courses'],
    about: ['Ferry gate', '/zones/1', '/zones/1/polygon'],
  },
  {
    name: 'longitude and latitude of the Charcoal Yard’s supplies are swapped',
    plan: 'trail',
    plant: (plan) => {
      const [drop] = stationIn(plan, 't1').points;
      drop!.at = swappedPair(drop!.at);
    },
    codes: ['far-from-courses', 'drop-far'],
    about: ['t1'],
  },
  {
    name: 'the Boathouse’s tent lost the sign of its latitude',
    plan: 'laps',
    plant: (plan) => {
      const tent = stationIn(plan, 'c1').points.find(({ kind }) => kind === 'medical')!;
      tent.at = [tent.at[0], -tent.at[1]];
    },
    codes: ['far-from-courses', 'medical-without-access'],
    about: ['c1'],
  },
  {
    name: 'the clinic drive lies in the next town',
    plan: 'outBack',
    plant: (plan) => {
      plan.zones[0]!.polygon = plan.zones[0]!.polygon.map(([lon, lat]) => [lon, lat + 0.1]);
    },
    codes: ['far-from-courses'],
    about: ['Clinic drive', '/zones/0', '/zones/0/polygon'],
  },
  {
    name: 'one corner of the fire station gate has a wrong first digit',
    plan: 'loop',
    plant: (plan) => {
      const [corner] = plan.zones[0]!.polygon;
      plan.zones[0]!.polygon = [[corner![0] - 40, corner![1]], ...plan.zones[0]!.polygon.slice(1)];
    },
    codes: ['zone-large'],
    about: ['Fire station gate', '/zones/0'],
  },
  {
    name: 'the supplies of p2 and p5 are exchanged',
    plan: 'point',
    plant: (plan) => {
      const [one, other] = ['p2', 'p5'].map((id) => stationIn(plan, id).points.find(({ kind }) => kind === 'drop')!);
      [one!.at, other!.at] = [other!.at, one!.at];
    },
    codes: ['points-elsewhere'],
    about: ['p2', 'p5'],
  },
  {
    name: 'all points of p3 were entered at the supplies of p4',
    plan: 'point',
    plant: (plan) => {
      for (const point of stationIn(plan, 'p3').points) {
        const [drop] = stationIn(plan, 'p4').points;
        point.at = drop!.at;
      }
    },
    codes: ['points-elsewhere'],
    about: ['p3'],
  },
];

const rules: readonly Planted[] = [
  {
    name: 'stations of the coast may be 9 km apart',
    plan: 'point',
    plant: (plan) => {
      plan.practice = { ...plan.practice, maxSpacing: '9 km' };
    },
    codes: ['rule-loose'],
    about: [],
    note: true,
  },
  {
    name: 'tables of the Fold may stand on 15 %',
    plan: 'trail',
    plant: ofStation('t2', { practice: { maxGrade: 0.15 } }),
    codes: ['rule-loose'],
    about: ['t2'],
    note: true,
  },
  {
    name: 'half the usual road is kept clear at the Chandlery',
    plan: 'outBack',
    plant: ofStation('b4', { practice: { clearWidth: '1.5 m' } }),
    codes: ['rule-loose'],
    about: ['b4'],
    note: true,
  },
  {
    name: 'a sign 45 m off is let pass by a tolerance of 60 m',
    plan: 'loop',
    plant: all(byHand('s4', 'sign', -45), (plan) => {
      plan.practice = { ...plan.practice, signTolerance: '60 m' };
    }),
    codes: ['rule-loose'],
    about: [],
  },
  {
    name: 'a road of 4 m is let pass by 2 m of clear width',
    plan: 'shared',
    plant: ofStation('d5', { width: '4 m', practice: { clearWidth: '2 m' } }),
    codes: ['rule-loose', 'flows-share-width'],
    about: ['d5'],
  },
];

export const NAMES: readonly Planted[] = [...names, ...far, ...rules];
