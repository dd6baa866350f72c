/** Plans and layouts for tests, built from the few keys that a case is about. Not part of the package. */
import { layoutStage } from '../analyse.ts';
import type { Course } from '../course/course.ts';
import { indexCourse } from '../course/segmentIndex.ts';
import type { Layout } from '../layout/layout.ts';
import { DEFAULT_CREW, DEFAULT_PRACTICE, DEFAULT_SUPPLIES } from '../plan/defaults.ts';
import type { Plan, PlanCourse, PlanRace, PlanStation, Practice } from '../plan/plan.ts';
import { readPlan } from '../plan/read.ts';
import { fieldsOf, raceDayOf } from '../raceday/raceDay.ts';
import type { DayFacts } from '../review/check.ts';
import { courseTable } from '../station/seeStation.ts';
import { valueOf } from './courses.ts';

export const planCourse = (id: string, keys: Partial<PlanCourse> = {}): PlanCourse => ({
  id,
  name: id,
  gaps: 'refuse',
  reverse: false,
  drawn: 'recorded',
  marks: [],
  ...keys,
});

export const planRace = (id: string, course: string): PlanRace => ({
  id,
  name: id,
  course,
  division: 'run',
  waves: [],
  show: 0.9,
  late: 'out',
  gradient: false,
});

export const planStation = (keys: Partial<PlanStation>): PlanStation => ({
  id: 's1',
  name: 's1',
  passes: 'lead',
  serves: ['sportsDrink', 'water'],
  tables: {},
  fixed: false,
  practice: {},
  supplies: {},
  crew: {},
  items: {},
  points: [],
  people: {},
  ...keys,
});

/** A plan as it is read from a file with these keys. */
export const planFrom = (keys: Readonly<Record<string, unknown>>): Plan =>
  valueOf(readPlan(JSON.stringify({ format: 'halfcup-plan', version: 1, ...keys }), 'plan.json')).plan;

/** What a test's plan has that is not the default. */
export interface PlanKeys {
  readonly courses?: readonly PlanCourse[];
  readonly races?: readonly PlanRace[];
  readonly stations?: readonly PlanStation[];
  readonly practice?: Partial<Practice>;
}

export const planOf = ({ courses = [], races = [], stations = [], practice = {} }: PlanKeys): Plan => ({
  format: 'halfcup-plan',
  version: 1,
  name: 'test',
  units: 'metric',
  language: 'en',
  courses,
  races,
  stations,
  zones: [],
  practice: { ...DEFAULT_PRACTICE, ...practice },
  supplies: DEFAULT_SUPPLIES,
  crew: DEFAULT_CREW,
  vehicles: [],
  clock: [],
  contacts: {},
  waivers: [],
  variants: [],
});

/** The layout of stations on courses that are drawn already; one race on each course, of its id, unless `races` says otherwise. */
export function layoutOf(
  courses: readonly Course[],
  stations: readonly Partial<PlanStation>[],
  keys: Omit<PlanKeys, 'courses' | 'stations'> = {},
): Layout {
  const plan = planOf({
    races: courses.map(({ id }) => planRace(id, id)),
    ...keys,
    courses: courses.map(({ id }) => planCourse(id)),
    stations: stations.map((station, k) => planStation({ id: `s${k + 1}`, name: `s${k + 1}`, ...station })),
  });
  return valueOf(layoutStage(plan, courses.map(indexCourse)));
}

/** As little as the text of a plan may hold. */
export const MINIMAL_PLAN = {
  format: 'halfcup-plan',
  version: 1,
  courses: [{ id: 'full', gpx: 'full.gpx' }],
  races: [{ id: 'm', course: 'full' }],
  stations: [{ id: 's1', at: [-150, -48] }],
} as const;

/** Who runs on a layout, and the day that comes of it: what checks of times look at. */
export function factsOf(layout: Layout): DayFacts {
  const table = courseTable(layout.courses);
  const { races } = fieldsOf(layout.plan, table, new Map());
  return { races, day: raceDayOf(layout.plan, layout.stations, table, new Map()) };
}

/** A layout whose plan has other keys, none of which moves anything. */
export const planned = (layout: Layout, keys: Partial<Plan>): Layout => ({
  ...layout,
  plan: { ...layout.plan, ...keys },
});
