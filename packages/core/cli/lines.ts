/** One line of a GPX file as a course, chosen and read as the options of a call say. */
import { basename } from 'node:path';
import { buildCourse } from '../src/course/build.ts';
import type { Course, GapRule } from '../src/course/course.ts';
import { type Finding, type Result, type Where, bad, good } from '../src/finding.ts';
import type { GpxDocument, GpxLine, GpxSegment } from '../src/gpx/document.ts';
import { chooseLine } from '../src/gpx/chooseLine.ts';
import { type Call, has } from './call.ts';
import { readGpxFile } from './files.ts';
import type { Io } from './io.ts';

export interface ReadCourse {
  readonly course: Course;
  readonly document: GpxDocument;
  readonly where: Where;
}

/** Segments that take the place of a line's own, and findings on them. */
export type Prepare = (
  segments: readonly GpxSegment[],
  where: Where,
) => { readonly segments: readonly GpxSegment[]; readonly findings: readonly Finding[] };

const asTheyAre: Prepare = (segments) => ({ segments, findings: [] });

/** The course of a file; its name is the line's, else the file's. */
export async function readCourse(
  io: Io,
  file: string,
  call: Call,
  prepare: Prepare = asTheyAre,
): Promise<Result<ReadCourse>> {
  const read = await readGpxFile(io, file);
  if (!read.ok) return read;
  const document = read.value;
  const line = chooseLine(document, call.values.get('track'), { file });
  if (!line.ok) return bad([...read.findings, ...line.findings]);
  const where = { file, line: line.value.line, column: line.value.column };
  const prepared = prepare(line.value.segments, where);
  const built = build(line.value, prepared.segments, document, call, where);
  const findings = [...read.findings, ...line.findings, ...built.findings, ...prepared.findings];
  return built.ok ? good({ course: built.value, document, where }, findings) : bad(findings);
}

function build(
  line: GpxLine,
  segments: readonly GpxSegment[],
  document: GpxDocument,
  call: Call,
  where: Where,
): Result<Course> {
  const gaps = call.values.get('gaps') as GapRule | undefined;
  const name = line.name ?? document.name ?? basename(document.file).replace(/\.gpx$/iu, '');
  return buildCourse({
    id: 'course',
    name,
    segments,
    reverse: has(call, 'reverse'),
    ...(gaps === undefined ? {} : { gaps }),
    where,
  });
}
