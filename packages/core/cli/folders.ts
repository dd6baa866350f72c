/** Writes many files into one folder: all of them, or none where one may not be written. */
import { mkdir, rmdir, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { type Finding, type Result, bad, good } from '../src/finding.ts';
import { type Io, pathOf } from './io.ts';
import { FILES } from './messages.ts';
import { commitAt, fileFinding, guardInputs, isThere, stageTextAt } from './files.ts';
import type { Staged } from './wholeFile.ts';

export interface NamedText {
  readonly name: string;
  readonly text: string;
}

/** Makes the folder where it is not there. A file that exists is kept and refused, unless `force`; one that is being read always. */
export async function writeFolder(
  io: Io,
  folder: string,
  files: readonly NamedText[],
  inputs: readonly string[],
  force: boolean,
): Promise<Result<null>> {
  let made: string | undefined;
  try {
    made = await mkdir(pathOf(io, folder), { recursive: true });
  } catch (error) {
    return bad([folderFinding(error, folder)]);
  }
  const written = await writeAll(io, folder, files, inputs, force);
  // A folder that was made for nothing goes again, with those above it that were made too.
  if (!written.ok && made !== undefined) await unmake(pathOf(io, folder), made);
  return written;
}

/** Refuses a name that is no folder's, before there is anything to write. */
export async function guardFolder(io: Io, folder: string): Promise<Result<null>> {
  const known = await stat(pathOf(io, folder)).catch(() => null);
  return known === null || known.isDirectory()
    ? good(null)
    : bad([folderFinding(Object.assign(new Error('EEXIST'), { code: 'EEXIST' }), folder)]);
}

/** Removes empty folders from the innermost up to the first that was made. */
async function unmake(innermost: string, first: string): Promise<void> {
  for (let path = innermost; path.length >= first.length; path = dirname(path)) {
    const gone = await rmdir(path).then(
      () => true,
      () => false,
    );
    if (!gone) return;
  }
}

async function writeAll(
  io: Io,
  folder: string,
  files: readonly NamedText[],
  inputs: readonly string[],
  force: boolean,
): Promise<Result<null>> {
  const refused: Finding[] = [];
  for (const { name } of files) {
    const file = join(folder, name);
    const guarded = await guardInputs(io, file, inputs);
    if (!guarded.ok) refused.push(...guarded.findings);
    else if (!force && (await isThere(io, file)))
      refused.push({
        code: 'file-unwritable',
        severity: 'error',
        message: FILES.exists(),
        where: { file },
      });
  }
  if (refused.length > 0) return bad(refused);
  const staged = await stageAll(io, folder, files, force);
  if (!staged.ok) return staged;
  for (const [k, one] of staged.value.entries()) {
    const placed = await commitAt(one, join(folder, files[k]!.name));
    if (placed.ok) continue;
    await dropped(staged.value.slice(k + 1));
    return placed;
  }
  return good(null);
}

/** All texts beside their places, or none. */
async function stageAll(
  io: Io,
  folder: string,
  files: readonly NamedText[],
  force: boolean,
): Promise<Result<Staged[]>> {
  const staged: Staged[] = [];
  for (const { name, text } of files) {
    const one = await stageTextAt(io, join(folder, name), text, force);
    if (!one.ok) {
      await dropped(staged);
      return one;
    }
    staged.push(one.value);
  }
  return good(staged);
}

const dropped = async (staged: readonly Staged[]): Promise<void> => {
  for (const one of staged) await one.drop();
};

function folderFinding(error: unknown, folder: string): Finding {
  if (error instanceof Error && 'code' in error && error.code === 'EEXIST')
    return {
      code: 'folder-unwritable',
      severity: 'error',
      message: FILES.folderIsFile(),
      where: { file: folder },
    };
  return fileFinding(error, 'folder-unwritable', { file: folder });
}
