/** The shapes of a plan as `readPlan` gives it: every quantity a number in SI units, every default filled in. */
import { isDrawn, isGapRule } from '../course/course.ts';
import { isTrackChoice } from '../gpx/shapes.ts';
import { ITEM_KINDS } from '../kinds.ts';
import {
  type Shape,
  type Shapes,
  aFlag,
  aFunction,
  aText,
  anything,
  count,
  either,
  finite,
  listOf,
  maybe,
  notNegative,
  oneOf,
  partly,
  position,
  positive,
  recordOf,
  remembered,
  tableOf,
  tuple,
  upTo,
} from '../wants.ts';
import { DEFAULT_CREW, DEFAULT_PRACTICE, DEFAULT_SUPPLIES } from './defaults.ts';
import { MOST_DAYS, type PlanPerson, type PlanPrice, type PlanPrices } from './year.ts';
import type {
  Plan,
  PlanCourse,
  PlanDocument,
  PlanRace,
  PlanStation,
  PlanWaiver,
  PlanWeather,
  Practice,
  Supplies,
} from './plan.ts';

/** Every key of some defaults as a number of 0 or more. */
const numbersOf = <T extends object>(defaults: T): Shapes<T> =>
  Object.fromEntries(Object.keys(defaults).map((key) => [key, notNegative])) as Shapes<T>;

const id: Shape = aText;
const text: Shape = maybe(aText);

export const isWaiver: Shape = recordOf<PlanWaiver>('a waiver', {
  code: aText,
  station: text,
  by: aText,
  reason: aText,
  date: text,
  seen: maybe(tableOf(either(aText, finite))),
});
const number: Shape = maybe(finite);
export const isUnits: Shape = oneOf('metric', 'imperial');
const isDeclared: Shape = oneOf('left', 'right');
export const isServed: Shape = oneOf('gel', 'sportsDrink', 'water');
export const isItemKind: Shape = oneOf(...ITEM_KINDS);
export const isDivision: Shape = oneOf('run', 'walk', 'wheels');

const isCourse: Shape = recordOf<PlanCourse>('a course of a plan', {
  id,
  name: aText,
  gpx: text,
  line: maybe(listOf(listOf(finite, 2))),
  parts: maybe(listOf(recordOf('a part', { of: id, from: finite, to: number, reverse: maybe(aFlag) }))),
  track: isTrackChoice,
  gaps: isGapRule,
  reverse: aFlag,
  drawn: isDrawn,
  length: number,
  marks: listOf(recordOf('a mark', { at: maybe(position), measure: number, name: text })),
  certificate: text,
});

/** Seconds of a finish, and shares of a field. */
const isFinish: Shape = (value) => {
  const keys = typeof value === 'object' && value !== null ? value : {};
  if ('times' in keys) return recordOf('finish times', { times: listOf(positive, 1) })(value);
  if ('quantiles' in keys)
    return recordOf('finish times', { quantiles: listOf(tuple(notNegative, positive), 2) })(value);
  if ('csv' in keys) return recordOf('finish times', { csv: aText, column: aText })(value);
  return recordOf('finish times, such as { median, spread }', { median: positive, spread: notNegative })(value);
};

/** Also without end: all start at once. */
const overZero: Shape = (value) => (typeof value === 'number' && value > 0 ? null : positive(value));

export const isRace: Shape = recordOf<PlanRace>('a race of a plan', {
  id,
  name: aText,
  course: id,
  division: isDivision,
  waves: listOf(recordOf('a wave', { time: notNegative, entrants: count, finish: maybe(isFinish) })),
  finish: maybe(isFinish),
  slow: maybe(tuple(finite, finite)),
  show: notNegative,
  startFlow: maybe(overZero),
  startWidth: maybe(overZero),
  cutoff: maybe(notNegative),
  late: oneOf('out', 'served'),
  gradient: aFlag,
});

const TAKE: Shape = partly('take rates', { water: notNegative, sportsDrink: notNegative, gel: notNegative });
const SUPPLIES: Shapes<Supplies> = {
  ...numbersOf(DEFAULT_SUPPLIES),
  heat: maybe(oneOf('cool', 'warm', 'hot')),
  handOut: oneOf('cups', 'bottles'),
  flavours: maybe(partly('flavours', { sportsDrink: listOf(aText), gel: listOf(aText) })),
  drinkRate: maybe(positive),
  wbgtC: number,
  heatSteps: maybe(tuple(finite, finite)),
  take: partly('take rates', { run: TAKE, walk: TAKE, wheels: TAKE }),
  cup: positive,
  fill: positive,
  cupsPerLayer: positive,
  layers: positive,
  cupsPerBag: positive,
  cupsPerBox: positive,
  packs: recordOf('packs', numbersOf(DEFAULT_SUPPLIES.packs)),
  weights: tableOf(notNegative),
  resupply: maybe(recordOf('a second delivery', { at: finite, takes: finite })),
  prePourFloor: tuple(notNegative, notNegative),
};
const PRACTICE: Shapes<Practice> = { ...numbersOf(DEFAULT_PRACTICE), boxEvery: positive };
const CREW = {
  ...numbersOf(DEFAULT_CREW),
  pourers: maybe(count),
  pourRate: positive,
  handRate: positive,
  gelRate: positive,
  cleanPer: positive,
  tapTime: positive,
  longest: positive,
};
const isPassChoice: Shape = recordOf('a pass { race, pass }', { race: id, pass: count });

export const isPlanStation: Shape = recordOf<PlanStation>('a station of a plan', {
  id,
  name: aText,
  at: maybe(position),
  on: maybe(recordOf('a place on a course', { course: id, measure: finite, side: isDeclared, offset: finite })),
  side: maybe(isDeclared),
  lead: maybe(isPassChoice),
  races: maybe(listOf(id)),
  passes: either(oneOf('lead', 'all'), listOf(isPassChoice)),
  serves: listOf(isServed),
  tables: partly('tables', { gel: count, sportsDrink: count, water: count }),
  boxes: maybe(count),
  width: maybe(notNegative),
  street: text,
  fixed: aFlag,
  why: text,
  walked: maybe(recordOf('who walked it', { by: aText, date: text })),
  practice: partly('practice', PRACTICE),
  supplies: partly('supplies', { ...SUPPLIES, packs: partly('packs', numbersOf(DEFAULT_SUPPLIES.packs)) }),
  crew: partly('crew', CREW),
  items: tableOf(recordOf('an item { at }', { at: position })),
  points: listOf(
    recordOf('a point', {
      kind: oneOf('drop', 'access', 'medical', 'toilets', 'radio', 'other'),
      at: position,
      name: text,
      street: text,
      note: text,
    }),
  ),
  people: partly('people', { captain: aText, radio: aText, phone: aText }),
  note: text,
  used: maybe(partly('counts', { gel: notNegative, sportsDrink: notNegative, water: notNegative })),
});

/** A plan by itself; that what it names is there is asked by `isWholePlan`. */
export const isPlan: Shape = remembered(
  recordOf<Plan>('the plan that readPlan gives', {
    format: oneOf('halfcup-plan'),
    version: oneOf(1),
    name: aText,
    revision: text,
    date: text,
    timeZone: text,
    units: isUnits,
    language: aText,
    courses: listOf(isCourse),
    races: listOf(isRace),
    stations: listOf(isPlanStation),
    zones: listOf(
      recordOf('a zone', { name: aText, rule: oneOf('keep-clear', 'allowed'), polygon: listOf(position, 3) }),
    ),
    practice: recordOf('practice', PRACTICE),
    supplies: recordOf('supplies', SUPPLIES),
    crew: recordOf('crew', CREW),
    vehicles: listOf(
      recordOf('a vehicle', {
        id,
        name: aText,
        kg: positive,
        places: count,
        kmh: positive,
        stop: maybe(notNegative),
        unload: maybe(positive),
        standBy: maybe(aFlag),
        from: finite,
      }),
    ),
    clock: listOf(
      recordOf('a time on a course', {
        course: id,
        measure: finite,
        accessOpens: number,
        closes: number,
        sweep: number,
        reopens: number,
      }),
    ),
    contacts: partly('contacts', { emergency: aText, raceControl: aText, radioChannel: aText }),
    waivers: listOf(isWaiver),
    variants: listOf(recordOf('a variant', { name: aText, stations: tableOf(tableOf(anything)) })),
    context: text,
    ground: text,
    numbers: maybe(tableOf(finite)),
    weather: maybe(
      listOf(
        recordOf<PlanWeather>('an hour of weather', {
          at: finite,
          wbgtC: number,
          airC: number,
          humidity: number,
          windKmh: number,
        }),
      ),
    ),
    people: maybe(
      recordOf('people', {
        crew: listOf(
          recordOf<PlanPerson>('a person', {
            name: aText,
            station: aText,
            role: text,
            from: number,
            until: number,
            phone: text,
          }),
        ),
      }),
    ),
    prices: maybe(
      recordOf<PlanPrices>('prices', {
        currency: aText,
        items: listOf(
          recordOf<PlanPrice>('a price', {
            kind: aText,
            price: notNegative,
            sold: positive,
            leadDays: maybe(upTo(MOST_DAYS)),
          }),
        ),
      }),
    ),
  }),
);

/** A plan whose races, places and times name courses that it has, and whose stations have a place. */
export const isWholePlan: Shape = remembered((value) => {
  const found = isPlan(value);
  if (found !== null) return found;
  const { courses, races, stations, clock } = value as Plan;
  const isKnown = oneOf(...courses.map((course) => course.id));
  const known = (path: string, course: string): ReturnType<Shape> => {
    const missing = isKnown(course);
    return missing === null ? null : { ...missing, path, expected: `the id of a course (${missing.expected})` };
  };
  for (const [k, { course }] of races.entries()) {
    const missing = known(`races[${k}].course`, course);
    if (missing !== null) return missing;
  }
  for (const [k, { at, on }] of stations.entries()) {
    if (at === undefined && on === undefined)
      return { path: `stations[${k}]`, expected: 'a station with a place, `at` or `on`', found: undefined };
    const missing = on === undefined ? null : known(`stations[${k}].on.course`, on.course);
    if (missing !== null) return missing;
  }
  return clock.reduce<ReturnType<Shape>>((first, { course }, k) => first ?? known(`clock[${k}].course`, course), null);
});

export const isPlanDocument: Shape = recordOf<PlanDocument>('what readPlan gives', {
  file: aText,
  text: aText,
  plan: isWholePlan,
  placeOf: aFunction,
});

/** The part of a plan that names things. */
export const isPlanNames: Shape = recordOf<Pick<Plan, 'stations' | 'races' | 'courses' | 'units'>>(
  'the plan that readPlan gives',
  { stations: listOf(isPlanStation), races: listOf(isRace), courses: listOf(isCourse), units: isUnits },
);

export const isPlaced: Shape = recordOf<Pick<PlanDocument, 'file' | 'placeOf'>>('what readPlan gives', {
  file: aText,
  placeOf: aFunction,
});
