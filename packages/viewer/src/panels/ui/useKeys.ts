/** Keys for the whole page: undo, redo, and putting the station of a trial back. */
import { useEffect } from 'preact/hooks';
import type { Store } from '../../state/store/store.ts';
import { redoAndReport, undoAndReport } from './reportedUndo.ts';
import { dropTrial } from '../../state/store/trial.ts';

/** A field has its own undo while somebody types in it. */
const typing = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  target.matches('input:not([type=checkbox]):not([type=radio]):not([type=file]), textarea, [contenteditable]');

export function useKeys(store: Store): void {
  useEffect(() => {
    const press = (event: KeyboardEvent): void => {
      if (event.key === 'Escape' && store.trial.value !== null) {
        event.preventDefault();
        dropTrial(store);
        return;
      }
      if (!(event.ctrlKey || event.metaKey) || event.altKey || typing(event.target)) return;
      const key = event.key.toLowerCase();
      if (key !== 'z' && key !== 'y') return;
      event.preventDefault();
      if (key === 'y' || event.shiftKey) redoAndReport(store);
      else undoAndReport(store);
    };
    window.addEventListener('keydown', press);
    return () => window.removeEventListener('keydown', press);
  }, [store]);
}
