/**
 * A layout as GeoJSON (RFC 7946) for any map: courses, stations, directions, items and the
 * station's further points. Lengths in metres, positions to 1e-8 of a degree (1 mm).
 * Loading this file loads Turf: import it only where GeoJSON is asked for.
 */
import { feature, lineString, multiLineString, point } from '@turf/helpers';
import { truncate } from '@turf/truncate';
import type { Feature, FeatureCollection, Geometry } from 'geojson';
import { type Course, type Side, courseLength } from '../course/course.ts';
import type { LonLat } from '../finding.ts';
import type { StreetPlace } from '../ground/along.ts';
import { type Item, type LaidDirection, type Layout, type StationLayout, isTable } from '../layout/layout.ts';
import { type ItemKind, type PointKind, formOf } from '../kinds.ts';
import { courseById } from '../plan/lookups.ts';
import type { PlanRace } from '../plan/plan.ts';
import { itemWord } from '../station/wording.ts';
import { boundsOf } from './bounds.ts';
import { courseRuns, cutAtAntimeridian, lineBeside } from './lines.ts';
import type { Degrees, Metres } from '../units.ts';
import { toMicro, toNano } from './rounding.ts';
import { want } from '../wants.ts';
import { isLayout } from '../layout/shapes.ts';

/** What a feature of a layout says of itself; lengths and measures in metres. */
// A type and no interface: only that is also what GeoJSON calls properties.
export type LayoutProperties = {
  readonly kind: 'course' | 'station' | 'direction' | 'box' | ItemKind | PointKind;
  /** Its name as a text, the same in every export: `station/s1`. */
  readonly key: string;
  /** Of a course, a station, or the station that it belongs to. */
  readonly name: string;
  /** Id of the station. */
  readonly station?: string;
  /** Id of the course. */
  readonly course?: string;
  /** Id of the race of a direction. */
  readonly race?: string;
  /** Names of the races of a course, or served at a station, with commas. */
  readonly races?: string;
  /** Their ids. */
  readonly raceIds?: readonly string[];
  /** What a station serves, in words with commas. */
  readonly serves?: string;
  /** Of a course. */
  readonly length?: Metres;
  readonly measure?: Metres;
  /** Where a table or a stretch ends. */
  readonly until?: Metres;
  readonly side?: Side;
  readonly azimuthDeg?: Degrees;
  /** Of a direction: whether the tables are laid out for it. */
  readonly lead?: boolean;
  readonly label?: string;
  /** Of a sign. */
  readonly wording?: string;
  /** Of a further point; of a station or item, where the plan or its map tells. */
  readonly street?: string;
  /** Cross-streets before and after a station or item along its course, by the map. */
  readonly streetAfter?: string;
  readonly streetBefore?: string;
};

/** A feature whose geometry is `null` is a thing that has no place on the ground, such as a sign before the start. */
export type LayoutFeature = Feature<Geometry | null, LayoutProperties>;

/** How features are numbered. */
export interface GeoJsonOptions {
  /** `numbers`: from 1, as maps want them that keep a state by feature; absent: texts, the same as `key`. */
  readonly ids?: 'texts' | 'numbers';
}

/** All but the key, which is the feature's id. */
type Properties = Omit<LayoutProperties, 'key'>;
type Shared = Pick<LayoutProperties, 'station' | 'name' | 'course' | 'race'>;
type Coordinates = [number, number][];

/**
 * Every course, station, direction and item of a layout as a feature whose property `kind` says which; lengths in metres. What has no
 * place on the ground is a feature without a geometry (`null`); lines are cut at the antimeridian. With `ids: 'numbers'` features are
 * numbered from 1, and `key` alone tells which is which from one export to the next. Source: RFC 7946.
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
 * features.map(({ properties }) => properties.kind); // → ['course', 'station', 'direction', 'sign', 'sportsDrink', 'water', 'trash', 'box', 'box', 'box', 'box']
 * toGeoJson(analysed.value, { ids: 'numbers' }).features.slice(0, 2).map(({ id, properties }) => [id, properties.key, properties.raceIds]); // → [[1, 'course/pier', ['run']], [2, 'station/s1', ['run']]]
 * features[1]?.geometry; // → { type: 'Point', coordinates: [-30.06, 12.20004] }
 * ```
 */
export function toGeoJson(
  layout: Layout,
  { ids = 'texts' }: GeoJsonOptions = {},
): FeatureCollection<Geometry | null, LayoutProperties> {
  want('toGeoJson', 'layout', isLayout, layout);
  const texts = [
    ...layout.courses.map(({ course }) => courseFeature(course, layout)),
    ...layout.stations.flatMap((station) => stationFeatures(station, layout)),
  ];
  const features = texts.map((one, k) => shortened(ids === 'numbers' ? { ...one, id: k + 1 } : one));
  return { type: 'FeatureCollection', features, bbox: bboxOf(layout) };
}

const shortened = (one: LayoutFeature): LayoutFeature =>
  one.geometry === null ? one : { ...one, geometry: truncate(one.geometry, { precision: 8, coordinates: 2 }) };

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

function lineFeature(runs: readonly (readonly LonLat[])[], properties: Properties, id: string): LayoutFeature {
  const pieces = runs.flatMap(cutAtAntimeridian).map(coordinates);
  const [only] = pieces;
  return pieces.length === 1 && only !== undefined
    ? lineString(only, { ...properties, key: id }, { id })
    : multiLineString(pieces, { ...properties, key: id }, { id });
}

const unplaced = (properties: Properties, id: string): LayoutFeature =>
  feature(null, { ...properties, key: id }, { id });

const pointFeature = (at: LonLat, properties: Properties, id: string): LayoutFeature =>
  point([...at], { ...properties, key: id }, { id });

function courseFeature(course: Course, { plan }: Layout): LayoutFeature {
  const races = plan.races.filter((race) => race.course === course.id);
  const properties: Properties = {
    kind: 'course',
    course: course.id,
    name: course.name,
    ...racesNamed(races),
    length: toMicro(courseLength(course)),
  };
  return lineFeature(courseRuns(course), properties, `course/${course.id}`);
}

function stationFeatures(station: StationLayout, layout: Layout): LayoutFeature[] {
  const { id, name, at, directions } = station;
  const lead = directions[0];
  const where = lead === undefined ? {} : { course: lead.course, measure: toMicro(lead.measure), side: lead.side };
  const properties: Properties = {
    kind: 'station',
    station: id,
    name,
    serves: station.station.serves.map(itemWord).join(', '),
    ...racesNamed(racesOf(station, layout)),
    ...where,
    ...streetOf(station.street),
  };
  return [
    pointFeature(at, properties, `station/${id}`),
    ...directions.flatMap((direction, k) => directionFeatures(direction, k, station, layout)),
    ...station.station.points.map((one, k) => {
      const more: Properties = {
        kind: one.kind,
        station: id,
        name: one.name ?? one.kind,
        ...(one.street === undefined ? {} : { street: one.street }),
      };
      return pointFeature(one.at, more, `point/${id}/${k}`);
    }),
  ];
}

function streetOf(place: StreetPlace | undefined): Pick<LayoutProperties, 'street' | 'streetAfter' | 'streetBefore'> {
  const { street = null, after = null, before = null } = place ?? {};
  return {
    ...(street === null ? {} : { street }),
    ...(after === null ? {} : { streetAfter: after }),
    ...(before === null ? {} : { streetBefore: before }),
  };
}

const racesOf = ({ passes }: StationLayout, { plan }: Layout): readonly PlanRace[] =>
  plan.races.filter((race) => passes.some((pass) => pass.served && pass.race === race.id));

const racesNamed = (races: readonly PlanRace[]): Required<Pick<LayoutProperties, 'races' | 'raceIds'>> => ({
  races: races.map(({ name }) => name).join(', '),
  raceIds: races.map(({ id }) => id),
});

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
  const properties: Properties = {
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

function itemFeatures(item: Item, course: Course, shared: Shared, key: string): LayoutFeature[] {
  const id = `${item.kind}/${key}`;
  const properties: Properties = {
    kind: item.kind,
    ...shared,
    label: item.wording ?? itemWord(item.kind),
    measure: toMicro(item.from),
    ...(formOf(item.kind) === 'board' ? {} : { until: toMicro(item.to) }),
    side: item.side,
    ...(item.wording === undefined ? {} : { wording: item.wording }),
    ...streetOf(item.street),
  };
  const [from, to] = item.at;
  const boxes = (item.boxes ?? []).map((box, k): LayoutFeature => {
    const more: Properties = {
      kind: 'box',
      ...shared,
      label: `Box ${k + 1}`,
      measure: toMicro(box.measure),
      side: item.side,
    };
    return box.at === null ? unplaced(more, `box/${key}/${k}`) : pointFeature(box.at, more, `box/${key}/${k}`);
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
  if (from === null || to === null) return unplaced(properties, id);
  if (formOf(item.kind) === 'board') return pointFeature(from, properties, id);
  return lineFeature([lineBeside(course, item.from, item.to, item.offset, [from, to])], properties, id);
}
