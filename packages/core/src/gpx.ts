/**
 * The face `@halfcup/core/gpx`: reads GPX files, with the line and column of every fault, and writes them.
 * @module @halfcup/core/gpx
 */

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
export type { In, Latitude, Longitude, Metres } from './units.ts';
