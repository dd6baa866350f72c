/** The face `@halfcup/core/geojson`: a layout as GeoJSON (RFC 7946). Apart from the others, for it loads Turf. */
export { type LayoutFeature, toGeoJson } from './export/geojson.ts';
