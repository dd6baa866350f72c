/** Rows pasted from a spreadsheet: what became of them, and by row why some did not come in. */
import type { JSX } from 'preact';
import { useId, useState } from 'preact/hooks';
import { pastedRows } from '../../state/edits/pasted.ts';
import { run } from '../../state/edits/workbench.ts';
import type { Store } from '../../state/store/store.ts';
import { messageOf } from '../../state/view/voice.ts';
import { counted } from '../../words.ts';

/** What came of a paste, a line for each thing. */
export type Outcome = readonly string[];

export function paste(store: Store, text: string): Outcome {
  const open = store.open.value;
  if (open === null) return [];
  const { command, added, changed, findings } = pastedRows(open, text, store.units.value);
  const said = findings.map((finding) => messageOf(store, finding));
  if (command === null) return said.length === 0 ? ['There are no rows to paste.'] : said;
  const refused = run(store, command);
  if (refused.length > 0) return [...refused.map((finding) => messageOf(store, finding)), ...said];
  const parts = [
    added === 0 ? '' : `${counted(added, 'station')} added`,
    changed === 0 ? '' : `${counted(changed, 'station')} changed`,
  ].filter((part) => part !== '');
  return [`${parts.join(', ')}. Undo reverts this.`, ...said];
}

export function Pasted({ outcome, onClose }: { readonly outcome: Outcome; readonly onClose: () => void }): JSX.Element {
  return (
    <div class="pasted" role="status">
      <ul>
        {outcome.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <button type="button" onClick={onClose}>
        Close
      </button>
    </div>
  );
}

/** For those who have the rows as text, and for keyboards. */
export function PasteBox({ onPaste }: { readonly onPaste: (text: string) => void }): JSX.Element {
  const id = useId();
  const [text, setText] = useState('');
  return (
    <details class="paste-box">
      <summary>Paste rows</summary>
      <label for={id}>
        Rows of a spreadsheet with their heads: name, distance, side, serves, tables, width. A row with the name of a
        station changes that one.
      </label>
      <textarea
        id={id}
        class="cell"
        rows={4}
        value={text}
        spellcheck={false}
        onInput={(event) => setText(event.currentTarget.value)}
      />
      <button
        type="button"
        disabled={text.trim() === ''}
        onClick={() => {
          onPaste(text);
          setText('');
        }}
      >
        Take these rows
      </button>
    </details>
  );
}
