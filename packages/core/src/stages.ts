/**
 * The face `@halfcup/core/stages`: an analysis stage by stage, with every record on the way; for callers who keep the stages that a
 * change leaves alone.
 * @module @halfcup/core/stages
 */

// Stage by stage
export { type Kept, analyseOn, courseStage, dayStage, groundStage, layoutStage, passStage } from './analyse.ts';
export type { CourseSources } from './plan/courses.ts';

// Courses and their passes
export {
  type Course,
  type Pass,
  type Scale,
  type Side,
  type Skip,
  courseLength,
  startMeasure,
} from './course/course.ts';
export type { IndexedCourse } from './course/segmentIndex.ts';
export type { Mark } from './course/calibrate.ts';
export type { GpxDocument, GpxLine, GpxSegment, GpxWaypoint } from './gpx/document.ts';

// Stations, spacing, layout
export type { Direction, Leg, RaceSpacing, SeenStation, StationPass } from './station/station.ts';
export type { Item, LaidDirection, Layout, StationLayout, ToldPlace } from './layout/layout.ts';

// The ground beside the courses
export type { Ground } from './ground/ground.ts';
export type { GroundAlong, StreetPlace } from './ground/along.ts';
export type { PlanGround } from './ground/planGround.ts';
export type { GroundSources } from './plan/ground.ts';
export type { DayNeeds } from './layout/stretches.ts';

// Race day
export type { DayCrew, Pack, PrePour, Quantiles, RaceDay, Run, StationDay, Stop } from './raceday/day.ts';
export type { DayFound, Fields, ResultTexts } from './raceday/raceDay.ts';
export type { Supply, SupplyKind } from './kinds.ts';

// The review, and the list of its checks
export type { Check, DayFacts, Rule } from './review/check.ts';
export { CHECKS } from './review/checks.ts';
export { PLACED_RULES } from './review/placedRules.ts';
export { STAGE_RULES } from './review/stageRules.ts';
export { THEMES } from './review/themes.ts';
export type { Theme } from './text/params/themes.ts';
export { type CheckRun, type Review, type Reviewed, type StationFound, reviewLayout } from './review/review.ts';

// Parts of what improving and comparing give
export type { Move, Proof, Verified } from './improve/verify.ts';
export { type ClearOptions, type ClearPlace, clearPlace } from './improve/clearPlace.ts';
export type { LongestLeg, Standing } from './improve/standing.ts';
export { lengthLike, movedText } from './improve/change.ts';
export type { Change, ChangedItem, ChangedLeg, ChangedSpacing, MovedStation } from './improve/compare.ts';

// Findings and results
export type { Finding, LonLat, Result, Severity, Where } from './finding.ts';
