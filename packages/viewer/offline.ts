/** Part of the build: writes the service worker with the list of the build's files and a name that changes with any of them. */
import { createHash } from 'node:crypto';
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Plugin } from 'vite';

const WORKER = 'serviceWorker.js';
const SOURCE = fileURLToPath(new URL(`src/offline/${WORKER}`, import.meta.url));

/** Every file of a folder, by its path inside with forward slashes, in order. */
const filesOf = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .toSorted();

export function serviceWorkerText(folder: string): string {
  const files = filesOf(folder).filter((file) => file !== WORKER);
  const source = readFileSync(SOURCE, 'utf8');
  const digest = createHash('sha256').update(source);
  for (const file of files) digest.update(`${file}\0`).update(readFileSync(join(folder, file)));
  return source.replace("'__FILES__'", JSON.stringify(files)).replace('__BUILD__', digest.digest('hex').slice(0, 16));
}

export const offline = (): Plugin => ({
  name: 'offline',
  apply: 'build',
  writeBundle: ({ dir }) => {
    if (dir !== undefined) writeFileSync(join(dir, WORKER), serviceWorkerText(dir));
  },
});
