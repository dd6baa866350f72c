/**
 * One station laid out: what its races see of it, with every item on the ground.
 */
import { type Result, good } from '../finding.ts';
import type { Plan, PlanStation } from '../plan/plan.ts';
import { crewOf } from '../plan/practice.ts';
import type { CourseTable } from '../station/directions.ts';
import { seeStation } from '../station/seeStation.ts';
import type { SeenStation } from '../station/station.ts';
import { type PlacedAt, layDirections } from './items.ts';
import type { StationLayout } from './layout.ts';
import type { DayNeeds } from './stretches.ts';

/** What the plan places by hand: items of the lead's direction. */
export const byThePlan =
  ({ items }: PlanStation): PlacedAt =>
  ({ lead }, kind) =>
    lead ? items[kind] : undefined;

/** A seen station with its items; `day`: what race day asks of it; `placedAt`: places of items other than the practice's. */
export function laySeen(
  plan: Plan,
  seen: SeenStation,
  courses: CourseTable,
  day?: DayNeeds,
  placedAt: PlacedAt = byThePlan(seen.station),
): StationLayout {
  const { station, practice, passes, directions } = seen;
  const { handSpacing } = crewOf(plan, station);
  const laid = {
    ...seen,
    directions: layDirections(directions, {
      station,
      practice,
      passes,
      courses,
      handSpacing,
      day,
      language: plan.language,
      placedAt,
    }),
  };
  return day === undefined ? laid : { ...laid, needs: day };
}

/** The whole layout of the plan's station at `index`; `day`: what race day asks of it. */
export function layStation(plan: Plan, index: number, courses: CourseTable, day?: DayNeeds): Result<StationLayout> {
  const seen = seeStation(plan, index, courses);
  return seen.ok ? good(laySeen(plan, seen.value, courses, day)) : seen;
}
