/** Over the table of stations: search, reading or editing, and whether numbers are kept. */
import type { JSX } from 'preact';
import { keepNumbers } from '../../state/edits/many.ts';
import { run } from '../../state/edits/workbench.ts';
import { useStore, type OpenPlan } from '../../state/store/store.ts';

interface Props {
  readonly open: OpenPlan;
  readonly query: string;
  readonly onQuery: (query: string) => void;
  readonly editing: boolean;
  readonly onEditing: (editing: boolean) => void;
  readonly found: number;
}

export function StationTools({ open, query, onQuery, editing, onEditing, found }: Props): JSX.Element {
  const store = useStore();
  return (
    <div class="station-tools">
      <label class="station-search">
        <span class="unseen">Find stations by number, name, side or what is served</span>
        <input
          type="search"
          class="cell"
          placeholder="Find stations"
          value={query}
          onInput={(event) => onQuery(event.currentTarget.value)}
        />
      </label>
      <div class="group" role="group" aria-label="Table">
        <button type="button" aria-pressed={!editing} onClick={() => onEditing(false)}>
          Distances
        </button>
        <button type="button" aria-pressed={editing} onClick={() => onEditing(true)}>
          Edit
        </button>
      </div>
      <label
        class="station-keep"
        title="Otherwise stations are numbered along the course, and a new one between two others moves the numbers after it."
      >
        <input
          type="checkbox"
          checked={open.document.plan.numbers !== undefined}
          onChange={(event) => void run(store, keepNumbers(open, event.currentTarget.checked))}
        />
        Keep these numbers
      </label>
      <span class="unseen" role="status">
        {query === '' ? '' : `${found} found`}
      </span>
      {found === 0 ? <p class="soft station-none">No station fits “{query}”.</p> : null}
    </div>
  );
}
