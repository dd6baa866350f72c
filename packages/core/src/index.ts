/**
 * The face `@halfcup/core`: a plan and its files in, the whole analysis out.
 * Geometry alone: `@halfcup/core/geometry`; reading and writing GPX alone: `@halfcup/core/gpx`;
 * papers: `@halfcup/core/papers`; GeoJSON, which loads Turf: `@halfcup/core/geojson`.
 * @module @halfcup/core
 */

// Read, begin and change a plan
export { readPlan } from './plan/read.ts';
export type {
  ClockInput,
  CourseInput,
  CrewInput,
  FinishInput,
  MarkInput,
  PlanInput,
  PracticeInput,
  Quantity,
  RaceInput,
  StationChanges,
  StationInput,
  SuppliesInput,
  VehicleInput,
  WaveInput,
} from './plan/input.ts';
export { ITEM_KINDS, formOf } from './kinds.ts';
export type { Supply, SupplyKind } from './kinds.ts';
export { type NamedFiles, filesNamedBy } from './plan/files.ts';
export { placeFindings } from './plan/placeFindings.ts';
export { editPlan } from './plan/edit.ts';
export { withVariant } from './plan/variant.ts';
export { type StartOptions, startPlan } from './plan/start.ts';
export type {
  Crew,
  DeclaredSide,
  Division,
  FinishTimes,
  Heat,
  ItemForm,
  ItemKind,
  Packs,
  PassChoice,
  Place,
  Plan,
  PlanClock,
  PlanCourse,
  PlanDocument,
  PlanMark,
  PlanPart,
  PlanPoint,
  PlanRace,
  PlanStation,
  PlanVariant,
  PlanVehicle,
  PlanWaiver,
  PlanWave,
  PlanZone,
  PointKind,
  Practice,
  Served,
  Supplies,
  SuppliesOverride,
  TakeRates,
  Units,
} from './plan/plan.ts';

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

// Analyse a plan: whole, again after a change, or stage by stage
export {
  type Analysis,
  type Kept,
  type Sources,
  analyse,
  analyseOn,
  courseStage,
  dayStage,
  layoutStage,
  passStage,
} from './analyse.ts';
export { reanalyse } from './reanalyse.ts';
export type { CourseSources } from './plan/courses.ts';

// Ask it
export { type NextStation, type RaceRunners, type StretchRunners, etaAt, nextStation, runnersAt } from './questions.ts';

// What an analysis holds: courses, passes, layout, spacing, race day
export {
  type Course,
  type Drawn,
  type GapRule,
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
export type { Direction, Leg, RaceSpacing, SeenStation, StationPass } from './station/station.ts';
export type { Item, LaidDirection, Layout, StationLayout } from './layout/layout.ts';
export type { DayNeeds } from './layout/stretches.ts';
export type { DayCrew, Pack, PrePour, Quantiles, RaceDay, Run, StationDay, Stop } from './raceday/day.ts';
export type { DayFound, Fields, ResultTexts } from './raceday/raceDay.ts';

// Review it
export type { Check, DayFacts, Rule } from './review/check.ts';
export { THEMES } from './review/themes.ts';
export type { Theme } from './text/params/checks.ts';
export { CHECKS } from './review/checks.ts';
export { STAGE_RULES } from './review/stageRules.ts';
export { type CheckRun, type Review, type Reviewed, type StationFound, reviewLayout } from './review/review.ts';
export { type PlacedReview, type PlacedVerdict, type Verdict, reviewPlaced } from './review/placed.ts';

// Improve it, and compare two of its states
export { type ImproveOptions, type Improvement, improve } from './improve/improve.ts';
export type { Move, Proof, Verified } from './improve/verify.ts';
export type { LongestLeg, Standing } from './improve/standing.ts';
export { lengthLike, movedText } from './improve/change.ts';
export {
  type Change,
  type ChangedItem,
  type ChangedLeg,
  type ChangedSpacing,
  type Comparison,
  type MovedStation,
  compareAnalyses,
} from './improve/compare.ts';

// The documents that the command line prints as JSON
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
export type { Bounds } from './export/bounds.ts';
export {
  type LoadDocument,
  type PackDocument,
  type RaceDayDocument,
  type QuantileTexts,
  type StationDayDocument,
  raceDayDocument,
} from './export/raceDayDocument.ts';
export {
  type FileDigest,
  type ReviewCounts,
  type ReviewDocument,
  type ReviewedFiles,
  countsOf,
  reviewDocument,
} from './export/reviewDocument.ts';
export { compareDocument } from './export/compareDocument.ts';
export { type ImproveDocument, improveDocument } from './export/improveDocument.ts';

// Their JSON Schemas, and that of a plan
export type { JsonSchema } from './export/schemas/shared.ts';
export { planJsonSchema } from './export/schemas/plan.ts';
export { findingSchema } from './export/schemas/finding.ts';
export { courseSchema } from './export/schemas/course.ts';
export { snapSchema } from './export/schemas/snap.ts';
export { layoutSchema } from './export/schemas/layout.ts';
export { raceDaySchema } from './export/schemas/raceDay.ts';
export { reviewSchema } from './export/schemas/review.ts';
export { compareSchema } from './export/schemas/compare.ts';
export { improveSchema } from './export/schemas/improve.ts';

// Other formats
export { toCsv } from './export/csv.ts';
export { type CsvCell, csvText, textOfCell } from './export/csvText.ts';
export { toGpx } from './export/waypoints.ts';
export { toCalendar } from './export/calendar.ts';
export { type GridDigits, type GridReference, gridReference } from './export/gridReference.ts';

// Findings and results
export { type Finding, type LonLat, type Result, type Severity, type Where, findingLine } from './finding.ts';

// Units: read from text, printed for people, and told apart by type
export type { Degrees, In, Kilograms, Latitude, Litres, Longitude, Metres, Seconds } from './units.ts';
export {
  type LengthUnit,
  type Parsed,
  type UnitSystem,
  lengthIn,
  metres,
  parseClock,
  parseDuration,
  parseLength,
  parseMass,
  parseVolume,
} from './units.ts';
export {
  type LengthStyle,
  formatClock,
  formatDuration,
  formatLength,
  formatMass,
  formatMeasure,
  formatMinute,
  formatVolume,
} from './format.ts';

// Findings and figures in words
export { voiceOf } from './plan/voice.ts';
export { sourceText, themeText } from './text/checkTexts.ts';
export { findingInWords, findingSentence, sayOf } from './text/inWords.ts';
export type { Found } from './text/found.ts';
export type { Compared, Say } from './text/say.ts';
export { findingSubject } from './text/subject.ts';
export type { Sentence } from './text/sentence.ts';
export { NO_NAMES, type Names, type Voice } from './text/voice.ts';
