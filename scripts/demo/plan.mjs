// The demo's plan: nine stations set by measure along the full course, written as a designer would.
import { pointAt, toLonLat } from './frame.mjs';

export const island = 'Ganneth';

// Measures in metres along the full course; offsets left positive, as in the plan's own words.
const places = {
  strand: [2620, 5],
  stennick: [7080, -5],
  fork: [11560, 5],
  norra: [16080, -4.5],
  foot: [20920, 5],
  keeper: [25850, -2.6],
  tide: [30560, 5.5],
  park: [35720, -5],
  packet: [40330, 5],
};

const stationNames = {
  strand: 'Strand Road',
  stennick: 'Stennick Chapel',
  fork: 'Wrack Fork',
  norra: 'Norra Slip',
  foot: 'Lantern Foot',
  keeper: 'Keeper’s Path',
  tide: 'Tidewaiters’ Green',
  park: 'Quillet Park',
  packet: 'Packet Pier',
};

const on = (name) => ({
  course: 'full',
  measure: `${places[name][0] / 1000} km`,
  side: places[name][1] > 0 ? 'left' : 'right',
  offset: `${Math.abs(places[name][1])} m`,
});
const besideOf = (line) => (name, along, offset) => pointAt(line, places[name][0] + along, offset);

/** Where the supplies of the path are carried from; `at`: longitude and latitude. */
const keeperDrop = (at) => ({ kind: 'drop', at, name: 'Path gate', note: 'No truck on the path: carry from here.' });

/** The nine stations along the full course. */
function stationsOf(line) {
  const at = (name) => pointAt(line, ...places[name]);
  const beside = besideOf(line);
  const both = ['m', 'h'];
  // Supplies are set down behind the tables, on their side, just upstream of the chalk mark.
  const drop = (name, street) => ({
    kind: 'drop',
    at: beside(name, -14, places[name][1] + 4 * Math.sign(places[name][1])),
    name: 'Supplies',
    street,
  });
  return [
    {
      id: 's1',
      name: stationNames.strand,
      on: on('strand'),
      side: 'left',
      races: both,
      serves: ['sportsDrink', 'water'],
      tables: { sportsDrink: 4, water: 6 },
      boxes: 8,
      width: '8 m',
      crew: { minimum: 10 },
      points: [drop('strand', 'Strand Road')],
      people: { captain: 'Captain, Strand Road', radio: 'Strand' },
      used: { water: 3050, sportsDrink: 1460 },
      note: 'Both races in their first quarter: the busiest tables of the day.',
    },
    {
      id: 's2',
      name: stationNames.stennick,
      at: at('stennick'),
      side: 'right',
      races: both,
      serves: ['sportsDrink', 'water'],
      boxes: 10,
      width: '9 m',
      why: 'a farm driveway at 90 m: the sign stands short of it',
      walked: { by: 'course designer', date: '2027-06-20' },
      items: { sign: { at: beside('stennick', -70, -5) } },
      points: [drop('stennick', 'Stennick Road')],
      people: { captain: 'Captain, Stennick', radio: 'Stennick' },
      used: { water: 3280, sportsDrink: 1610 },
    },
    {
      id: 's3',
      name: stationNames.fork,
      at: at('fork'),
      side: 'left',
      races: both,
      serves: ['gel', 'sportsDrink', 'water'],
      tables: { gel: 2, sportsDrink: 4, water: 6 },
      boxes: 10,
      width: '9 m',
      points: [
        {
          kind: 'access',
          at: beside('fork', -32, 12),
          name: 'Truck access',
          street: 'Drover’s Road',
          note: 'Back in from the west; supplies are carried from here, and the fork itself must stay clear.',
        },
        { kind: 'medical', at: beside('fork', 24, 14), name: 'First aid tent' },
        { kind: 'toilets', at: beside('fork', 44, 16), name: 'Toilets' },
      ],
      people: { captain: 'Captain, Wrack Fork', radio: 'Fork' },
      used: { water: 3190, sportsDrink: 1580, gel: 1590 },
      note: 'The last station before the half marathon leaves by the causeway.',
    },
    {
      id: 's4',
      name: stationNames.norra,
      on: on('norra'),
      side: 'right',
      races: ['m'],
      serves: ['sportsDrink', 'water'],
      boxes: 5,
      width: '8 m',
      points: [drop('norra', 'Norra Road')],
      people: { captain: 'Captain, Norra', radio: 'Norra' },
    },
    {
      id: 's5',
      name: stationNames.foot,
      at: at('foot'),
      side: 'left',
      races: ['m'],
      serves: ['sportsDrink', 'water'],
      boxes: 5,
      width: '9 m',
      points: [drop('foot', 'Lantern Road')],
      people: { captain: 'Captain, Lantern Foot', radio: 'Lantern' },
    },
    {
      id: 's6',
      name: stationNames.keeper,
      on: on('keeper'),
      side: 'right',
      races: ['m'],
      serves: ['gel', 'sportsDrink', 'water'],
      width: '4.5 m',
      practice: { setback: '0.5 m' },
      why: 'the path is closed to all but runners, who come in single file',
      supplies: { waste: 0.2 },
      points: [keeperDrop(beside('keeper', -14, -8))],
      people: { captain: 'Captain, Keeper’s Path', radio: 'Keeper' },
      note: 'A narrow path: tables on one side only, and in single file.',
    },
    {
      id: 's7',
      name: stationNames.tide,
      at: at('tide'),
      side: 'left',
      races: ['m'],
      serves: ['sportsDrink', 'water'],
      boxes: 5,
      width: '10 m',
      points: [
        { kind: 'access', at: beside('tide', -24, 14), name: 'Truck access', street: 'Tidewaiters’ Road' },
        { kind: 'medical', at: beside('tide', 26, 14), name: 'First aid tent' },
        { kind: 'radio', at: beside('tide', 40, 14), name: 'Radio relay' },
      ],
      people: { captain: 'Captain, Tidewaiters’ Green', radio: 'Tide' },
    },
    {
      id: 's8',
      name: stationNames.park,
      at: at('park'),
      side: 'right',
      lead: { race: 'm', pass: 0 },
      races: both,
      passes: 'lead',
      serves: ['sportsDrink', 'water'],
      tables: { sportsDrink: 4, water: 5 },
      boxes: 14,
      width: '9 m',
      points: [drop('park', 'Quillet Ring')],
      people: { captain: 'Captain, Quillet Park', radio: 'Park' },
      note: 'The full runs by twice, the half once.',
    },
    {
      id: 's9',
      name: stationNames.packet,
      at: at('packet'),
      side: 'left',
      lead: { race: 'm', pass: 0 },
      races: both,
      passes: 'lead',
      serves: ['sportsDrink', 'water'],
      boxes: 8,
      width: '8 m',
      fixed: true,
      why: 'the only level stretch of the pier',
      points: [drop('packet', 'Packet Quay'), { kind: 'other', at: beside('packet', -20, 9), name: 'Life-ring' }],
      people: { captain: 'Captain, Packet Pier', radio: 'Packet' },
      note: 'Runners come out and back past the same tables; only the way out is served.',
    },
  ];
}

const field = {
  courses: [
    { id: 'full', name: 'Full marathon', gpx: 'full.gpx', gaps: 'refuse', drawn: 'centre', length: '42.195 km' },
    { id: 'half', name: 'Half marathon', gpx: 'half.gpx', gaps: 'refuse', drawn: 'centre', length: '21.0975 km' },
  ],
  races: [
    {
      id: 'm',
      name: 'Full marathon',
      course: 'full',
      division: 'run',
      waves: [
        { time: '08:00', entrants: 700 },
        { time: '08:10', entrants: 500 },
      ],
      finish: { median: '4:20:00', spread: 0.2 },
      slow: [0.06, 0.4],
      show: 0.9,
      startWidth: '8 m',
      cutoff: '15:00',
      late: 'out',
    },
    {
      id: 'h',
      name: 'Half marathon',
      course: 'half',
      division: 'run',
      waves: [
        { time: '07:00', entrants: 900 },
        { time: '07:10', entrants: 900 },
      ],
      finish: {
        quantiles: [
          [0, '1:08:00'],
          [0.1, '1:35:00'],
          [0.5, '2:04:00'],
          [0.9, '2:38:00'],
          [1, '3:25:00'],
        ],
      },
      show: 0.9,
      startFlow: 640,
      cutoff: '11:00',
      late: 'out',
    },
  ],
};

const day = {
  practice: {
    signAhead: '90 m',
    signTolerance: '9 m',
    gelAhead: '8 m',
    tableGap: '3 m',
    tableLength: '1.8 m',
    trashFrom: '45 m',
    trashTo: '90 m',
    boxEvery: '20 m',
    maxSpacing: '5 km',
    minSpacing: '1.6 km',
  },
  supplies: {
    heat: 'warm',
    gelOrder: 0.8,
    flavours: { sportsDrink: ['Tide Lime'], gel: ['Kelp Berry', 'Dune Honey'] },
    waste: 0.15,
    cup: '7 fl oz',
    fill: 0.5,
    cupsPerLayer: 200,
    layers: 3,
    packs: { cups: 100, waterJug: '1 gal', sportsDrinkJug: '1 gal', gels: 24, gloves: 100, bags: 50 },
    resupply: { at: 0.25, takes: '40 min' },
  },
  crew: { pourRate: 15, ready: '30 min', setUp: '60 min', minimum: 6, longest: '7 h' },
  vehicles: [
    { id: 'v1', name: 'Truck one, town and west', kg: 5000, places: 12, kmh: 25, stop: '15 min', from: '03:30' },
    { id: 'v2', name: 'Truck two, north and east', kg: 5000, places: 12, kmh: 25, stop: '15 min', from: '03:30' },
  ],
  clock: [
    { course: 'full', measure: '0 km', accessOpens: '03:00', closes: '06:30', sweep: '08:20', reopens: '09:30' },
    { course: 'full', measure: '11.79 km', accessOpens: '03:00', closes: '07:00', sweep: '10:20', reopens: '11:15' },
    { course: 'full', measure: '28 km', accessOpens: '03:30', closes: '08:00', sweep: '13:00', reopens: '13:45' },
    { course: 'full', measure: '32 km', accessOpens: '03:30', closes: '08:05', sweep: '13:30', reopens: '14:12' },
    { course: 'full', measure: '35.3 km', accessOpens: '03:00', closes: '06:30', sweep: '13:55', reopens: '14:30' },
    { course: 'full', measure: '42.195 km', accessOpens: '03:00', closes: '06:30', sweep: '15:00', reopens: '16:00' },
  ],
  contacts: {
    emergency: 'the local emergency number',
    raceControl: 'race control, harbour office',
    radioChannel: 'channel 3',
  },
};

/** The plan as an object in the order of its keys; `line` is the full course, `town` the town's own grid. */
export function makePlan({ line, town }) {
  const beside = besideOf(line);
  const gate = [
    [0.13, 0.355],
    [0.2, 0.355],
    [0.2, 0.41],
    [0.13, 0.41],
    [0.13, 0.355],
  ].map(([u, v]) => toLonLat(town(u, v)));
  const driveway = [
    [-96, -3],
    [-86, -3],
    [-86, -14],
    [-96, -14],
    [-96, -3],
  ].map(([along, offset]) => beside('stennick', along, offset));
  return {
    format: 'halfcup-plan',
    version: 1,
    name: `${island} Island Marathon and Half`,
    revision: '3',
    date: '2027-09-12',
    timeZone: 'Etc/GMT+1',
    units: 'metric',
    language: 'en',
    ...field,
    stations: stationsOf(line),
    zones: [
      { name: 'Fire station gate', rule: 'keep-clear', polygon: gate },
      { name: 'Farm driveway, Stennick', rule: 'keep-clear', polygon: driveway },
    ],
    ...day,
    variants: [
      {
        name: 'Lighthouse table moved',
        stations: {
          s6: {
            on: { course: 'full', measure: '25.28 km', side: 'right', offset: '2.6 m' },
            points: [keeperDrop(beside('keeper', -584, -8))],
            note: 'Nearer the lighthouse: a wider stretch of path, and carried from the keeper’s yard.',
          },
        },
      },
      { name: 'Green station nearer the park', stations: { s7: { at: beside('tide', 250, 5.5) } } },
    ],
    context: 'context.geojson',
    ground: 'ground.geojson',
  };
}

/** The stations' pins, [lon, lat], with their names. */
export const pins = (line) =>
  Object.keys(places).map((name) => ({ name: stationNames[name], at: pointAt(line, ...places[name]) }));
