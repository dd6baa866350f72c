/** Undo and redo that say what they did. */
import type { Store } from '../../state/store/store.ts';
import { redo, undo } from '../../state/edits/workbench.ts';

export function undoSaid(store: Store): void {
  const label = undo(store);
  if (label !== null) store.notice.value = { text: `Undone: ${label}` };
}

export function redoSaid(store: Store): void {
  const label = redo(store);
  if (label !== null) store.notice.value = { text: `Done again: ${label}` };
}
