/** Opens files from a drop or a file chooser. */
import { receive } from '../state/open/receive.ts';
import type { Store } from '../state/store/store.ts';
import { takeTiles } from '../state/view/background.ts';
import { reasonOf } from '../trouble.ts';
import { openBlobs } from './opening.ts';

/** Reads files from a drop or a file chooser, then opens them; `handles`: by which the page may write to them again, by name. */
export async function openDropped(
  store: Store,
  dropped: readonly File[],
  handles: ReadonlyMap<string, FileSystemFileHandle> = new Map(),
): Promise<void> {
  const files = takeTiles(store, dropped);
  if (files.length === 0) return;
  const named = files.map((file) => ({ name: file.webkitRelativePath || file.name, blob: file }));
  const names = named.map(({ name }) => name);
  try {
    const opening = await openBlobs(store, named);
    if (opening === null) {
      store.notice.value = {
        text: `Stopped. ${names.length === 1 ? names[0] : `The ${names.length} files`} not opened.`,
      };
      return;
    }
    const plan = opening.kind === 'opened' ? opening.plan.document.file : null;
    const handle = plan === null ? undefined : handles.get(plan);
    const modified = files.find(({ name }) => name === plan)?.lastModified ?? null;
    receive(store, names, opening, handle === undefined ? {} : { handle, modified });
  } catch (error) {
    // A file can vanish, or lose its permission, between being chosen and being read.
    const message = `The file could not be read: ${reasonOf(error)}.`;
    receive(store, names, {
      kind: 'refused',
      findings: [{ code: 'file-unreadable', severity: 'error', message, where: { file: names[0] ?? '' } }],
    });
  }
}
