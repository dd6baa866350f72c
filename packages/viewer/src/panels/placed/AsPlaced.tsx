/** Points recorded on the ground: each sign and trash drop holds, fails, or cannot be told, and how far to move it. */
import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';
import { useStore, type OpenPlan, type Placed } from '../../state/store/store.ts';
import { verdictCounts } from '../../placedWords.ts';
import { VerdictRows } from './VerdictRows.tsx';
import { dropPlaced, takePlaced } from '../../work/placed.ts';
import { placedView } from '../../state/view/placed.ts';

function AddButton({ label }: { readonly label: string }): JSX.Element {
  const store = useStore();
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button
        type="button"
        class="placed-button"
        title="A GPX file of what stands on the road: points named such as “s1 sign”"
        onClick={() => input.current?.click()}
      >
        {label}
      </button>
      <input
        ref={input}
        type="file"
        hidden
        accept=".gpx,application/gpx+xml"
        class="placed-file"
        onChange={(event) => {
          const [file] = event.currentTarget.files ?? [];
          event.currentTarget.value = '';
          if (file !== undefined) void takePlaced(store, file);
        }}
      />
    </>
  );
}

function Held({ open, placed }: { readonly open: OpenPlan; readonly placed: Placed }): JSX.Element {
  const store = useStore();
  const { verdicts } = placedView(open, placed);
  return (
    <>
      <p>
        <span class="file-place">{placed.file}</span>:{' '}
        {verdicts.length === 0
          ? 'no sign and no trash drop of the plan among its points; see the findings'
          : verdictCounts(verdicts)}
        . It is no part of the plan.
      </p>
      {verdicts.length === 0 ? null : (
        <VerdictRows verdicts={verdicts} stations={open.analysis.stations} units={store.units.value} />
      )}
      <div class="button-row">
        <AddButton label="Other points as placed…" />
        <button
          type="button"
          onClick={() => {
            dropPlaced(store);
            requestAnimationFrame(() => document.querySelector<HTMLElement>('.placed-button')?.focus());
          }}
        >
          Take the points away
        </button>
      </div>
    </>
  );
}

export function AsPlaced({ open }: { readonly open: OpenPlan }): JSX.Element {
  const { placed } = useStore();
  return (
    <section class="as-placed" aria-labelledby="placed-heading">
      <h2 id="placed-heading">As placed</h2>
      {placed.value === null ? (
        <>
          <p class="soft">
            Points recorded where things really stand are held against the plan: drop their GPX file here, or choose it.
          </p>
          <div class="button-row">
            <AddButton label="Add points as placed…" />
          </div>
        </>
      ) : (
        <Held open={open} placed={placed.value} />
      )}
    </section>
  );
}
