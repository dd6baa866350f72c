/** `halfcup ground`: what of a street file lies beside the courses of a plan; `--out` writes it as GeoJSON. */
import { groundDocument } from '../../src/export/groundDocument.ts';
import { type Result, bad, good } from '../../src/finding.ts';
import { clipGround } from '../../src/ground/clipGround.ts';
import type { ClippedGround } from '../../src/ground/clipper.ts';
import { groundText } from '../../src/ground/groundText.ts';
import { type Run, has } from '../call.ts';
import { readFileBytes } from '../files.ts';
import { plainView } from '../findings.ts';
import type { Io } from '../io.ts';
import { analysePlan } from '../plans.ts';
import { json, unitsOf } from '../printing.ts';
import { groundPage } from '../text/ground.ts';

export const run: Run = async (call, io) => {
  const [file, plan] = call.positionals;
  const read = await analysePlan(io, plan!, undefined);
  if (!read.ok) return read;
  const courses = read.value.analysis.courses.map(({ course }) => course);
  const clipped = await clippedFile(io, file!, courses);
  if (!clipped.ok) return bad(clipped.findings);
  const document = groundDocument(clipped.value);
  const written = groundText(clipped.value.ground);
  const out = call.values.get('out');
  return good({
    text: has(call, 'json')
      ? json(document)
      : (screen) => groundPage(document, { file: file!, out, bytes: written.length }, plainView(screen, unitsOf(call))),
    written,
    notes: clipped.findings,
  });
};

const clippedFile = async (
  io: Io,
  file: string,
  courses: Parameters<typeof clipGround>[1]['courses'],
): Promise<Result<ClippedGround>> =>
  readFileBytes(io, file, async (bytes, onProgress) => clipGround(bytes, { file, courses, onProgress }));
