/** `halfcup course`: the facts of a course. */
import { courseDocument } from '../../src/export/documents.ts';
import { good } from '../../src/finding.ts';
import { type Run, has } from '../call.ts';
import { readCourse } from '../lines.ts';
import { json, unitsOf } from '../printing.ts';
import { courseText } from '../text/course.ts';

export const run: Run = async (call) => {
  const read = await readCourse(call.positionals[0]!, call);
  if (!read.ok) return read;
  const document = courseDocument(read.value.course, read.findings);
  return good({ text: has(call, 'json') ? json(document) : courseText(document, unitsOf(call)) });
};
