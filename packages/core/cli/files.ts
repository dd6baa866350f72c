/** Reading and writing files: streamed where they may be large, refused in plain words where they cannot be used. */
import { createReadStream } from 'node:fs';
import { lstat, open, readFile, realpath, stat, writeFile } from 'node:fs/promises';
import { isAbsolute, relative, sep } from 'node:path';
import { type Finding, type Result, type Where, bad, good } from '../src/finding.ts';
import type { GpxDocument } from '../src/gpx/document.ts';
import { type Io, pathOf } from './io.ts';
import { SILENT, progressOf } from './progress.ts';

/** Files smaller than this are read before anybody looks at a clock. */
const LARGE = 4_000_000;

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file; mend the name, or say the folder it is in',
  EISDIR: 'this is a folder; name a file in it',
  ENOTDIR: 'a part of this path is a file, not a folder; mend the name',
  EACCES: 'this file may not be opened by you; change its permissions',
  EPERM: 'this file may not be opened by you; change its permissions',
  EEXIST: 'this file exists already; choose another name, or say --force to replace it',
  ENAMETOOLONG: 'this name is too long for a file; mend it',
  ELOOP: 'this link goes in a circle; name the file itself',
  EROFS: 'this file system cannot be written to; choose another folder',
  ENOSPC: 'the disk is full; make room, or choose another',
};

const codeOf = (error: unknown): string => (error instanceof Error && 'code' in error ? String(error.code) : '');

/** A failed system call in plain words; what is no system call's failure is thrown on. */
export function fileFinding(error: unknown, code: string, where: Where): Finding {
  const reason = codeOf(error);
  if (reason === '' || reason.startsWith('ERR_')) throw error;
  return { code, severity: 'error', message: REASONS[reason] ?? `the file could not be used (${reason})`, where };
}

/** The whole text of a file, UTF-8. */
export async function readText(io: Io, file: string): Promise<Result<string>> {
  try {
    const bytes = await readFile(pathOf(io, file));
    return good(new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes));
  } catch (error) {
    if (error instanceof TypeError && codeOf(error) === 'ERR_ENCODING_INVALID_ENCODED_DATA') {
      return bad([
        {
          code: 'file-not-text',
          severity: 'error',
          message: 'found bytes that are no UTF-8 text; expected a plan, which is JSON in UTF-8: save it again as that',
          where: { file },
        },
      ]);
    }
    return bad([fileFinding(error, 'file-unreadable', { file })]);
  }
}

/** Reads a GPX file as a stream; its findings name it as given. Progress on stderr where that is a terminal. */
export async function readGpxFile(io: Io, file: string): Promise<Result<GpxDocument>> {
  const { createGpxReader } = await import('../src/gpx/read.ts');
  let progress = SILENT;
  try {
    const { size } = await stat(pathOf(io, file));
    const reader = createGpxReader(file);
    if (size >= LARGE) progress = progressOf(`Reading ${file}`, io.stderr);
    let read = 0;
    for await (const chunk of createReadStream(pathOf(io, file), { highWaterMark: 262_144 })) {
      const bytes = chunk as Uint8Array;
      read += bytes.length;
      reader.write(bytes);
      progress.show(read / size);
    }
    return reader.close();
  } catch (error) {
    return bad([fileFinding(error, 'file-unreadable', { file })]);
  } finally {
    progress.clear();
  }
}

/** Whether a file, with all links followed, lies in a folder or below; null where it cannot be reached. */
export async function liesInside(io: Io, file: string, folder: string): Promise<boolean | null> {
  try {
    const way = relative(await realpath(pathOf(io, folder)), await realpath(pathOf(io, file)));
    return way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way);
  } catch (error) {
    if (codeOf(error) in REASONS) return null;
    throw error;
  }
}

/** Refuses an output that is one of the files being read, or a name of a course for what is no GPX. `--force` does not help. */
export async function guardInputs(
  io: Io,
  file: string,
  inputs: readonly string[],
  writesGpx: boolean = false,
): Promise<Result<null>> {
  const target = await identityOf(io, file);
  const same =
    target === null ? [] : await Promise.all(inputs.map(async (input) => (await identityOf(io, input)) === target));
  if (same.some(Boolean))
    return bad([
      {
        code: 'file-unwritable',
        severity: 'error',
        message: 'this is a plan, a course or another file being read, and would be lost; choose another name',
        where: { file },
      },
    ]);
  if (!writesGpx && /\.gpx$/iu.test(file))
    return bad([
      {
        code: 'file-unwritable',
        severity: 'error',
        message: 'this command writes no GPX, and a course of that name would be lost; choose another ending',
        where: { file },
      },
    ]);
  return good(null);
}

/** The same for all names of one file, links of both kinds among them; null where there is none. */
async function identityOf(io: Io, file: string): Promise<string | null> {
  const known = await stat(pathOf(io, file), { bigint: true }).catch(() => null);
  return known === null ? null : `${known.dev}:${known.ino}`;
}

/** Whether a name is taken, be it by a link that leads nowhere. */
export const isThere = async (io: Io, file: string): Promise<boolean> =>
  (await lstat(pathOf(io, file)).catch(() => null)) !== null;

/** Writes a text; an existing file only with `force`. */
export async function writeText(io: Io, file: string, text: string, force: boolean): Promise<Result<null>> {
  try {
    await writeFile(pathOf(io, file), text, { flag: force ? 'w' : 'wx' });
    return good(null);
  } catch (error) {
    return bad([unwritable(error, file)]);
  }
}

/** Takes text piece by piece; each is written before the next is asked for. False: nobody reads any more. */
export interface TextSink {
  readonly write: (text: string) => Promise<Result<boolean>>;
  readonly close: () => Promise<void>;
}

/** As `writeText`, for a text that comes in pieces. */
export async function openText(io: Io, file: string, force: boolean): Promise<Result<TextSink>> {
  try {
    const handle = await open(pathOf(io, file), force ? 'w' : 'wx');
    const write = async (text: string): Promise<Result<boolean>> =>
      handle.appendFile(text).then(
        () => good(true),
        (error: unknown) => bad([unwritable(error, file)]),
      );
    return good({ write, close: async () => handle.close() });
  } catch (error) {
    return bad([unwritable(error, file)]);
  }
}

function unwritable(error: unknown, file: string): Finding {
  if (codeOf(error) === 'ENOENT')
    return {
      code: 'file-unwritable',
      severity: 'error',
      message: 'there is no such folder; make it first, or choose another',
      where: { file },
    };
  return fileFinding(error, 'file-unwritable', { file });
}
