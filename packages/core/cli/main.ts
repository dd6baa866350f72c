#!/usr/bin/env node
/**
 * The program `halfcup`: reads the call, runs its command, prints. Exit 0: done; 1: a review found what
 * stands in the way; 2: the call, a file or the plan cannot be used, stdout empty (save that of several
 * plans, the others are still printed). Help and version load no geometry.
 */
import type { Finding } from '../src/finding.ts';
import { VERSION } from '../src/version.ts';
import { type Call, type CommandSpec, has } from './call.ts';
import { commandHelp, overallHelp } from './help.ts';
import { commandOf, readCall } from './parse.ts';
import { faultText, noteLine, spoken } from './spoken.ts';

interface Ended {
  readonly exit: 0 | 1 | 2;
  readonly out: string;
  readonly err: string;
}

const done = (out: string, err: string = ''): Ended => ({ exit: 0, out, err });

/** Errors, each once, and which line was taken for the course; what else was found in the same input would hide them. */
function refused(findings: readonly Finding[]): Ended {
  const errors = findings.filter(({ severity, code }) => severity === 'error' || code === 'track-chosen');
  const lines = [...new Set((errors.length > 0 ? errors : findings).map(spoken))];
  return { exit: 2, out: '', err: `${lines.join('\n')}\n` };
}

async function answer(argv: readonly string[]): Promise<Ended> {
  const [name, ...rest] = argv;
  if (name === undefined) return { exit: 2, out: '', err: `halfcup: found no command.\n\n${overallHelp()}` };
  if (name === '--help') return done(overallHelp());
  if (name === '--version') return done(`${VERSION}\n`);
  const command = commandOf(name);
  if (!command.ok) return refused(command.findings);
  const call = readCall(command.value, rest);
  if (!call.ok) return refused(call.findings);
  if (has(call.value, 'help')) return done(commandHelp(command.value));
  return perform(command.value, call.value);
}

async function perform(command: CommandSpec, call: Call): Promise<Ended> {
  const { run } = await command.load();
  const result = await run(call);
  if (!result.ok) return refused(result.findings);
  const { text, written: other, saved = false, gpx = false, exit = 0, notes = [] } = result.value;
  const err = notes.map(noteLine).join('');
  const file = call.values.get('out');
  if (file === undefined || saved) return { exit, out: text, err };
  const { guardInputs, writeText } = await import('./files.ts');
  const inputs = await inputsOf(command, call, other !== undefined);
  const guarded = await guardInputs(file, inputs, gpx);
  if (!guarded.ok) return refused(guarded.findings);
  const written = await writeText(file, other ?? text, has(call, 'force'));
  return written.ok ? { exit, out: other === undefined ? '' : text, err } : refused(written.findings);
}

/** Files that a call reads. A changed plan may take the place of the one that it was made from; anything else would destroy it. */
async function inputsOf(
  { needs }: CommandSpec,
  { positionals, values }: Call,
  changesPlan: boolean,
): Promise<readonly string[]> {
  const placed = values.get('placed');
  const own = [...(changesPlan ? [] : positionals), ...(placed === undefined ? [] : [placed])];
  if (needs[0] !== 'a plan') return own;
  const { filesNamedBy } = await import('./plans.ts');
  return [...own, ...(await Promise.all(positionals.map(filesNamedBy))).flat()];
}

/** A reader that has seen enough, such as `head`, is no fault of anybody. */
function quietlyClosed(error: NodeJS.ErrnoException): void {
  if (error.code !== 'EPIPE') throw error;
  process.exit();
}

process.stdout.on('error', quietlyClosed);
process.stderr.on('error', quietlyClosed);
try {
  const { exit, out, err } = await answer(process.argv.slice(2));
  process.exitCode = exit;
  process.stderr.write(err);
  process.stdout.write(out);
} catch (error) {
  process.exitCode = 2;
  process.stderr.write(`halfcup: ${faultText(error, 'files')}\n`);
}
