/**
 * The face `@halfcup/core/ground`: what a street map knows beside the courses, read from street files, clipped and written, and
 * followed along a course: streets, junctions, what is on the course and beside it, houses in the way of sight.
 * A map informs and warns; it moves no course and no distance.
 * @module @halfcup/core/ground
 */
export type { Ground, GroundArea, GroundLine, GroundPoint, GroundSource, GroundWay, Tags } from './ground/ground.ts';
export { readGround } from './ground/readGround.ts';
export { type ClipOptions, type StopSignal, GROUND_REACH, clipGround } from './ground/clipGround.ts';
export { type ClippedGround, type GroundClipper, createGroundClipper } from './ground/clipper.ts';
export type { ElementCounts, SkippedCounts } from './ground/assemble.ts';
export { type GroundDocument, groundDocument } from './export/groundDocument.ts';
export { groundText } from './ground/groundText.ts';

// What a map draws of it
export { type DrawnArea, type DrawnLine, drawnArea, drawnLine, drawnName, isBelow } from './ground/drawn.ts';

// Along a course: streets, junctions, things on it and beside it; places by streets
export { groundAlong } from './ground/groundAlong.ts';
export { streetPlace } from './ground/streetPlace.ts';
export type {
  Feature,
  FeatureKind,
  GroundAlong,
  GroundStretch,
  Junction,
  KeepClear,
  KeepClearKind,
  StreetPlace,
  StreetStretch,
  SurfaceStretch,
  WidthStretch,
} from './ground/along.ts';
export type { Course } from './course/course.ts';
export type { IndexedCourse } from './course/segmentIndex.ts';

// Sight past houses
export { type Buildings, indexBuildings } from './ground/buildings.ts';
export { type SightBlock, sightBlocked } from './ground/sightBlocked.ts';

export { type Finding, type LonLat, type Result, type Severity, type Where, findingLine } from './finding.ts';
export type { Degrees, In, Latitude, Longitude, Metres } from './units.ts';
