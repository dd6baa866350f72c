/** SHA-256 of the files that a review is of. */
import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { dirname, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import type { FileDigest, ReviewedFiles } from '../src/export/reviewDocument.ts';
import { filesNamedBy } from '../src/plan/files.ts';
import type { PlanDocument } from '../src/plan/plan.ts';
import { LIMITS } from '../src/limits.ts';
import { liesInside } from './files.ts';
import { type Io, STDIN, pathOf } from './io.ts';

/** SHA-256 of a file's bytes, hexadecimal. */
export async function sha256Of(io: Io, file: string): Promise<string> {
  const hash = createHash('sha256');
  if (file === STDIN && io.stdin !== undefined) return hash.update(await io.stdin(LIMITS.gpx.bytes)).digest('hex');
  await pipeline(createReadStream(pathOf(io, file)), hash);
  return hash.digest('hex');
}

/** The plan, every GPX file it names, each once, as the plan names it, and its map of the ground, where that is there. The others have been read before. */
export async function reviewedFiles(io: Io, { file, plan }: PlanDocument): Promise<ReviewedFiles> {
  const inputs: FileDigest[] = [];
  const { gpx, ground } = filesNamedBy(plan);
  const there = async (name: string): Promise<boolean> =>
    (await liesInside(io, join(dirname(file), name), dirname(file))) === true;
  const maps = await Promise.all(ground.map(async (name) => ((await there(name)) ? [name] : [])));
  for (const name of [...gpx, ...maps.flat()])
    inputs.push({ file: name, sha256: await sha256Of(io, join(dirname(file), name)) });
  return { sha256: await sha256Of(io, file), inputs };
}
