/**
 * The layout as GPX 1.1 for hand-held devices: each course as a track of its own line, and waypoints for stations,
 * signs, first tables, trash drops and points. A waypoint's name is the station's number on the papers, a letter in
 * running order and one word ("03A SIGN"): short, plain letters, and sorted by name in running order. The whole words
 * are in its description. Nothing is moved or clamped: positions are the layout's, to 7 decimals (1 cm).
 */
import { type Course, courseLength } from '../course/course.ts';
import { vertexAt } from '../course/locate.ts';
import type { IndexedCourse } from '../course/segmentIndex.ts';
import { type Finding, type LonLat, type Result, good } from '../finding.ts';
import type { GpxSegment } from '../gpx/document.ts';
import { type GpxPointToWrite, type GpxTrackToWrite, writeGpx } from '../gpx/write.ts';
import type { ItemKind } from '../kinds.ts';
import { type LaidDirection, type Layout, type StationLayout, isTable } from '../layout/layout.ts';
import { courseById } from '../plan/lookups.ts';
import type { PlanPoint } from '../plan/plan.ts';
import { itemWord } from '../station/wording.ts';
import { formatMeasure } from '../format.ts';
import type { UnitSystem } from '../units.ts';
import { CAUTION } from '../text/caution.ts';
import { exportFinding } from './exportFinding.ts';
import { wheeledText } from './wheeled.ts';
import { type Peg, pegsOf } from '../layout/pegs.ts';
import { numberOf } from '../layout/layout.ts';
import { maybe, oneOf, want } from '../wants.ts';
import { isLayout } from '../layout/shapes.ts';

/** A waypoint without its number and letter. */
interface Bare {
  readonly word: string;
  readonly kind: string;
  readonly at: LonLat | null;
  readonly description: string;
  /** The end of an item that it stands for; absent for stations and points, which always have a place. */
  readonly of?: { readonly item: ItemKind; readonly end: Peg['end'] };
}

/**
 * The layout as GPX 1.1 for hand-held devices, courses as tracks and items as waypoints, in the units of its plan unless others are given (for descriptions only). What has no place on the
 * ground, such as a sign before the start, is left out, with a note (`export-unplaced`).
 * @example
 * ```ts
 * import { analyse, readPlan, toGpx } from '@halfcup/core';
 * import { readGpx } from '@halfcup/core/gpx';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const result = analyse(read.value.plan, { gpx: new Map() });
 * if (!result.ok) throw new Error(result.findings[0]?.message);
 * const written = toGpx(result.value);
 * const back = written.ok ? readGpx(written.value, 'layout.gpx') : written;
 * back.ok && back.value.waypoints.map(({ name }) => name); // → ['01A SIGN', '01B STATION', '01C DRINK', '01D TRASH FROM', '01E TRASH TO']
 * ```
 */
export function toGpx(layout: Layout, given?: UnitSystem): Result<string> {
  want('toGpx', 'layout', isLayout, layout);
  want('toGpx', 'units', maybe(oneOf('metric', 'imperial')), given);
  const { plan, courses, stations } = layout;
  const units = given ?? plan.units;
  const digits = Math.max(2, String(stations.length).length);
  const inOrder = stations.toSorted((a, b) => numberOf(a) - numberOf(b));
  const all = inOrder.map((station) => ({ station, bare: bareOf(station, courses, units) }));
  const waypoints = all.flatMap(({ station, bare }) =>
    bare.flatMap(({ word, kind, at, description }, k): GpxPointToWrite[] => {
      if (at === null) return [];
      const number = String(numberOf(station)).padStart(digits, '0');
      return [
        {
          lon: at[0],
          lat: at[1],
          name: `${number}${letters(k)} ${word}`,
          comment: `Station ${numberOf(station)}: ${station.name}`,
          description,
          type: kind,
        },
      ];
    }),
  );
  const tracks = courses.map(({ course }) => trackOf(course, layout, units));
  const version = plan.revision === undefined ? [] : [`Version ${plan.revision}.`];
  return good(
    writeGpx({ creator: 'Halfcup', name: plan.name, description: [...version, CAUTION].join(' '), waypoints, tracks }),
    all.flatMap(({ station, bare }) => unplaced(station, bare)),
  );
}

/** A to Z, then ZA to ZZ and so on, so that more than 26 still sort. */
const letters = (k: number): string => (k < 25 ? String.fromCharCode(65 + k) : `Z${letters(k - 25)}`);

function unplaced(station: StationLayout, bare: readonly Bare[]): Finding[] {
  const items = bare.flatMap(({ at, of }) => (at === null && of !== undefined ? [of] : []));
  if (items.length === 0) return [];
  const where = { path: `/stations/${station.index}`, station: station.id };
  return [exportFinding('export-unplaced', { items }, { severity: 'note', where })];
}

function trackOf(course: Course, { plan }: Layout, units: UnitSystem): GpxTrackToWrite {
  const races = plan.races.filter((race) => race.course === course.id).map(({ name }) => name);
  const length = formatMeasure(courseLength(course), units);
  return {
    name: course.name,
    description: [length, ...races].join('; '),
    type: 'course',
    segments: segmentsOf(course),
  };
}

/** The runs of a course between its skipped gaps, with elevations where it has them. */
function segmentsOf(course: Course): GpxSegment[] {
  const ends = [...course.skips.map(({ vertex }) => vertex + 1), course.lon.length];
  return ends.map((end, k) => {
    const from = ends[k - 1] ?? 0;
    const vertices = Array.from({ length: end - from }, (_, i) => vertexAt(course, from + i));
    return {
      lon: Float64Array.from(vertices, ([lon]) => lon),
      lat: Float64Array.from(vertices, ([, lat]) => lat),
      ele: course.ele?.slice(from, end) ?? new Float64Array(vertices.length).fill(NaN),
    };
  });
}

/** All waypoints of a station: those of the lead direction, then each other direction's own, then points. */
function bareOf(station: StationLayout, courses: readonly IndexedCourse[], units: UnitSystem): Bare[] {
  const points = station.station.points.map(pointOf);
  if (station.directions.length === 0)
    return [
      {
        word: 'STATION',
        kind: 'station',
        at: station.at,
        description: `${stationText(station)}; no course runs by it`,
      },
      ...points,
    ];
  const laid = station.directions.flatMap((direction) => {
    const indexed = courseById(courses, direction.course);
    return chosen(pegsOf(station, direction, indexed), direction).map((peg) =>
      ofPeg(peg, station, direction, indexed, units),
    );
  });
  return [...laid, ...points];
}

/** Sign, first table, chalk mark, and both ends of the trash drop; of a direction that is not the lead its sign and trash. */
function chosen(pegs: readonly Peg[], { lead }: LaidDirection): Peg[] {
  const firstTable = pegs.find(({ item }) => item !== null && isTable(item) && item.kind !== 'handOut');
  return pegs.filter((peg) => (peg.item === null || peg === firstTable ? lead : !isTable(peg.item)));
}

const WORDS = {
  sign: 'SIGN',
  gel: 'GEL',
  sportsDrink: 'DRINK',
  water: 'WATER',
  handOut: 'HAND-OUT',
  trash: 'TRASH',
} as const;
const ENDS = { whole: '', first: ' FROM', last: ' TO' } as const;

function ofPeg(
  peg: Peg,
  station: StationLayout,
  direction: LaidDirection,
  { course }: IndexedCourse,
  units: UnitSystem,
): Bare {
  const { item, end, measure, at } = peg;
  const where = `${formatMeasure(measure, units)} of ${course.name}`;
  if (item === null)
    return { word: 'STATION', kind: 'station', at, description: `${stationText(station)}; chalk mark at ${where}` };
  const trash = item.kind === 'trash';
  const what =
    item.wording === undefined
      ? `${itemWord(item.kind)}${trash ? ENDS[end].toLowerCase() : ', first table'}`
      : `${itemWord(item.kind)} "${item.wording}"`;
  const side = item.side === 'unclear' ? 'side unclear' : `${item.side} side`;
  const other = direction.lead ? '' : '; for runners of another direction';
  return {
    word: `${WORDS[item.kind]}${trash ? ENDS[end] : ''}`,
    kind: item.kind,
    at,
    description: `${what}, ${side}; ${where}; ${fromMark(peg, units)}${other}`,
    of: { item: item.kind, end: trash ? end : 'whole' },
  };
}

function fromMark({ fromMark: { length, margin }, along }: Peg, units: UnitSystem): string {
  const by = length ?? along;
  if (Math.abs(by) < 0.05) return 'at the chalk mark';
  const far = wheeledText({ length: Math.abs(by), margin: length === null ? null : margin }, units);
  return `${far} ${by < 0 ? 'before' : 'past'} the chalk mark ${length === null ? 'along the course' : 'by wheel'}`;
}

const stationText = ({ name, station: { serves } }: StationLayout): string =>
  `${name}: ${serves.map((kind) => itemWord(kind).toLowerCase()).join(', ')}`;

const pointOf = ({ kind, at, name, street, note }: PlanPoint): Bare => ({
  word: kind.toUpperCase(),
  kind,
  at,
  description: [name ?? kind, street, note].filter((text) => text !== undefined).join('; '),
});
