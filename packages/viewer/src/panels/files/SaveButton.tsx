/** Saves the plan to its file; shows whether it differs from what that file holds. */
import type { JSX } from 'preact';
import { isSaved, save } from '../../storage/saveFile.ts';
import { useStore } from '../../state/store/store.ts';

export function SaveButton(): JSX.Element {
  const store = useStore();
  const saved = isSaved(store);
  return (
    <button
      type="button"
      class="save-button"
      disabled={store.open.value === null}
      aria-label={saved ? 'Save' : 'Save, unsaved changes'}
      title={saved ? 'Saved to a file' : 'Unsaved changes'}
      onClick={() => void save(store)}
    >
      Save
      <span class={saved ? 'unsaved-mark off' : 'unsaved-mark'} aria-hidden="true" />
    </button>
  );
}
