/** Three laps of a lake: every station is met three times. Not part of the package. */
import { type GoodPlan, type Lines, type StopOf, planned, rolling, trucks, yard } from './build.ts';
import { type Move, draw, stop, sway, swing } from './street.ts';

const LAPS = 3;
/** From the start at the north shore round to it again, headed east as before. */
const lap: readonly Move[] = [
  ['on', 700],
  ...swing(100, 20),
  ['on', 200],
  ...stop('c1'),
  ['east', 2180],
  ['right', 90, 30],
  ['on', 450],
  ['right', 15, 300],
  ['left', 15, 300],
  ['north', -1170],
  ['right', 90, 30],
  ['on', 200],
  ...stop('c2'),
  ['on', 200],
  ...sway(80, 20),
  ['east', 30],
  ['right', 90, 30],
  ['on', 100],
  ...stop('c3'),
  ['north', -30],
  ['right', 90, 30],
];
const street = draw(
  [30, 0],
  90,
  Array.from({ length: LAPS }, (_, k) => lap.filter((move) => k === 0 || move[0] !== 'stop')).flat(),
);

const shared = { course: 'lake', width: 9 } as const;
const stops: readonly StopOf[] = [
  {
    ...shared,
    id: 'c1',
    name: 'Boathouse',
    street: 'North Shore',
    side: 'left',
    by: 'at',
    medical: true,
    radio: 'Boat',
    line: 51,
    more: { boxes: 12 },
  },
  {
    ...shared,
    id: 'c2',
    name: 'Sluice',
    street: 'South Shore',
    side: 'left',
    by: 'at',
    radio: 'Sluice',
    line: 52,
    more: { boxes: 12, serves: ['gel', 'sportsDrink', 'water'] },
  },
  {
    ...shared,
    id: 'c3',
    name: 'Reed Beds',
    street: 'West Shore',
    side: 'right',
    by: 'at',
    medical: true,
    radio: 'Reed',
    line: 53,
    more: { boxes: 12, used: { water: 1080, sportsDrink: 525 } },
  },
];

/** The plan on lines drawn or recorded. */
export const laps = (lines: Lines): GoodPlan =>
  planned(
    {
      name: 'Three Laps of the Lake',
      courses: [{ id: 'lake', name: 'Lake', street, height: rolling, inFile: false, seed: 55 }],
      races: [
        {
          id: 'g',
          name: 'Lake Run',
          course: 'lake',
          waves: [
            { time: '08:00', entrants: 180 },
            { time: '08:06', entrants: 180 },
          ],
          finish: { median: '1:52:00', spread: 0.16 },
          show: 0.9,
          startWidth: '8 m',
          cutoff: '11:40',
        },
      ],
      stops,
      zones: (ground) => [
        {
          name: 'Pump house door',
          rule: 'keep-clear',
          polygon: yard(ground, 'lake', ground.stop('lake', 'c2') - 200, 6),
        },
      ],
      vehicles: trucks(1, '04:30', 4),
      closures: [{ course: 'lake', opens: '04:00', closes: '07:10', sweep: ['08:12', '11:40'], after: 75 }],
    },
    lines,
  );
