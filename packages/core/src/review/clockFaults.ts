/** Clock times of a course that cannot all be true: out of order at a place, or falling along the course. */
import { courseLength } from '../course/course.ts';
import type { Layout } from '../layout/layout.ts';
import type { PlanClock } from '../plan/plan.ts';
import type { ClockKey } from '../raceday/clockAlong.ts';
import type { ClockFault } from '../text/params/reviewTimes.ts';
import { courseOf } from './standing.ts';

/** In the order in which they come at a place. */
const ORDER: readonly ClockKey[] = ['accessOpens', 'closes', 'sweep', 'reopens'];

/** Faults of one course, those at a place first. */
export interface Disordered {
  readonly course: string;
  readonly faults: readonly ClockFault[];
}

/** Courses whose clock is out of order, in the plan's order. */
export const disordered = ({ plan }: Pick<Layout, 'plan'>): Disordered[] =>
  plan.courses.flatMap(({ id }) => {
    const entries = plan.clock.filter(({ course }) => course === id).sort((a, b) => a.measure - b.measure);
    // The sweep's own rise is checked where the sweep of a race is made of it: `sweep-impossible`.
    const swept = plan.races.some(({ course, waves }) => course === id && waves.length > 0);
    const faults = [
      ...entries.flatMap(outOfOrder),
      ...(swept ? [] : falling(entries, 'sweep')),
      // A road may close or open to vehicles in any order along the course; it reopens behind the sweep.
      ...falling(entries, 'reopens'),
    ];
    return faults.length === 0 ? [] : [{ course: id, faults }];
  });

/** A place so near the finish, metres, is the finish. */
const AT_FINISH = 100;
/** By so much, seconds, a cutoff may be later than the sweep: who is ahead of it is still coming in. */
const BEHIND_SWEEP = 30 * 60;

/** Cutoffs that are later than the road reopens at the finish, or much later than the sweep is there, by course. */
export const cutoffFaults = (layout: Layout, course: string): ClockFault[] => {
  const finish = courseLength(courseOf(layout, course).course);
  const along = layout.plan.clock.filter((entry) => entry.course === course).sort((a, b) => a.measure - b.measure);
  // Entries beyond the course are found by themselves: `clock-beyond`.
  if (along.some(({ measure }) => measure > finish + AT_FINISH)) return [];
  const there = along.filter(({ measure }) => measure >= finish - AT_FINISH);
  const rises = falling(along, 'sweep').length === 0;
  return layout.plan.races.flatMap(({ id, course: of, cutoff }) => {
    if (of !== course || cutoff === undefined) return [];
    const worst = there
      .flatMap(({ measure, sweep, reopens }) => [
        { key: 'reopens' as const, time: reopens ?? Infinity, room: 0, measure },
        { key: 'sweep' as const, time: rises ? (sweep ?? Infinity) : Infinity, room: BEHIND_SWEEP, measure },
      ])
      .find(({ time, room }) => cutoff > time + room);
    if (worst === undefined) return [];
    const { key, time, measure } = worst;
    return [{ is: 'cutoff' as const, race: id, cutoff, key, time, measure }];
  });
};

function outOfOrder(entry: PlanClock): ClockFault[] {
  const given = ORDER.flatMap((key) => (entry[key] === undefined ? [] : [{ key, time: entry[key] }]));
  return given.slice(1).flatMap((after, k) => {
    const before = given[k]!;
    return after.time >= before.time ? [] : [{ is: 'order' as const, measure: entry.measure, before, after }];
  });
}

function falling(entries: readonly PlanClock[], key: 'sweep' | 'reopens'): ClockFault[] {
  const given = entries.flatMap(({ measure, [key]: time }) => (time === undefined ? [] : [{ measure, time }]));
  return given.slice(1).flatMap((to, k) => {
    const from = given[k]!;
    return to.time >= from.time ? [] : [{ is: 'falls' as const, key, from, to }];
  });
}
