/** What is done to a station as a whole; all of it can be undone. */
import type { JSX } from 'preact';
import { duplicate, remove } from '../../state/edits/moves.ts';
import { useStore } from '../../state/store/store.ts';
import { notify, type Editing } from './editing.ts';
import { chooseStation } from '../../state/view/choose.ts';

/** Where the focus goes when what had it is gone. */
const focusPanel = (): void => document.querySelector<HTMLElement>('.side-right, #panel')?.focus();

export function StationActions({ station }: Editing): JSX.Element {
  const store = useStore();
  return (
    <div class="station-actions">
      <button type="button" onClick={() => chooseStation(store, station.id)}>
        Show
      </button>
      <button
        type="button"
        onClick={() =>
          notify(
            store,
            duplicate(store, station.id),
            `Added a copy of ${station.name} farther along the course. Undo removes it.`,
          )
        }
      >
        Duplicate
      </button>
      <button
        type="button"
        onClick={() => {
          notify(store, remove(store, station.id), `Deleted ${station.name}. Undo brings it back.`);
          focusPanel();
        }}
      >
        Delete
      </button>
    </div>
  );
}
