/** A GPX file that comes while a plan is open is asked about: it may be a course, another line of one, or points. */
import { readGpx } from '@halfcup/core/gpx';
import type { Store } from '../state/store/store.ts';
import { reasonOf } from '../trouble.ts';
import { openDropped } from './dropped.ts';

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
  if (file === undefined || !isAsked(store, files)) return openDropped(store, files, handles);
  try {
    const read = readGpx(new Uint8Array(await file.arrayBuffer()), file.name);
    if (read.ok) store.arrived.value = { name: file.name, document: read.value, original: file };
    else store.refusal.value = { files: [file.name], findings: read.findings };
  } catch (error) {
    const message = `The file could not be read: ${reasonOf(error)}.`;
    store.refusal.value = {
      files: [file.name],
      findings: [{ code: 'file-unreadable', severity: 'error', message, where: { file: file.name } }],
    };
  }
  return undefined;
}
