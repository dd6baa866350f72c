/** `halfcup start`: the text of a first plan. */
import { basename, dirname, isAbsolute, relative, sep } from 'node:path';
import type { GapRule } from '../../src/course/course.ts';
import { type Finding, type Result, bad, good } from '../../src/finding.ts';
import { type StartOptions, startPlan } from '../../src/plan/start.ts';
import type { UnitSystem } from '../../src/units.ts';
import type { GpxDocument } from '../../src/gpx/document.ts';
import { setUpPlan } from '../../src/plan/setUp/setUp.ts';
import { type Call, type Run, has, lengthOf, lengthsOf, refuse } from '../call.ts';
import { liesInside, readGpxFile } from '../files.ts';
import { type Io, STDIN, pathOf } from '../io.ts';
import { REFUSAL, START } from '../messages.ts';
import { type StartFile, answersOf, needsAnswers, textsOf } from '../startAnswers.ts';
import { marksOf } from '../marks.ts';

export const run: Run = async (call, io) => {
  if (call.positionals.slice(1).includes(STDIN)) return refuse(START.noFile());
  return needsAnswers(call) ? fromAnswers(call, io) : fromOne(call, io);
};

const fromAnswers: Run = async (call, io) => {
  const files: StartFile[] = [];
  const documents = new Map<string, GpxDocument>();
  const notes: Finding[] = [];
  for (const given of call.positionals.slice(1)) {
    const read = await readGpxFile(io, given);
    if (!read.ok) return read;
    const gpx = await pathInPlan(io, given, call.values.get('out'));
    if (!gpx.ok) return gpx;
    if (documents.has(gpx.value)) return refuse(START.sameName(gpx.value));
    files.push({ given, gpx: gpx.value });
    documents.set(gpx.value, read.value);
    notes.push(...read.findings, ...gpx.findings);
  }
  const answers = await answersOf(call, io, files);
  if (!answers.ok) return answers;
  const made = setUpPlan(answers.value, documents);
  return made.ok ? good({ text: made.value, notes: [...notes, ...made.findings] }) : made;
};

const fromOne: Run = async (call, io) => {
  const [name, file] = call.positionals as [string, string];
  const read = await readGpxFile(io, file);
  if (!read.ok) return read;
  const gpx = await pathInPlan(io, file, call.values.get('out'));
  if (!gpx.ok) return gpx;
  const marks = marksOf(call, read.value);
  if (!marks.ok) return bad(marks.findings);
  const started = startPlan(read.value, { ...optionsOf(call), marks: marks.value, name, gpx: gpx.value });
  if (!started.ok) return bad(started.findings.map((finding) => inFile(finding, file)));
  return good({ text: started.value, notes: [...read.findings, ...gpx.findings, ...started.findings] });
};

const inFile = (finding: Finding, file: string): Finding =>
  finding.where.file === undefined ? { ...finding, where: { ...finding.where, file } } : finding;

function optionsOf(call: Call): Omit<StartOptions, 'name' | 'gpx' | 'marks'> {
  const units = call.values.get('units') as UnitSystem | undefined;
  const every = lengthOf(call, 'every');
  const at = lengthsOf(call, 'at');
  const length = lengthOf(call, 'length');
  const side = call.values.get('side') as StartOptions['side'];
  const track = call.values.get('track');
  const gaps = call.values.get('gaps') as GapRule | undefined;
  return {
    ...textsOf(call),
    ...(units === undefined ? {} : { units }),
    ...(every === undefined ? {} : { every }),
    ...(at === undefined ? {} : { at }),
    ...(length === undefined ? {} : { length }),
    ...(side === undefined ? {} : { side }),
    ...(track === undefined ? {} : { track }),
    ...(gaps === undefined ? {} : { gaps }),
    reverse: has(call, 'reverse'),
  };
}

/** The file as seen from the plan's folder: that of `--out`, else the one the command is given in. */
async function pathInPlan(io: Io, file: string, out: string | undefined): Promise<Result<string>> {
  const folder = out === undefined ? '.' : dirname(out);
  const way = relative(pathOf(io, folder), pathOf(io, file));
  const below = way !== '' && way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way);
  if (below && (await liesInside(io, file, folder)) !== false) return good(way.split(sep).join('/'));
  if (out !== undefined) {
    return bad([
      {
        code: 'gpx-outside',
        severity: 'error',
        message: REFUSAL.courseOutside(folder),
        where: { file },
      },
    ]);
  }
  return good(basename(file), [
    { code: 'gpx-beside', severity: 'note', message: REFUSAL.courseBeside(basename(file)), where: { file } },
  ]);
}
