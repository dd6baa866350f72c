/** Undo and redo that report what they did. */
import type { Store } from '../../state/store/store.ts';
import { redo, undo } from '../../state/edits/workbench.ts';

export function undoAndReport(store: Store): void {
  const label = undo(store);
  if (label !== null) store.notice.value = { text: `Undone: ${label}` };
}

export function redoAndReport(store: Store): void {
  const label = redo(store);
  if (label !== null) store.notice.value = { text: `Redone: ${label}` };
}
