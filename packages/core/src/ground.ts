/**
 * The face `@halfcup/core/ground`: what a street map knows beside the courses, read from street files, clipped and written.
 * A map informs and warns; it moves no course and no distance.
 * @module @halfcup/core/ground
 */
export type { Ground, GroundArea, GroundLine, GroundPoint, GroundSource, GroundWay, Tags } from './ground/ground.ts';
export { readGround } from './ground/readGround.ts';
export { groundText } from './ground/groundText.ts';
export type { GroundAlong, Junction, StreetPlace } from './ground/along.ts';
export { type DrawnArea, type DrawnLine, drawnArea, drawnLine, drawnName, isBelow } from './ground/drawn.ts';

export { type Finding, type LonLat, type Result, type Severity, type Where, findingLine } from './finding.ts';
export type { Degrees, In, Latitude, Longitude, Metres } from './units.ts';
