/** A small plan that says every kind of thing, for edits of its numbers: an invented promenade on the demo's island. */
import { OCEAN, type Position, go } from './courses.ts';

const out = Array.from({ length: 26 }, (_, k) => go(OCEAN, 90, k * 100));
const line = [...out, ...out.slice(0, -1).reverse()].map((at, k): readonly number[] => [
  ...at,
  5 + Math.sin(k / 4) * 8,
]);
const at = (along: number, right: number): Position => go(go(OCEAN, 90, along), 180, right);

/** What the plan's files hold, by name. */
export const GPX = `<gpx version="1.1" creator="t"><trk><name>Point</name><trkseg>${out
  .map(([lon, lat], k) => `<trkpt lat="${lat + 0.01}" lon="${lon}"><ele>${k % 7}</ele></trkpt>`)
  .join('')}</trkseg></trk></gpx>`;
export const RESULTS = `bib,net\n${Array.from({ length: 40 }, (_, k) => `${k},0:${String(20 + (k % 30)).padStart(2, '0')}:10`).join('\n')}\n`;

const square = [at(1390, 2), at(1400, 2), at(1400, 12), at(1390, 12)];

export const RANGES_PLAN = {
  format: 'halfcup-plan',
  version: 1,
  name: 'Ember Promenade',
  revision: '1',
  date: '2027-09-12',
  timeZone: 'Etc/UTC',
  units: 'metric',
  courses: [
    { id: 'c', name: 'Promenade', line, length: '5 km', marks: [{ at: out[10], measure: '1 km' }], drawn: 'centre' },
    {
      id: 'p',
      parts: [
        { of: 'c', from: '0 km', to: '2 km' },
        { of: 'c', from: 2000 },
      ],
    },
    { id: 'g', gpx: 'point.gpx', track: 0 },
  ],
  races: [
    {
      id: 'm',
      name: 'Promenade Run',
      course: 'c',
      waves: [
        { time: '08:00', entrants: 120 },
        { time: '08:20', entrants: 60, finish: { times: ['0:31:10', 2400] } },
      ],
      finish: { median: '0:30:00', spread: 0.2 },
      slow: [0.06, 0.4],
      show: 0.9,
      startFlow: 1100,
      cutoff: '09:40',
    },
    {
      id: 'w',
      course: 'p',
      division: 'walk',
      waves: [{ time: '08:30', entrants: 50 }],
      finish: {
        quantiles: [
          [0, '0:45:00'],
          [0.5, '0:55:00'],
          [1, '1:20:00'],
        ],
      },
      startWidth: '8 m',
      late: 'served',
      gradient: true,
    },
    {
      id: 'h',
      course: 'g',
      division: 'wheels',
      waves: [{ time: '07:50', entrants: 8 }],
      finish: { csv: 'results.csv', column: 'net' },
    },
  ],
  stations: [
    {
      id: 's1',
      name: 'Fern Landing',
      at: at(1000, 5),
      side: 'right',
      lead: { race: 'm', pass: 0 },
      races: ['m', 'w'],
      passes: [
        { race: 'm', pass: 0 },
        { race: 'm', pass: 1 },
      ],
      serves: ['gel', 'sportsDrink', 'water'],
      tables: { gel: 1, sportsDrink: 1, water: 2 },
      boxes: 6,
      width: '7 m',
      practice: { signAhead: '120 m' },
      supplies: { packs: { gels: 12 } },
      crew: { pourers: 3 },
      items: { sign: { at: at(880, 5) } },
      points: [
        { kind: 'drop', at: at(1020, 6), name: 'Gate', street: 'Quay Road' },
        { kind: 'medical', at: at(1090, 6) },
      ],
      people: { captain: 'Bo Marsh' },
      used: { water: 180, sportsDrink: 70, gel: 30 },
    },
    { id: 's2', on: { course: 'c', measure: '1.7 km', side: 'left', offset: '5 m' }, passes: 'all', races: ['m'] },
    { id: 's3', on: { course: 'g', measure: '1.2 km', side: 'right' }, width: 8 },
  ],
  zones: [{ name: 'Farm drive', rule: 'keep-clear', polygon: square }],
  practice: { signAhead: '90 m', tableLength: '1.8 m' },
  supplies: {
    wbgtC: 21,
    heatSteps: [18, 23],
    resupply: { at: 0.25, takes: '40 min' },
    weights: { waterJug: '3.9 kg' },
  },
  crew: { ready: '30 min' },
  vehicles: [{ id: 'v1', name: 'Cart', kg: 900, kmh: 25, stop: '15 min', from: '04:00', unload: 30 }],
  clock: [
    { course: 'c', measure: 0, accessOpens: '04:00', closes: '06:30', sweep: '08:40', reopens: '10:30' },
    { course: 'c', measure: '5 km', closes: '06:30', sweep: '09:50', reopens: '11:00' },
  ],
  waivers: [{ code: 'no-contacts', by: 'Ada Quill', reason: 'island', seen: { count: 1 } }],
  variants: [{ name: 'north', stations: { s1: { at: at(1100, 5), practice: { signAhead: '110 m' } } } }],
  weather: [{ at: '08:00', airC: 21, humidity: 0.6, windKmh: 12 }],
  people: { crew: [{ name: 'Ada Quill', station: 's1', from: '06:30', until: '10:30' }] },
  prices: { currency: 'EUR', items: [{ kind: 'cups', price: 12.5, sold: 2, leadDays: 10 }] },
  numbers: { s1: 1, s2: 2 },
} as const;
