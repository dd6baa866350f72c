/**
 * The face `@halfcup/core/gpx`: reads GPX files, with the line and column of every fault, makes courses of them
 * ({@link courseFromGpx}), and writes them.
 * @module @halfcup/core/gpx
 */

export { type GpxCourseOptions, courseFromGpx } from './course/fromGpx.ts';
export type { Course, Drawn, GapRule, Scale, Skip } from './course/course.ts';
export type { ForeignOptions } from './course/foreign.ts';
export { createGpxReader, readGpx, type GpxReader } from './gpx/read.ts';
export { type LineSource, type NamedLine, chooseLine } from './gpx/chooseLine.ts';
export type { GpxDocument, GpxLine, GpxSegment, GpxWaypoint } from './gpx/document.ts';
export {
  type GpxPointToWrite,
  type GpxRouteToWrite,
  type GpxSegmentToWrite,
  type GpxToWrite,
  type GpxTrackToWrite,
  writeGpx,
} from './gpx/write.ts';
export { findingLine, type Finding, type LonLat, type Result, type Severity, type Where } from './finding.ts';
export type { Degrees, In, Latitude, Longitude, Metres } from './units.ts';
