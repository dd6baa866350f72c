/**
 * Runs the command line: in this thread (`halfcupIn`), or as its users do, as a process of its own from what is built
 * (`halfcupProcess`), for what only a process has: its streams, threads, memory and way of ending.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, expect } from 'vitest';
import type { Io, Sink } from '../../packages/core/cli/io.ts';
import { main } from '../../packages/core/cli/program.ts';
import { CORE } from './build.ts';

/** Built before the first test; `halfcupIn` needs no build. */
export const MAIN: string = join(CORE, 'dist/cli/main.js');

export interface Ended {
  readonly exit: number | null;
  readonly out: string;
  readonly err: string;
}

/** Any run may fail, but none in a way that nobody foresaw. */
export function expectNoFault({ out, err }: Ended): void {
  expect(err).not.toMatch(/fault of Halfcup/u);
  expect(err).not.toMatch(/^\s+at .+:\d+:\d+/mu);
  expect(err).not.toMatch(/\bNaN\b|undefined|\[object/u);
  expect(out).not.toMatch(/\bNaN\b|undefined|\[object/u);
}

interface Collected {
  readonly sink: Sink;
  readonly text: () => string;
}

function collect(terminal: Partial<Sink>): Collected {
  const pieces: string[] = [];
  const write = async (text: string): Promise<boolean> => {
    pieces.push(text);
    return true;
  };
  return { sink: { isTTY: false, ...terminal, write }, text: () => pieces.join('') };
}

/** What a run is given beside its arguments; by itself it writes to no terminal and has no environment. */
export interface Surroundings {
  readonly terminal?: Omit<Sink, 'write'>;
  readonly env?: Io['env'];
  readonly now?: Date;
  readonly stdin?: string | Uint8Array;
}

/** Runs `halfcup` in this thread with arguments, in a folder and surroundings. */
export async function halfcupWith(
  { terminal = { isTTY: false }, env = {}, now, stdin }: Surroundings,
  folder: string,
  ...args: readonly string[]
): Promise<Ended> {
  const [stdout, stderr] = [collect(terminal), collect(terminal)];
  // Threads need what is built: only processes begin any.
  const io: Io = {
    stdout: stdout.sink,
    stderr: stderr.sink,
    ...(stdin === undefined ? {} : { stdin: async () => Buffer.from(stdin) }),
    cwd: folder,
    env,
    now: () => now ?? new Date(),
    processors: 0,
  };
  const exit = await main(args, io);
  const ended = { exit, out: stdout.text(), err: stderr.text() };
  expectNoFault(ended);
  return ended;
}

/** Runs `halfcup` in this thread with arguments in a folder. */
export const halfcupIn = async (folder: string, ...args: readonly string[]): Promise<Ended> =>
  halfcupWith({}, folder, ...args);

/** Runs `halfcup` as a process with arguments in a folder. */
export function halfcupProcess(folder: string, ...args: readonly string[]): Ended {
  const { status, stdout, stderr } = spawnSync(process.execPath, [MAIN, ...args], {
    cwd: folder,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  const ended = { exit: status, out: stdout, err: stderr };
  expectNoFault(ended);
  return ended;
}

/** The JSON document that a call prints; it must end with 0 and say nothing on stderr that is an error. */
export async function documentIn(folder: string, ...args: readonly string[]): Promise<unknown> {
  const ended = await halfcupIn(folder, ...args, '--json');
  expect(ended.exit, ended.err).toBe(0);
  return JSON.parse(ended.out) as unknown;
}

/** A refused call: exit 2, nothing on stdout; gives the lines of stderr. */
export async function refusalIn(folder: string, ...args: readonly string[]): Promise<readonly string[]> {
  return refusal(await halfcupIn(folder, ...args));
}

/** The lines of stderr of a refused call: exit 2, nothing on stdout. */
export function refusal(ended: Ended): readonly string[] {
  expect(ended.exit, ended.err).toBe(2);
  expect(ended.out).toBe('');
  return ended.err.trimEnd().split('\n');
}

/** A new folder with these files in it, removed when the file's tests are done. */
export function folderWith(files: Readonly<Record<string, string | Uint8Array>>): string {
  const folder = mkdtempSync(join(tmpdir(), 'halfcup-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  for (const [name, content] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), content);
  }
  return folder;
}
