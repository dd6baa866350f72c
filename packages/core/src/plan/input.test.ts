/** The type of a written plan against the one schema: the same keys, and values that the reader takes. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { planJsonSchema } from '../export/schemas/plan.ts';
import { MINIMAL_PLAN } from '../testing/plans.ts';
import type {
  ClockInput,
  CourseInput,
  CrewInput,
  MarkInput,
  PlanInput,
  PracticeInput,
  RaceInput,
  StationInput,
  SuppliesInput,
  VehicleInput,
  WaveInput,
} from './input.ts';
import { readPlan } from './read.ts';

/** Every key of a type: the compiler refuses one too few and one too many. */
type Keys<T> = { readonly [key in keyof Required<T>]: 0 };

const PLAN: Keys<PlanInput> = {
  format: 0,
  version: 0,
  name: 0,
  revision: 0,
  date: 0,
  timeZone: 0,
  units: 0,
  language: 0,
  courses: 0,
  races: 0,
  stations: 0,
  zones: 0,
  practice: 0,
  supplies: 0,
  crew: 0,
  vehicles: 0,
  clock: 0,
  contacts: 0,
  waivers: 0,
  variants: 0,
  context: 0,
  ground: 0,
  weather: 0,
  people: 0,
  prices: 0,
  numbers: 0,
};
const COURSE: Keys<CourseInput> = {
  id: 0,
  name: 0,
  gpx: 0,
  line: 0,
  parts: 0,
  track: 0,
  gaps: 0,
  reverse: 0,
  drawn: 0,
  length: 0,
  marks: 0,
  certificate: 0,
};
const MARK: Keys<MarkInput> = { at: 0, measure: 0, name: 0 };
const RACE: Keys<RaceInput> = {
  id: 0,
  name: 0,
  course: 0,
  division: 0,
  waves: 0,
  finish: 0,
  slow: 0,
  show: 0,
  startFlow: 0,
  startWidth: 0,
  cutoff: 0,
  late: 0,
  gradient: 0,
};
const WAVE: Keys<WaveInput> = { time: 0, entrants: 0, finish: 0 };
const STATION: Keys<StationInput> = {
  id: 0,
  name: 0,
  at: 0,
  on: 0,
  side: 0,
  lead: 0,
  races: 0,
  passes: 0,
  serves: 0,
  tables: 0,
  boxes: 0,
  width: 0,
  street: 0,
  fixed: 0,
  why: 0,
  walked: 0,
  practice: 0,
  supplies: 0,
  crew: 0,
  items: 0,
  points: 0,
  people: 0,
  note: 0,
  used: 0,
};
const PRACTICE: Keys<PracticeInput> = {
  signAhead: 0,
  signTolerance: 0,
  gelAhead: 0,
  tableGap: 0,
  tableLength: 0,
  trashFrom: 0,
  trashTo: 0,
  boxEvery: 0,
  kerb: 0,
  setback: 0,
  clearWidth: 0,
  snapRadius: 0,
  pinR95: 0,
  courseR95: 0,
  sideConfidence: 0,
  maxSpacing: 0,
  minSpacing: 0,
  maxGrade: 0,
  bendClear: 0,
  firstAfter: 0,
  lastBefore: 0,
  tablesRoom: 0,
  placedWithin: 0,
};
const SUPPLIES: Keys<SuppliesInput> = {
  heat: 0,
  wbgtC: 0,
  heatSteps: 0,
  gelOrder: 0,
  handOut: 0,
  flavours: 0,
  drinkRate: 0,
  waterShare: 0,
  take: 0,
  waste: 0,
  reserve: 0,
  cup: 0,
  fill: 0,
  cupsPerLayer: 0,
  layers: 0,
  packs: 0,
  weights: 0,
  cupsPerBag: 0,
  cupsPerBox: 0,
  resupply: 0,
  prePourFloor: 0,
  prePourSafety: 0,
};
const PACKS: Keys<Required<SuppliesInput>['packs']> = {
  cups: 0,
  waterJug: 0,
  sportsDrinkJug: 0,
  gels: 0,
  gloves: 0,
  bags: 0,
  towels: 0,
  stackingSheets: 0,
};
const WEIGHTS: Keys<Required<SuppliesInput>['weights']> = { ...PACKS, table: 0, sign: 0, box: 0 };
const CREW: Keys<CrewInput> = {
  pourers: 0,
  pourRate: 0,
  handRate: 0,
  fromTables: 0,
  tapTime: 0,
  tableCost: 0,
  pourWithin: 0,
  breakDown: 0,
  breakDownTable: 0,
  handSpacing: 0,
  gelRate: 0,
  cleanPer: 0,
  ready: 0,
  setUp: 0,
  minimum: 0,
  longest: 0,
};
const VEHICLE: Keys<VehicleInput> = {
  id: 0,
  name: 0,
  kg: 0,
  places: 0,
  kmh: 0,
  stop: 0,
  unload: 0,
  standBy: 0,
  from: 0,
};
const CLOCK: Keys<ClockInput> = { course: 0, measure: 0, accessOpens: 0, closes: 0, sweep: 0, reopens: 0 };

interface Node {
  readonly properties?: Readonly<Record<string, Node>>;
  readonly items?: Node;
}
const schema = planJsonSchema() as Node;
const inside = (...path: readonly string[]): Node =>
  path.reduce((node, key) => (key === '[]' ? node.items! : node.properties![key]!), schema);

describe('the type of a written plan', () => {
  test.each<[string, object, Node]>([
    ['a plan', PLAN, schema],
    ['a course', COURSE, inside('courses', '[]')],
    ['a mark', MARK, inside('courses', '[]', 'marks', '[]')],
    ['a race', RACE, inside('races', '[]')],
    ['a wave', WAVE, inside('races', '[]', 'waves', '[]')],
    ['a station', STATION, inside('stations', '[]')],
    ['a practice', PRACTICE, inside('practice')],
    ['a station’s practice', PRACTICE, inside('stations', '[]', 'practice')],
    ['supplies', SUPPLIES, inside('supplies')],
    ['packs', PACKS, inside('supplies', 'packs')],
    ['weights', WEIGHTS, inside('supplies', 'weights')],
    ['a crew', CREW, inside('crew')],
    ['a vehicle', VEHICLE, inside('vehicles', '[]')],
    ['a clock', CLOCK, inside('clock', '[]')],
  ])('has the keys of the schema: %s', (_, keys, node) => {
    expect(Object.keys(keys).toSorted()).toEqual(Object.keys(node.properties!).toSorted());
  });

  test('lets through what the reader takes', () => {
    const plan: PlanInput = {
      format: 'halfcup-plan',
      version: 1,
      courses: [
        {
          id: 'c',
          line: [
            [-17.4, -33.2, 3],
            [-17.36, -33.2],
          ],
          length: '3.73 km',
          marks: [{ name: '1 km' }],
        },
      ],
      races: [
        {
          id: 'r',
          course: 'c',
          startWidth: '8 yd',
          waves: [{ time: '08:00', entrants: 10, finish: { times: ['0:25:00', 1600] } }],
        },
      ],
      stations: [
        { id: 's1', on: { course: 'c', measure: '2 km', side: 'right' }, practice: { kerb: '9 ft' } },
        {
          id: 's2',
          at: [-17.37, -33.2],
          supplies: { cup: '7 fl oz', weights: { box: '1 kg' } },
          crew: { ready: '30 min' },
        },
      ],
      vehicles: [{ id: 'v', stop: '15 min', from: '04:00' }],
      variants: [{ name: 'v', stations: { s1: { side: 'left', width: '6 m' } } }],
    };
    const read = readPlan(plan);
    expect(read.findings).toEqual([]);
    expect(read.ok && read.value.plan.stations[1]?.supplies.weights).toEqual({ box: 1 });
  });
});

describe('a plan that is no text', () => {
  const contract = readFileSync(new URL('contract.plan.json', import.meta.url), 'utf8');

  test('reads as its text does, and its places are those of its JSON text', () => {
    const read = readPlan(JSON.parse(contract));
    const same = readPlan(contract, 'plan.json');
    if (!read.ok || !same.ok) throw new Error('refused');
    expect(read.value.plan).toEqual(same.value.plan);
    expect(read.value.text).toBe(JSON.stringify(JSON.parse(contract), null, 2));
    expect(read.value.placeOf('/version')).toEqual({ line: 3, column: 14 });
  });

  test('tells of faults by their path alone, for there is no file', () => {
    const { ok, findings } = readPlan({ ...MINIMAL_PLAN, name: 7, units: 'miles' } as unknown as PlanInput);
    expect(ok).toBe(false);
    expect(findings.map(({ where }) => where)).toEqual([{ path: '/name' }, { path: '/units' }]);
    const named = readPlan({ ...MINIMAL_PLAN, name: 7 } as unknown as PlanInput, 'made.json');
    expect(named.findings[0]?.where).toEqual({ file: 'made.json', path: '/name' });
  });

  test('may have keys that are undefined, which count as left out', () => {
    expect(readPlan({ ...MINIMAL_PLAN, name: undefined } as unknown as PlanInput).ok).toBe(true);
  });

  test.each([undefined, null, 7, true, [], () => 1, 7n, Symbol('plan')])('%s is no plan, and says so', (value) => {
    const { ok, findings } = readPlan(value as unknown as PlanInput);
    expect([ok, findings[0]?.code]).toEqual([false, 'plan-version']);
  });

  test('that JSON cannot hold is refused', () => {
    const round: Record<string, unknown> = { ...MINIMAL_PLAN };
    round['name'] = round;
    const codes = (value: unknown): readonly (string | undefined)[] =>
      readPlan(value as PlanInput).findings.map(({ code, where }) => `${code} ${where.path}`);
    expect(codes(round)).toEqual(['plan-not-json undefined']);
    expect(codes({ ...MINIMAL_PLAN, name: 7n })).toEqual(['plan-value /name']);
    expect(codes({ ...MINIMAL_PLAN, practice: { kerb: NaN } })).toEqual(['plan-value /practice/kerb']);
    expect(codes({ ...MINIMAL_PLAN, date: new Date(0) })).toEqual(['plan-value /date']);
  });
});
