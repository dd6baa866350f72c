/**
 * The face `@halfcup/core/geojson`: courses, places, polygons and whole layouts in and out of GeoJSON (RFC 7946).
 * Apart from the others, for it loads Turf.
 * @module @halfcup/core/geojson
 */

// Out
export { type GeoJsonOptions, type LayoutFeature, type LayoutProperties, toGeoJson } from './export/geojson.ts';
export {
  type CourseProperties,
  type NameProperties,
  type PassProperties,
  courseToGeoJson,
  passesToGeoJson,
  placesToGeoJson,
  polygonsToGeoJson,
} from './export/geojsonOf.ts';

// In
export type { ForeignOptions } from './course/foreign.ts';
export {
  type Outline,
  type NamedPlace,
  courseFromGeoJson,
  placesFromGeoJson,
  polygonsFromGeoJson,
} from './course/fromGeoJson.ts';

// Courses, passes, findings, results and units
export type { Course, Drawn, GapRule, Pass } from './course/course.ts';
export { type Finding, type LonLat, type Result, type Severity, type Where, findingLine } from './finding.ts';
export type { Degrees, In, Latitude, Longitude, Metres } from './units.ts';
