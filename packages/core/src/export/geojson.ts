/**
 * A layout as GeoJSON (RFC 7946) for any map: courses, stations, directions, items and the
 * station's further points. Lengths in metres, positions to 1e-8 of a degree (1 mm).
 * Loading this file loads Turf: import it only where GeoJSON is asked for.
 */
import { feature, featureCollection, lineString, multiLineString, point } from '@turf/helpers';
import { truncate } from '@turf/truncate';
import type { Feature, FeatureCollection, GeoJsonProperties, Geometry, LineString, MultiLineString } from 'geojson';
import { type Course, courseLength } from '../course/course.ts';
import type { LonLat } from '../finding.ts';
import { type Item, type LaidDirection, type Layout, type StationLayout, isTable } from '../layout/layout.ts';
import { formOf } from '../kinds.ts';
import { courseById } from '../plan/lookups.ts';
import { itemWord } from '../station/wording.ts';
import { boundsOf } from './bounds.ts';
import { courseRuns, cutAtAntimeridian, lineBeside } from './lines.ts';
import { toMicro, toNano } from './rounding.ts';
import { want } from '../wants.ts';
import { isLayout } from '../layout/shapes.ts';

/** A feature whose geometry is `null` is a thing that has no place on the ground, such as a sign before the start. */
export type LayoutFeature = Feature<Geometry | null>;

type Properties = NonNullable<GeoJsonProperties>;
type Coordinates = [number, number][];

/**
 * Every course, station, direction and item of a layout as a feature whose property `kind` says which; lengths in metres. What has no
 * place on the ground is a feature without a geometry (`null`); lines are cut at the antimeridian. Source: RFC 7946.
 * @example
 * ```ts
 * import { analyse, readPlan } from '@halfcup/core';
 * import { toGeoJson } from '@halfcup/core/geojson';
 *
 * const text = `{
 *   "format": "halfcup-plan", "version": 1, "name": "Pier run",
 *   "courses": [{ "id": "pier", "line": [[-30.1, 12.2], [-30.01, 12.2]], "drawn": "centre" }],
 *   "races": [{ "id": "run", "course": "pier" }],
 *   "stations": [{ "id": "s1", "at": [-30.06, 12.20004] }]
 * }`;
 * const read = readPlan(text, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const analysed = analyse(read.value.plan, { gpx: new Map() });
 * if (!analysed.ok) throw new Error(analysed.findings[0]?.message);
 * const { features } = toGeoJson(analysed.value);
 * features.map(({ properties }) => properties?.['kind']); // → ['course', 'station', 'direction', 'sign', 'sportsDrink', 'water', 'trash', 'box', 'box', 'box', 'box']
 * features[1]?.geometry; // → { type: 'Point', coordinates: [-30.06, 12.20004] }
 * ```
 */
export function toGeoJson(layout: Layout): FeatureCollection<Geometry | null> {
  want('toGeoJson', 'layout', isLayout, layout);
  const features = [
    ...layout.courses.map(({ course }) => courseFeature(course, layout)),
    ...layout.stations.flatMap((station) => stationFeatures(station, layout)),
  ];
  // Turf's type leaves out the unlocated features that the standard has.
  return { ...featureCollection(features.map(shortened) as Feature[]), bbox: bboxOf(layout) };
}

const shortened = (one: LayoutFeature): LayoutFeature =>
  one.geometry === null ? one : truncate(one as Feature, { precision: 8, coordinates: 2 });

/** Around all courses and pins; longitudes taken next to the first course, so that the antimeridian does not stretch it. */
function bboxOf({ courses, stations }: Layout): [number, number, number, number] {
  const first = courses[0]!.course.lon[0]!;
  const near = (lon: number): number => lon - 360 * Math.round((lon - first) / 360);
  const lon = [
    ...courses.flatMap(({ course }) => Array.from(course.lon, near)),
    ...stations.map(({ at }) => near(at[0])),
  ];
  const lat = [...courses.flatMap(({ course }) => [...course.lat]), ...stations.map(({ at }) => at[1])];
  const [west, south, east, north] = boundsOf(lon, lat);
  return [toNano(west), toNano(south), toNano(east), toNano(north)];
}

const coordinates = (line: readonly LonLat[]): Coordinates => line.map(([lon, lat]) => [lon, lat]);

function lineFeature(
  runs: readonly (readonly LonLat[])[],
  properties: Properties,
  id: string,
): Feature<LineString | MultiLineString> {
  const pieces = runs.flatMap(cutAtAntimeridian).map(coordinates);
  const [only] = pieces;
  return pieces.length === 1 && only !== undefined
    ? lineString(only, properties, { id })
    : multiLineString(pieces, properties, { id });
}

const pointFeature = (at: LonLat, properties: Properties, id: string): LayoutFeature =>
  point([...at], properties, { id });

function courseFeature(course: Course, { plan }: Layout): LayoutFeature {
  const races = plan.races.filter((race) => race.course === course.id).map((race) => race.name);
  const properties = {
    kind: 'course',
    course: course.id,
    name: course.name,
    races: races.join(', '),
    length: toMicro(courseLength(course)),
  };
  return lineFeature(courseRuns(course), properties, `course/${course.id}`);
}

function stationFeatures(station: StationLayout, layout: Layout): LayoutFeature[] {
  const { id, name, at, directions } = station;
  const lead = directions[0];
  const where = lead === undefined ? {} : { course: lead.course, measure: toMicro(lead.measure), side: lead.side };
  const properties = {
    kind: 'station',
    station: id,
    name,
    serves: station.station.serves.map(itemWord).join(', '),
    races: racesOf(station, layout),
    ...where,
  };
  return [
    pointFeature(at, properties, `station/${id}`),
    ...directions.flatMap((direction, k) => directionFeatures(direction, k, station, layout)),
    ...station.station.points.map((one, k) => {
      const more = {
        kind: one.kind,
        station: id,
        name: one.name ?? one.kind,
        ...(one.street === undefined ? {} : { street: one.street }),
      };
      return pointFeature(one.at, more, `point/${id}/${k}`);
    }),
  ];
}

const racesOf = ({ passes }: StationLayout, { plan }: Layout): string =>
  plan.races
    .filter((race) => passes.some((pass) => pass.served && pass.race === race.id))
    .map((race) => race.name)
    .join(', ');

function directionFeatures(
  direction: LaidDirection,
  index: number,
  station: StationLayout,
  { courses }: Layout,
): LayoutFeature[] {
  const { course } = courseById(courses, direction.course);
  const key = `${station.id}/${index}`;
  const shared = { station: station.id, name: station.name, course: direction.course, race: direction.race };
  const { foot } = station.passes.find((pass) => pass.race === direction.race && pass.measure === direction.measure)!;
  const properties = {
    kind: 'direction',
    ...shared,
    lead: direction.lead,
    measure: toMicro(direction.measure),
    azimuthDeg: toMicro(direction.azimuthDeg),
    side: direction.side,
  };
  // Other directions meet the very tables of the lead; only their sign and trash are their own.
  const items = direction.lead ? direction.items : direction.items.filter((item) => !isTable(item));
  return [
    pointFeature(foot, properties, `direction/${key}`),
    ...items.flatMap((item) => itemFeatures(item, course, shared, key)),
  ];
}

function itemFeatures(item: Item, course: Course, shared: Properties, key: string): LayoutFeature[] {
  const id = `${item.kind}/${key}`;
  const properties = {
    kind: item.kind,
    ...shared,
    label: item.wording ?? itemWord(item.kind),
    measure: toMicro(item.from),
    ...(formOf(item.kind) === 'board' ? {} : { until: toMicro(item.to) }),
    side: item.side,
    ...(item.wording === undefined ? {} : { wording: item.wording }),
  };
  const [from, to] = item.at;
  const boxes = (item.boxes ?? []).map((box, k): LayoutFeature => {
    const more = { kind: 'box', ...shared, label: `Box ${k + 1}`, measure: toMicro(box.measure), side: item.side };
    return box.at === null
      ? feature(null, more, { id: `box/${key}/${k}` })
      : pointFeature(box.at, more, `box/${key}/${k}`);
  });
  return [itemFeature(item, course, properties, id, from, to), ...boxes];
}

function itemFeature(
  item: Item,
  course: Course,
  properties: Properties,
  id: string,
  from: LonLat | null,
  to: LonLat | null,
): LayoutFeature {
  if (from === null || to === null) return feature(null, properties, { id });
  if (formOf(item.kind) === 'board') return pointFeature(from, properties, id);
  return lineFeature([lineBeside(course, item.from, item.to, item.offset, [from, to])], properties, id);
}
