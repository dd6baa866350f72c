/** The positions that the plan keeps under names: which are shown, and what may be done with each. */
import type { Finding } from '@halfcup/core';
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { useStore, type Store } from '../../state/store/store.ts';
import { AS_PLANNED, deletePositions, renamePositions, takeIntoPlan } from '../../state/edits/variants.ts';
import { showVariant } from '../../state/edits/workbench.ts';
import { counted } from '../../words.ts';
import { NameForm } from '../ui/NameForm.tsx';

/** To which focus goes when the row with the button is gone. */
export const LIST_HEADING = 'positions-heading';

const toHeading = (): void => void requestAnimationFrame(() => document.getElementById(LIST_HEADING)?.focus());

function done(store: Store, found: readonly Finding[], text: string): void {
  store.notice.value = { text: found[0] === undefined ? text : `Not done: ${found[0].message}` };
}

function Shown({
  name,
  variant,
  about,
}: {
  readonly name: string;
  readonly variant: string | null;
  readonly about: string;
}): JSX.Element {
  const store = useStore();
  const shown = store.open.value?.variant === variant;
  return (
    <button
      type="button"
      class="position-name"
      aria-pressed={shown}
      onClick={() => done(store, showVariant(store, variant), `Shown: ${name}`)}
    >
      <span class="position-title">{name}</span>
      <span class="position-about">{shown ? 'shown' : about}</span>
    </button>
  );
}

function Row({ name, stations }: { readonly name: string; readonly stations: number }): JSX.Element {
  const store = useStore();
  const [renaming, setRenaming] = useState(false);
  const rename = (to: string): readonly Finding[] => {
    const found = renamePositions(store, name, to);
    if (found.length === 0) {
      setRenaming(false);
      toHeading();
    }
    return found;
  };
  return (
    <li>
      <Shown name={name} variant={name} about={stations === 0 ? 'as planned so far' : counted(stations, 'station')} />
      {renaming ? (
        <NameForm
          label="New name"
          own={name}
          focus
          actions={[{ label: 'Rename', act: rename }]}
          onCancel={() => setRenaming(false)}
        />
      ) : (
        <div class="button-row">
          <button
            type="button"
            aria-label={`Take ${name} into the plan`}
            onClick={() => {
              done(store, takeIntoPlan(store, name), `The plan has the positions of ${name}; undo takes them back`);
              toHeading();
            }}
          >
            Take into the plan
          </button>
          <button type="button" aria-label={`Rename ${name}`} onClick={() => setRenaming(true)}>
            Rename
          </button>
          <button
            type="button"
            aria-label={`Delete ${name}`}
            onClick={() => {
              done(store, deletePositions(store, name), `Deleted: ${name}; undo brings it back`);
              toHeading();
            }}
          >
            Delete
          </button>
        </div>
      )}
    </li>
  );
}

export function PositionsList(): JSX.Element | null {
  const open = useStore().open.value;
  if (open === null) return null;
  return (
    <ul class="positions">
      <li>
        <Shown name={AS_PLANNED} variant={null} about="the plan’s own" />
      </li>
      {open.document.plan.variants.map(({ name, stations }) => (
        <Row key={name} name={name} stations={Object.keys(stations).length} />
      ))}
    </ul>
  );
}
