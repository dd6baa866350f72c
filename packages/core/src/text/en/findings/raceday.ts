import { byProblem } from '../../byProblem.ts';
import type { RacedayParams } from '../../params/raceday.ts';
import type { Say } from '../../say.ts';
import type { TextsOf } from '../../sentence.ts';
import { some, wordOf } from '../../some.ts';
import { crew } from './racedayCrew.ts';
import { minutesText } from '../../spans.ts';
import { supplyText } from '../../supplyWords.ts';
import { supplyWords } from '../supplyWords.ts';
import { results } from './racedayResults.ts';
import { weather } from './racedayWeather.ts';

const VEHICLE = 'Start the vehicle earlier, open access earlier, or add a vehicle.';

const VEHICLES = 'Start the vehicles earlier, open access earlier, or add a vehicle.';

/** So many stations are told by name. */
const places = (ids: readonly string[], say: Say): string =>
  some(ids.map(say.station), say, (count) => `${say.count(count)} more stations`, 3);

const speedText = (kmh: number, say: Say): string =>
  say.units === 'metric' ? `${say.count(kmh)} km/h` : `${say.count(kmh / 1.609344)} mph`;

const more = (count: number, how: string, say: Say): string =>
  count === 1 ? '' : `, and ${count === 2 ? 'one more vehicle' : `${say.count(count - 1)} more vehicles`} ${how}`;

const TIMES = {
  accessOpens: 'when access opens',
  closes: 'when the road closes',
  reopens: 'when the road reopens',
} as const;

const HEAT = { cool: 'cool', warm: 'warm', hot: 'hot' } as const;

const fields: Pick<
  TextsOf<RacedayParams>,
  | 'race-without-waves'
  | 'race-without-starters'
  | 'race-too-large'
  | 'race-without-times'
  | 'race-endless'
  | 'waves-overlap'
  | 'gradient-unknown'
  | 'gradient-too-steep'
  | 'cutoff-early'
  | 'sweep-impossible'
> = {
  'race-without-waves': () => [
    'The race has no waves, so arrivals cannot be worked out.',
    null,
    'Add its waves, each with a start time and a number of entrants.',
  ],
  'race-without-starters': ({ show }, say) => [
    `Nobody starts: the waves have no entrants, or too few for the ${say.percent(show)} who start.`,
    null,
    'Give the number of entrants of each wave.',
  ],
  'race-too-large': ({ starters, most }, say) => [
    `The race has ${say.count(starters)} starters.`,
    `There should be at most ${say.count(most)}.`,
    'Correct the number of entrants of its waves.',
  ],
  'race-without-times': ({ wave }) => [
    `Wave no. ${wave} has no finish times, so arrivals cannot be worked out.`,
    null,
    'Give a median with a spread, shares with times, a list of times, or a CSV file with a column.',
  ],
  'race-endless': ({ after, most }, say) => [
    after === null
      ? 'The last runner would never finish.'
      : `The last runner would finish ${say.duration(after)} after the first start.`,
    `It should be at most ${say.duration(most)} (a week).`,
    'Correct the finish times (a usual spread is 0.2), the flow over the start line or the start times.',
  ],
  'waves-overlap': ({ wave, until, next, flow }, say) => [
    `The ${say.clock(wave)} wave crosses the line until ${say.clock(until)}, at ${say.count(flow)} a minute, but the next starts at ${say.clock(next)}.`,
    'Both are assumed to cross at once.',
    'Start the next wave later, or correct the flow over the start line.',
  ],
  'gradient-unknown': ({ course }, say) => [
    `Pace by gradient is asked for, but ${say.course(course)} has no elevations.`,
    'Pace is worked out as if the road were level.',
    'Use a GPX file with elevations, or turn pace by gradient off.',
  ],
  'gradient-too-steep': ({ course, grade, most }, say) => {
    const { measured, limit } = say.comparePercent(Math.abs(grade), most);
    return [
      `${say.course(course)} has a grade of ${measured}, steeper than the ${limit} up to which pace by gradient is known.`,
      'Pace is worked out as if the road were level.',
      'Correct the elevations, or turn pace by gradient off.',
    ];
  },
  'cutoff-early': ({ cutoff, start }, say) => [
    `The cutoff at ${say.clock(cutoff)} is not after the last start: the last cross the line at ${say.clock(start)}.`,
    'Until it is corrected, nobody is assumed to be swept up.',
    'Correct the cutoff or the start times.',
  ],
  'sweep-impossible': byProblem({
    early: ({ leaves, wave }, say) => [
      `The sweep leaves at ${say.clock(leaves)}, before the last wave at ${say.clock(wave)}.`,
      'It is left out, and nobody is assumed to be swept up.',
      'Correct the cutoff of the race or the times of the sweep.',
    ],
    backwards: ({ from, to, course }, say) => [
      to.is === 'cutoff'
        ? `The sweep is at ${say.far(from.measure)} of ${say.course(course)} at ${say.clock(from.time)}, but the cutoff at the finish (${say.far(to.measure)}) is ${say.clock(to.time)}.`
        : from.is === 'start'
          ? `The sweep is at ${say.far(to.measure)} of ${say.course(course)} at ${say.clock(to.time)}, but the last leave the start at ${say.clock(from.time)}.`
          : `On ${say.course(course)} the sweep is at ${say.far(from.measure)} at ${say.clock(from.time)} and at ${say.far(to.measure)} at ${say.clock(to.time)}.`,
      'Its times should rise along the course; until then it is left out, and nobody is assumed to be swept up.',
      'Correct the cutoff of the race or the times of the sweep.',
    ],
  }),
};

const stations: Pick<
  TextsOf<RacedayParams>,
  'heat-steps' | 'heat-assumed' | 'gels-short' | 'pre-pour-room' | 'cups-run-out' | 'station-no-arrivals'
> = {
  'heat-steps': ({ steps: [first, second] }, say) => [
    `The heat steps are ${say.found(first)} and ${say.found(second)} °C.`,
    'The lower should come first; until then, cups may be too few.',
    'Swap the two.',
  ],
  'heat-assumed': ({ assumed, wbgtC }, say) => [
    wbgtC === undefined
      ? `No heat level is given, so cups are worked out for ${wordOf(HEAT, assumed)} weather.`
      : `A temperature of ${say.found(wbgtC)} °C is given without heat steps, so cups are worked out for ${wordOf(HEAT, assumed)} weather.`,
    null,
    'Give a heat level (cool, warm or hot), or a wet-bulb globe temperature with heat steps.',
  ],
  'gels-short': ({ ordered, taken, each }, say) => [
    `${say.count(ordered)} gels are ordered, and runners are expected to take ${say.count(taken)}: ${say.count(taken - ordered)} too few.`,
    null,
    `Order more than ${say.found(each)} gels for each runner.`,
  ],
  'pre-pour-room': ({ drink, tables, hold, wanted, more, pourers, all }, say) => [
    `${tables === 1 ? 'The table' : `The ${say.count(tables)} tables`} ${all === undefined ? '' : `at ${say.station(all[0]!.station)} `}${tables === 1 ? 'holds' : 'hold'} ${say.count(hold)} cups of ${say.served(drink)}.`,
    all === undefined
      ? `${say.count(wanted)} should be poured before the first runner: ${say.count(wanted - hold)} more.`
      : `${say.count(wanted)} should be poured before the first runner; tables are short in ${all.length === 2 ? 'one more case' : `${say.count(all.length - 1)} more cases`} too.`,
    `Put up ${say.count(more)} more ${more === 1 ? 'table' : 'tables'}${
      pourers === undefined ? '' : `, or have ${say.count(pourers)} people pour ${say.served(drink)}`
    }.`,
  ],
  'cups-run-out': ({ drink, at, short, hold, pourers }, say) => [
    `The poured cups of ${say.served(drink)} run out at ${say.clock(at)}, ${say.count(short)} short in that minute.`,
    `The tables hold ${say.count(hold)} and are refilled too slowly.`,
    `Put up more tables, or have ${say.count(pourers)} people pour ${say.served(drink)}.`,
  ],
  'station-no-arrivals': ({ problem }) => [
    problem === 'unpassed'
      ? 'No race that this station serves passes it.'
      : 'No runners arrive from the races that this station serves.',
    'No cups, crew or load are worked out for it.',
    'Give the races waves with entrants, or change what the station serves.',
  ],
};

export const raceday: TextsOf<RacedayParams> = {
  ...fields,
  ...results,
  ...stations,
  ...crew,
  ...weather,
  'drop-closed': ({ kg, vehicle, late, stations: all }, say) => [
    all === undefined
      ? `${say.mass(kg)} cannot be dropped: ${vehicle} would be on the closed road for ${minutesText(late)}, at the station or before it.`
      : `${say.mass(kg)} cannot be dropped at ${places(all, say)}: vehicles would be on the closed road for up to ${minutesText(late)}.`,
    null,
    all === undefined ? VEHICLE : VEHICLES,
  ],
  'drop-late': ({ vehicle, done, due, stations: all }, say) => [
    `${vehicle} finishes unloading ${all === undefined ? '' : `at ${say.station(all[0]!)} `}at ${say.clock(done)}, ${minutesText(done - due)} late.`,
    all === undefined
      ? `The crew is due at ${say.clock(due)}.`
      : `The crew there is due at ${say.clock(due)}; unloading is late at ${all.length === 2 ? 'one more station' : `${say.count(all.length - 1)} more stations`} too.`,
    all === undefined ? VEHICLE : VEHICLES,
  ],
  'vehicle-doubtful': byProblem({
    light: ({ vehicle, kg, trips, used, count }, say) => [
      `${vehicle} carries only ${say.mass(kg)}${more(count, 'no more', say)}: what one station needs would take ${say.count(trips)} trips.`,
      used ? null : `Runs are planned without ${count === 1 ? 'it' : 'them'}.`,
      count === 1 ? 'Correct its payload, or remove it.' : 'Correct their payloads, or remove them.',
    ],
    fast: ({ vehicle, kmh, most, count }, say) => [
      `${vehicle} would go along the course at ${speedText(kmh, say)}${more(count, 'too fast too', say)}.`,
      `It should be at most ${speedText(most, say)}.`,
      count === 1 ? 'Correct its speed.' : 'Correct their speeds.',
    ],
  }),
  'load-too-heavy': ({ supply, kg, most }, say) => {
    const { measured, limit } = say.compareMass(kg, most);
    return [
      `One ${supplyText(supply, supplyWords)} weighs ${measured}, and the strongest vehicle carries only ${limit}.`,
      'No run carries it.',
      'Correct its weight, or the payload of the vehicle.',
    ];
  },
  'clock-missing': ({ course, times }, say) => [
    `Road times do not say ${say.any(times.map((one) => TIMES[one]))} on ${say.course(course)}.`,
    'Runs are planned as if there were no limit.',
    'Add the times that the road authority grants.',
  ],
  'vehicles-missing': ({ stations: count, kg }, say) => [
    `There is no vehicle for the ${say.mass(kg)} that ${count === 1 ? 'one station needs' : `${say.count(count)} stations need`}, so no runs are planned.`,
    null,
    'Add vehicles, each with its payload, number of loads, speed, stop time and loading time.',
  ],
  'drop-nowhere': () => [
    'No course passes the station, so nothing is dropped there.',
    null,
    'Correct its place first.',
  ],
};
