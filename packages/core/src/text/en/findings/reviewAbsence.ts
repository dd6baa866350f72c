/** What the checks say of what a plan leaves out, and of slips in it. */
import type { AbsenceParams, Contact, LooseRule, RuleName } from '../../params/reviewAbsence.ts';
import type { Say } from '../../say.ts';
import { some, wordOf } from '../../some.ts';
import type { TextsOf } from '../../sentence.ts';
import { aPoint, begin } from '../nouns.ts';
import { planThings } from '../planThings.ts';

const CONTACTS: { readonly [key in Contact]: string } = {
  emergency: 'emergency contact',
  raceControl: 'race control',
  radioChannel: 'radio channel',
};

const HEAT = { cool: 'cool', warm: 'warm', hot: 'hot' } as const;

const WHATS = { captain: 'captain', radio: 'call sign', phone: 'telephone' } as const;

const left =
  (say: Say) =>
  (count: number): string =>
    `${say.count(count)} more`;
const names = (list: readonly string[], say: Say): string => some(list, say, left(say));

const isCrew = (rule: RuleName): boolean => rule === 'pourers' || rule === 'minimum';

function ruleValue({ rule }: LooseRule, value: number, say: Say): string {
  if (isCrew(rule)) return say.count(value);
  if (rule === 'sideConfidence' || rule === 'maxGrade') return say.percent(value);
  return rule === 'maxSpacing' || rule === 'minSpacing' ? say.far(value) : say.length(value);
}

function looseText(loose: LooseRule, say: Say): string {
  const where = loose.station === null ? '' : ` at ${say.station(loose.station)}`;
  return `${wordOf(planThings, `${isCrew(loose.rule) ? 'crew' : 'practice'}.${loose.rule}`)}${where} ${ruleValue(loose, loose.value, say)} (usually ${ruleValue(loose, loose.usual, say)})`;
}

/** So many rules are told one by one; the details have all. */
const MOST_RULES = 2;

export const absence: TextsOf<AbsenceParams> = {
  'no-medical': ({ none, courses }, say) => [
    none
      ? 'The plan has no first-aid point.'
      : `There is no first-aid point in the second half of ${names(courses.map(say.course), say)}.`,
    null,
    'Add first aid under Points as the medical lead plans it, in both halves of a course.',
  ],
  'no-widths': ({ all, stations }, say) => [
    all
      ? 'No station gives the width of its road.'
      : `The width of the road is missing at ${names(stations.map(say.station), say)}.`,
    'Room beside the tables, for the crowd and for ambulances, is not checked without it.',
    'Measure and add it.',
  ],
  'no-elevations': ({ courses }, say) => [
    `There are no elevations on ${names(courses.map(say.course), say)}.`,
    'Grades at tables and steep descents are not checked without them.',
    'Use a GPX file with elevations.',
  ],
  'no-entrants': ({ races, all }, say) => [
    all
      ? 'The plan does not say who runs and when.'
      : `The plan does not say who runs ${names(races.map(say.race), say)} and when.`,
    'Times, closures, crowding, cups, crew and supplies are not checked without that.',
    'Add waves, each with a start time and a number of entrants.',
  ],
  'no-contacts': ({ missing }, say) => [
    `The plan has no ${say.any(missing.map((key) => wordOf(CONTACTS, key)))}.`,
    'Crews need to know whom to call.',
    missing.length === 1 ? 'Add it under Contacts.' : 'Add them under Contacts.',
  ],
  'roster-short': ({ there, at, needed }, say) => [
    `${there === 0 ? 'Nobody' : there === 1 ? '1 person' : `${say.count(there)} people`} of the roster ${there < 2 ? 'is' : 'are'} there at ${say.clock(at)}: ${say.count(needed - there)} ${needed - there === 1 ? 'is' : 'are'} missing.`,
    `There should be ${say.count(needed)} while the station serves.`,
    'Find more people, or change the hours of those who come.',
  ],
  'no-captain': ({ all, unnamed, unreached }, say) => {
    const reach = `no way to reach the captain at ${names(unreached.map(say.station), say)}`;
    const who = `There is no captain at ${names(unnamed.map(say.station), say)}`;
    const both = unreached.length === 0 ? `${who}.` : `${who}, and ${reach}.`;
    const named = all
      ? 'Give each station a captain with a call sign or a telephone.'
      : unnamed.length + unreached.length === 1
        ? 'Name one, with a call sign or a telephone.'
        : 'Give each a captain with a call sign or a telephone.';
    const howToReach =
      unnamed.length === 0
        ? `Give ${unreached.length === 1 ? 'that captain' : 'each of them'} a call sign or a telephone.`
        : named;
    return [all ? 'No station has a captain.' : unnamed.length === 0 ? `There is ${reach}.` : both, null, howToReach];
  },
  'shared-contact': ({ what, value, stations }, say) => [
    `${names(stations.map(say.station), say)} share the ${wordOf(WHATS, what)} ${say.quote(value)} at the same time.`,
    'Each station should have its own.',
    'Correct it, or name another.',
  ],
  'no-water': ({ races, dry = null }, say) => {
    if (dry !== null) {
      const { measured, limit } = say.compareFar(dry.length, dry.limit);
      return [
        `${names(races.map(say.race), say)} runs ${measured} without plain water (to ${say.far(dry.end)}).`,
        `It should be at most ${limit}.`,
        'Serve water at a station between.',
      ];
    }
    return [
      `There is no plain water on the course of ${names(races.map(say.race), say)}.`,
      'Every race should find some.',
      'Serve water at a station that it passes.',
    ];
  },
  'same-name': ({ name, count }, say) => [
    `${count === 2 ? 'Two' : say.count(count)} stations are called ${say.quote(name)}.`,
    'Crews and race control tell stations apart by their names.',
    'Rename one.',
  ],
  'name-distance': ({ said, race, measure }, say) => [
    `The name says ${say.far(said)}, but ${say.race(race)} comes by at ${say.far(measure)}.`,
    null,
    'Correct the name or the place.',
  ],
  'far-from-courses': ({ things, limit }, say) => {
    const [{ is, name, station, distance, swapped }] = things as readonly [(typeof things)[0]];
    const what = `${is === 'zone' ? 'Zone' : 'Point'} ${name === '' ? '' : `${say.quote(name)} `}${station === null ? '' : `of ${say.station(station)} `}`;
    const rest = things.length - 1;
    return [
      `${what}lies ${say.far(distance)} from the nearest course${rest === 0 ? '' : `, and ${say.count(rest)} more ${rest === 1 ? 'lies' : 'lie'} far off`}.`,
      `It should be at most ${say.far(limit)}.`,
      swapped ? 'Longitude comes first: the two numbers may be swapped.' : 'Correct its position, or remove it.',
    ];
  },
  'zone-large': ({ zone, across, limit }, say) => {
    const { measured, limit: most } = say.compareFar(across, limit);
    return [
      `${zone === '' ? 'A zone' : `Zone ${say.quote(zone)}`} is ${measured} across.`,
      `It should be at most ${most}.`,
      'Correct the corner that lies far off (longitude comes first).',
    ];
  },
  'points-elsewhere': ({ point, count, other, away }, say) => [
    `${begin(aPoint(point, say))}${count === 1 ? ' lies' : ` and ${say.count(count - 1)} more ${count === 2 ? 'point' : 'points'} lie`} ${say.far(away)} away, at ${say.station(other)}.`,
    'A station’s points should be near its tables.',
    'Correct the points or the pin, or exchange those of the two stations.',
  ],
  'rule-loose': ({ rules, hidden, absurd = false, grave }, say) => [
    `${absurd ? 'Unlikely' : 'Looser than usual'}: ${some(
      rules.map((loose) => looseText(loose, say)),
      say,
      left(say),
      MOST_RULES,
    )}.`,
    hidden === 0
      ? null
      : `With the usual values there ${hidden === 1 ? 'would be one more error or warning' : `would be ${say.count(hidden)} more errors or warnings`}.`,
    absurd
      ? 'No road is like that: correct it.'
      : hidden === 0 && grave !== true
        ? null
        : 'Go back to the usual, or have it agreed and waive this.',
  ],
  'show-low': ({ race, show, least }, say) => [
    `Only ${say.percent(show)} of the entrants of ${say.race(race)} are expected to start.`,
    `It should be at least ${say.percent(least)}: cups, crew and crowding are worked out for those who start.`,
    'Correct the share, or waive this.',
  ],
  'heat-doubtful': (params, say) => {
    const where = params.station === null ? '' : ` at ${say.station(params.station)}`;
    if (params.is === 'beyond')
      return [
        `The wet-bulb globe temperature${where} is ${say.found(params.wbgtC)} °C.`,
        `It should be at most ${say.found(params.most)} °C: it may be in degrees Fahrenheit.`,
        'Correct it.',
      ];
    return [
      `The heat level${where} is ${wordOf(HEAT, params.heat)}, but ${say.found(params.wbgtC)} °C of wet-bulb globe temperature is ${wordOf(HEAT, params.asks)}.`,
      'Cups are worked out for the level, so there may be too few.',
      'Correct one of the two; the medical lead decides about heat.',
    ];
  },
  'no-date': ({ waivers }, say) => [
    'The plan has no date.',
    waivers === 0
      ? 'Papers do not show the day, and dates are not checked.'
      : `Papers do not show the day, and the dates of ${waivers === 1 ? 'the waiver' : `${say.count(waivers)} waivers`} are not checked.`,
    'Add the date of the race.',
  ],
  'walked-date': ({ is, stations, date }, say) => [
    `${names(
      stations.map(({ station }) => say.station(station)),
      say,
    )} ${stations.length === 1 ? 'was' : 'were'} walked on ${stations[0]!.date}${stations.length === 1 ? '' : ' and later days'}, ${
      is === 'after' ? 'after the race' : 'years before the race'
    } (${date}).`,
    null,
    is === 'after' ? 'Correct the date.' : 'Walk there again, or correct the date.',
  ],
  'tables-many': ({ stations }, say) => {
    const [{ station, item, tables, needed }] = stations as readonly [(typeof stations)[0]];
    const rest = stations.length - 1;
    return [
      `${say.station(station)} has ${say.count(tables)} tables of ${say.served(item)}${rest === 0 ? '' : `, and ${say.count(rest)} more ${rest === 1 ? 'row is' : 'rows are'} as long`}.`,
      `About ${say.count(needed)} would do for those who come.`,
      'Correct the number of tables, if it is not meant.',
    ];
  },
  'boxes-tight': ({ boxes, apart, least, stations }, say) => [
    `${stations.length === 1 ? '' : `At ${names(stations.map(say.station), say)} up to `}${say.count(boxes)} trash boxes would stand ${say.compare(apart, least).measured} apart, one in another.`,
    `It should be at least ${say.compare(apart, least).limit}.`,
    'Set fewer boxes, or let them reach farther.',
  ],
  'supplies-short': ({ by, short }, say) => {
    const [{ station, item, ordered, asked }] = short as readonly [(typeof short)[0]];
    const pieces = item === 'gel' ? 'gels' : `cups of ${say.served(item)}`;
    const rest = short.length - 1;
    return [
      `${say.count(ordered)} ${pieces} are ordered for ${say.station(station)}; ${
        by === 'used' ? `${say.count(asked)} were used before` : `the heat of the day asks for ${say.count(asked)}`
      }.`,
      rest === 0 ? null : `${say.count(rest)} more ${rest === 1 ? 'order is' : 'orders are'} short too.`,
      by === 'used' ? 'Raise the take rates, or note why fewer will do.' : 'Raise the take rates to those of the heat.',
    ];
  },
  'drop-far': (params, say) => {
    const point = params.name === null ? 'The supplies drop' : say.quote(params.name);
    if (params.is === 'zone')
      return [
        `${point} lies in the keep-clear zone ${params.zone === '' ? '' : say.quote(params.zone)}`.trimEnd() + '.',
        'Nothing may stand there, nor a truck.',
        'Move it.',
      ];
    const { measured, limit } = say.compare(params.distance, params.limit);
    return [
      `${point} is ${measured} from the tables, as the crow flies.`,
      `It should be at most ${limit}, as everything is carried.`,
      'Move it nearer, or plan carts and more people and waive this.',
    ];
  },
};
