/** Reading and writing files: streamed where they may be large, refused in plain words where they cannot be used. */
import { type ReadStream, constants } from 'node:fs';
import { lstat, open, realpath, stat } from 'node:fs/promises';
import { isAbsolute, relative, sep } from 'node:path';
import { type Finding, type Result, type Where, bad, good } from '../src/finding.ts';
import type { GpxDocument } from '../src/gpx/document.ts';
import { MOST } from '../src/ground/limits.ts';
import { LIMITS, type Reader } from '../src/limits.ts';
import { textFrom } from '../src/plan/utf8.ts';
import { limitFinding } from '../src/text/limitFinding.ts';
import { type Io, STDIN, pathOf } from './io.ts';
import { FILES, SYSTEM } from './messages.ts';
import { SILENT, progressOf } from './progress.ts';
import { type Staged, beginFile, probeTarget, stageText } from './wholeFile.ts';

/** Files smaller than this are read before anybody looks at a clock. */
const LARGE = 4_000_000;

/** Readers of whole texts. */
export type SizedReader = Exclude<Reader, 'geojson' | 'zip'>;

const codeOf = (error: unknown): string => (error instanceof Error && 'code' in error ? String(error.code) : '');

/** A failed system call in plain words; what is no system call's failure is thrown on. */
export function fileFinding(error: unknown, code: string, where: Where): Finding {
  const reason = codeOf(error);
  if (reason === '' || reason.startsWith('ERR_')) throw error;
  return { code, severity: 'error', message: SYSTEM[reason] ?? FILES.unknown(reason), where };
}

/** A file that can be read to its end; pipes, devices and sockets may never end. Rejects as the system does. */
async function regular(io: Io, file: string): Promise<{ readonly path: string; readonly size: number }> {
  const path = pathOf(io, file);
  const known = await stat(path);
  if (known.isFile()) return { path, size: known.size };
  // What the system says of a folder that is read.
  if (known.isDirectory()) throw Object.assign(new Error('EISDIR'), { code: 'EISDIR' });
  throw Object.assign(new Error('NOTFILE'), { code: 'NOTFILE' });
}

/** A file's bytes as they come, no more than one past `most`. What would wait for somebody to write rejects instead (POSIX O_NONBLOCK). */
async function streamOf(path: string, most: number): Promise<ReadStream> {
  const handle = await open(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
  return handle.createReadStream({ end: most, highWaterMark: 262_144 });
}

/** Content of a file, no more of it than `reader` takes. Rejects as the system does. */
async function readBytes(io: Io, file: string, reader: SizedReader): Promise<Result<Uint8Array>> {
  const most = LIMITS[reader].bytes;
  if (file === STDIN && io.stdin !== undefined) {
    const given = await io.stdin(most);
    return given.length > most ? bad([limitFinding(reader, 'bytes', { file })]) : good(given);
  }
  const { path, size } = await regular(io, file);
  if (size > most) return bad([limitFinding(reader, 'bytes', { file }, size)]);
  const chunks: Uint8Array[] = [];
  // A file that grows, or of which the system knows no size, is read no further than that either.
  for await (const chunk of await streamOf(path, most)) chunks.push(chunk as Uint8Array);
  const bytes = Buffer.concat(chunks);
  return bytes.length > most ? bad([limitFinding(reader, 'bytes', { file })]) : good(bytes);
}

/** The whole text of a file, UTF-8, that `reader` is to read. */
export async function readText(io: Io, file: string, reader: SizedReader): Promise<Result<string>> {
  try {
    const bytes = await readBytes(io, file, reader);
    return bytes.ok ? textFrom(bytes.value, file) : bytes;
  } catch (error) {
    return bad([fileFinding(error, 'file-unreadable', { file })]);
  }
}

/** Reads a GPX file as a stream; its findings name it as given. Progress on stderr where that is a terminal. */
export async function readGpxFile(io: Io, file: string): Promise<Result<GpxDocument>> {
  const { createGpxReader } = await import('../src/gpx/read.ts');
  let progress = SILENT;
  try {
    if (file === STDIN && io.stdin !== undefined) {
      const reader = createGpxReader(file);
      reader.write(await io.stdin(LIMITS.gpx.bytes));
      return reader.close();
    }
    const { path, size } = await regular(io, file);
    if (size > LIMITS.gpx.bytes) return bad([limitFinding('gpx', 'bytes', { file }, size)]);
    const reader = createGpxReader(file);
    if (size >= LARGE) progress = progressOf(`Reading ${file}`, io.stderr);
    let read = 0;
    for await (const chunk of await streamOf(path, LIMITS.gpx.bytes)) {
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

/** Gives the bytes of a file as a stream to `use`, which says how many it has read. Progress on stderr where that is a terminal. */
export async function readFileBytes<T>(
  io: Io,
  file: string,
  use: (
    bytes: AsyncIterable<Uint8Array> | Iterable<Uint8Array>,
    onProgress: (bytes: number) => void,
  ) => Promise<Result<T>>,
): Promise<Result<T>> {
  let progress = SILENT;
  try {
    // One byte more than is taken, so that whoever reads finds the limit passed.
    const most = MOST.megabytes * 1_000_000;
    if (file === STDIN && io.stdin !== undefined) return await use([await io.stdin(most)], () => undefined);
    const { path, size } = await regular(io, file);
    if (size >= LARGE) progress = progressOf(`Reading ${file}`, io.stderr);
    const stream: AsyncIterable<Uint8Array> = await streamOf(path, most);
    return await use(stream, (bytes) => progress.show(bytes / size));
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
    if (codeOf(error) in SYSTEM) return null;
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
        message: FILES.isInput(),
        where: { file },
      },
    ]);
  if (!writesGpx && /\.gpx$/iu.test(file))
    return bad([
      {
        code: 'file-unwritable',
        severity: 'error',
        message: FILES.gpxLost(),
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

/** Whether a name is taken, even by a link that leads nowhere. */
export const isThere = async (io: Io, file: string): Promise<boolean> =>
  (await lstat(pathOf(io, file)).catch(() => null)) !== null;

/** Why a file could not be written, as far as that can be seen before there is anything to write. */
export async function targetFindings(io: Io, file: string, force: boolean): Promise<readonly Finding[]> {
  try {
    await probeTarget(pathOf(io, file), force);
    return [];
  } catch (error) {
    return [unwritable(error, file)];
  }
}

/** Writes a text, whole or not at all; an existing file only with `force`. */
export async function writeText(io: Io, file: string, text: string, force: boolean): Promise<Result<null>> {
  const staged = await stageTextAt(io, file, text, force);
  return staged.ok ? commitAt(staged.value, file) : staged;
}

/** Writes a text beside its place. */
export async function stageTextAt(io: Io, file: string, text: string, force: boolean): Promise<Result<Staged>> {
  try {
    return good(await stageText(pathOf(io, file), text, force));
  } catch (error) {
    return bad([unwritable(error, file)]);
  }
}

/** Puts a staged text in its place. */
export async function commitAt(staged: Staged, file: string): Promise<Result<null>> {
  try {
    await staged.commit();
    return good(null);
  } catch (error) {
    return bad([unwritable(error, file)]);
  }
}

/** Takes text piece by piece; each is written before the next is asked for. False: nobody reads any more. */
export interface TextSink {
  readonly write: (text: string) => Promise<Result<boolean>>;
  /** Puts the file in its place; after a failed write nothing is left of it. */
  readonly close: () => Promise<Result<null>>;
}

/** As `writeText`, for a text that comes in pieces. */
export async function openText(io: Io, file: string, force: boolean): Promise<Result<TextSink>> {
  try {
    const { handle, finish, drop } = await beginFile(pathOf(io, file), force);
    let failed = false;
    const write = async (text: string): Promise<Result<boolean>> =>
      handle.appendFile(text).then(
        () => good(true),
        (error: unknown) => {
          failed = true;
          return bad([unwritable(error, file)]);
        },
      );
    const close = async (): Promise<Result<null>> => {
      if (failed) {
        await drop();
        return good(null);
      }
      try {
        return await commitAt(await finish(), file);
      } catch (error) {
        await drop();
        return bad([unwritable(error, file)]);
      }
    };
    return good({ write, close });
  } catch (error) {
    return bad([unwritable(error, file)]);
  }
}

function unwritable(error: unknown, file: string): Finding {
  if (codeOf(error) === 'ENOENT')
    return {
      code: 'file-unwritable',
      severity: 'error',
      message: FILES.noFolder(),
      where: { file },
    };
  return fileFinding(error, 'file-unwritable', { file });
}
