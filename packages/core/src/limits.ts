/**
 * The one table of limits: what each reader takes at most. They stand well above what races need and well below what fills a
 * telephone's memory; what is past one is refused with a finding (`text/limitFinding.ts`), as soon as it is known.
 * Common practice, no source: the largest road races have some 60,000 finishers, 60 stations and 20 courses; a recording of
 * every second over 100 miles has some 130,000 points.
 */

/** What is counted. Bytes are those of the file, `unpacked` those of all files in an archive; lists of a plan go by their keys. */
export type Counted =
  | 'bytes'
  | 'unpacked'
  | 'files'
  /** Brackets or elements within one another. */
  | 'depth'
  /** Numbers, texts, lists and objects of JSON; a position is a point and nothing else. */
  | 'values'
  | 'points'
  | 'waypoints'
  /** Tracks and routes. */
  | 'lines'
  | 'segments'
  /** Of one element. */
  | 'attributes'
  /** Declared by one element and those around it. */
  | 'namespaces'
  /** Of one text, such as a name, an attribute, a comment or a cell. */
  | 'characters'
  | 'rows'
  /** Of one row. */
  | 'columns'
  | 'cells'
  | 'features'
  /** Of one list or object of a plan that has no limit of its own. */
  | 'entries'
  | PlanList;

/** Lists of a plan. `waves`, `marks` and `points` are those of all races, courses and stations together. */
export type PlanList =
  | 'courses'
  | 'races'
  | 'waves'
  | 'marks'
  | 'stations'
  | 'zones'
  | 'vehicles'
  | 'waivers'
  | 'variants'
  | 'crew';

/** The most of each of these. */
export type Most<What extends Counted> = { readonly [what in What]: number };

/** By what is read: the most that it may hold. What is not named is bounded by what is. */
export interface LimitTable {
  /** JSON; `variants` is how many there are. */
  readonly plan: Most<'bytes' | 'depth' | 'values' | 'points' | 'entries' | PlanList>;
  /** Courses, and points recorded on the ground. */
  readonly gpx: Most<
    'bytes' | 'points' | 'waypoints' | 'lines' | 'segments' | 'depth' | 'attributes' | 'namespaces' | 'characters'
  >;
  /** GeoJSON that a program gives as a value, for courses, places and outlines. */
  readonly geojson: Most<'points' | 'features'>;
  /** The background of maps, GeoJSON as text. */
  readonly drawing: Most<'bytes' | 'depth' | 'values' | 'points' | 'features'>;
  /** `ground.geojson` of a plan. Street files that are cut to it have limits of their own. */
  readonly ground: Most<'bytes'>;
  /** Past results, CSV. */
  readonly results: Most<TableCount>;
  /** A list of stations, CSV. */
  readonly list: Most<TableCount>;
  /** Who works where, CSV. */
  readonly roster: Most<TableCount>;
  /** What was left at the stations, CSV. */
  readonly leftovers: Most<TableCount>;
  /** A plan packed with its files. */
  readonly zip: Most<'bytes' | 'files' | 'unpacked'>;
}

/** What is counted of a table. */
export type TableCount = 'bytes' | 'rows' | 'columns' | 'cells' | 'characters';

/** What is read. */
export type Reader = keyof LimitTable;

/** Limits as a list of unknown length. */
export type Limits = { readonly [what in Counted]?: number };

const MB = 1_000_000;

/** The limits that hold. */
export const LIMITS: LimitTable = {
  plan: {
    bytes: 8 * MB,
    depth: 64,
    values: 60_000,
    points: 200_000,
    entries: 2000,
    courses: 100,
    races: 100,
    waves: 1000,
    marks: 2000,
    stations: 500,
    zones: 1000,
    vehicles: 200,
    waivers: 2000,
    variants: 50,
    crew: 5000,
  },
  gpx: {
    bytes: 48 * MB,
    points: 500_000,
    waypoints: 20_000,
    lines: 2000,
    segments: 20_000,
    depth: 100,
    attributes: 200,
    namespaces: 200,
    characters: 100_000,
  },
  geojson: { points: 500_000, features: 50_000 },
  drawing: { bytes: 16 * MB, depth: 64, values: 400_000, points: 400_000, features: 50_000 },
  ground: { bytes: 32 * MB },
  results: { bytes: 32 * MB, rows: 200_000, columns: 500, cells: 1_200_000, characters: 100_000 },
  list: { bytes: 2 * MB, rows: 2000, columns: 200, cells: 100_000, characters: 100_000 },
  roster: { bytes: 8 * MB, rows: 20_000, columns: 200, cells: 400_000, characters: 100_000 },
  leftovers: { bytes: 2 * MB, rows: 5000, columns: 200, cells: 100_000, characters: 100_000 },
  zip: { bytes: 128 * MB, files: 1000, unpacked: 256 * MB },
};
