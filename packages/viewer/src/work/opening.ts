/** Opens files: small ones at once in the page, long ones and archives in a worker. */
import type { Finding } from '@halfcup/core';
import { openFiles, openGathered, type NamedFile, type Opening } from '../state/open/open.ts';
import { FAULT } from '../trouble.ts';
import type { Store } from '../state/store/store.ts';
import { arrived, plainWaiting, type NamedBlob } from './messages.ts';

/** Below this many bytes a worker takes longer to start than the page to read them. */
const AT_ONCE = 1_000_000;

const isArchive = ({ name }: NamedBlob): boolean => /\.zip$/iu.test(name);

const failed = (file: string, message: string): Opening => {
  const finding: Finding = {
    code: 'reading-failed',
    severity: 'error',
    message: `The file could not be read: ${message}.`,
    where: { file },
  };
  return { kind: 'refused', findings: [finding] };
};

const load = async ({ name, blob }: NamedBlob): Promise<NamedFile> => ({
  name,
  bytes: new Uint8Array(await blob.arrayBuffer()),
});

/** What came of it; `null` where a person has stopped it. */
export async function openBlobs(store: Store, files: readonly NamedBlob[]): Promise<Opening | null> {
  const waiting = store.waiting.value;
  const size = files.reduce((sum, { blob }) => sum + blob.size, 0);
  if (size < AT_ONCE && !files.some(isArchive)) return openFiles(await Promise.all(files.map(load)), waiting);
  const [first] = files;
  const label = `Reading ${files.length === 1 ? (first?.name ?? '') : `${files.length} files`}`;
  const { runInWorker } = await import('./work.ts');
  const told = await runInWorker(store, label, {
    kind: 'read',
    files,
    waiting: waiting === null ? null : plainWaiting(waiting),
  });
  if (told === null) return null;
  if (told.kind !== 'read') return failed(first?.name ?? '', told.kind === 'failed' ? told.message : FAULT);
  const { gathered, courses } = arrived(told.gathered);
  return openGathered(gathered, courses);
}
