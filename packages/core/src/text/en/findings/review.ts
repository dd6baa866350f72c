/** What the checks of a layout say; of stations and whom they serve here. */
import type { PassAt, ReviewParams, ServiceParams } from '../../params/review.ts';
import type { Say } from '../../say.ts';
import { some } from '../../some.ts';
import type { TextsOf } from '../../sentence.ts';
import { nth, often, passAt, sure } from '../nouns.ts';
import { absence } from './reviewAbsence.ts';
import { flows } from './reviewFlows.ts';
import { ground } from './reviewGround.ts';
import { items } from './reviewItems.ts';
import { placing } from './reviewPlacing.ts';
import { road } from './reviewRoad.ts';
import { times } from './reviewTimes.ts';

/** So many passes are told one by one; the plan shows all. */
const MOST_PASSES = 2;

const passes = (all: readonly PassAt[], say: Say): string => say.all(all.map((pass) => passAt(pass, say)));

function legText(leg: ServiceParams['leg-long'], say: Say): string {
  const { measured } = say.compareFar(leg.measured, leg.limit);
  const at = leg.to === null ? '' : ` (at ${say.far(leg.end)})`;
  if (leg.from !== null && leg.from === leg.to) return `${say.race(leg.race)} comes back here after ${measured}${at}.`;
  const from = leg.from === null ? 'the start' : leg.here === 'from' ? 'here' : say.station(leg.from);
  const to = leg.to === null ? 'the finish' : leg.here === 'to' ? 'here' : say.station(leg.to);
  return `${say.race(leg.race)} runs ${measured} from ${from} to ${to}${at}.`;
}

const WAY = { back: ' on the way back', other: ' the other way', again: ' another time' } as const;

const service: TextsOf<ServiceParams> = {
  'crosses-flow': ({ other, farther, sideUnclear, kerb }, say) => {
    if (kerb !== undefined)
      return [
        `${say.all(kerb.map(say.station))} serve the two ways of one road from the same kerb: one way must cross the other to its tables.`,
        'Each should stand on the outer side of its own runners.',
        'Move one across the road, or agree with officials and police how the ways are parted.',
      ];
    const who =
      farther === null
        ? `Runners come both ways on one road (${passes(other, say)} the other way): one must cross the other to reach the tables.`
        : `Runners come both ways, and ${passes(farther.passes, say)}, ${say.length(farther.by)} farther from the tables, must cross the others.`;
    return [
      who,
      sideUnclear ? 'The side is unclear: this applies only if the tables stand beyond both ways.' : null,
      'Serve one way only, or put tables on both sides or between the two; officials and police decide.',
    ];
  },
  'gel-without-water': ({ race, measure, next, within, waterBefore }, say) => {
    const { measured, limit } = say.compareFar(next ?? 0, within);
    const after = next === null ? 'no later station of that race has any' : `the next water is ${measured} on`;
    return [
      `${passAt({ race, measure }, say)} gets gel ${waterBefore ? 'only after the water' : 'but no water'} here, and ${after}.`,
      `Water should follow the gel, here or within ${limit}.`,
      'Serve water after it, or move the gel to another station.',
    ];
  },
  'lead-far': ({ led, near, pass, time, taken }, say) => {
    const who = `${passAt(pass, say)}${time > 1 ? ` (${nth(time)} time past)` : ''}`;
    if (taken !== null)
      return [
        `The tables are laid out for ${who}, as ${taken === 'pin' ? 'the pin stands by that way' : 'only that way has the pin on the declared side'}.`,
        'The plan should say which way they are for.',
        'Choose it under Runners.',
      ];
    return [
      `The tables are laid out for runners ${say.length(led)} from the pin, but ${who} is only ${say.length(near)} from it.`,
      null,
      'Choose under Runners which way the tables are for.',
    ];
  },
  'leg-long': (leg, say) => [
    legText(leg, say),
    `It should be at most ${say.compareFar(leg.measured, leg.limit).limit}.`,
    'Add a station between, or move one.',
  ],
  'leg-short': (leg, say) => [
    legText(leg, say),
    `It should be at least ${say.compareFar(leg.measured, leg.limit).limit}.`,
    leg.from === leg.to ? 'Serve it only once, or move it.' : 'Move one of the two, or leave one out.',
  ],
  'length-differs': ({ stated, line, allowed, recorded, wander, used, typed, waits = false }, say) => {
    const { measured, limit } = say.compare(Math.abs(line - stated), allowed);
    return [
      `The line is ${say.far(line)}, ${measured} ${line > stated ? 'longer' : 'shorter'} than the stated ${say.far(stated)}${recorded ? ' (a recorded track usually runs long)' : ''}.`,
      `${wander > 0 ? `Measuring and the wander of the track allow ${limit}` : `Course measurement allows ${limit}`}; ${used ? 'distances are stretched to the stated length' : waits ? 'checks of whom it serves and of its times wait until one is corrected' : 'so far off, the stated length is not used'}.`,
      typed === undefined
        ? 'Correct the line or the length; only a measurement on the road certifies a course.'
        : `Correct the length, which seems to be typed in ${typed === 'mi' ? 'miles instead of kilometres' : 'kilometres instead of miles'}; only a measurement on the road certifies a course.`,
    ];
  },
  'pass-unknown': ({ race, time, count }, say) =>
    count === 0
      ? [`The plan serves ${say.race(race)} here, but that race does not come past.`, null, 'Choose a race that does.']
      : [
          `The plan names the ${nth(time)} time that ${say.race(race)} comes past, but it comes past only ${often(count)}.`,
          null,
          'Choose another under Runners.',
        ],
  'race-unserved': ({ length }, say) => [
    `No station serves this race over its ${say.far(length)}.`,
    null,
    'Add it to a station that it passes, or remove it from the plan.',
  ],
  'seen-not-served': ({ way, passes: seen }, say) => {
    const list = seen
      .slice(0, MOST_PASSES)
      .map((pass) => (way === 'again' ? `${passAt(pass, say)}, ${nth(pass.time)} time past` : passAt(pass, say)));
    const left = seen.length - list.length;
    const rest = left === 0 ? '' : ` and ${say.count(left)} more`;
    return [
      `Runners also pass${way === 'again' && seen.length > 1 ? ' at other times' : WAY[way]} (${list.join(way === 'again' ? '; ' : ', ')}${rest}) and are not served.`,
      null,
      'If that is intended, confirm it under Runners.',
    ];
  },
  'served-both-ways': ({ lead, other, passes: back }, say) => {
    const order = (kinds: ServiceParams['served-both-ways']['lead']): string =>
      kinds.map((kind) => say.itemInside(kind)).join(', then ');
    return [
      `Runners are served both ways: one way they meet ${order(lead)}; the other way (${passes(back, say)}) ${order(other)}.`,
      null,
      'Give each way tables of its own, or brief the crew to call out what is on each table.',
    ];
  },
  'side-change': ({ measured, limit, race, before, beforeSide, side }, say) => {
    const { measured: apart, limit: least } = say.compareFar(measured, limit);
    return [
      `${say.race(race)} has ${say.station(before)} on the ${say.side(beforeSide)} and, ${apart} on, this station on the ${say.side(side)}.`,
      `Stations less than ${least} apart should be on one side, or runners cross the road to reach both.`,
      'Move one to the other side, or move them apart.',
    ];
  },
  'side-contradicted': ({ declared, side, offset, confidence, fits, turned }, say) => {
    if (turned?.against !== undefined)
      return [
        `${say.course(turned.course)} runs against the others at ${say.count(turned.against.length)} stations, and at ${some(turned.stations.map(say.station), say, (count) => `${say.count(count)} more`)} the pin is on the other side than declared.`,
        'It seems to run the wrong way round: checks of what comes of that wait.',
        'Turn the course round in the plan, or correct the sides.',
      ];
    if (turned !== null)
      return [
        `At ${say.count(turned.stations.length)} stations of ${say.course(turned.course)} the pin is on the other side than declared.`,
        'Most of its declared sides are the wrong way round: the course may run the other way.',
        'Turn the course round in the plan, or correct the sides.',
      ];
    return [
      `The station is declared on the ${say.side(declared)}, but the pin is ${say.length(Math.abs(offset))} to the ${say.side(side)}${confidence < 0.95 ? ` (${sure(confidence, say)})` : ''}.`,
      fits === null
        ? 'The declared side counts.'
        : `For ${passAt(fits, say)}, the other way, the pin is on the ${say.side(declared)}.`,
      fits === null ? 'Correct whichever is wrong.' : 'Choose under Runners which way the tables are for.',
    ];
  },
  'side-unclear': ({ offset, confidence, wanted, why, other, placed }, say) => {
    const { measured, limit } = say.comparePercent(confidence, wanted);
    if (placed)
      return [
        `By the declared side the tables may stand on either side of another way (${passes(other ?? [], say)}).`,
        'Each way should have them on a side that is known.',
        'Set the pin where the tables are, or serve one way only.',
      ];
    if (why === 'turn')
      return [
        'The course turns so sharply at the pin that it has no sides there.',
        null,
        other === null ? 'Declare the side, or move the pin off the bend.' : 'Move the pin off the bend.',
      ];
    if (other !== null)
      return [
        `The pin is ${say.length(Math.abs(offset))} from another way (${passes(other, say)}): its side is only ${measured} sure.`,
        `It should be ${limit} sure.`,
        'Move the pin off that line, or serve one way only.',
      ];
    return [
      `The pin is ${say.length(Math.abs(offset))} from the course line, so its side is only ${measured} sure, and everything is laid out on the line.`,
      `It should be at least ${limit} sure.`,
      'Declare the side, or move the pin off the line.',
    ];
  },
  'station-off-course': ({ measured, limit, course, measure, swapped }, say) => {
    const { measured: near, limit: most } = say.compare(measured, limit);
    const distance = measured < 1000 ? near : say.far(measured);
    return [
      `The pin is ${distance} from the nearest course that is served (${say.course(course)} at ${say.far(measure)}).`,
      `It should be at most ${most}.`,
      swapped === null
        ? 'Move the pin to the road, or allow a course to pass it farther off.'
        : `Longitude comes first: the two numbers may be swapped (${swapped.join(', ')}).`,
    ];
  },
  'station-unserved': ({ beyondEnd }) => [
    beyondEnd
      ? 'Nobody is served: the pin lies beyond an end of the course.'
      : 'Nobody is served: none of the times that runners come past is chosen.',
    null,
    'Move the pin beside the course, or choose under Runners who is served.',
  ],
  'waiver-unmatched': ({ waived, by, near }, say) => [
    `The waiver of ${say.quote(waived)} by ${by} matches no finding.`,
    null,
    near === undefined
      ? 'Remove it, or correct its code or station.'
      : `Did you mean ${say.quote(near)}? Correct its code, or remove it.`,
  ],
  'waiver-refused': ({ waived, by, lacks }, say) => [
    {
      by: `A waiver of ${say.quote(waived)} names nobody, so it does not hold.`,
      reason: `The waiver of ${say.quote(waived)} by ${by} has no reason in words, so it does not hold.`,
      date: `The waiver of ${say.quote(waived)} by ${by} has no date, so it does not hold.`,
      earlierDate: `The waiver of ${say.quote(waived)} by ${by} is dated after the race, so it does not hold.`,
    }[lacks],
    null,
    {
      by: 'Give the name of the person who answers for it.',
      reason: 'Say why this may stay as it is.',
      date: 'Give the day on which it was given.',
      earlierDate: 'Give the day on which it was given, before the race.',
    }[lacks],
  ],
  'waiver-outgrown': ({ waived, by, worse }, say) => [
    worse
      ? `What ${by} waived as ${say.quote(waived)} has become worse by more than a tenth.`
      : `The waiver of ${say.quote(waived)} by ${by} was given for something else.`,
    'It no longer holds.',
    'Look again, then waive it anew or remove the waiver.',
  ],
  'waiver-unbound': ({ waived, by }, say) => [
    `The waiver of ${say.quote(waived)} by ${by} does not say what was seen, so it holds for any finding of that kind here.`,
    null,
    'Renew it: remove it, and waive the finding again.',
  ],
};

export const review: TextsOf<ReviewParams> = {
  ...service,
  ...items,
  ...road,
  ...flows,
  ...ground,
  ...placing,
  ...times,
  ...absence,
};
