/**
 * Files written whole: into a file beside the target, flushed, and renamed over it. Whatever fails, a target keeps its old
 * bytes or has its new ones, and nothing else is left behind. Model: rename(2) replaces a name in one step (POSIX.1-2017).
 */
import { randomBytes } from 'node:crypto';
import { constants } from 'node:fs';
import { type FileHandle, access, link, lstat, open, realpath, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';

/** A file that is written and not in its place yet. */
export interface Staged {
  /** Puts it in its place; an existing file only where it was allowed. Rejects with the system's error. */
  readonly commit: () => Promise<void>;
  /** Takes it away; never rejects. */
  readonly drop: () => Promise<void>;
}

const waiting = new Set<string>();
let told: (some: boolean) => void = () => undefined;

/** Calls `tell` whenever there begins to be, or is no more, a file that is not in its place. */
export function whileWaiting(tell: (some: boolean) => void): void {
  told = tell;
}

function begins(path: string): void {
  waiting.add(path);
  if (waiting.size === 1) told(true);
}

function ends(path: string): void {
  if (waiting.delete(path) && waiting.size === 0) told(false);
}

/** Takes away all that is not in its place: for a process that is told to end. */
export async function dropAll(): Promise<void> {
  await Promise.all([...waiting].map((path) => rm(path, { force: true }).catch(() => undefined)));
}

const fault = (code: string): Error => Object.assign(new Error(code), { code });

/** Where the bytes go: a link is followed to its file, so that it stays a link. Rejects where it leads nowhere. */
async function targetOf(path: string): Promise<string> {
  const known = await lstat(path).catch(() => null);
  if (known?.isSymbolicLink() !== true) return path;
  return realpath(path).catch((error: NodeJS.ErrnoException) => {
    throw error.code === 'ENOENT' ? fault('NOLINK') : error;
  });
}

/** The file that is to be written, and what is there now. Rejects where that cannot be replaced. */
async function usable(path: string, force: boolean): Promise<{ readonly target: string; readonly mode: number }> {
  const target = await targetOf(path);
  const before = await stat(target).catch(() => null);
  if (before !== null && !before.isFile()) throw fault(before.isDirectory() ? 'EISDIR' : 'NOTFILE');
  if (before !== null && !force) throw fault('EEXIST');
  return { target, mode: before === null ? 0o666 : before.mode & 0o777 };
}

/** Rejects as `beginFile` would, of what can be seen without writing: an answer that need not wait for the text. */
export async function probeTarget(path: string, force: boolean): Promise<void> {
  const { target } = await usable(path, force);
  await access(dirname(target), constants.W_OK);
}

/** Begins a file beside `path`; text is given to the handle, then `stagedAs` or `drop`. */
export async function beginFile(
  path: string,
  force: boolean,
): Promise<{
  readonly handle: FileHandle;
  readonly finish: () => Promise<Staged>;
  readonly drop: () => Promise<void>;
}> {
  const { target, mode } = await usable(path, force);
  const own = join(dirname(target), `.${basename(target).slice(0, 200)}.${randomBytes(6).toString('hex')}.part`);
  begins(own);
  const handle = await open(own, 'wx', mode).catch((error: unknown) => {
    ends(own);
    throw error;
  });
  const drop = async (): Promise<void> => {
    await handle.close().catch(() => undefined);
    await rm(own, { force: true }).catch(() => undefined);
    ends(own);
  };
  const commit = async (): Promise<void> => {
    try {
      if (force) await rename(own, target);
      else await placeNew(own, target);
    } finally {
      await rm(own, { force: true }).catch(() => undefined);
      ends(own);
    }
  };
  const finish = async (): Promise<Staged> => {
    await handle.sync();
    await handle.close();
    return { commit, drop };
  };
  return { handle, finish, drop };
}

/** A link fails where a file has come meanwhile; a file system without links gets the next best. */
async function placeNew(own: string, target: string): Promise<void> {
  try {
    await link(own, target);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    if (!['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK'].includes(code)) throw error;
    if ((await lstat(target).catch(() => null)) !== null) throw fault('EEXIST');
    await rename(own, target);
  }
}

/** A whole text beside its target, flushed, to be put in its place. Nothing is left where it rejects. */
export async function stageText(path: string, text: string, force: boolean): Promise<Staged> {
  const begun = await beginFile(path, force);
  try {
    await begun.handle.writeFile(text);
    return await begun.finish();
  } catch (error) {
    await begun.drop();
    throw error;
  }
}
