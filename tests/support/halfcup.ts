/** Runs the built command line as its users do: as a process of its own, in a folder of its own. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, expect } from 'vitest';
import { CORE } from './build.ts';

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

/** Runs `halfcup` with arguments in a folder. */
export function halfcupIn(folder: string, ...args: readonly string[]): Ended {
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
export function documentIn(folder: string, ...args: readonly string[]): unknown {
  const ended = halfcupIn(folder, ...args, '--json');
  expect(ended.exit, ended.err).toBe(0);
  return JSON.parse(ended.out) as unknown;
}

/** A refused call: exit 2, nothing on stdout; gives the lines of stderr. */
export function refusalIn(folder: string, ...args: readonly string[]): readonly string[] {
  const ended = halfcupIn(folder, ...args);
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
