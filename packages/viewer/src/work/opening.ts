/** Opens files: read and worked out in a worker, so that the page answers meanwhile. */
import type { Finding } from '@halfcup/core';
import { openFiles, type NamedFile, type Opening } from '../state/open/open.ts';
import { FAULT } from '../trouble.ts';
import type { Store, WaitingPlan } from '../state/store/store.ts';
import { elsewhere } from './elsewhere.ts';
import { arrived, plainWaiting, type NamedBlob } from './messages.ts';

/** So many bytes the page reads itself where the browser starts no worker: the demo, and most plans. */
const SMALL = 5_000_000;

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

/** What came of it; `null` where a person has stopped it. `waiting`: a plan that may wait for these files. */
export async function openBlobs(
  store: Store,
  files: readonly NamedBlob[],
  waiting: WaitingPlan | null = store.waiting.value,
): Promise<Opening | null> {
  const [first] = files;
  const label = `Reading ${files.length === 1 ? (first?.name ?? '') : `${files.length} files`}`;
  const told = await elsewhere(store, label, {
    kind: 'read',
    files,
    waiting: waiting === null ? null : plainWaiting(waiting),
  });
  if (told === null) return null;
  if (told.kind === 'read') return arrived(told.opening);
  const small = files.reduce((sum, { blob }) => sum + blob.size, 0) < SMALL && !files.some(isArchive);
  if (told.kind === 'failed' && told.absent === true && small)
    return openFiles(await Promise.all(files.map(load)), waiting);
  return failed(first?.name ?? '', told.kind === 'failed' ? told.message : FAULT);
}
