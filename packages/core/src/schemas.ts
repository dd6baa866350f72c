/**
 * The face `@halfcup/core/schemas`: the documents that the command line prints as JSON, with their JSON Schemas and that of a plan;
 * tables as CSV text.
 * @module @halfcup/core/schemas
 */

// Documents
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
  type WeatherDocument,
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
export { groundSchema } from './export/schemas/ground.ts';

export { WEATHER_LEVELS, type WeatherLevel } from './kinds.ts';

// Tables as text
export { type CsvCell, csvText } from './export/csvText.ts';
export { textOfCell } from './delimited.ts';

// What is read at most
export {
  LIMITS,
  type Counted,
  type LimitTable,
  type Most,
  type PlanList,
  type Reader,
  type TableCount,
} from './limits.ts';
export { type LimitOf, limitFinding } from './text/limitFinding.ts';
