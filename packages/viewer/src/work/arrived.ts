/** A GPX file that comes while a plan is open is asked about: it may be a course, another line of one, or points. */
import type { Finding } from '@halfcup/core';
import type { Store } from '../state/store/store.ts';
import { reasonOf } from '../trouble.ts';
import { openDropped } from './dropped.ts';
import { openBlobs } from './opening.ts';
import { isStreets, takeStreets } from './streets.ts';

const isGpx = (file: File): boolean => /\.gpx$/iu.test(file.name);

/** Whether these files are for a person to say what they are. */
const isAsked = (store: Store, files: readonly File[]): boolean =>
  store.open.value !== null && store.waiting.value === null && files.length === 1 && isGpx(files[0]!);

/** Opens what was given; one GPX file beside an open plan is asked about first. */
export async function openOrAsk(
  store: Store,
  files: readonly File[],
  handles?: Parameters<typeof openDropped>[2],
): Promise<void> {
  const [file] = files;
  if (file !== undefined && isStreets(store, files)) return takeStreets(store, file);
  if (file === undefined || !isAsked(store, files)) return openDropped(store, files, handles);
  const refuse = (findings: readonly Finding[]): void => {
    store.refusal.value = { files: [file.name], findings };
  };
  try {
    // Long files in a worker, with their progress and a way to stop.
    const opening = await openBlobs(store, [{ name: file.name, blob: file }]);
    if (opening === null) store.notice.value = { text: `Stopped. ${file.name} not opened.` };
    else if (opening.kind === 'refused') refuse(opening.findings);
    else if (opening.kind === 'starting') store.arrived.value = opening.starting.files[0]!;
  } catch (error) {
    const message = `The file could not be read: ${reasonOf(error)}.`;
    refuse([{ code: 'file-unreadable', severity: 'error', message, where: { file: file.name } }]);
  }
  return undefined;
}
