/** The shapes of race day: fields, arrivals and what they need. */
import { isIndexed } from '../course/indexedShape.ts';
import { isFinding } from '../finding.ts';
import { isDivision, isRace } from '../plan/shapes.ts';
import { directionsFit, isDirection, isStationPass } from '../station/shapes.ts';
import {
  type Shape,
  type Shapes,
  aFlag,
  aText,
  column,
  finite,
  listOf,
  mapOf,
  maybe,
  oneOf,
  orNull,
  partly,
  recordOf,
  remembered,
  tableOf,
  tuple,
  want,
} from '../wants.ts';
import type {
  DayCrew,
  Field,
  FittedField,
  JugsLeft,
  Pack,
  PrePour,
  Quantiles,
  RaceArrivals,
  RaceDay,
  Resupply,
  Run,
  StationArrivals,
  Shortage,
  StationDay,
  Stop,
} from './day.ts';
import type { Supply } from '../kinds.ts';

const numbers = <T extends object>(keys: readonly (keyof T)[]): Shapes<T> =>
  Object.fromEntries(keys.map((key) => [key, finite])) as Shapes<T>;

export const isField: Shape = (value) => {
  const found = fieldRecord(value);
  if (found !== null) return found;
  const { start, finish, slow } = value as Field;
  if (finish.length === start.length && slow.length === start.length) return null;
  return { path: '', expected: 'columns start, finish and slow of equal length', found: finish.length, range: true };
};
const isFitted: Shape = maybe(
  listOf(
    recordOf<FittedField>('splits of past results', {
      race: aText,
      csv: aText,
      splits: listOf(aText),
      runners: finite,
    }),
  ),
);
const fieldRecord: Shape = recordOf<Field>('the field that fieldOf gives', {
  race: isRace,
  division: isDivision,
  start: column,
  finish: column,
  slow: column,
  fitted: isFitted,
});

/** Refuses a table of courses by id that lacks one of those that are named. */
export function wantTable(who: string, courses: unknown, named: readonly string[]): void {
  want(who, 'courses', mapOf(isIndexed), courses);
  const known = oneOf(...(courses as ReadonlyMap<string, unknown>).keys());
  for (const id of named) want(who, 'the id of a course among `courses`', known, id);
}

/** Two measures, the second farther on. */
export const isEnds: Shape = (value) => {
  const found = tuple(finite, finite)(value);
  if (found !== null) return found;
  const [start, finish] = value as [number, number];
  return finish > start
    ? null
    : { path: '', expected: '[start, finish], the finish farther on', found: `[${start}, ${finish}]`, range: true };
};
export const isHills: Shape = orNull(recordOf('hills', { shares: column, cost: column }));
export const isSweep: Shape = orNull(recordOf('a sweep', { measures: listOf(finite, 1), times: listOf(finite, 1) }));

export const isPassedStation: Shape = recordOf('a station with its passes', {
  id: aText,
  passes: listOf(isStationPass),
});
export const isDayStation: Shape = directionsFit(
  recordOf('a station that passStage gives', {
    id: aText,
    passes: listOf(isStationPass),
    directions: listOf(isDirection),
  }),
);

export const isStationArrivals: Shape = recordOf<StationArrivals>('the arrivals that arrivalsAt gives', {
  station: aText,
  races: listOf(
    recordOf<RaceArrivals>('arrivals of a race', {
      race: aText,
      division: isDivision,
      times: column,
      byPass: maybe(listOf(recordOf('arrivals at a pass', { times: column, leg: finite }))),
      out: finite,
    }),
  ),
  sweep: orNull(finite),
});

const QUANTILES: Shapes<Quantiles> = numbers<Quantiles>(['first', 'p10', 'p50', 'p90', 'last']);
const isPrePour: Shape = recordOf<PrePour>('a pre-pour', {
  ...numbers<PrePour>(['cups', 'share', 'massCurve', 'floor', 'tables', 'layers', 'pourers']),
  room: orNull(finite),
  cupsPerLayer: maybe(finite),
});
const SUPPLY: Shapes<Supply> = { kind: aText, wording: maybe(aText), empty: maybe(oneOf(true)) };
const isPack: Shape = recordOf<Pack>('a pack', { ...SUPPLY, need: finite, pack: finite, count: finite });
const drinks: Shape = recordOf('drinks', { water: finite, sportsDrink: finite });
const isTake: Shape = recordOf('a take', { water: finite, sportsDrink: finite, gel: finite, litres: finite });
const isMinute: Shape = tuple(finite, tableOf(finite));

const isStationDay: Shape = recordOf<StationDay>('a day that stationDay gives', {
  id: aText,
  arrivals: finite,
  races: listOf(
    recordOf('arrivals', {
      ...QUANTILES,
      race: aText,
      arrivals: finite,
      sinceDrink: maybe(finite),
      take: maybe(isTake),
    }),
  ),
  quantiles: orNull(recordOf('quantiles', QUANTILES)),
  perMinute: listOf(isMinute),
  peak: orNull(recordOf('a peak', { count: finite, at: finite })),
  crewAt: orNull(finite),
  openFrom: orNull(finite),
  openUntil: orNull(finite),
  packedAt: maybe(orNull(finite)),
  handOut: maybe(oneOf('cups', 'bottles')),
  cups: drinks,
  ordered: maybe(drinks),
  gels: finite,
  prePour: partly('pre-pours', { water: isPrePour, sportsDrink: isPrePour }),
  volume: drinks,
  tables: recordOf('tables', { gel: finite, sportsDrink: finite, water: finite }),
  boxes: maybe(finite),
  jugsLeft: maybe(
    listOf(recordOf<JugsLeft>('jugs left', { at: finite, water: maybe(finite), sportsDrink: maybe(finite) })),
  ),
  shortage: maybe(
    orNull(
      recordOf<Shortage>('a shortage', { drink: oneOf('water', 'sportsDrink'), at: finite, seen: orNull(finite) }),
    ),
  ),
  packs: listOf(isPack),
  crew: recordOf<DayCrew>(
    'a crew',
    numbers<DayCrew>(['handOut', 'pour', 'gel', 'clean', 'captain', 'total', 'hours', 'shifts']),
  ),
});

const isStop: Shape = recordOf<Stop>('a stop', {
  station: aText,
  arrive: finite,
  leave: finite,
  measure: finite,
  side: oneOf('left', 'right', 'unclear'),
  load: listOf(recordOf('a load', { ...SUPPLY, count: finite, kg: finite })),
});

export const isRaceDay: Shape = remembered(
  recordOf<RaceDay>('the race day that dayStage gives', {
    stations: listOf(isStationDay),
    totals: recordOf('totals', { packs: listOf(isPack), crew: finite }),
    runs: listOf(
      recordOf<Run>('a run', { vehicle: aText, kind: oneOf('drop', 'collect'), stops: listOf(isStop), kg: finite }),
    ),
    resupply: maybe(
      listOf(
        recordOf<Resupply>('a second delivery', {
          station: aText,
          vehicle: maybe(aText),
          drink: oneOf('water', 'sportsDrink'),
          takes: finite,
          called: orNull(finite),
          arrives: orNull(finite),
          runsOut: finite,
          inTime: aFlag,
        }),
      ),
    ),
    fitted: isFitted,
    findings: listOf(isFinding),
  }),
);
