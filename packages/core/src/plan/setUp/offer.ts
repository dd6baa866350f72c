/** What a file has to offer a first plan, before anybody has answered anything: its course, the faults of its track, its waypoints. */
import { flawFindings, flawsOf, tangleFindings } from '../../course/quality.ts';
import type { IndexedCourse } from '../../course/segmentIndex.ts';
import { type Result, bad, good } from '../../finding.ts';
import { chooseLine } from '../../gpx/chooseLine.ts';
import type { GpxDocument } from '../../gpx/document.ts';
import { isGpxDocument } from '../../gpx/shapes.ts';
import { aText, recordOf, want } from '../../wants.ts';
import type { CourseAnswers } from './answers.ts';
import { readyCourse } from './ready.ts';

/** A course with what its file says beside it. */
export interface OfferedCourse {
  readonly name: string;
  readonly course: IndexedCourse;
  /** Waypoints that look like stations. */
  readonly stations: number;
  /** Waypoints that are named by a distance and would become marks of the course. */
  readonly distances: number;
}

/**
 * The course of a file and how many of its waypoints look like stations and how many like distances. Findings: those of its
 * line, and the flaws of its track, which `cleaned` can take out where they are spikes and tangles. Not ok: a course
 * that cannot be built.
 * @example
 * ```ts
 * import { readGpx } from '@halfcup/core/gpx';
 * import { offeredCourse } from '@halfcup/core/plan';
 * const gpx = readGpx(`<gpx version="1.1" creator="me"><wpt lat="-33.2" lon="-17.38"><name>Tap</name></wpt><trk><trkseg>
 *   <trkpt lat="-33.2" lon="-17.4"/><trkpt lat="-33.2" lon="-17.36"/></trkseg></trk></gpx>`, 'full.gpx');
 * if (!gpx.ok) throw new Error(gpx.findings[0]?.message);
 * const offered = offeredCourse({ gpx: 'full.gpx' }, gpx.value);
 * offered.ok && offered.value.stations; // → 1
 * ```
 */
export function offeredCourse(answers: CourseAnswers, document: GpxDocument): Result<OfferedCourse> {
  want('offeredCourse', 'answers', recordOf<Pick<CourseAnswers, 'gpx'>>('a course { gpx }', { gpx: aText }), answers);
  want('offeredCourse', 'document', isGpxDocument, document);
  const fallback = document.name ?? document.file.replace(/^.*\//u, '').replace(/\.gpx$/iu, '');
  const ready = readyCourse(answers, 'course', { name: fallback, marks: true }, document);
  const line = chooseLine(document, answers.track, { file: document.file });
  const where = { file: document.file };
  const flaws = line.ok ? flawFindings(flawsOf(line.value.segments), where) : [];
  if (!ready.ok) return bad([...ready.findings, ...flaws]);
  const { name, indexed, roles, marks } = ready.value;
  return good({ name, course: indexed, stations: roles.stations.length, distances: marks.length }, [
    ...ready.findings.filter(({ code }) => code !== 'start-waypoint'),
    ...flaws,
    ...tangleFindings(indexed, where),
  ]);
}
