/** Buttons over the map: where it looks, how stations are dragged, and what is drawn. */
import { useComputed, useSignal, type Signal } from '@preact/signals';
import type { JSX } from 'preact';
import { endTool } from '../state/edits/tools.ts';
import { useStore } from '../state/store/store.ts';

/** `along`: whether stations are dragged along the course even without Shift. */
export function MapTools({ along }: { readonly along: Signal<boolean> }): JSX.Element {
  const store = useStore();
  const unfolded = useSignal(false);
  // Not the plan itself, so that a plan that changes does not draw this again.
  const idle = useComputed(() => store.open.value === null).value;
  const kind = useComputed(() => store.tool.value?.kind ?? null).value;
  const narrow = store.narrow.value;
  const use = (next: 'draw' | 'measure'): void => {
    if (kind === next) return endTool(store);
    store.asked.value = null;
    unfolded.value = false;
    store.tool.value = next === 'draw' ? { kind: 'draw', corners: [] } : { kind: 'measure', points: [] };
  };
  const more = (
    <>
      <button
        type="button"
        disabled={idle}
        aria-pressed={along.value}
        title="Stations dragged on the map move along the course and keep their distance from it. Holding Shift does the same."
        onClick={() => void (along.value = !along.value)}
      >
        Keep offset
      </button>
      <button
        type="button"
        disabled={idle}
        aria-pressed={store.pinned.value}
        title="The map stays where it is, whatever is chosen or edited elsewhere."
        onClick={() => void (store.pinned.value = !store.pinned.value)}
      >
        Hold the map
      </button>
      <button type="button" disabled={idle} aria-pressed={kind === 'measure'} onClick={() => use('measure')}>
        Measure
      </button>
      <button type="button" disabled={idle} aria-pressed={kind === 'draw'} onClick={() => use('draw')}>
        Draw a zone
      </button>
    </>
  );
  return (
    <div class="map-tools">
      <button type="button" disabled={idle} onClick={() => void (store.destination.value = { kind: 'whole' })}>
        Whole plan
      </button>
      {narrow ? (
        <button type="button" aria-expanded={unfolded.value} onClick={() => void (unfolded.value = !unfolded.value)}>
          Map tools
        </button>
      ) : null}
      {narrow && !unfolded.value ? null : more}
    </div>
  );
}
