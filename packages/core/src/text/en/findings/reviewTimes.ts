/** What the checks of times and closures say. */
import type { ClockFault, ClockTime, LateCrew, RoadAt, TimeParams } from '../../params/reviewTimes.ts';
import type { Say } from '../../say.ts';
import type { TextsOf } from '../../sentence.ts';
import { wordOf } from '../../some.ts';
import { minutesText } from '../../spans.ts';

/** "at Strand Road (11.20 km)", "at 12.00 km of Full". */
const atPlace = ({ course, measure, station }: RoadAt, say: Say): string =>
  station === null
    ? `at ${say.far(measure)} of ${say.course(course)}`
    : `at ${say.station(station)} (${say.far(measure)})`;

const places = (count: number, say: Say): string =>
  count === 0 ? '' : `, here and at ${count === 1 ? 'one more place' : `${say.count(count)} more places`}`;

const WHEN = { closes: 'when the road closes', reopens: 'when it reopens' } as const;

const HAPPENS: { readonly [key in ClockTime]: string } = {
  accessOpens: 'access opens',
  closes: 'the road closes',
  sweep: 'the sweep comes by',
  reopens: 'the road reopens',
};

function faultText(fault: ClockFault, course: string, say: Say): string {
  if (fault.is === 'falls') {
    const { key, from, to } = fault;
    return `On ${say.course(course)} ${wordOf(HAPPENS, key)} at ${say.clock(to.time)} at ${say.far(to.measure)}, before ${say.clock(from.time)} at ${say.far(from.measure)}.`;
  }
  if (fault.is === 'cutoff')
    return `The cutoff of ${say.race(fault.race)} is ${say.clock(fault.cutoff)}, but at the finish ${wordOf(HAPPENS, fault.key)} at ${say.clock(fault.time)}.`;
  const { measure, before, after } = fault;
  return `At ${say.far(measure)} of ${say.course(course)} ${wordOf(HAPPENS, after.key)} at ${say.clock(after.time)}, before ${wordOf(HAPPENS, before.key)} at ${say.clock(before.time)}.`;
}

function lateText({ station, crewAt, before, race }: LateCrew, say: Say): string {
  const due = `The crew of ${say.station(station)} is due at ${say.clock(crewAt)}`;
  return before.is === 'closes'
    ? `${due}, after the road closes there at ${say.clock(before.time)}.`
    : `${due}, after the first of ${say.race(race!)} at ${say.clock(before.time)}.`;
}

export const times: TextsOf<TimeParams> = {
  'closes-late': ({ places: all }, say) => {
    const [{ closes, race, first, ...place }] = all as readonly [(typeof all)[0]];
    return [
      `The road ${atPlace(place, say)} closes at ${say.clock(closes)}, ${minutesText(closes - first)} after the first of ${say.race(race)} at ${say.clock(first)}.`,
      `It should be closed to traffic before the first runner or wheel${places(all.length - 1, say)}.`,
      'Close it earlier or start later, as the road authority and the police decide.',
    ];
  },
  'reopens-early': ({ places: all }, say) => {
    const [{ reopens, race, last, clear, ...place }] = all as readonly [(typeof all)[0]];
    const wait = clear === 0 ? '' : ` and the crew has had ${say.duration(clear)} to clear`;
    return [
      `The road ${atPlace(place, say)} reopens at ${say.clock(reopens)}; the last of ${say.race(race)}, or its sweep, is through at ${say.clock(last)}.`,
      `It should stay closed until all are through${wait}${places(all.length - 1, say)}.`,
      'Reopen it later, or ask for an earlier cutoff.',
    ];
  },
  'clock-order': ({ course, faults }, say) => [
    faultText(faults[0]!, course, say),
    faults[0]!.is === 'cutoff'
      ? faults[0]!.key === 'reopens'
        ? 'The road should stay closed until the cutoff, and somewhat longer.'
        : 'Whoever may still finish should not be swept up before the cutoff.'
      : `A place should open, close, be swept and reopen in this order, each later along the course${
          faults.length === 1
            ? ''
            : `, and does not in ${faults.length === 2 ? 'one more case' : `${say.count(faults.length - 1)} more cases`}`
        }.`,
    faults[0]!.is === 'cutoff'
      ? 'Correct the cutoff or the road times.'
      : 'Correct the road times; checks of closures wait for that.',
  ],
  'clock-beyond': ({ course, measure, start, length, count }, say) => {
    const past = measure > length;
    const { measured, limit } = say.compareFar(measure, past ? length : start);
    return [
      `Road times are given at ${measured} of ${say.course(course)}, which ${past ? 'is' : 'begins at'} ${limit}${past ? ' long' : ''}.`,
      `They should be on the course${count === 1 ? '' : `, and ${count === 2 ? 'one more entry is' : `${say.count(count - 1)} more entries are`} not`}.`,
      'Correct the distance, or the course.',
    ];
  },
  'clock-short': ({ course, end, keys, measure, left }, say) => [
    `Road times of ${say.course(course)} ${end === 'finish' ? 'end' : 'begin only'} at ${say.far(measure)}: ${say.all(keys.map((key) => WHEN[key]))} is unknown for the ${end === 'finish' ? 'last' : 'first'} ${say.far(left)}.`,
    'Closures there are not checked, and runs are planned as at the nearest time given.',
    `Add the times at the ${end}.`,
  ],
  'crew-late': ({ stations }, say) => [
    lateText(stations[0]!, say),
    `It should be there before both${
      stations.length === 1
        ? ''
        : `, and so should the crew of ${stations.length === 2 ? 'one more station' : `${say.count(stations.length - 1)} more stations`}`
    }.`,
    'Give the crew a longer set-up, or agree with the police how it gets through.',
  ],
  'cutoff-stops-many': ({ race, stopped, starters, most }, say) => [
    `About ${say.count(stopped)} of ${say.count(starters)} in ${say.race(race)} would be stopped by the sweep.`,
    `It should be at most ${say.percent(most)} of them.`,
    'Allow a later cutoff, start earlier, or plan transport for them and waive this.',
  ],
  'slow-wave-first': ({ slow, fast, apart }, say) => [
    `The ${say.clock(fast.wave)} wave of ${say.race(fast.race)} is ${say.percent(Math.round((fast.speed / slow.speed - 1) * 100) / 100)} faster than the ${say.clock(slow.wave)} wave of ${say.race(slow.race)}, ${minutesText(apart)} before it on the same road.`,
    'The faster should start first, or much later.',
    'Swap the waves, or set them farther apart.',
  ],
  'speed-impossible': (params, say) => [
    params.is === 'fast'
      ? `The fastest of ${say.race(params.race)} ${params.typed === true ? 'is given' : 'would take'} ${say.duration(params.time)} for ${say.far(params.length)}; the world’s best is about ${say.duration(params.best)}.`
      : `The slowest of ${say.race(params.race)} ${params.typed === true ? 'is given' : 'would take'} ${say.duration(params.time)} for ${say.far(params.length)}; a slow walk takes ${say.duration(params.most)}.`,
    null,
    'Check the finish times, the division and the length of the course.',
  ],
  'crowded-road': ({ runners, most, over, width, at, races }, say) => [
    `At ${say.clock(at)} about ${say.count(runners)} of ${say.all(races.map((race) => say.race(race)))} would be on ${say.length(over)} of road, ${say.length(width)} wide, at the tables.`,
    `With more than ${say.count(most)} there, people cannot choose their pace.`,
    'Spread the start over more waves, or use a wider road.',
  ],
};
