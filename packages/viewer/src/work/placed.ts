/**
 * Takes in points recorded on the ground. The Review panel or its button says that a GPX file is such points; elsewhere
 * a person is asked.
 */
import type { Finding } from '@halfcup/core';
import { batch } from '@preact/signals';
import type { Placed, Store } from '../state/store/store.ts';
import { reasonOf } from '../trouble.ts';
import { openOrAsk } from './arrived.ts';
import { openBlobs } from './opening.ts';

const trouble = (file: string, message: string): readonly Finding[] => [
  { code: 'placed-empty', severity: 'error', message, where: { file } },
];

async function readPlaced(
  store: Store,
  file: File,
): Promise<{ readonly placed: Placed } | { readonly findings: readonly Finding[] } | null> {
  try {
    const read = await openBlobs(store, [{ name: file.name, blob: file }], null);
    if (read === null) return null;
    if (read.kind === 'refused') return { findings: read.findings };
    const document = read.kind === 'starting' ? read.starting.files[0]?.document : undefined;
    if (document === undefined || document.waypoints.length === 0)
      return {
        findings: trouble(
          file.name,
          'This file has no waypoints. It needs one for each recorded sign, table and trash drop, named such as “s1 sign”. To open it as a course, use Open.',
        ),
      };
    const findings = read.kind === 'starting' ? read.starting.findings : [];
    return { placed: { file: file.name, document, bytes: file, findings } };
  } catch (error) {
    return {
      findings: trouble(file.name, `The file could not be read: ${reasonOf(error)}.`),
    };
  }
}

function compare(store: Store, placed: Placed): void {
  batch(() => {
    store.refusal.value = null;
    store.placed.value = placed;
    store.pane.value = 'review';
    const name = store.open.value?.document.plan.name ?? 'the plan';
    store.notice.value = {
      text: `Comparing ${placed.file} with ${name}. The plan is unchanged.`,
    };
  });
}

/** Compares a file's points with the open plan; a file without any is shown as one that did not open. */
export async function takePlaced(store: Store, file: File): Promise<void> {
  const read = await readPlaced(store, file);
  if (read === null) store.notice.value = { text: `Stopped. ${file.name} not opened.` };
  else if ('placed' in read) compare(store, read.placed);
  else store.refusal.value = { files: [file.name], findings: read.findings };
}

export function dropPlaced(store: Store): void {
  store.placed.value = null;
}

const isGpx = (file: File): boolean => /\.gpx$/iu.test(file.name);

/** What was dropped on the page: with Review open one GPX file is points as placed; elsewhere it is asked about; all else is opened. */
export async function takeDropped(
  store: Store,
  files: readonly File[],
  handles?: Parameters<typeof openOrAsk>[2],
): Promise<void> {
  const [file] = files;
  const points = store.open.value !== null && store.waiting.value === null && store.pane.value === 'review';
  if (points && file !== undefined && files.length === 1 && isGpx(file)) return takePlaced(store, file);
  return openOrAsk(store, files, handles);
}
