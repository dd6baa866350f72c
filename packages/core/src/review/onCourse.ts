/** Gates and bollards on the courses, and steps where wheels race, by the map. */
import type { Feature, FeatureKind } from '../ground/along.ts';
import type { Layout } from '../layout/layout.ts';
import type { PlanRace } from '../plan/plan.ts';
import { dayOfMap, noMap } from './byMap.ts';
import { type Check, COMMON_PRACTICE, check } from './check.ts';

/** Features of a kind on a course that no course before it has. */
function featuresOf({ courses, ground }: Layout, kind: FeatureKind): { course: string; features: Feature[] }[] {
  const seen = new Set<string>();
  return courses.flatMap(({ course: { id } }) => {
    const own = (ground?.along.get(id)?.features ?? []).filter((one) => one.kind === kind);
    const features = own.filter((one) => !seen.has(one.id));
    for (const one of own) seen.add(one.id);
    return features.length === 0 ? [] : [{ course: id, features }];
  });
}

export const gateOnCourse: Check = check(
  { code: 'gate-on-course', severity: 'warning', source: COMMON_PRACTICE, missing: noMap },
  (layout) =>
    featuresOf(layout, 'gate').map(({ course, features }) => ({
      params: { map: dayOfMap(layout.ground!), course, measures: features.map(({ from }) => from) },
      where: { ...ofCourse(layout, course), measure: features[0]!.from },
      measured: features.length,
      limit: 0,
    })),
);

/** Races on wheels on a course. */
export const onWheels = ({ plan }: Layout, course: string): PlanRace[] =>
  plan.races.filter((race) => race.course === course && race.division === 'wheels');

/** `where` of something on a course. */
export const ofCourse = ({ plan }: Layout, course: string): { path: string; course: string } => ({
  path: `/courses/${plan.courses.findIndex(({ id }) => id === course)}`,
  course,
});

export const stepsWithWheels: Check = check(
  {
    code: 'steps-with-wheels',
    severity: 'error',
    source: COMMON_PRACTICE,
    missing: (layout) =>
      noMap(layout) ?? (layout.plan.races.some(({ division }) => division === 'wheels') ? null : 'no-wheels'),
  },
  (layout) =>
    layout.courses.flatMap(({ course: { id } }) => {
      const races = onWheels(layout, id).map((race) => race.id);
      const steps = (layout.ground?.along.get(id)?.features ?? []).filter(({ kind }) => kind === 'steps');
      if (races.length === 0 || steps.length === 0) return [];
      return [
        {
          params: { map: dayOfMap(layout.ground!), races, measures: steps.map(({ from }) => from) },
          where: { ...ofCourse(layout, id), measure: steps[0]!.from },
          measured: steps.length,
          limit: 0,
        },
      ];
    }),
);
