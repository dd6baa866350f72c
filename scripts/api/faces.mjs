/** The faces of a package, read from the `exports` of its manifest: each with its sources and its built types. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

export const ROOT = join(import.meta.dirname, '../..');
export const CORE = join(ROOT, 'packages/core');

/** The narrow faces first and the broad one last, so that what two of them export is told of by the narrow one. */
export function facesOf(folder) {
  const { exports } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const all = Object.entries(exports)
    .filter(([, face]) => face.types !== undefined)
    .map(([path, face]) => ({ ...face, name: path === '.' ? 'index' : path.slice(2) }));
  // A face that has a second name is told of once.
  const faces = all.filter(({ types }, k) => all.findIndex((face) => face.types === types) === k);
  const told = faces.map((face) => ({
    name: face.name,
    source: join(folder, face['@halfcup/source']),
    types: join(folder, face.types),
  }));
  return [...told.filter(({ name }) => name !== 'index'), ...told.filter(({ name }) => name === 'index')];
}
