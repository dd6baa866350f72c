/** `halfcup course`: the facts of a course, calibrated by known marks and length where a call gives any. */
import { calibrate } from '../../src/course/calibrate.ts';
import { cleaned, flawFindings, flawsOf, tangleFindings } from '../../src/course/quality.ts';
import { indexCourse } from '../../src/course/segmentIndex.ts';
import { courseDocument } from '../../src/export/documents.ts';
import { type Finding, bad, good } from '../../src/finding.ts';
import { type Call, type Run, has, lengthOf } from '../call.ts';
import { type Prepare, readCourse } from '../lines.ts';
import { REFUSAL } from '../messages.ts';
import { plainView } from '../findings.ts';
import { marksOf } from '../marks.ts';
import { json, unitsOf } from '../printing.ts';
import { courseText } from '../text/course.ts';

export const run: Run = async (call, io) => {
  const read = await readCourse(io, call.positionals[0]!, call, prepareFor(call));
  if (!read.ok) return read;
  const { course, document, where } = read.value;
  const marks = marksOf(call, document);
  if (!marks.ok) return marks;
  const indexed = indexCourse(course);
  const length = lengthOf(call, 'length');
  const calibrated = calibrate(indexed, { marks: marks.value, where, ...(length === undefined ? {} : { length }) });
  if (!calibrated.ok) return bad(calibrated.findings);
  const findings = [...read.findings, ...tangleFindings(indexed, where), ...marks.findings, ...calibrated.findings];
  const facts = courseDocument(calibrated.value.course, findings, marks.value);
  return good({
    text: has(call, 'json') ? json(facts) : (screen) => courseText(facts, plainView(screen, unitsOf(call))),
  });
};

/** Says what is wrong with the track; takes out what can be, where the call asks for it. */
const prepareFor =
  (call: Call): Prepare =>
  (segments, where) => {
    if (!has(call, 'clean')) return { segments, findings: flawFindings(flawsOf(segments), where) };
    const { segments: kept, removed } = cleaned(segments);
    const notes = flawFindings(removed, where).map((finding): Finding => ({
      ...finding,
      code: 'track-cleaned',
      severity: 'note',
      message: REFUSAL.leftOut(finding.message),
    }));
    return { segments: kept, findings: [...notes, ...flawFindings(flawsOf(kept), where)] };
  };
