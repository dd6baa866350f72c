/** Values of a plan that are good each, but not together: ranges that are upside down. */
import { describeValue } from '../units.ts';
import type { Fault } from './fault.ts';
import type { Plan, PlanCourse, Practice } from './plan.ts';

const upsideDown = (path: Fault['path'], low: readonly [string, number], high: readonly [string, number]): Fault[] =>
  low[1] <= high[1] ? [] : [{ code: 'plan-value', path: [...path, high[0]], message: `found ${describeValue(high[1])} m where ${low[0]} is ${describeValue(low[1])} m; accepted: ${high[0]} not less than ${low[0]}` }];

const RANGES = [['trashFrom', 'trashTo'], ['minSpacing', 'maxSpacing']] as const;

/** Ranges of a practice that are upside down, of those that `given` has a say in. */
const practiceFaults = (practice: Practice, given: Partial<Practice>, path: Fault['path']): Fault[] =>
  RANGES.filter((keys) => keys.some((key) => given[key] !== undefined)).flatMap(([low, high]) => upsideDown(path, [low, practice[low]], [high, practice[high]]));

const partFaults = (course: PlanCourse, index: number): Fault[] =>
  (course.parts ?? []).flatMap((part, at) =>
    part.to !== undefined && part.to <= part.from
      ? [{ code: 'plan-value' as const, path: ['courses', index, 'parts', at, 'to'], message: `found ${part.to} m where from is ${part.from} m; accepted: more than from (a stretch run the other way is a course of its own with "reverse": true)` }]
      : [],
  );

/** Faults between values of a plan that has been read. */
export function consistencyFaults(plan: Plan): readonly Fault[] {
  const steps = plan.supplies.heatSteps;
  return [
    ...plan.courses.flatMap(partFaults),
    ...plan.stations.flatMap((station, index) => practiceFaults({ ...plan.practice, ...station.practice }, station.practice, ['stations', index, 'practice'])),
    ...practiceFaults(plan.practice, plan.practice, ['practice']),
    ...(steps !== undefined && steps[0] > steps[1] ? [{ code: 'plan-value' as const, path: ['supplies', 'heatSteps'], message: `found ${steps[0]} before ${steps[1]}; accepted: the lower step first` }] : []),
  ];
}
