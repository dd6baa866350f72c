/** The map of the ground itself: whether it can be read, how old it is, and what it does not show. */
import type { PlanGround } from '../ground/planGround.ts';
import { dayOfMap, noMap } from './byMap.ts';
import { isElsewhere } from './offMap.ts';
import { type Check, COMMON_PRACTICE, check } from './check.ts';

export const groundMissing: Check = check(
  {
    code: 'ground-missing',
    severity: 'warning',
    source: COMMON_PRACTICE,
    missing: ({ plan }) => (plan.ground === undefined ? 'no-ground' : null),
  },
  ({ plan, ground }) => (ground === undefined ? [{ params: { file: plan.ground! }, where: { path: '/ground' } }] : []),
);

/** Years that a map may be older than the race. */
const MOST_YEARS = 2;
/** Seconds of a day, days of a mean year. */
const DAY = 86_400_000;
const YEAR = 365.25;

export const mapOld: Check = check(
  {
    code: 'map-old',
    severity: 'note',
    source: COMMON_PRACTICE,
    missing: (layout) => noMap(layout) ?? (layout.plan.date === undefined ? 'no-date' : null),
  },
  ({ plan, ground }) => {
    const map = dayOfMap(ground!);
    const age = map === null ? null : (Date.parse(plan.date!) - Date.parse(map)) / DAY / YEAR;
    if (age !== null && age <= MOST_YEARS) return [];
    const found = { params: { map, age, most: MOST_YEARS }, where: { path: '/ground' } };
    return [age === null ? found : { ...found, measured: age, limit: MOST_YEARS }];
  },
);

export const hasBuildings = ({ buildings }: PlanGround): boolean => buildings.areas.length > 0;

const hasHydrants = ({ along }: PlanGround): boolean =>
  [...along.values()].some(({ keepClear }) => keepClear.some(({ kind }) => kind === 'hydrant'));

/** Absent is not none: what the map does not show is said to be not judged, once for the plan. */
export const groundSilent: Check = check(
  { code: 'ground-silent', severity: 'note', source: COMMON_PRACTICE, missing: noMap },
  (layout) => {
    const { ground, stations } = layout;
    const lacks = [
      ...(hasBuildings(ground!) ? [] : (['buildings'] as const)),
      ...(hasHydrants(ground!) ? [] : (['hydrants'] as const)),
    ];
    return lacks.length === 0 || stations.length === 0 || isElsewhere(layout)
      ? []
      : [{ params: { map: dayOfMap(ground!), lacks }, where: { path: '/ground' } }];
  },
);
