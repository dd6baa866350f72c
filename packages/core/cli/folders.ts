/** Writes many files into one folder: all of them, or none where one may not be written. */
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { type Finding, type Result, bad, good } from '../src/finding.ts';
import { type Io, pathOf } from './io.ts';
import { FILES } from './messages.ts';
import { fileFinding, guardInputs, isThere, writeText } from './files.ts';

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
  try {
    await mkdir(pathOf(io, folder), { recursive: true });
  } catch (error) {
    return bad([folderFinding(error, folder)]);
  }
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
  for (const { name, text } of files) {
    const written = await writeText(io, join(folder, name), text, force);
    if (!written.ok) return written;
  }
  return good(null);
}

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
