/** Planted slips of the pen: figures, dates and words that cannot be meant. Not part of the package. */
import { km } from './build.ts';
import { type Planted, clockIn, ofClock, ofRace, ofStation, stationIn } from './planted.ts';

const times: readonly Planted[] = [
  {
    name: 'the ring’s cutoff is typed 14:55 for 11:55, after its road reopens',
    plan: 'loop',
    plant: ofRace('r', { cutoff: '14:55' }),
    codes: ['clock-order'],
    about: ['r'],
  },
  {
    name: 'an entry of the ring’s clock is typed 61 km for 16',
    plan: 'loop',
    plant: ofClock('ring', 4, { measure: '61 km' }),
    codes: ['clock-beyond'],
    about: ['ring'],
  },
  {
    name: 'the clock of the coast ends a quarter of the way along',
    plan: 'point',
    plant: (plan) => {
      const late = new Set(clockIn(plan, 'coast').slice(2));
      plan.clock = plan.clock.filter((entry) => !late.has(entry));
    },
    codes: ['clock-short'],
    about: ['coast'],
  },
  {
    name: 'the lake’s clock goes on for a lap that is not there',
    plan: 'laps',
    plant: (plan, ground) => {
      plan.clock.push({ course: 'lake', measure: km(ground.length('lake') * 1.25), reopens: '23:00' });
    },
    codes: ['clock-beyond'],
    about: ['lake'],
  },
  {
    name: 'Kelp Works was walked a year after the race',
    plan: 'point',
    plant: (plan) => void Object.assign(stationIn(plan, 'p4'), { walked: { by: 'R. Gull', date: '2028-09-01' } }),
    codes: ['walked-date'],
    about: ['p4'],
  },
  {
    name: 'the plan of the trail has no date',
    plan: 'trail',
    plant: (plan) => {
      delete plan.date;
    },
    codes: ['no-date'],
    about: [],
    note: true,
  },
];

const people: readonly Planted[] = [
  {
    name: 'whoever leads Kelp Works is to be confirmed',
    plan: 'point',
    plant: ofStation('p4', { people: { captain: 'TBC', radio: '?', phone: 'n/a' } }),
    codes: ['no-captain'],
    about: ['p4'],
  },
  {
    name: 'the contacts of the trail are still to be found',
    plan: 'trail',
    plant: (plan) => {
      plan.contacts = { ...plan.contacts, emergency: '???', raceControl: 'tbd' };
    },
    codes: ['no-contacts'],
    about: [],
  },
  {
    name: 'nobody pours and nobody need be there on the mall',
    plan: 'outBack',
    plant: (plan) => void Object.assign(plan, { crew: { minimum: 0, pourers: 0 } }),
    codes: ['rule-loose'],
    about: [],
  },
  {
    name: 'a share of 0.09 for 0.9 of the ring’s runners start',
    plan: 'loop',
    plant: ofRace('r', { show: 0.09 }),
    codes: ['show-low'],
    about: ['r'],
  },
];

const things: readonly Planted[] = [
  {
    name: 'the coast is cool at 28 °C',
    plan: 'point',
    plant: (plan) => {
      plan.supplies = { heat: 'cool', wbgtC: 28 };
    },
    codes: ['heat-doubtful'],
    about: [],
  },
  {
    name: 'the lake’s temperature is in degrees Fahrenheit',
    plan: 'laps',
    plant: (plan) => {
      plan.supplies = { heat: 'warm', wbgtC: 58 };
    },
    codes: ['heat-doubtful'],
    about: [],
  },
  {
    name: 'a truck of the ring carries 12 kg',
    plan: 'loop',
    plant: (plan) => {
      plan.vehicles[0]!.kg = 12;
    },
    codes: ['vehicle-doubtful'],
    about: [],
  },
  {
    name: 'a truck of the coast goes at 250 km/h',
    plan: 'point',
    plant: (plan) => {
      plan.vehicles[0]!.kmh = 250;
    },
    codes: ['vehicle-doubtful'],
    about: [],
  },
  {
    name: 'Curlew Road has 90 tables of water for 9',
    plan: 'loop',
    plant: ofStation('s1', { tables: { sportsDrink: 3, water: 90 } }),
    codes: ['tables-many'],
    about: ['s1'],
    note: true,
  },
  {
    name: 'Curlew Road has 120 boxes for 12',
    plan: 'loop',
    plant: ofStation('s1', { boxes: 120 }),
    codes: ['boxes-tight'],
    about: ['s1'],
  },
  {
    name: 'boxes of the mall stand 5 to 10 m after the tables',
    plan: 'outBack',
    plant: (plan) => {
      plan.practice = { ...plan.practice, trashFrom: '5 m', trashTo: '10 m' };
    },
    codes: ['rule-loose'],
    about: [],
  },
];

export const SLIPS: readonly Planted[] = [...times, ...people, ...things];
