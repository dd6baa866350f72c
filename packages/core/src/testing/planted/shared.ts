/** Two races that share roads at both ends; the short one cuts across by a link road. Not part of the package. */
import { type GoodPlan, type Lines, type StopOf, planned, rolling, trucks, yard } from './build.ts';
import { type Move, draw, lengthOf, stop, sway, swing } from './street.ts';

/** From the start to before the fork, and from after the join to the finish: the same for both. */
const out: readonly Move[] = [
  ['on', 1000],
  ...sway(),
  ['on', 1000],
  ...stop('d1'),
  ['on', 400],
  ...swing(100),
  ['east', 5300],
  ['stop', 'fork'],
];
const home: readonly Move[] = [
  ['east', 5300],
  ['stop', 'join'],
  ['east', 5000],
  ['on', 500],
  ...stop('d4'),
  ['on', 900],
  ...sway(100),
  ['on', 500],
  ...stop('d5'),
  ['on', 600],
  ['right', 30, 150],
  ['on', 700],
];
const long = draw([0, 0], 90, [
  ...out,
  ['on', 800],
  ...stop('d2'),
  ['on', 600],
  ...sway(200),
  ['east', 9000],
  ['right', 90, 60],
  ['north', -1140],
  ['right', 90, 60],
  ['on', 700],
  ...stop('d3'),
  ['on', 300],
  ...swing(150),
  ...home,
]);
const short = draw([0, 0], 90, [...out, ['right', 90, 20], ['north', -1180], ['right', 90, 20], ...home]);

const stopOf = (
  id: string,
  name: string,
  side: StopOf['side'],
  by: StopOf['by'],
  races: string[],
  more: StopOf['more'] = {},
  medical = false,
): StopOf => ({
  id,
  name,
  street: `${name} Lane`,
  course: 'long',
  side,
  width: 9,
  by,
  medical,
  radio: name,
  line: 40 + Number(id.slice(1)),
  more: { boxes: 10, races, ...more },
});

/** Where runners come late, crews come before the road is closed all the same. */
const EARLY = { ready: '60 min' } as const;

const stops: readonly StopOf[] = [
  stopOf('d1', 'Dovecote', 'right', 'at', ['l', 'k'], { used: { water: 1200, sportsDrink: 580 } }),
  stopOf('d2', 'Limekiln', 'left', 'on', ['l'], {}, true),
  stopOf('d3', 'Tollgate', 'right', 'at', ['l'], { serves: ['gel', 'sportsDrink', 'water'], crew: EARLY }),
  stopOf('d4', 'Mill Race', 'left', 'at', ['l', 'k'], { crew: EARLY }, true),
  stopOf('d5', 'Almshouse', 'left', 'on', ['l', 'k'], { crew: EARLY }),
];

/** The plan on lines drawn or recorded. */
export const shared = (lines: Lines): GoodPlan =>
  planned(
    {
      name: 'Dovecote Two',
      courses: [
        { id: 'long', name: 'Long', street: long, height: rolling, inFile: false, seed: 44 },
        {
          id: 'short',
          name: 'Short',
          street: short,
          height: rolling,
          inFile: false,
          seed: 45,
          cutFrom: { of: 'long', first: 5000, last: lengthOf(short) - short.stops['d4']! + 500 },
        },
      ],
      races: [
        {
          id: 'l',
          name: 'Long Dovecote',
          course: 'long',
          waves: [{ time: '08:00', entrants: 420 }],
          finish: { median: '1:58:00', spread: 0.17 },
          show: 0.9,
          startWidth: '8 m',
          cutoff: '12:00',
        },
        {
          id: 'k',
          name: 'Short Dovecote',
          course: 'short',
          waves: [{ time: '08:45', entrants: 500 }],
          finish: { median: '1:14:00', spread: 0.18 },
          show: 0.9,
          startWidth: '8 m',
          cutoff: '11:45',
        },
      ],
      stops,
      zones: (ground) => [
        {
          name: 'Surgery car park',
          rule: 'keep-clear',
          polygon: yard(ground, 'long', ground.stop('long', 'd4') + 165, 6),
        },
        {
          name: 'Dovecote green',
          rule: 'keep-clear',
          polygon: yard(ground, 'short', ground.stop('short', 'd1') - 190, -7),
        },
      ],
      vehicles: trucks(2, '03:30', 5),
      closures: [
        { course: 'long', opens: '03:00', closes: '07:20', sweep: ['08:55', '12:00'], after: 80 },
        { course: 'short', opens: '03:00', closes: '07:20', sweep: ['08:55', '11:45'], after: 95 },
      ],
    },
    lines,
  );
