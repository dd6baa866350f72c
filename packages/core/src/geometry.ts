/**
 * The face `@halfcup/core/geometry`: course geometry alone, without plans, files or GeoJSON. A line becomes a course
 * ({@link courseFromLine}, {@link buildCourse}; `courseFromGpx` is in `./gpx`), and points are found on it ({@link passesOf}, {@link pointAt}).
 * @module @halfcup/core/geometry
 */

// On the ground: a segment's length and azimuth, a local frame
export { segmentAzimuthDeg, segmentLength } from './geodesy/segment.ts';
export { type EastNorth, eastNorth, fromEastNorth } from './geodesy/frame.ts';

// A course from points, from stretches of others, from what another reader holds
export type { GpxSegment } from './gpx/document.ts';
export { type CourseInput, buildCourse } from './course/build.ts';
export {
  type Course,
  type Drawn,
  type GapRule,
  type Pass,
  type Scale,
  type Side,
  type Skip,
  courseLength,
  rawLength,
  startMeasure,
} from './course/course.ts';
export { type PartsInput, type Stretch, courseOfParts } from './course/parts.ts';
export type { ForeignOptions } from './course/foreign.ts';
export { type LineOptions, courseFromLine } from './course/fromLine.ts';
export { type GpxParserLine, type GpxParserResult, courseFromGpxParser } from './course/fromGpxParser.ts';

// Measure: raw along the line, calibrated by marks
export { measureLine } from './course/measure.ts';
export { type Calibration, type Mark, calibrate } from './course/calibrate.ts';
export { measureOf, rawOf } from './course/scale.ts';

// From a point to its passes
export { type Boxes, type IndexedCourse, indexCourse } from './course/segmentIndex.ts';
export { PASS_DEFAULTS, type PassOptions, nearestOn, passesOf } from './course/passes.ts';
export { swappedPosition } from './course/swapped.ts';

// From a measure to its point, and what lies between two
export { type PointAt, ascentOf, elevationAt, pointAt, sliceLine } from './course/locate.ts';
export { type SteepStretch, gradeBetween, steepStretches } from './course/grades.ts';
export { type CourseLeg, ascentBetween, legBetween } from './course/legs.ts';
export { type WheelReading, wheelBetween } from './layout/wheel.ts';

// What a recorder left in a track
export { type Flaw, cleaned, flawFindings, flawsOf, tangleFindings } from './course/quality.ts';
export type { Tangle } from './course/tangles.ts';

// Findings, results and units
export { type Finding, type LonLat, type Result, type Severity, type Where, findingLine } from './finding.ts';
export type { Degrees, In, Latitude, Longitude, Metres } from './units.ts';

// Courses on one road
export { type SharedStretch, sharedStretches } from './course/shared.ts';
