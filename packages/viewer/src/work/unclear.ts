/** A file that may be any of several of a waiting plan's: the person says which, and it is opened under that name. */
import { receive } from '../state/open/receive.ts';
import type { Store, UnclearFile } from '../state/store/store.ts';
import { reasonOf } from '../trouble.ts';
import { openBlobs } from './opening.ts';

/** Opens the file as the one that the plan calls by that name; the others that are unclear stay to be asked about. */
export async function settleUnclear(store: Store, file: UnclearFile, name: string): Promise<void> {
  const waiting = store.waiting.value;
  if (waiting === null) return;
  const others = waiting.unclear.filter((one) => one !== file);
  try {
    const opening = await openBlobs(store, [{ name, blob: file.blob }]);
    if (opening === null || store.waiting.value !== waiting) return;
    receive(store, [file.name], opening);
    if (opening.kind !== 'waiting') return;
    const missing = new Set(opening.plan.missing);
    const unclear = others
      .map((one) => ({ ...one, names: one.names.filter((own) => missing.has(own)) }))
      .filter(({ names }) => names.length > 0);
    store.waiting.value = { ...opening.plan, unclear };
  } catch (error) {
    const message = `The file could not be read: ${reasonOf(error)}.`;
    receive(store, [file.name], {
      kind: 'refused',
      findings: [{ code: 'file-unreadable', severity: 'error', message, where: { file: file.name } }],
    });
  }
}
