/** Undo and redo, each with what it is about to do. */
import type { JSX } from 'preact';
import { useStore } from '../../state/store/store.ts';
import { redoAndReport, undoAndReport } from '../ui/reportedUndo.ts';

export function HistoryTools(): JSX.Element {
  const store = useStore();
  const { past, future } = store.history.value;
  const [back, on] = [past.at(-1)?.label, future[0]?.label];
  return (
    <div class="group" role="group" aria-label="History">
      <button
        type="button"
        disabled={back === undefined}
        title={back === undefined ? 'Nothing to undo' : `Undo: ${back} (Ctrl+Z)`}
        onClick={() => undoAndReport(store)}
      >
        Undo
      </button>
      <button
        type="button"
        disabled={on === undefined}
        title={on === undefined ? 'Nothing to redo' : `Redo: ${on} (Ctrl+Shift+Z)`}
        onClick={() => redoAndReport(store)}
      >
        Redo
      </button>
    </div>
  );
}
