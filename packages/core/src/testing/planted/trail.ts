/** A trail over two hills with three stations, on level ground at forest yards. Not part of the package. */
import { type GoodPlan, type Lines, type StopOf, planned, trucks, yard } from './build.ts';
import { draw, stop, sway, swing } from './street.ts';

const street = draw([0, 0], 340, [
  ['on', 600],
  ['right', 50, 60],
  ['on', 350],
  ['left', 70, 45],
  ['on', 500],
  ['right', 40, 80],
  ['on', 400],
  ['left', 30, 70],
  ['on', 300],
  ...sway(60, 40, 90),
  ['on', 500],
  ...stop('t1'),
  ['on', 300],
  ['right', 60, 50],
  ['on', 400],
  ['left', 80, 40],
  ['on', 350],
  ['right', 70, 55],
  ['on', 450],
  ...swing(50, 45, 70),
  ['on', 700],
  ...stop('t2'),
  ['on', 400],
  ['right', 80, 60],
  ['on', 500],
  ['left', 50, 50],
  ['on', 600],
  ...sway(70, 35, 80),
  ['on', 300],
  ['right', 45, 60],
  ['on', 600],
  ...stop('t3'),
  ['on', 300],
  ['right', 60, 50],
  ['on', 600],
  ['left', 40, 60],
  ['on', 900],
]);

const { t1, t2, t3 } = street.stops as Readonly<Record<'t1' | 't2' | 't3', number>>;
/** Level for 600 m before each station and 250 m past it; steep before the second and the third. */
const PROFILE: readonly (readonly [measure: number, height: number])[] = [
  [0, 40],
  [700, 60],
  [t1 - 1100, 150],
  [t1 - 600, 145],
  [t1 + 250, 145],
  [t1 + 900, 190],
  [t2 - 1100, 190],
  [t2 - 600, 130],
  [t2 + 250, 130],
  [t2 + 900, 95],
  [t2 + 1700, 135],
  [t3 - 1000, 135],
  [t3 - 600, 105],
  [t3 + 250, 105],
  [t3 + 1000, 70],
  [Infinity, 70],
];

function height(measure: number): number {
  const next = PROFILE.findIndex(([at], k) => k > 0 && at >= measure);
  const [a, b] = [PROFILE[next - 1]!, PROFILE[next]!];
  return b[0] === Infinity ? b[1] : a[1] + ((b[1] - a[1]) * (measure - a[0])) / (b[0] - a[0]);
}

const shared = { course: 'ridge', width: 8 } as const;
const stops: readonly StopOf[] = [
  {
    ...shared,
    id: 't1',
    name: 'Charcoal Yard',
    street: 'Ridge track',
    side: 'left',
    by: 'at',
    medical: true,
    radio: 'Charcoal',
    line: 61,
    more: { boxes: 4 },
  },
  {
    ...shared,
    id: 't2',
    name: 'Shepherd’s Fold',
    street: 'Fold track',
    side: 'right',
    by: 'on',
    radio: 'Fold',
    line: 62,
    more: { boxes: 4, serves: ['gel', 'sportsDrink', 'water'] },
  },
  {
    ...shared,
    id: 't3',
    name: 'Sawpit',
    street: 'Sawpit track',
    side: 'right',
    by: 'at',
    medical: true,
    radio: 'Saw',
    line: 63,
    more: { boxes: 4, used: { water: 230, sportsDrink: 112 } },
  },
];

/** The plan on lines drawn or recorded. */
export const trail = (lines: Lines): GoodPlan =>
  planned(
    {
      name: 'Ridge Trail',
      courses: [{ id: 'ridge', name: 'Ridge', street, height, inFile: true, seed: 66 }],
      races: [
        {
          id: 'x',
          name: 'Ridge Run',
          course: 'ridge',
          waves: [
            { time: '08:00', entrants: 110 },
            { time: '08:10', entrants: 110 },
          ],
          finish: { median: '1:40:00', spread: 0.2 },
          show: 0.9,
          startWidth: '5 m',
          cutoff: '11:45',
          gradient: true,
        },
      ],
      stops,
      zones: (ground) => [
        {
          name: 'Spring',
          rule: 'keep-clear',
          polygon: yard(ground, 'ridge', ground.stop('ridge', 't2') - 210, 5),
        },
      ],
      vehicles: trucks(1, '04:30', 4),
      closures: [
        { course: 'ridge', opens: '04:00', closes: '07:10', sweep: ['08:15', '11:45'], after: 75, rolls: 500 },
      ],
    },
    lines,
  );
