/**
 * The face `@halfcup/core/raceday`: who arrives when, and what that needs, from passes and practice alone.
 * @module @halfcup/core/raceday
 */
export { type PassedStation, type RaceOnCourse, arrivalsAt, racesOnCourses, runRace, timesAt } from './raceday/arrivals.ts';
export type { Hills } from './raceday/hills.ts';
export type { Sweep } from './raceday/sweep.ts';
export type { DayCrew, Field, Pack, PrePour, Quantiles, RaceArrivals, RaceDay, Run, StationArrivals, StationDay, Stop } from './raceday/day.ts';
export { type PastResults, fieldOf, resultsKey, startFlowOf } from './raceday/field.ts';
export { type DayHeads, type Learnt, learnRates } from './raceday/learn.ts';
export { type DayStation, type ResultTexts, hasField, raceDayOf } from './raceday/raceDay.ts';
export { type PastTimes, readResults } from './raceday/results.ts';
export { massCurve } from './raceday/prePour.ts';
export { stationDay } from './raceday/stationDay.ts';
export type { CourseTable } from './station/directions.ts';
export type { Direction, StationPass } from './station/station.ts';
export { type Finding, type LonLat, type Result, type Severity, type Where, findingLine } from './finding.ts';
export type { Degrees, In, Kilograms, Latitude, Litres, Longitude, Metres, Seconds } from './units.ts';
