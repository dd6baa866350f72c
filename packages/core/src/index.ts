/**
 * The face `@halfcup/core`: a plan and its files in, the whole analysis out.
 * Geometry alone: `@halfcup/core/geometry`; reading and writing GPX alone: `@halfcup/core/gpx`;
 * GeoJSON, which loads Turf: `@halfcup/core/geojson`.
 */
export { type Analysis, type Sources, analyse, analyseOn, courseStage, dayStage, layoutStage, passStage } from './analyse.ts';
export { reanalyse } from './reanalyse.ts';
export { type Finding, type LonLat, type Result, type Severity, type Where, findingLine } from './finding.ts';
export { type Course, type Pass, type Side, courseLength, startMeasure } from './course/course.ts';
export type { IndexedCourse } from './course/segmentIndex.ts';
export type { GpxDocument, GpxLine, GpxSegment, GpxWaypoint } from './gpx/document.ts';
export type { Item, LaidDirection, Layout, StationLayout } from './layout/layout.ts';
export { chooseLine, coursesOf } from './plan/courses.ts';
export { editPlan } from './plan/edit.ts';
export { placeFindings } from './plan/placeFindings.ts';
export type * from './plan/plan.ts';
export { practiceOf } from './plan/practice.ts';
export { readPlan } from './plan/read.ts';
export { type StartOptions, startPlan } from './plan/start.ts';
export { withVariant } from './plan/variant.ts';
export type { Check, Rule } from './review/check.ts';
export { CHECKS } from './review/checks.ts';
export { type PlacedReview, type PlacedVerdict, type Verdict, reviewPlaced } from './review/placed.ts';
export { type CheckRun, type Review, reviewLayout } from './review/review.ts';
export { STAGE_RULES } from './review/stageRules.ts';
export type { Direction, Leg, RaceSpacing, StationPass } from './station/station.ts';
export { itemWord } from './station/wording.ts';
export { lengthLike, movedText } from './improve/change.ts';
export { type Change, type ChangedItem, type ChangedLeg, type ChangedSpacing, type Comparison, type MovedStation, compareAnalyses } from './improve/compare.ts';
export { type ImproveOptions, type Improvement, improve } from './improve/improve.ts';
export { type LongestLeg, type Standing, standingOf } from './improve/standing.ts';
export type { Move, Proof } from './improve/verify.ts';
export { compareDocument } from './export/compareDocument.ts';
export { type ImproveDocument, improveDocument } from './export/improveDocument.ts';
export {
  type CourseDocument,
  type LayoutDocument,
  type SnapDocument,
  type SnappedPoint,
  type StationDocument,
  courseDocument,
  findingDocument,
  layoutDocument,
  snapDocument,
} from './export/documents.ts';
export { toCalendar } from './export/calendar.ts';
export { toCsv } from './export/csv.ts';
export { type CsvCell, csvText, textOfCell } from './export/csvText.ts';
export { toGpx } from './export/waypoints.ts';
export { type GridDigits, type GridReference, gridReference } from './export/gridReference.ts';
export { type FileDigest, type ReviewCounts, type ReviewDocument, type ReviewedFiles, countsOf, reviewDocument } from './export/reviewDocument.ts';
export { compareSchema } from './export/schemas/compare.ts';
export { type RaceDayDocument, type StationDayDocument, raceDayDocument } from './export/raceDayDocument.ts';
export type { RaceDay, StationDay } from './raceday/day.ts';
export { courseSchema } from './export/schemas/course.ts';
export { findingSchema } from './export/schemas/finding.ts';
export { improveSchema } from './export/schemas/improve.ts';
export { layoutSchema } from './export/schemas/layout.ts';
export { planJsonSchema } from './export/schemas/plan.ts';
export { raceDaySchema } from './export/schemas/raceDay.ts';
export { reviewSchema } from './export/schemas/review.ts';
export { snapSchema } from './export/schemas/snap.ts';
export { type ReportInput, reportHtml } from './export/sheets/report.ts';
export {
  type Degrees,
  type In,
  type Kilograms,
  type Latitude,
  type LengthStyle,
  type LengthUnit,
  type Litres,
  type Longitude,
  type Metres,
  type Parsed,
  type Seconds,
  type UnitSystem,
  formatClock,
  formatDuration,
  formatLength,
  formatMass,
  formatMeasure,
  formatMinute,
  formatVolume,
  lengthIn,
  metres,
  parseClock,
  parseDuration,
  parseLength,
  parseMass,
  parseVolume,
} from './units.ts';
