/**
 * The face `@halfcup/core/raceday`: who arrives when, and what that needs, from passes and practice alone.
 */
export { type PassedStation, type RaceOnCourse, arrivalsAt, racesOnCourses, runRace, timesAt } from './raceday/arrivals.ts';
export type { DayCrew, Field, Pack, PrePour, Quantiles, RaceArrivals, RaceDay, Run, StationArrivals, StationDay, Stop } from './raceday/day.ts';
export { fieldOf, resultsKey, startFlowOf } from './raceday/field.ts';
export { learnRates } from './raceday/learn.ts';
export { type DayStation, hasField, raceDayOf } from './raceday/raceDay.ts';
export { readResults } from './raceday/results.ts';
export { massCurve, prePourOf } from './raceday/prePour.ts';
export { stationDay } from './raceday/stationDay.ts';
