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
export type { DrinkState, StationPhase, StationState } from './raceday/stationClock.ts';
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

// By the clock: how thick runners are along a course, what a station is doing, where vehicles and sweeps are
export {
  type CrowdAlong,
  type SweepPlace,
  type VehicleAt,
  clockSpan,
  crowdAlong,
  stateAt,
  sweepsAt,
  vehiclesAt,
} from './clock.ts';
export type { OnTheMove } from './raceday/onTheMove.ts';
export type { Analysis } from './analyse.ts';

// What the day teaches: what is left, what was used, rates for the next
export { type LeftKey, LEFT_KEYS } from './kinds.ts';
export {
  type LeftCounts,
  type LeftField,
  type SentDay,
  type Used,
  leftFields,
  usedOf,
  usedOfTexts,
} from './raceday/leftovers.ts';
export { type StationUsed, readLeftovers } from './raceday/leftoversTable.ts';
export { type Presence, type RosterRow, rosterRows } from './raceday/rostered.ts';
export { readRoster } from './raceday/roster.ts';
export type { PersonInput } from './plan/input.ts';
export { type OrderLine, type SupplyOrder, supplyOrder } from './raceday/supplyOrder.ts';
export {
  type DayHeads,
  type Learnt,
  type LearntSupplies,
  type Spread,
  learnRates,
  learntSupplies,
} from './raceday/learn.ts';

// Findings, results and units
export { type Finding, type LonLat, type Result, type Severity, type Where, findingLine } from './finding.ts';
export type { Degrees, In, Kilograms, Latitude, Litres, Longitude, Metres, Seconds } from './units.ts';
