/**
 * The face `@halfcup/core/raceday`: who arrives when, and what that needs, from passes and practice alone. A race has a field
 * ({@link fieldOf}), the field runs its course ({@link runRace}) and arrives at stations ({@link arrivalsAt}), and each has its day
 * ({@link stationDay}); {@link raceDayOf} does all of it for a plan.
 * @module @halfcup/core/raceday
 */

// Who runs: the field of a race, from a model or from past results
export { fieldOf } from './raceday/field.ts';
export { type PastResults, resultsKey } from './raceday/finishSource.ts';
export { type PastTimes, readResults } from './raceday/results.ts';
export type { PastSplit } from './raceday/splitColumns.ts';

// When they arrive
export {
  type PassedStation,
  type RaceOnCourse,
  arrivalsAt,
  racesOnCourses,
  runRace,
  timesAt,
} from './raceday/arrivals.ts';
export type { Hills } from './raceday/hills.ts';
export type { Sweep } from './raceday/sweep.ts';
export type { CourseTable } from './station/directions.ts';
export type { Direction, StationPass } from './station/station.ts';

// What that needs: at one station, on the whole day
export { stationDay } from './raceday/stationDay.ts';
export { massCurve } from './raceday/prePour.ts';
export { type DayStation, type ResultTexts, raceDayOf } from './raceday/raceDay.ts';
export type {
  DayCrew,
  Field,
  FittedField,
  JugsLeft,
  Pack,
  PassArrivals,
  PrePour,
  Quantiles,
  RaceArrivals,
  RaceDay,
  Resupply,
  Run,
  Shortage,
  StationArrivals,
  StationDay,
  Stop,
} from './raceday/day.ts';
export type { Supply, SupplyKind } from './kinds.ts';

// What the day teaches
export { type DayHeads, type Learnt, learnRates } from './raceday/learn.ts';

// Findings, results and units
export { type Finding, type LonLat, type Result, type Severity, type Where, findingLine } from './finding.ts';
export type { Degrees, In, Kilograms, Latitude, Litres, Longitude, Metres, Seconds } from './units.ts';
