/**
 * Items where they stand: tables as lines along the kerb at true length, the sign and the boxes of
 * the trash drop as shapes, and a word for each. Tables stand once, for the lead direction.
 */
import { type Analysis, type Item, type LaidDirection, type LonLat, type StationLayout } from '@halfcup/core';
import { type ItemKind, type PointKind, formOf } from '@halfcup/core/plan';
import { type Course } from '@halfcup/core/stages';
import { pointAt } from '@halfcup/core/geometry';
import { featureCollection, lineString, point } from '@turf/turf';
import type { Feature, FeatureCollection, Geometry, Position } from 'geojson';
import { coursesOf } from '../../state/view/derive.ts';
import { ITEM_WORD, POINT_WORD } from '../../words.ts';
import { away } from './directions.ts';
import { placeWords } from './words.ts';

/** Depth of a table, metres: 30 in (common practice, no source). */
export const TABLE_DEPTH = 0.762;

export interface ItemProps {
  readonly draw: 'table' | 'trashLine' | 'box' | 'sign' | 'word' | 'point';
  readonly station: string;
  readonly kind: ItemKind | PointKind;
  readonly word: string;
  readonly bearing: number;
  /** From the course's line, metres; absent where somebody placed it by hand. */
  readonly gap?: number;
  /** Of a placed word: what it says, from which band of zooms on, and where its middle is, ems from the point. */
  readonly says?: string;
  readonly band?: number;
  readonly offset?: readonly [number, number];
}

type ItemFeature = Feature<Geometry, ItemProps>;

const position = (at: LonLat): Position => [at[0], at[1]];

const outward = (item: Item, metres: number): number =>
  item.offset + Math.sign(item.offset === 0 ? (item.side === 'left' ? 1 : -1) : item.offset) * metres;

/** The line along the course between an item's ends, at an offset; empty where an end has no place. */
function along(course: Course, item: Item, offset: number): Position[] {
  if (item.byHand === true || item.at[0] === null || item.at[1] === null) {
    return item.at[0] === null || item.at[1] === null ? [] : [position(item.at[0]), position(item.at[1])];
  }
  const pieces = Math.max(1, Math.ceil((item.to - item.from) / 4));
  const places = Array.from({ length: pieces + 1 }, (_, index) =>
    pointAt(course, item.from + ((item.to - item.from) * index) / pieces, offset),
  );
  return places.flatMap((place) => (place === null ? [] : [position(place.at)]));
}

function bearingOf(course: Course, item: Item): number {
  const side = item.side === 'unclear' ? 'right' : item.side;
  return away(pointAt(course, (item.from + item.to) / 2)?.azimuthDeg ?? 0, side);
}

function propsOf(station: StationLayout, course: Course, item: Item): Omit<ItemProps, 'draw'> {
  return {
    station: station.id,
    kind: item.kind,
    word: ITEM_WORD[item.kind],
    bearing: bearingOf(course, item),
    ...(item.byHand === true ? {} : { gap: Math.abs(item.offset) }),
  };
}

function tableFeatures(station: StationLayout, course: Course, item: Item): ItemFeature[] {
  const props = propsOf(station, course, item);
  const line = along(course, item, outward(item, TABLE_DEPTH / 2));
  const middle = pointAt(course, (item.from + item.to) / 2, outward(item, TABLE_DEPTH));
  if (line.length < 2 || middle === null) return [];
  return [lineString(line, { ...props, draw: 'table' }), point(position(middle.at), { ...props, draw: 'word' })];
}

function trashFeatures(station: StationLayout, course: Course, item: Item): ItemFeature[] {
  const props = propsOf(station, course, item);
  const line = along(course, item, item.offset);
  const boxes = (item.boxes ?? []).flatMap((box) =>
    box.at === null ? [] : [point(position(box.at), { ...props, draw: 'box' as const })],
  );
  const middle = line[Math.floor(line.length / 2)];
  const word = middle === undefined ? [] : [point(middle, { ...props, draw: 'word' as const })];
  return [...(line.length < 2 ? [] : [lineString(line, { ...props, draw: 'trashLine' as const })]), ...boxes, ...word];
}

function itemFeatures(station: StationLayout, course: Course, item: Item, lead: boolean): ItemFeature[] {
  const form = formOf(item.kind);
  if (form === 'table') return lead ? tableFeatures(station, course, item) : [];
  if (form === 'boxes') return trashFeatures(station, course, item);
  const [at] = item.at;
  return form === 'board' && at !== null
    ? [point(position(at), { ...propsOf(station, course, item), draw: 'sign' })]
    : [];
}

function directionFeatures(
  courses: readonly Course[],
  station: StationLayout,
  direction: LaidDirection,
): ItemFeature[] {
  const course = courses.find((one) => one.id === direction.course);
  return course === undefined
    ? []
    : direction.items.flatMap((item) => itemFeatures(station, course, item, direction.lead));
}

function pointFeatures(station: StationLayout): ItemFeature[] {
  return station.station.points.map((one) =>
    point(position(one.at), {
      draw: 'point',
      station: station.id,
      kind: one.kind,
      word: one.name ?? POINT_WORD[one.kind],
      bearing: 90,
    }),
  );
}

/** All that stands at one station; the same for the same layout. */
export function stationItems(courses: readonly Course[], station: StationLayout): Feature<Geometry, ItemProps>[] {
  const all = [
    ...station.directions.flatMap((direction) => directionFeatures(courses, station, direction)),
    ...pointFeatures(station),
  ];
  const shapes = all.filter(({ properties }) => properties.draw !== 'word');
  return [...shapes, ...wordFeatures(station, all)];
}

/** Words of tables, boxes, signs and points, each where it has room. */
function wordFeatures(station: StationLayout, all: readonly ItemFeature[]): ItemFeature[] {
  const named = all.flatMap(({ geometry, properties }) =>
    geometry.type === 'Point' && NAMED.has(properties.draw)
      ? [
          {
            at: [geometry.coordinates[0]!, geometry.coordinates[1]!] as const,
            word: properties.word,
            properties,
            bearing: properties.bearing,
            ...(properties.draw === 'sign' ? { reach: SIGN_REACH } : {}),
            ...(properties.gap === undefined ? {} : { gap: properties.gap }),
          },
        ]
      : [],
  );
  const byPlace = new Map(named.map((one) => [one.at as LonLat, one.properties]));
  return placeWords(station, named).map(({ at, says, band, offset }) =>
    point(position(at), { ...byPlace.get(at)!, draw: 'word', says, band, offset }),
  );
}

/** A sign's board stands off its place, pixels. */
const SIGN_REACH = 18;
const NAMED: ReadonlySet<ItemProps['draw']> = new Set(['word', 'sign', 'point']);

export const itemShapes = (analysis: Analysis): FeatureCollection<Geometry, ItemProps> =>
  featureCollection(analysis.stations.flatMap((station) => stationItems(coursesOf(analysis), station)));

/** West, south, east, north of everything that stands at a station, from the sign to the trash drop. */
export function stationBounds(station: StationLayout): [number, number, number, number] {
  const places = station.directions
    .flatMap((direction) => direction.items.flatMap((item) => item.at))
    .filter((at) => at !== null);
  const all: LonLat[] = [station.at, ...places];
  const lons = all.map((at) => at[0]);
  const lats = all.map((at) => at[1]);
  return [Math.min(...lons), Math.min(...lats), Math.max(...lons), Math.max(...lats)];
}
