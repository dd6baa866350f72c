/**
 * A small map of one station, north up, with a scale bar: the courses that pass, which way runners come, the sign, the
 * tables as one, where vehicles come and unload, first aid and toilets, and roads by name where the caller has some. What
 * stands along the kerb is in the drawing.
 */
import type { Feature, FeatureCollection } from 'geojson';
import { courseLength, startMeasure } from '../course/course.ts';
import type { LonLat } from '../finding.ts';
import { type Layout, type StationLayout, numberOf } from '../layout/layout.ts';
import { type PointKind, formOf } from '../kinds.ts';
import { courseById } from '../plan/lookups.ts';
import type { UnitSystem } from '../units.ts';
import type { SheetText } from '../text/sheetText.ts';
import { type GroundFrame, creditOf, groundDrawing, namedStreets } from './groundDrawing.ts';
import { type Html, NONE, html } from './html.ts';
import { pointMark } from './marks.ts';
import { type Spot, pointWord, spotFrom, spotsAlong } from './stationGround.ts';
import { barOf, mm, svgFrame, svgPath, svgText, through } from './svg.ts';
import {
  type Corner,
  type Named,
  type Place,
  type Sign,
  SIZE,
  cornerOf,
  streetNames,
  wordsBeside,
} from './stationMapWords.ts';
import type { Box } from './textBox.ts';

export interface StationMapInput {
  /** The map of the ground, where the plan has one, is drawn faint behind. */
  readonly layout: Pick<Layout, 'courses' | 'ground'>;
  readonly station: StationLayout;
  readonly units: UnitSystem;
  readonly text: SheetText;
  /** Millimetres. */
  readonly width: number;
  readonly height: number;
  /** Where the plan has no map of the ground: lines of it are drawn thin, roads and paths. */
  readonly context?: FeatureCollection;
}

/** Metres from the pin within which a point of the station widens the map. */
const FAR = 300;
/** The least that the map shows to each side of the pin, metres. */
const LEAST = 60;
/** Points that the map shows: what somebody from elsewhere must find. */
const SHOWN: ReadonlySet<PointKind> = new Set(['drop', 'access', 'medical', 'toilets']);

interface View {
  readonly on: (spot: Spot) => Place;
  /** Millimetres for a metre. */
  readonly scale: number;
  /** Metres about the pin that may be seen. */
  readonly reach: number;
}

function viewOf(spots: readonly Spot[], width: number, height: number): View {
  const reach = (k: 0 | 1): readonly [number, number] => [
    Math.min(-LEAST, ...spots.map((spot) => spot[k])),
    Math.max(LEAST, ...spots.map((spot) => spot[k])),
  ];
  const [[west, east], [south, north]] = [reach(0), reach(1)];
  const scale = Math.min((width - 16) / (east - west), (height - 16) / (north - south));
  const [cx, cy] = [(west + east) / 2, (south + north) / 2];
  return {
    scale,
    on: ([x, y]) => [width / 2 + (x - cx) * scale, height / 2 - (y - cy) * scale],
    reach: Math.hypot(width, height) / scale + Math.hypot(cx, cy),
  };
}

/** The map; a station that no course passes shows its pin and points. */
export function stationMap(whole: StationMapInput): Html {
  const { station, text, width } = whole;
  const ground = whole.layout.ground?.ground;
  const credit = creditOf(ground?.source, width, text);
  const height = whole.height - credit.height;
  const input = { ...whole, height };
  const spot = spotFrom(station.at);
  const items = station.directions.flatMap(({ items: laid }) => laid);
  const ends = items
    .flatMap(({ at }) => at)
    .filter((at) => at !== null)
    .map(spot);
  const points = station.station.points
    .filter(({ kind }) => SHOWN.has(kind))
    .map((point) => ({ ...point, spot: spot(point.at) }));
  const near = points.filter(({ spot: [east, north] }) => Math.hypot(east, north) <= FAR);
  const view = viewOf([...ends, ...near.map((point) => point.spot)], width, height);
  const clip = `map-${station.index}`;
  const signs = [
    ...itemSigns(station, view, spot, text),
    ...near.map((point) => ({
      at: view.on(point.spot),
      word: pointWord(point, text),
      mark: pointMark(point.kind, ...view.on(point.spot)),
    })),
  ];
  const lines = courseBoxes(input, view);
  const corner = cornerOf(lines, width, height);
  const { words, taken } = wordsBeside(signs, lines, corner, width, height);
  const about = { at: station.at, reach: view.reach };
  const frame: GroundFrame = { on: (at) => view.on(spot(at)), scale: view.scale, width, height, about };
  const content = [
    html`<clipPath id="${clip}"><rect x="0" y="0" width="${mm(width)}" height="${mm(height)}"/></clipPath>`,
    html`<g clip-path="url(#${clip})">${ground === undefined ? contextLines(input, view, spot) : groundDrawing(ground, frame)}${courseLines(input, view)}</g>`,
    ...signs.map(({ mark }) => mark),
    ...words,
    ...streetNames(
      ground === undefined ? contextStreets(input, view, spot) : namedStreets(ground, frame),
      { width, height },
      taken,
    ),
    northAndScale(view, input, corner),
    html`<rect x="0.2" y="0.2" width="${mm(width - 0.4)}" height="${mm(height - 0.4)}" fill="none" stroke="#000" stroke-width="0.4"/>`,
    ...credit.at(whole.height),
  ];
  return svgFrame(width, whole.height, text.captain.map.title, content, 'map');
}

/** Lines with names of the plan's drawing that come near. */
function contextStreets({ context }: StationMapInput, { on, reach }: View, spot: (at: LonLat) => Spot): Named[] {
  return (context?.features ?? []).flatMap(({ geometry, properties }: Feature): Named[] => {
    const name: unknown = properties?.['name'];
    if (geometry?.type !== 'LineString' || typeof name !== 'string' || name.trim() === '') return [];
    const spots = geometry.coordinates.map(([lon, lat]) => spot([lon!, lat!]));
    return spots.some(([east, north]) => Math.hypot(east, north) < 3 * reach) ? [{ name, places: spots.map(on) }] : [];
  });
}

function contextLines({ context }: StationMapInput, { on, reach }: View, spot: (at: LonLat) => Spot): readonly Html[] {
  const lines = (context?.features ?? []).flatMap(({ geometry, properties }: Feature) =>
    geometry?.type === 'LineString' && properties?.['kind'] !== 'contour' ? [geometry.coordinates] : [],
  );
  const near = lines
    .map((line) => line.map(([lon, lat]) => spot([lon!, lat!])))
    .filter((line) => line.some(([east, north]) => Math.hypot(east, north) < 3 * reach));
  return near.map((line) => svgPath(through(line.map(on)), 'stroke="#888" stroke-width="0.35" fill="none"'));
}

function courseLines(input: StationMapInput, view: View): readonly Html[] {
  return coursePlaces(input, view).map(
    ({ served, places }) =>
      html`${svgPath(through(places), `stroke="#000" stroke-width="${served ? 0.9 : 0.5}" fill="none" stroke-linejoin="round"`)}${served ? arrows(places) : NONE}`,
  );
}

const coursePlaces = (
  { layout, station }: StationMapInput,
  { on, reach }: View,
): { readonly served: boolean; readonly places: readonly Place[] }[] =>
  station.passes.map(({ course, measure, served }) => {
    const whole = courseById(layout.courses, course).course;
    const range = [
      Math.max(startMeasure(whole), measure - reach),
      Math.min(courseLength(whole), measure + reach),
    ] as const;
    return { served, places: spotsAlong(layout, course, range, station.at).map(on) };
  });

/** Small boxes all along the courses, so that words keep off them. */
const courseBoxes = (input: StationMapInput, view: View): Box[] =>
  coursePlaces(input, view).flatMap(({ places }) =>
    places.slice(1).flatMap(([x, y], k) => {
      const [x0, y0] = places[k]!;
      const steps = Math.max(1, Math.ceil(Math.hypot(x - x0, y - y0) / 1.2));
      return Array.from({ length: steps }, (_, i) => ({
        x: x0 + ((x - x0) * i) / steps - 0.5,
        y: y0 + ((y - y0) * i) / steps - 0.5,
        width: 1,
        height: 1,
      }));
    }),
  );

/** Arrowheads along the running direction, one every 16 mm of paper. */
function arrows(places: readonly Place[]): readonly Html[] {
  const heads: Html[] = [];
  let next = 8;
  let run = 0;
  for (const [k, [x, y]] of places.slice(1).entries()) {
    const [x0, y0] = places[k]!;
    const length = Math.hypot(x - x0, y - y0);
    for (; next <= run + length; next += 16) {
      const t = (next - run) / length;
      const angle = (Math.atan2(y - y0, x - x0) * 180) / Math.PI;
      heads.push(
        html`<path d="M-1.5 -1.4L1.3 0L-1.5 1.4Z" fill="#000" transform="translate(${mm(x0 + (x - x0) * t)} ${mm(y0 + (y - y0) * t)}) rotate(${mm(angle)})"/>`,
      );
    }
    run += length;
  }
  return heads;
}

/** The sign of each direction, and the tables as one thing by the station's number. */
function itemSigns(station: StationLayout, { on }: View, spot: (at: LonLat) => Spot, { frame }: SheetText): Sign[] {
  const items = station.directions.flatMap(({ items: laid }) => laid);
  const lead = station.directions.find((direction) => direction.lead)?.items ?? [];
  const tables = lead
    .filter(({ kind }) => formOf(kind) === 'table')
    .flatMap(({ at: [from, to] }) => (from === null || to === null ? [] : [[on(spot(from)), on(spot(to))] as const]));
  const boards = items.flatMap(({ kind, at: [from] }): Sign[] => {
    if (formOf(kind) !== 'board' || from === null) return [];
    const [x, y] = on(spot(from));
    const mark = html`<rect x="${mm(x - 1.1)}" y="${mm(y - 1.1)}" width="2.2" height="2.2" fill="#000"/>`;
    return [{ at: [x, y], word: frame.items[kind], mark }];
  });
  const [first] = tables;
  if (first === undefined) return boards;
  const last = tables.at(-1)!;
  const at: Place = [(first[0][0] + last[1][0]) / 2, (first[0][1] + last[1][1]) / 2];
  const mark = html`${tables.map(([[x0, y0], [x1, y1]]) => svgPath(`M${mm(x0)} ${mm(y0)}L${mm(x1)} ${mm(y1)}`, 'stroke="#000" stroke-width="2.2"'))}`;
  return [...boards, { at, word: `${frame.station} ${numberOf(station)}`, mark }];
}

function northAndScale({ scale }: View, { units, width, height, text }: StationMapInput, north: Corner): Html {
  const { length, says } = barOf(Math.min(22, width / 3) / scale, units);
  const [x, y] = [3, height - 3];
  return html`<rect x="1" y="${mm(y - 6)}" width="${mm(length * scale + 4)}" height="8" fill="#fff"/>${svgPath(`M${x} ${mm(y - 1.4)}v1.4h${mm(length * scale)}v-1.4`, 'stroke="#000" stroke-width="0.5" fill="none"')}${svgText(x, y - 2, says, { points: SIZE })}
<rect x="${mm(north.x - 3.5)}" y="${mm(north.y)}" width="7" height="11" fill="#fff"/>${svgPath(`M${mm(north.x)} ${mm(north.y + 0.8)}l2 6l-2 -1.4l-2 1.4z`, 'fill="#000"')}${svgText(north.x, north.y + 10.4, text.captain.map.north, { points: SIZE, bold: true, anchor: 'middle' })}`;
}
