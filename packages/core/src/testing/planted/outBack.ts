/** Out along a boulevard and back on it, each station on the kerb of the flow that it serves. Not part of the package. */
import { type GoodPlan, type Lines, type StopOf, planned, rolling, trucks, yard } from './build.ts';
import { andBack, draw, lengthOf, stop, sway } from './street.ts';

const street = andBack(
  draw([0, 0], 20, [
    ['on', 900],
    ...sway(120, 20, 300),
    ['on', 300],
    ...stop('b1'),
    ['on', 600],
    ['stop', 'b4'],
    ['on', 300],
    ['right', 40, 200],
    ['on', 900],
    ...stop('b2'),
    ['on', 600],
    ...stop('b3'),
    ['on', 500],
    ['left', 50, 180],
    ['on', 700],
  ]),
);
/** The measure on the way back of a stop that is drawn on the way out. */
const back = (id: string): number => lengthOf(street) - street.stops[id]!;

const shared = { course: 'mall', side: 'right', width: 12 } as const;
const only = (pass: number): StopOf['more'] => ({ boxes: 7, races: ['t'], passes: [{ race: 't', pass }] });

const stops: readonly StopOf[] = [
  {
    ...shared,
    id: 'b1',
    name: 'Bandstand',
    street: 'The Mall',
    by: 'at',
    radio: 'Band',
    line: 31,
    more: only(0),
  },
  {
    ...shared,
    id: 'b2',
    name: 'Palm House',
    street: 'The Mall',
    by: 'on',
    medical: true,
    radio: 'Palm',
    line: 32,
    more: { ...only(0), serves: ['gel', 'sportsDrink', 'water'] },
  },
  {
    ...shared,
    id: 'b3',
    name: 'Observatory',
    street: 'Upper Mall',
    measure: back('b3'),
    by: 'at',
    medical: true,
    radio: 'Dome',
    line: 33,
    more: { ...only(1), used: { water: 600, sportsDrink: 290 } },
  },
  {
    ...shared,
    id: 'b4',
    name: 'Chandlery',
    street: 'Lower Mall',
    measure: back('b4'),
    by: 'on',
    radio: 'Chandler',
    line: 34,
    more: only(1),
  },
];

/** The plan on lines drawn or recorded. */
export const outBack = (lines: Lines): GoodPlan =>
  planned(
    {
      name: 'Mall Twelve',
      courses: [{ id: 'mall', name: 'Mall', street, height: rolling, inFile: false, seed: 33 }],
      races: [
        {
          id: 't',
          name: 'Mall Run',
          course: 'mall',
          waves: [
            { time: '09:00', entrants: 280 },
            { time: '09:08', entrants: 280 },
          ],
          finish: { median: '1:10:00', spread: 0.18 },
          show: 0.9,
          startWidth: '8 m',
          cutoff: '11:30',
        },
      ],
      stops,
      zones: (ground) => [
        {
          name: 'Clinic drive',
          rule: 'keep-clear',
          polygon: yard(ground, 'mall', ground.stop('mall', 'b2') - 200, -8),
        },
      ],
      vehicles: trucks(2, '05:00', 4),
      closures: [{ course: 'mall', opens: '04:30', closes: '08:05', sweep: ['09:14', '11:30'], after: 75 }],
    },
    lines,
  );
