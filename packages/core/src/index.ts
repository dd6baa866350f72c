/**
 * The face `@halfcup/core`: a plan and its files in, the whole analysis out.
 * Geometry alone: `@halfcup/core/geometry`; reading GPX alone: `@halfcup/core/gpx`.
 */
export { type Analysis, analyse, courseStage, layoutStage } from './analyse.ts';
export { type Finding, type LonLat, type Result, type Severity, type Where, findingLine } from './finding.ts';
export type { Course, Pass, Side } from './course/course.ts';
export type { IndexedCourse } from './course/segmentIndex.ts';
export type { GpxDocument, GpxLine, GpxSegment, GpxWaypoint } from './gpx/document.ts';
export type { Item, LaidDirection, Layout, StationLayout } from './layout/layout.ts';
export { type Sources, chooseLine, coursesOf } from './plan/courses.ts';
export type * from './plan/plan.ts';
export type { Check } from './review/check.ts';
export { CHECKS, reviewLayout } from './review/review.ts';
export type { Direction, Leg, RaceSpacing, StationPass } from './station/station.ts';
export { itemWord } from './station/wording.ts';
