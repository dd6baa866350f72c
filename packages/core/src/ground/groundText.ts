/** Writes the ground as `ground.geojson`: one feature a line, the same bytes for the same ground. */
import {
  type Shapes,
  aDate,
  aText,
  column,
  finite,
  listOf,
  orNull,
  recordOf,
  remembered,
  tableOf,
  want,
} from '../wants.ts';
import type { Shape } from '../wants.ts';
import type { Ground, GroundArea, GroundLine, GroundPoint, GroundSource, GroundWay, Tags } from './ground.ts';

const SOURCE: Shapes<GroundSource> = { date: orNull(aDate), credit: aText, licence: orNull(aText) };
const LINE: Shapes<GroundLine> = { lon: column, lat: column };
const tagTable = tableOf(aText);

/** What `readGround` gives. */
export const isGround: Shape = remembered(
  recordOf<Ground>('the ground that readGround gives', {
    source: recordOf('the source of a ground', SOURCE),
    ways: listOf(recordOf<GroundWay>('a way', { id: aText, tags: tagTable, nodes: listOf(aText), ...LINE })),
    areas: listOf(
      recordOf<GroundArea>('an area', { id: aText, tags: tagTable, rings: listOf(recordOf('a ring', LINE), 1) }),
    ),
    points: listOf(recordOf<GroundPoint>('a point', { id: aText, tags: tagTable, lon: finite, lat: finite })),
  }),
);

const degrees = (value: number): number => Math.round(value * 1e7) / 1e7 + 0;
const position = (lon: number, lat: number): [number, number] => [degrees(lon), degrees(lat)];
const line = ({ lon, lat }: GroundLine): [number, number][] => Array.from(lon, (x, k) => position(x, lat[k]!));

const sorted = (tags: Tags): Tags =>
  Object.fromEntries(Object.entries(tags).toSorted(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)));

/** A node as it is written: OpenStreetMap's number alone, any other name whole. */
function nodeOf(node: string): string | number {
  const digits = /^node\/(-?[1-9]\d{0,14})$/u.exec(node)?.[1];
  return digits === undefined ? node : Number(digits);
}

const feature = (id: string, tags: Tags, more: object, geometry: object): string =>
  JSON.stringify({ type: 'Feature', id, ...more, properties: sorted(tags), geometry });

const wayText = (way: GroundWay): string =>
  feature(way.id, way.tags, { nodes: way.nodes.map(nodeOf) }, { type: 'LineString', coordinates: line(way) });

const areaText = ({ id, tags, rings }: GroundArea): string =>
  feature(id, tags, {}, { type: 'Polygon', coordinates: rings.map(line) });

const pointText = ({ id, tags, lon, lat }: GroundPoint): string =>
  feature(id, tags, {}, { type: 'Point', coordinates: position(lon, lat) });

/**
 * The text of `ground.geojson`: a FeatureCollection (RFC 7946) whose features have OpenStreetMap's ids and tags, ways also the numbers
 * of their nodes; `attribution`, `licence` and `date` stand beside them. One feature a line, keys sorted, coordinates to 1e-7 of a
 * degree: the same ground gives the same bytes, and `readGround` gives the same ground.
 * @example
 * ```ts
 * import { groundText } from '@halfcup/core/ground';
 * const tap = { id: 'node/4', tags: { amenity: 'drinking_water' }, lon: -17.4, lat: -33.2 };
 * const source = { date: null, credit: '© OpenStreetMap contributors', licence: 'ODbL 1.0' };
 * groundText({ source, ways: [], areas: [], points: [tap] }).split('\n').length; // → 10
 * ```
 */
export function groundText(ground: Ground): string {
  want('groundText', 'ground', isGround, ground);
  const { source, ways, areas, points } = ground;
  const features = [...ways.map(wayText), ...areas.map(areaText), ...points.map(pointText)];
  return `{
"type": "FeatureCollection",
"attribution": ${JSON.stringify(source.credit)},
"licence": ${JSON.stringify(source.licence)},
"date": ${JSON.stringify(source.date)},
"features": [
${features.join(',\n')}
]
}
`;
}
