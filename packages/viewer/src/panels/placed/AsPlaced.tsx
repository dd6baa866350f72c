/** Points recorded on the ground: each station as built beside its plan, and whether each sign and trash drop is where it should be. */
import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';
import { useStore, type OpenPlan, type Placed } from '../../state/store/store.ts';
import { verdictCounts } from '../../placedWords.ts';
import { BuiltRows } from './BuiltRows.tsx';
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
        title="A GPX file of what stands on the road, with points named such as “s1 sign”"
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

function Compared({ open, placed }: { readonly open: OpenPlan; readonly placed: Placed }): JSX.Element {
  const store = useStore();
  const { verdicts, stations, findings } = placedView(open, placed);
  return (
    <>
      <p>
        <span class="file-place">{placed.file}</span>:{' '}
        {verdicts.length === 0
          ? 'none of its points is a sign or trash drop of the plan; see the findings'
          : verdictCounts(verdicts)}
        . These points are not saved in the plan.
      </p>
      {stations.length === 0 ? null : <BuiltRows stations={stations} findings={findings} open={open} />}
      {verdicts.length === 0 ? null : (
        <VerdictRows verdicts={verdicts} stations={open.analysis.stations} units={store.units.value} />
      )}
      <div class="button-row">
        <AddButton label="Choose other points…" />
        <button
          type="button"
          onClick={() => {
            dropPlaced(store);
            requestAnimationFrame(() => document.querySelector<HTMLElement>('.placed-button')?.focus());
          }}
        >
          Remove points
        </button>
      </div>
    </>
  );
}

export function AsPlaced({ open }: { readonly open: OpenPlan }): JSX.Element {
  const { placed } = useStore();
  return (
    <section class="as-placed" aria-labelledby="placed-heading">
      <h2 id="placed-heading">On the ground</h2>
      {placed.value === null ? (
        <>
          <p class="soft">
            Compare points recorded on the ground with the plan: drop their GPX file here, or choose it.
          </p>
          <div class="button-row">
            <AddButton label="Choose points…" />
          </div>
        </>
      ) : (
        <Compared open={open} placed={placed.value} />
      )}
    </section>
  );
}
