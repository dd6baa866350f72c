/**
 * The face `@halfcup/core`: a plan and its files in, the whole analysis out, and questions to it. The records that a plan is
 * made of are in `@halfcup/core/plan`, the analysis stage by stage in `@halfcup/core/stages`, JSON documents and their schemas in
 * `@halfcup/core/schemas`, findings in other languages in `@halfcup/core/sentences`, quantities in `@halfcup/core/units`;
 * geometry alone in `@halfcup/core/geometry`, GPX alone in `@halfcup/core/gpx`, papers in `@halfcup/core/papers`, GeoJSON, which
 * loads Turf, in `@halfcup/core/geojson`.
 * @module @halfcup/core
 */

// Read, begin and change a plan
export { readPlan } from './plan/read.ts';
export type { PlanInput } from './plan/input.ts';
export type { Plan, PlanDocument } from './plan/plan.ts';
export { type NamedFiles, filesNamedBy } from './plan/files.ts';
export { type StartOptions, startPlan } from './plan/start.ts';
export { editPlan } from './plan/edit.ts';
export { withVariant } from './plan/variant.ts';

// A plan and its files in one call
export {
  type LaidPlan,
  type PlanFile,
  type PlanFiles,
  type PlanJob,
  type ReviewedPlan,
  layoutPlan,
  reviewPlan,
} from './whole.ts';

// Analyse a plan, whole or again after a change
export { type Analysis, type Sources, analyse } from './analyse.ts';
export { reanalyse } from './reanalyse.ts';

// What an analysis holds
export type { Pass } from './course/course.ts';
export type { Leg, RaceSpacing } from './station/station.ts';
export type { Item, LaidDirection, Layout, StationLayout } from './layout/layout.ts';
export type { RaceDay, StationDay } from './raceday/day.ts';
export type { CheckRun } from './review/review.ts';

// Ask it
export { type NextStation, type RaceRunners, type StretchRunners, etaAt, nextStation, runnersAt } from './questions.ts';

// Review what stands on the ground
export { type PlacedReview, type PlacedVerdict, type Verdict, reviewPlaced } from './review/placed.ts';
export type { PlacedStation } from './review/placedStation.ts';
export { type BuiltReview, reviewBuilt } from './asBuilt.ts';

// Improve it, and compare two of its states
export { type ImproveOptions, type Improvement, improve } from './improve/improve.ts';
export { type Comparison, compareAnalyses } from './improve/compare.ts';

// Take it to other programs
export { toCsv } from './export/csv.ts';
export { toGpx } from './export/waypoints.ts';
export { toCalendar } from './export/calendar.ts';

// Findings and results
export { type Finding, type LonLat, type Result, type Severity, type Where, findingLine } from './finding.ts';
export { findingSentence } from './text/inWords.ts';
