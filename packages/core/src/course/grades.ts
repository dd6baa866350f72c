/**
 * Grades of a course: rise over run between two measures, elevation linear between the course's own points. What the file's
 * elevations are worth (often metres, where a satellite receiver wrote them) is not known.
 */
import type { Metres } from '../units.ts';
import { finite, positive, want } from '../wants.ts';
import { type Course, courseLength, startMeasure, wantCourse } from './course.ts';
import { elevationAt } from './locate.ts';

/**
 * Rise over run between two calibrated measures in metres, positive uphill; what lies beyond an end of the course is left out. `null`
 * without elevations, and where `to` is not after `from` or both are off the course. Throws a RangeError for what is no number.
 * @example
 * ```ts
 * import { courseFromGpx } from '@halfcup/core/gpx';
 * import { gradeBetween } from '@halfcup/core/geometry';
 *
 * const gpx = `<gpx version="1.1" creator="us" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>
 *   <trkpt lat="12.2" lon="-30.1"><ele>4</ele></trkpt><trkpt lat="12.2" lon="-30.09"><ele>44</ele></trkpt>
 * </trkseg></trk></gpx>`;
 * const course = courseFromGpx(gpx);
 * if (!course.ok) throw new Error(course.findings[0]?.message);
 * gradeBetween(course.value, 200, 700); // → 0.03676
 * ```
 */
export function gradeBetween(course: Course, from: Metres, to: Metres): number | null {
  wantCourse('gradeBetween', course);
  want('gradeBetween', 'from', finite, from);
  want('gradeBetween', 'to', finite, to);
  const low = Math.max(from, startMeasure(course));
  const high = Math.min(to, courseLength(course));
  const [start, end] = [elevationAt(course, low), elevationAt(course, high)];
  return start === null || end === null || !(high > low) ? null : (end - start) / (high - low);
}

/** A stretch of a course that is steeper than a limit. */
export interface SteepStretch {
  readonly from: Metres;
  readonly to: Metres;
  /** The steepest grade in it, negative downhill. */
  readonly grade: number;
}

/** Metres between two grades that are looked at. */
const STEP = 10;

/**
 * Stretches steeper than `limit` (0.04: 4 %), up or down, in the order of the course. A place counts by the grade over `over` metres
 * about it (50 unless told), at every 10 m; so a stretch is known to 10 m. Empty without elevations. Throws a RangeError where `limit`
 * or `over` is not over 0.
 * @example
 * ```ts
 * import { courseFromGpx } from '@halfcup/core/gpx';
 * import { steepStretches } from '@halfcup/core/geometry';
 *
 * const gpx = `<gpx version="1.1" creator="us" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>
 *   <trkpt lat="12.2" lon="-30.1"><ele>4</ele></trkpt><trkpt lat="12.2" lon="-30.09"><ele>4</ele></trkpt>
 *   <trkpt lat="12.2" lon="-30.08"><ele>68</ele></trkpt>
 * </trkseg></trk></gpx>`;
 * const course = courseFromGpx(gpx);
 * if (!course.ok) throw new Error(course.findings[0]?.message);
 * steepStretches(course.value, 0.04).map(({ from, to }) => [from, to]); // → [[1100, 2176.434]]
 * ```
 */
export function steepStretches(course: Course, limit: number, over: Metres = 50): SteepStretch[] {
  wantCourse('steepStretches', course);
  want('steepStretches', 'limit', positive, limit);
  want('steepStretches', 'over', positive, over);
  const end = courseLength(course);
  const found: SteepStretch[] = [];
  if (course.ele === null) return found;
  for (let at = startMeasure(course); at < end; at += STEP) {
    const middle = Math.min(at + STEP / 2, end);
    const grade = gradeBetween(course, middle - over / 2, middle + over / 2);
    if (grade === null || Math.abs(grade) <= limit) continue;
    const to = Math.min(at + STEP, end);
    const last = found.at(-1);
    // Uphill and downhill are two stretches.
    if (last !== undefined && last.to >= at - 1e-6 && Math.sign(last.grade) === Math.sign(grade))
      found[found.length - 1] = {
        from: last.from,
        to,
        grade: Math.abs(grade) > Math.abs(last.grade) ? grade : last.grade,
      };
    else found.push({ from: at, to, grade });
  }
  return found;
}
