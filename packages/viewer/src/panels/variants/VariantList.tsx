/** The plan's variants: which is shown, and what may be done with each. */
import type { Finding } from '@halfcup/core';
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { useStore, type Store } from '../../state/store/store.ts';
import { MAIN_PLAN, deleteVariant, renameVariant, applyToPlan } from '../../state/edits/variants.ts';
import { showVariant } from '../../state/edits/workbench.ts';
import { firstMessage } from '../../state/view/voice.ts';
import { counted } from '../../words.ts';
import { NameForm } from '../ui/NameForm.tsx';

/** To which focus goes when the row with the button is gone. */
export const LIST_HEADING = 'variants-heading';

const toHeading = (): void => void requestAnimationFrame(() => document.getElementById(LIST_HEADING)?.focus());

function done(store: Store, found: readonly Finding[], text: string): void {
  store.notice.value = { text: firstMessage(store, found) ?? text };
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
      class="variant-name"
      aria-pressed={shown}
      onClick={() => done(store, showVariant(store, variant), `Showing ${name}`)}
    >
      <span class="variant-title">{name}</span>
      <span class="variant-about">{shown ? 'Shown' : about}</span>
    </button>
  );
}

function Row({ name, stations }: { readonly name: string; readonly stations: number }): JSX.Element {
  const store = useStore();
  const [renaming, setRenaming] = useState(false);
  const rename = (to: string): readonly Finding[] => {
    const found = renameVariant(store, name, to);
    if (found.length === 0) {
      setRenaming(false);
      toHeading();
    }
    return found;
  };
  return (
    <li>
      <Shown
        name={name}
        variant={name}
        about={stations === 0 ? 'Same as the main plan so far' : counted(stations, 'station')}
      />
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
            aria-label={`Apply ${name} to plan`}
            onClick={() => {
              done(store, applyToPlan(store, name), `${name} applied to the plan. Undo reverts this.`);
              toHeading();
            }}
          >
            Apply to plan
          </button>
          <button type="button" aria-label={`Rename ${name}`} onClick={() => setRenaming(true)}>
            Rename
          </button>
          <button
            type="button"
            aria-label={`Delete ${name}`}
            onClick={() => {
              done(store, deleteVariant(store, name), `Deleted ${name}. Undo brings it back.`);
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

export function VariantList(): JSX.Element | null {
  const open = useStore().open.value;
  if (open === null) return null;
  return (
    <ul class="variant-list">
      <li>
        <Shown name={MAIN_PLAN} variant={null} about="the plan itself" />
      </li>
      {open.document.plan.variants.map(({ name, stations }) => (
        <Row key={name} name={name} stations={Object.keys(stations).length} />
      ))}
    </ul>
  );
}
