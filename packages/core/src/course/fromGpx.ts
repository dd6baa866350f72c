/** A course from the content of a GPX file: read, chosen, measured and indexed in one call. */
import { type Finding, type Result, bad, good } from '../finding.ts';
import type { GpxLine } from '../gpx/document.ts';
import { readGpx } from '../gpx/read.ts';
import type { Course } from './course.ts';
import { type ForeignLine, type ForeignOptions, courseOfLines, isForeignOptions } from './foreign.ts';
import { indexedOnce } from './indexed.ts';
import { aText, maybe, want } from '../wants.ts';

/** How a GPX file becomes a course. */
export interface GpxCourseOptions extends ForeignOptions {
  /** Its name, for findings; absent: `course.gpx`. */
  readonly file?: string;
}

const NO_FAULTS: readonly Finding[] = [];
const faultless = (line: GpxLine): ForeignLine => ({ ...line, faults: NO_FAULTS });

/**
 * The course in a GPX file, from its bytes or its text: of several lines the one that `track` names, else the first with points;
 * measured on WGS 84 and indexed. Errors: what `readGpx` refuses, no line, no such line, fewer than two different points, a gap over
 * 50 m where nobody says what to do with it. Throws a TypeError on what is neither text nor bytes.
 * @example
 * ```ts
 * import { passesOf } from '@halfcup/core/geometry';
 * import { courseFromGpx } from '@halfcup/core/gpx';
 *
 * const course = courseFromGpx(`<gpx version="1.1" creator="me"><trk><trkseg>
 *   <trkpt lat="12.2" lon="-30.1"/><trkpt lat="12.2" lon="-30.09"/></trkseg></trk></gpx>`);
 * course.ok && passesOf(course.value, [-30.095, 12.20005]).map(({ measure, side }) => [measure, side]); // → [[544.11, 'left']]
 * courseFromGpx('no GPX').ok; // → false
 * ```
 */
export function courseFromGpx(content: Uint8Array | string, options: GpxCourseOptions = {}): Result<Course> {
  want('courseFromGpx', 'options', isForeignOptions, options);
  want('courseFromGpx', 'options.file', maybe(aText), options.file);
  const { file = 'course.gpx', ...how } = options;
  const read = readGpx(content, file);
  if (!read.ok) return read;
  const { tracks, routes } = read.value;
  const source = { file, tracks: tracks.map(faultless), routes: routes.map(faultless) };
  const made = courseOfLines(source, how, { file });
  const findings = [...read.findings, ...made.findings];
  if (!made.ok) return bad(findings);
  indexedOnce(made.value);
  return good(made.value, findings);
}
