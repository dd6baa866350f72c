/** One line of a GPX file as a course, chosen and read as the options of a call say. */
import { basename } from 'node:path';
import { buildCourse } from '../src/course/build.ts';
import type { Course, GapRule } from '../src/course/course.ts';
import { type Result, bad, good } from '../src/finding.ts';
import type { GpxDocument } from '../src/gpx/document.ts';
import { chooseLine } from '../src/plan/courses.ts';
import { type Call, has } from './call.ts';
import { readGpxFile } from './files.ts';

export interface ReadCourse {
  readonly course: Course;
  readonly document: GpxDocument;
}

/** The course of a file; its name is the line's, else the file's. */
export async function readCourse(file: string, call: Call): Promise<Result<ReadCourse>> {
  const read = await readGpxFile(file);
  if (!read.ok) return read;
  const document = read.value;
  const line = chooseLine(document, call.values.get('track'), { file });
  if (!line.ok) return bad([...read.findings, ...line.findings]);
  const { name, segments, line: row, column } = line.value;
  const gaps = call.values.get('gaps') as GapRule | undefined;
  const where = { file, line: row, column };
  const built = buildCourse({
    id: 'course',
    name: name ?? document.name ?? basename(file).replace(/\.gpx$/iu, ''),
    segments,
    reverse: has(call, 'reverse'),
    ...(gaps === undefined ? {} : { gaps }),
    where,
  });
  const findings = [...read.findings, ...line.findings, ...built.findings];
  return built.ok ? good({ course: built.value, document }, findings) : bad(findings);
}
