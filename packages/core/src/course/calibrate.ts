/**
 * Calibration: the scale from raw to calibrated measure that known marks and a known length give.
 * Each mark is assigned one of its passes so that measures increase along the course and the
 * factors between neighbours are as near 1 as can be (least sum of squared logarithms, by dynamic
 * programming), so that laps and out-and-backs come right. Linear between marks; the last factor holds.
 */
import { type Finding, type LonLat, type Result, type Where, bad, good, isWhere } from '../finding.ts';
import { excerpt } from '../gpx/trouble.ts';
import type { Knot as KnotName } from '../text/params/course.ts';
import type { Metres } from '../units.ts';
import { type Course, type Scale, courseLength } from './course.ts';
import { courseFinding } from './courseFinding.ts';
import { type PassOptions, isPassOptions, nearestOn, passesOf, passOptions } from './passes.ts';
import { interpolate, toMeasure, toRaw } from './scale.ts';
import type { IndexedCourse } from './segmentIndex.ts';
import { type Shape, aText, finite, listOf, maybe, position, recordOf, want } from '../wants.ts';
import { wantIndexed } from './indexedShape.ts';

/** A point whose course distance is known, such as a surveyed kilometre or mile mark. */
export interface Mark {
  readonly at: LonLat;
  /** Metres from the start, as surveyed. */
  readonly measure: Metres;
  /** For findings. */
  readonly name?: string;
  /** Goes into each finding about the mark. */
  readonly where?: Where;
}

/** What is known of a course's true distances. */
export interface Calibration {
  /** In any order. */
  readonly marks: readonly Mark[];
  /** Known course length, metres: fixes the finish. */
  readonly length?: Metres;
  /** Goes into each finding. */
  readonly where?: Where;
  /** How near a mark is to the course; `PASS_DEFAULTS` where nothing is said. */
  readonly options?: Partial<PassOptions>;
}

export const isMark: Shape = recordOf<Mark>('a mark', {
  at: position,
  measure: finite,
  name: maybe(aText),
  where: maybe(isWhere),
});

const isCalibration: Shape = recordOf<Calibration>('what is known of its length, such as { marks: [] }', {
  marks: listOf(isMark),
  length: maybe(finite),
  where: maybe(isWhere),
  options: maybe(isPassOptions),
});

/** Factors of calibrated to raw length that need no word: a GPX rarely wanders by more. */
export const FACTOR_LIMITS: readonly [number, number] = [0.97, 1.03];

/** A foot this near an end of the course is that end, metres. */
const AT_END = 1;
/** What it costs to take a mark at the start for the start's own: as much as a factor at the limit. */
const START_MARK = Math.log(FACTOR_LIMITS[1]) ** 2;

/** One mark at one of its places; `raw` is the measure that the course has before it is calibrated here. */
interface Knot {
  readonly raw: number;
  readonly measure: number;
  readonly name: KnotName;
  readonly where: Where;
}

/** The best way to a knot: its cost, and the knots before it. */
interface Way {
  readonly cost: number;
  readonly knots: readonly Knot[];
}

/**
 * The course with its calibrated scale; as it was where there are no marks and no length.
 * Errors: a mark off the course; no assignment in which measures increase. Findings: a factor outside 0.97 to 1.03 (warning).
 * @example
 * ```ts
 * import { buildCourse, calibrate, courseLength, indexCourse, measureOf } from '@halfcup/core/geometry';
 *
 * const pier = { lon: Float64Array.of(-30.1, -30.09, -30.1), lat: Float64Array.of(12.2, 12.2, 12.2), ele: Float64Array.of(2, 6, 4) };
 * const built = buildCourse({ id: 'pier', name: 'Pier run', segments: [pier] });
 * if (!built.ok) throw new Error(built.findings[0]?.message);
 * const calibrated = calibrate(indexCourse(built.value), { marks: [{ at: [-30.09, 12.2], measure: 1100 }], length: 2180 });
 * if (!calibrated.ok) throw new Error(calibrated.findings[0]?.message);
 * courseLength(calibrated.value.course); // → 2180
 * measureOf(calibrated.value.course, 500); // → 505.414
 * ```
 */
export function calibrate(indexed: IndexedCourse, calibration: Calibration): Result<IndexedCourse> {
  wantIndexed('calibrate', indexed);
  want('calibrate', 'calibration', isCalibration, calibration);
  const { marks, length } = calibration;
  if (marks.length === 0 && length === undefined) return good(indexed);
  const where = calibration.where ?? {};
  const options = passOptions(calibration.options);
  const { course } = indexed;
  const candidates = [...marks]
    .sort((a, b) => a.measure - b.measure)
    .map((mark) => candidatesOf(mark, indexed, options, where));
  const off = candidates.flatMap(({ knots, mark }) =>
    knots.length === 0 ? [offCourse(mark, indexed, options, where)] : [],
  );
  if (off.length > 0) return bad(off);
  const way = cheapest(
    candidates.map(({ knots }) => knots),
    courseLength(course),
    length,
  );
  if (way === null) return bad([noOrder(candidates, course, length, where)]);
  const scale = scaleThrough(way.knots, course);
  return good({ ...indexed, course: { ...course, scale } }, factorFindings(way.knots, where));
}

interface Candidates {
  readonly mark: Mark;
  readonly knots: readonly Knot[];
}

function candidatesOf(mark: Mark, indexed: IndexedCourse, options: PassOptions, where: Where): Candidates {
  const name = nameOf(mark);
  const knots = passesOf(indexed, mark.at, options).map((pass) => ({
    raw: pass.measure,
    measure: mark.measure,
    name,
    where: mark.where ?? where,
  }));
  return { mark, knots };
}

const nameOf = ({ name, measure }: Mark): KnotName => (name === undefined ? { measure } : { name: excerpt(name) });

/** Adds one mark after another; for each of its places the cheapest way that leads there. */
function cheapest(candidates: readonly (readonly Knot[])[], rawEnd: number, length: number | undefined): Way | null {
  const start: Knot = { raw: 0, measure: 0, name: 'start', where: {} };
  let ways: readonly Way[] = [{ cost: 0, knots: [start] }];
  candidates.forEach((knots, k) => {
    ways = knots.flatMap((knot) => {
      const own = k === 0 && knot.raw < AT_END ? startingAt(knot) : null;
      const reached = ways.flatMap((way) => extended(way, knot));
      return best(own === null ? reached : [own, ...reached]) ?? [];
    });
  });
  if (length !== undefined) {
    const finish: Knot = { raw: rawEnd, measure: length, name: 'finish', where: {} };
    ways = ways.flatMap((way) => endedAt(way, finish));
  }
  return best(ways)?.[0] ?? null;
}

/** A way whose start is the mark itself. */
const startingAt = (knot: Knot): Way => ({ cost: START_MARK, knots: [{ ...knot, raw: 0 }] });

function extended(way: Way, knot: Knot): Way[] {
  const last = way.knots.at(-1)!;
  const raw = knot.raw - last.raw;
  const measure = knot.measure - last.measure;
  if (!(raw > 0 && measure > 0)) return [];
  return [{ cost: way.cost + Math.log(measure / raw) ** 2, knots: [...way.knots, knot] }];
}

/** The finish, or the last mark where that stands on it with the same measure. */
function endedAt(way: Way, finish: Knot): Way[] {
  const last = way.knots.at(-1)!;
  const same =
    finish.raw - last.raw < AT_END && Math.abs(finish.measure - last.measure) < AT_END && way.knots.length > 1;
  return same ? [{ cost: way.cost, knots: [...way.knots.slice(0, -1), finish] }] : extended(way, finish);
}

function best(ways: readonly Way[]): [Way] | null {
  const first = ways[0];
  return first === undefined ? null : [ways.reduce((cheap, way) => (way.cost < cheap.cost ? way : cheap), first)];
}

/** The knots laid over the scale that the course has already: both their bends are kept. */
function scaleThrough(knots: readonly Knot[], course: Course): Scale {
  const from = knots.map((knot) => knot.raw);
  const to = knots.map((knot) => knot.measure);
  const end = courseLength(course);
  if (from.at(-1)! < end) {
    const factor = from.length < 2 ? 1 : (to.at(-1)! - to.at(-2)!) / (from.at(-1)! - from.at(-2)!);
    to.push(to.at(-1)! + factor * (end - from.at(-1)!));
    from.push(end);
  }
  const raw = [...new Set([...course.scale.raw, ...from.slice(0, -1).map((measure) => toRaw(course, measure))])].sort(
    (a, b) => a - b,
  );
  return { raw, measure: raw.map((at) => interpolate(from, to, toMeasure(course, at))) };
}

function factorFindings(knots: readonly Knot[], where: Where): Finding[] {
  return knots.slice(1).flatMap((to, k) => {
    const from = knots[k]!;
    const factor = (to.measure - from.measure) / (to.raw - from.raw);
    if (factor >= FACTOR_LIMITS[0] && factor <= FACTOR_LIMITS[1]) return [];
    const params = {
      from: from.name,
      to: to.name,
      marks: to.measure - from.measure,
      line: to.raw - from.raw,
      within: FACTOR_LIMITS[1] - 1,
    };
    return [
      courseFinding('mark-factor', params, {
        severity: 'warning',
        where: { ...where, ...to.where, measure: to.measure },
        measured: factor,
        limit: FACTOR_LIMITS,
      }),
    ];
  });
}

function offCourse(mark: Mark, indexed: IndexedCourse, options: PassOptions, where: Where): Finding {
  const { distance } = nearestOn(indexed, mark.at);
  const most = options.snapRadius;
  return courseFinding(
    'mark-off-course',
    { mark: nameOf(mark), distance, most },
    { severity: 'error', where: { ...where, ...mark.where, at: mark.at }, measured: distance, limit: most, unit: 'm' },
  );
}

/** So many marks are listed where they have no order. */
const LISTED = 8;

function noOrder(candidates: readonly Candidates[], course: Course, length: number | undefined, where: Where): Finding {
  if (candidates.length === 0)
    return courseFinding('marks-no-order', { length: length ?? 0 }, { severity: 'error', where });
  const marks = candidates.map(({ mark, knots }) => ({ mark: nameOf(mark), along: knots.map(({ raw }) => raw) }));
  const finish = length === undefined ? [] : [{ mark: 'finish' as const, along: [courseLength(course)] }];
  const all = [...marks, ...finish];
  const params = { places: all.slice(0, LISTED), more: Math.max(0, all.length - LISTED) };
  return courseFinding('marks-no-order', params, { severity: 'error', where });
}
