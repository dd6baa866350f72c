/**
 * The program `halfcup`: reads the call, runs its command, prints. Exit 0: done; 1: a review found what
 * stands in the way; 2: the call, a file or the plan cannot be used, stdout empty (save that of several
 * plans, the others are still printed); 141: nobody reads stdout any more. Help and version load no geometry. Touches no process.
 */
import type { Finding } from '../src/finding.ts';
import { VERSION } from '../src/version.ts';
import { type Call, type CommandSpec, type Printed, has, refuse } from './call.ts';
import { cleanData, cleanJson, cleanText } from './clean.ts';
import { commandHelp, overallHelp } from './help.ts';
import { CLOSED, type Exit, type Io } from './io.ts';
import { CALL } from './messages.ts';
import { commandOf, readCall } from './parse.ts';
import { PAPER, type Screen, screenOf } from './screen.ts';
import { faultText, problemLine } from './spoken.ts';

interface Ended {
  readonly exit: Exit;
  readonly out: Printed;
  readonly problems?: readonly Finding[];
  /** Printed on stderr after the problems. */
  readonly hint?: Printed;
}

/** Data nearly as they are, of JSON another spelling of the same; what a person sees without what would repaint their screen. */
function printed(text: Printed, screen: Screen, terminal: boolean): string {
  if (typeof text !== 'string') return cleanText(text(screen), screen.coloured);
  if (text.startsWith('{')) return cleanJson(text);
  return terminal ? cleanText(text, false) : cleanData(text);
}

/** The same for a file, to which data go as they are. */
const fileText = (text: Printed): string => (typeof text === 'string' ? text : printed(text, PAPER, false));

/** Runs a call, given without the program's name, and prints; gives what the program ends with. Never rejects. */
export async function main(argv: readonly string[], io: Io): Promise<Exit> {
  try {
    const { exit, out, problems = [], hint = '' } = await answer(argv, io);
    const screen = screenOf(io.stderr, io.env);
    const err =
      exit === 2 && problems.length > 0 && asksJson(argv)
        ? await problemsDocument(problems)
        : problems.map((problem) => `${lineOf(problem, screen)}\n`).join('') + printed(hint, screen, io.stderr.isTTY);
    const text = printed(out, screenOf(io.stdout, io.env), io.stdout.isTTY);
    if (err !== '') await io.stderr.write(err);
    if (text !== '' && !(await io.stdout.write(text))) return CLOSED;
    return exit;
  } catch (error) {
    const message = faultText(error, 'files');
    const fault: Finding = { code: 'halfcup-fault', severity: 'error', message, where: {} };
    const line = `${lineOf(fault, screenOf(io.stderr, io.env))}\n`;
    await io.stderr.write(asksJson(argv) ? await problemsDocument([fault]) : line);
    return 2;
  }
}

const lineOf = (problem: Finding, screen: Screen): string => cleanText(problemLine(problem, screen), screen.coloured);

/** Whether who called reads JSON, and so wants the problems of a refused call as such. */
const asksJson = (argv: readonly string[]): boolean => argv.includes('--json');

/** One line of JSON. */
async function problemsDocument(problems: readonly Finding[]): Promise<string> {
  const { findingDocument } = await import('../src/export/documents.ts');
  return `${cleanJson(JSON.stringify({ problems: problems.map(findingDocument) }))}\n`;
}

const done = (out: Printed): Ended => ({ exit: 0, out });

/** Errors, each once, and which line was taken for the course; what else was found in the same input would hide them. */
function refused(findings: readonly Finding[]): Ended {
  const errors = findings.filter(({ severity, code }) => severity === 'error' || code === 'track-chosen');
  const shown = errors.length > 0 ? errors : findings;
  const once = new Map(shown.map((finding) => [problemLine(finding, PAPER), finding]));
  return { exit: 2, out: '', problems: [...once.values()] };
}

async function answer(argv: readonly string[], io: Io): Promise<Ended> {
  const [name, ...rest] = argv;
  if (name === undefined) {
    const refusal = refused(refuse(CALL.noCommand()).findings);
    return { ...refusal, hint: (screen) => `\n${overallHelp(screen)}` };
  }
  if (name === '--help') return done(overallHelp);
  if (name === '--version') return done(`${VERSION}\n`);
  if (name === '--limits') return limitsShown();
  const command = commandOf(name);
  if (!command.ok) return refused(command.findings);
  const call = readCall(command.value, rest);
  if (!call.ok) return refused(call.findings);
  if (has(call.value, 'help')) return done((screen) => commandHelp(command.value, screen));
  return perform(command.value, call.value, io);
}

async function limitsShown(): Promise<Ended> {
  const { limitsHelp } = await import('./limitsHelp.ts');
  return done(limitsHelp);
}

async function perform(command: CommandSpec, call: Call, io: Io): Promise<Ended> {
  const unusable = await unusableTargets(command, call, io);
  if (unusable.length > 0) return refused(unusable);
  const { run } = await command.load();
  const result = await run(call, io);
  if (!result.ok) return refused(result.findings);
  const { text, written: other, saved = false, gpx = false, exit = 0, notes = [] } = result.value;
  const file = call.values.get('out');
  if (file === undefined || saved) return { exit, out: text, problems: notes };
  const { guardInputs, writeText } = await import('./files.ts');
  const inputs = await inputsOf(command, call, other !== undefined, io);
  const guarded = await guardInputs(io, file, inputs, gpx);
  if (!guarded.ok) return refused(guarded.findings);
  const written = await writeText(io, file, other ?? fileText(text), has(call, 'force'));
  return written.ok ? { exit, out: other === undefined ? '' : text, problems: notes } : refused(written.findings);
}

/** What is wrong with the files that a call names to be written, before any work is done for them. */
async function unusableTargets(command: CommandSpec, call: Call, io: Io): Promise<readonly Finding[]> {
  const files = (command.outFolder === true ? ['report'] : ['out', 'report']).flatMap(
    (option) => call.values.get(option) ?? [],
  );
  if (files.length === 0) return [];
  const { guardInputs, targetFindings } = await import('./files.ts');
  const [others, all] = await Promise.all([inputsOf(command, call, true, io), inputsOf(command, call, false, io)]);
  const found = files.map(async (file) => {
    const guarded = await guardInputs(io, file, others, true);
    if (!guarded.ok) return guarded.findings;
    // Whether the plan itself may be replaced, which may need --force, is known when something has been made of it.
    const isPlan = !(await guardInputs(io, file, all, true)).ok;
    return isPlan ? [] : targetFindings(io, file, has(call, 'force'));
  });
  return (await Promise.all(found)).flat();
}

/** Files that a call reads. A changed plan may take the place of the one that it was made from; anything else would destroy it. */
async function inputsOf(
  { needs }: CommandSpec,
  { positionals, values }: Call,
  changesPlan: boolean,
  io: Io,
): Promise<readonly string[]> {
  const named = ['placed', 'left', 'roster'].flatMap((option) => values.get(option) ?? []);
  const first = needs.indexOf('a plan');
  // Where a plan is not the first of what is read, what is written is no changed plan.
  const own = [...(changesPlan && first === 0 ? [] : positionals), ...named];
  if (first < 0) return own;
  const { planFiles } = await import('./plans.ts');
  return [...own, ...(await Promise.all(positionals.slice(first).map(async (plan) => planFiles(io, plan)))).flat()];
}
