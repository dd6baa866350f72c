/** The stations as a sheet: every row edited in place, many at once, copied out as rows of a spreadsheet. */
import type { StationLayout } from '@halfcup/core';
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { rowsText, SERVED_KINDS, type Sorting } from '../../state/view/rows.ts';
import type { StationRow } from '../../state/view/derive.ts';
import { useStore, type OpenPlan } from '../../state/store/store.ts';
import { counted, longUnit, SERVED_WORD, wheelUnit } from '../../words.ts';
import { extended, NONE, toggled, useSelection, type Selecting } from './selection.ts';
import { paste, PasteBox, Pasted, type Outcome } from './PasteRows.tsx';
import { moveInColumn } from './SheetCell.tsx';
import { SheetMany } from './SheetMany.tsx';
import { SheetRow } from './SheetRow.tsx';
import { SortHead } from './SortHead.tsx';

interface Props {
  readonly open: OpenPlan;
  readonly rows: readonly StationRow[];
  readonly sorting: Sorting;
  readonly onSort: (sorting: Sorting) => void;
}

/** Letters for columns as narrow as their boxes. */
const SHORT = { gel: 'Gel', sportsDrink: 'Sports', water: 'Water' } as const;

function Head({
  sorting,
  onSort,
  all,
  onAll,
}: Pick<Props, 'sorting' | 'onSort'> & { readonly all: boolean; readonly onAll: () => void }): JSX.Element {
  const units = useStore().units.value;
  return (
    <thead>
      <tr>
        <th scope="col" class="cell-pick">
          <input type="checkbox" aria-label="Select all shown" checked={all} onChange={onAll} />
        </th>
        <SortHead by="number" sorting={sorting} onSort={onSort}>
          No.
        </SortHead>
        <SortHead by="name" sorting={sorting} onSort={onSort} left>
          Station
        </SortHead>
        <SortHead by="measure" sorting={sorting} onSort={onSort}>
          <abbr title={`Course distance, ${longUnit(units)}`}>{longUnit(units)}</abbr>
        </SortHead>
        <SortHead by="side" sorting={sorting} onSort={onSort} left>
          Side
        </SortHead>
        {SERVED_KINDS.map((kind) => (
          <th key={kind} scope="col" class="left cell-served" title={`Tables of ${SERVED_WORD[kind]}`}>
            {SHORT[kind]}
            <span class="unit">tables</span>
          </th>
        ))}
        <th scope="col">
          Road<span class="unit">{wheelUnit(units)}</span>
        </th>
      </tr>
    </thead>
  );
}

/** Rows to the clipboard; what came of it is said at the foot of the map. */
function useCopy(open: OpenPlan): (rows: readonly StationRow[]) => Promise<void> {
  const store = useStore();
  return async (rows) => {
    try {
      await navigator.clipboard.writeText(rowsText(open, rows, store.units.value));
      store.notice.value = { text: `Copied ${counted(rows.length, 'row')}. Paste them into a spreadsheet.` };
    } catch {
      store.notice.value = {
        text: 'The browser does not let this page copy. Press Ctrl+C (⌘C) while a row’s box has the focus.',
      };
    }
  };
}

const inText = (target: EventTarget | null): boolean => target instanceof HTMLInputElement && target.type === 'text';

/** Keys on a row's box: up and down, with Shift taking the row along, and all rows. */
const keysOf =
  (selection: Selecting, shown: readonly string[]) =>
  (event: KeyboardEvent, id: string): void => {
    const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    if (step !== 0) {
      event.preventDefault();
      const next = shown[shown.indexOf(id) + step];
      if (moveInColumn(event.currentTarget as HTMLElement, step) && event.shiftKey && next !== undefined)
        selection.set(extended(selection.anchor === null ? { ...selection, anchor: id } : selection, next, shown));
    } else if (event.key.toLowerCase() === 'a' && (event.ctrlKey || event.metaKey)) {
      event.preventDefault();
      selection.set({ chosen: new Set(shown), anchor: id });
    }
  };

export function StationSheet({ open, rows, sorting, onSort }: Props): JSX.Element {
  const store = useStore();
  const shown = rows.map(({ id }) => id);
  const selection = useSelection(shown);
  const copy = useCopy(open);
  const [outcome, setOutcome] = useState<Outcome | null>(null);
  const chosenRows = rows.filter(({ id }) => selection.chosen.has(id));
  const stations = rows.flatMap(({ id }): StationLayout[] => open.analysis.stations.filter((one) => one.id === id));
  const all = rows.length > 0 && chosenRows.length === rows.length;
  const toggleAll = (): void => selection.set(all ? NONE : { chosen: new Set(shown), anchor: null });
  const press = keysOf(selection, shown);
  const onCopy = (event: ClipboardEvent): void => {
    if (inText(event.target) || chosenRows.length === 0) return;
    event.preventDefault();
    event.clipboardData?.setData('text/plain', rowsText(open, chosenRows, store.units.value));
    store.notice.value = { text: `Copied ${counted(chosenRows.length, 'row')}.` };
  };
  const take = (text: string): void => setOutcome(paste(store, text));
  const onPaste = (event: ClipboardEvent): void => {
    const text = event.clipboardData?.getData('text/plain') ?? '';
    // One value goes into the cell that has the focus.
    if (event.target instanceof HTMLTextAreaElement || (inText(event.target) && !/[\t\n]/u.test(text.trim()))) return;
    event.preventDefault();
    take(text);
  };
  return (
    <div class="sheet-box" onCopy={onCopy} onPaste={onPaste}>
      {chosenRows.length === 0 ? (
        <p class="soft many-hint">Tick rows to set a value for all of them; Shift takes a range.</p>
      ) : (
        <SheetMany
          open={open}
          stations={stations.filter(({ id }) => selection.chosen.has(id))}
          onCopy={() => void copy(chosenRows)}
          onNone={() => selection.set(NONE)}
        />
      )}
      <table class="stations sheet">
        <caption class="unseen">Stations, edited in place</caption>
        <Head sorting={sorting} onSort={onSort} all={all} onAll={toggleAll} />
        <tbody>
          {stations.map((station) => (
            <SheetRow
              key={station.id}
              station={station}
              open={open}
              chosen={selection.chosen.has(station.id)}
              onPick={({ range }) =>
                selection.set(range ? extended(selection, station.id, shown) : toggled(selection, station.id))
              }
              onKey={(event) => press(event, station.id)}
            />
          ))}
        </tbody>
      </table>
      {outcome === null ? null : <Pasted outcome={outcome} onClose={() => setOutcome(null)} />}
      <PasteBox onPaste={take} />
    </div>
  );
}
