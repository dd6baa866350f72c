/** Courses from points that another tool has read: checked like those of a file, then built. */
import { type Finding, type LonLat, type Result, type Where, bad, good } from '../finding.ts';
import { type LineSource, type NamedLine, chooseLine } from '../gpx/chooseLine.ts';
import type { GpxSegment } from '../gpx/document.ts';
import { foundOf } from '../text/found.ts';
import type { Metres } from '../units.ts';
import { buildCourse } from './build.ts';
import { type Course, type Drawn, type GapRule, isDrawn, isGapRule } from './course.ts';
import { courseFinding } from './courseFinding.ts';
import { flawFindings, flawsOf } from './quality.ts';
import { type Shape, aFlag, aText, maybe, recordOf } from '../wants.ts';
import { isTrackChoice } from '../gpx/shapes.ts';

/** How a line of another tool becomes a course. */
export interface ForeignOptions {
  /** Name of the line, or its index; absent: the first with points, and a note where there are more. */
  readonly track?: string | number;
  /** Absent: `course`. */
  readonly id?: string;
  /** Absent: the line's own. */
  readonly name?: string;
  readonly drawn?: Drawn;
  /** What is done with gaps of over 50 m between segments; absent: refused. */
  readonly gaps?: GapRule;
  /** Run from the last point to the first. */
  readonly reverse?: boolean;
}

export const isForeignOptions: Shape = recordOf<ForeignOptions>('options such as { drawn: "centre" }', {
  track: isTrackChoice,
  id: maybe(aText),
  name: maybe(aText),
  drawn: maybe(isDrawn),
  gaps: maybe(isGapRule),
  reverse: maybe(aFlag),
});

/** A position as another tool holds it, and where it stands there. */
export interface ForeignPoint {
  readonly lon: unknown;
  readonly lat: unknown;
  readonly ele?: unknown;
  /** Which of its line, from 1, where that is to be told in words. */
  readonly point?: number;
  readonly where: Where;
}

/** So many faults of a line's points are listed. */
const LISTED = 20;

const inRange = (value: unknown, most: number): value is number => typeof value === 'number' && Math.abs(value) <= most;

/** The position, or what is wrong with it. */
export function positionOf({ lon, lat, point, where }: ForeignPoint): Result<LonLat> {
  if (inRange(lon, 180) && inRange(lat, 90)) return good([lon, lat]);
  const swapped = inRange(lat, 180) && inRange(lon, 90) ? ({ swapped: true } as const) : {};
  const params = { lon: foundOf(lon), lat: foundOf(lat), ...(point === undefined ? {} : { point }), ...swapped };
  return bad([courseFinding('position', params, { severity: 'error', where })]);
}

/** A line of another tool, and what is wrong with its points: that counts only where the line is the one chosen. */
export interface ForeignLine extends NamedLine {
  readonly faults: readonly Finding[];
}

/** Columns of points, NaN where a point is no position, with the first 20 faults; an elevation that is no number is none. */
export function columnsOf(points: readonly ForeignPoint[]): {
  readonly segment: GpxSegment;
  readonly faults: readonly Finding[];
} {
  const positions = points.map(positionOf);
  const column = (k: 0 | 1): Float64Array =>
    Float64Array.from(positions, (position) => (position.ok ? position.value[k] : NaN));
  const faults = positions.flatMap((position) => (position.ok ? [] : position.findings)).slice(0, LISTED);
  return {
    segment: { lon: column(0), lat: column(1), ele: Float64Array.from(points, ({ ele }) => elevationIn(ele)) },
    faults,
  };
}

const elevationIn = (ele: unknown): Metres => (typeof ele === 'number' && Number.isFinite(ele) ? ele : NaN);

/** The chosen line as a course, with findings on the flaws of its track; `where` goes into each finding. */
export function courseOfLines(
  source: LineSource<ForeignLine>,
  options: ForeignOptions,
  where: Where = {},
): Result<Course> {
  const { track, id = 'course', name, ...how } = options;
  const line = chooseLine(source, track, where);
  if (!line.ok) return line;
  if (line.value.faults.length > 0) return bad(line.value.faults);
  const { segments } = line.value;
  const built = buildCourse({ ...how, id, name: name ?? line.value.name ?? id, segments, where });
  const findings = [...line.findings, ...built.findings, ...flawFindings(flawsOf(segments), where)];
  return built.ok ? good(built.value, findings) : bad(findings);
}
