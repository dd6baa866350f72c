/** Planted mistakes of leaving out: what a plan does not say, or says for another place. Not part of the package. */
import { type Plant, type Planted, all, ofRace, ofStation, raceIn, stationIn, without } from './planted.ts';

const withoutWidths: Plant = (plan) => {
  for (const station of plan.stations) delete station.width;
};

const medical: readonly Planted[] = [
  {
    name: 'the ring has no first aid',
    plan: 'loop',
    plant: without(['medical', 'access']),
    codes: ['no-medical'],
    about: [],
  },
  {
    name: 'the coast has no first aid in its second half',
    plan: 'point',
    plant: without(['medical', 'access'], ['p6', 'p8']),
    codes: ['no-medical'],
    about: ['coast', 'm', 'w'],
  },
  {
    name: 'both races end without first aid in their second half',
    plan: 'shared',
    plant: without(['medical', 'access'], ['d4']),
    codes: ['no-medical'],
    about: ['long', 'short', 'l', 'k'],
  },
  {
    name: 'the trail has no first aid after its half',
    plan: 'trail',
    plant: without(['medical', 'access'], ['t3']),
    codes: ['no-medical'],
    about: ['ridge', 'x'],
  },
  {
    name: 'the first aid of Ferry Cross has no access',
    plan: 'point',
    plant: without(['access'], ['p6']),
    codes: ['medical-without-access'],
    about: ['p6'],
  },
];

const unsaid: readonly Planted[] = [
  { name: 'the trail has no widths', plan: 'trail', plant: withoutWidths, codes: ['no-widths'], about: [] },
  { name: 'the lake has no widths', plan: 'laps', plant: withoutWidths, codes: ['no-widths'], about: [] },
  {
    name: 'the mall has no heights',
    plan: 'outBack',
    plant: (plan) => {
      for (const course of plan.courses) course.line = course.line!.map((point) => point.slice(0, 2));
    },
    codes: ['no-elevations'],
    about: ['mall'],
    note: true,
  },
  {
    name: 'the file of the ring has no heights',
    plan: 'loop',
    plant: (_, __, files) => {
      files['ring.gpx'] = files['ring.gpx']!.replaceAll(/<ele>[^<]*<\/ele>/gu, '');
    },
    codes: ['no-elevations'],
    about: ['ring'],
    note: true,
  },
  {
    name: 'the ring has no waves yet',
    plan: 'loop',
    plant: ofRace('r', { waves: [] }),
    codes: ['no-entrants', 'race-without-waves'],
    about: ['r'],
  },
  {
    name: 'the short race has a wave of nobody',
    plan: 'shared',
    plant: ofRace('k', { waves: [{ time: '08:45', entrants: 0 }] }),
    codes: ['no-entrants', 'race-without-starters'],
    about: ['k'],
  },
  {
    name: 'the marathon has no finish times',
    plan: 'point',
    plant: (plan) => {
      delete raceIn(plan, 'm').finish;
    },
    codes: ['no-entrants', 'race-without-times'],
    about: ['m'],
  },
  {
    name: 'the lake has no contacts',
    plan: 'laps',
    plant: (plan) => {
      plan.contacts = {};
    },
    codes: ['no-contacts'],
    about: [],
  },
  {
    name: 'the coast has no emergency number',
    plan: 'point',
    plant: (plan) => {
      delete plan.contacts.emergency;
    },
    codes: ['no-contacts'],
    about: [],
  },
  {
    name: 'the trail has no channel',
    plan: 'trail',
    plant: (plan) => {
      delete plan.contacts.radioChannel;
    },
    codes: ['no-contacts'],
    about: [],
  },
  {
    name: 'the mall’s race control is left blank',
    plan: 'outBack',
    plant: (plan) => {
      plan.contacts.raceControl = '';
    },
    codes: ['no-contacts'],
    about: [],
  },
];

/** As many people at each station as nobody needs, but for one, where there are two. */
const fewAt =
  (few: string): Plant =>
  (plan) => {
    plan.people = {
      crew: plan.stations.flatMap(({ id }) =>
        Array.from({ length: id === few ? 2 : 400 }, (_, k) => ({ name: `Volunteer ${k + 1}`, station: id })),
      ),
    };
  };

const people: readonly Planted[] = [
  {
    name: 'two people are found for the Ropewalk',
    plan: 'loop',
    plant: fewAt('s3'),
    codes: ['roster-short'],
    about: ['s3'],
  },
  {
    name: 'nobody leads the Ropewalk',
    plan: 'loop',
    plant: ofStation('s3', { people: {} }),
    codes: ['no-captain'],
    about: ['s3'],
  },
  {
    name: 'the captain of Almshouse cannot be reached',
    plan: 'shared',
    plant: ofStation('d5', { people: { captain: 'Captain, Almshouse' } }),
    codes: ['no-captain'],
    about: ['d5'],
  },
  {
    name: 'the Fold has a radio and no captain',
    plan: 'trail',
    plant: ofStation('t2', { people: { radio: 'Fold' } }),
    codes: ['no-captain'],
    about: ['t2'],
  },
  {
    name: 'one captain leads Kelp Works and Old Customs',
    plan: 'point',
    plant: (plan) => {
      stationIn(plan, 'p5').people.captain = stationIn(plan, 'p4').people.captain!;
    },
    codes: ['shared-contact'],
    about: ['p4', 'p5'],
  },
  {
    name: 'the Boathouse and the Sluice have one call sign',
    plan: 'laps',
    plant: (plan) => {
      stationIn(plan, 'c2').people.radio = 'Boat';
    },
    codes: ['shared-contact'],
    about: ['c1', 'c2'],
  },
  {
    name: 'the Observatory and the Chandlery have one telephone',
    plan: 'outBack',
    plant: (plan) => {
      stationIn(plan, 'b4').people.phone = stationIn(plan, 'b3').people.phone!;
    },
    codes: ['shared-contact'],
    about: ['b3', 'b4'],
  },
  {
    name: 'Mole Head is a copy of Curlew Road, people and all',
    plan: 'loop',
    plant: (plan) => {
      stationIn(plan, 's5').people = { ...stationIn(plan, 's1').people };
    },
    codes: ['shared-contact'],
    about: ['s1', 's5'],
  },
];

const water: readonly Planted[] = [
  {
    name: 'the ring has sports drink alone',
    plan: 'loop',
    plant: (plan) => {
      for (const station of plan.stations) {
        station.serves = ['sportsDrink'];
        delete station.used;
      }
    },
    codes: ['no-water'],
    about: ['r', 'ring'],
  },
  {
    name: 'the short race meets sports drink alone',
    plan: 'shared',
    plant: (plan) => {
      for (const id of ['d1', 'd4', 'd5']) stationIn(plan, id).serves = ['sportsDrink'];
      delete stationIn(plan, 'd1').used;
    },
    codes: ['no-water'],
    about: ['k', 'short'],
  },
  {
    name: 'the trail’s water has no tables',
    plan: 'trail',
    plant: (plan) => {
      for (const station of plan.stations) station.tables = { water: 0 };
    },
    codes: ['no-water', 'tables-mismatch', 'gel-without-water', 'pre-pour-room'],
    about: ['x', 'ridge', 't1'],
  },
  {
    name: 'Curlew Road has half of the water that was used there',
    plan: 'loop',
    plant: ofStation('s1', { used: { water: 1750, sportsDrink: 350 } }),
    codes: ['supplies-short'],
    about: ['s1'],
  },
  {
    name: 'the Reed Beds used far more sports drink than is planned',
    plan: 'laps',
    plant: ofStation('c3', { used: { water: 1080, sportsDrink: 1500 } }),
    codes: ['supplies-short'],
    about: ['c3'],
  },
  {
    name: 'a hot trail is planned with a third of a cup a runner',
    plan: 'trail',
    plant: all(
      (plan) => {
        plan.supplies = { heat: 'hot', take: { run: { water: 0.3, sportsDrink: 0.1 } } };
      },
      (plan) => {
        delete stationIn(plan, 't3').used;
      },
    ),
    codes: ['supplies-short'],
    about: [],
  },
  {
    name: 'the mall is planned as cool at 31 °C',
    plan: 'outBack',
    plant: (plan) => {
      plan.supplies = { heat: 'cool', wbgtC: 31, heatSteps: [18, 25] };
      delete stationIn(plan, 'b3').used;
    },
    codes: ['supplies-short'],
    about: [],
  },
];

export const ABSENCE: readonly Planted[] = [...medical, ...unsaid, ...people, ...water];
