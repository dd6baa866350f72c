/** At the foot of the map while something is drawn or measured: what to do, and how to end. */
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { endTool, finishTool, takeLast } from '../../state/edits/tools.ts';
import { LEAST_CORNERS, zoneName } from '../../state/edits/zones.ts';
import { useStore, type MapTool, type Store } from '../../state/store/store.ts';
import { counted } from '../../words.ts';

const Keys = (): JSX.Element => (
  <p class="soft tool-keys">
    Keys on the map: arrows move it, Enter puts a point at its cross, Backspace takes one back.
  </p>
);

function Drawing({ corners }: MapTool & { readonly kind: 'draw' }): JSX.Element {
  const store = useStore();
  return (
    <>
      <p role="status">
        New zone, {counted(corners.length, 'corner')}. Press the map for each corner; press twice on the last.
      </p>
      <Keys />
      <button type="button" disabled={corners.length < LEAST_CORNERS} onClick={() => finishTool(store)}>
        Finish zone
      </button>
      <button type="button" disabled={corners.length === 0} onClick={() => takeLast(store)}>
        Take last back
      </button>
      <button type="button" onClick={() => endTool(store)}>
        Cancel
      </button>
    </>
  );
}

function Reshaping({ zone }: MapTool & { readonly kind: 'reshape' }): JSX.Element {
  const store = useStore();
  const plan = store.open.value?.document.plan;
  return (
    <>
      <p role="status">
        Reshaping {plan === undefined ? 'the zone' : zoneName(plan, zone)}. Drag its corners, or the middle of an edge
        for a new one; the cross moves it whole.
      </p>
      <p class="soft tool-keys">Keys: Tab goes from handle to handle, arrows move 1 m, with Shift 10 m.</p>
      <button type="button" onClick={() => endTool(store)}>
        Done
      </button>
    </>
  );
}

function Measuring({ points }: MapTool & { readonly kind: 'measure' }): JSX.Element {
  const store = useStore();
  return (
    <>
      <p role="status">
        {points.length === 0
          ? 'Press the map where the distance begins.'
          : 'The distance stands at the pointer, in a straight line. Press for each bend.'}
      </p>
      <Keys />
      <button type="button" disabled={points.length === 0} onClick={() => takeLast(store)}>
        Take last back
      </button>
      <button type="button" onClick={() => endTool(store)}>
        Done measuring
      </button>
    </>
  );
}

/** Escape puts the tool away, wherever the focus is. */
function useEscape(store: Store, isUsed: boolean): void {
  useEffect(() => {
    const press = (event: KeyboardEvent): void => {
      if (event.key === 'Escape' && !event.defaultPrevented && store.trial.value === null) endTool(store);
    };
    if (isUsed) window.addEventListener('keydown', press);
    return () => window.removeEventListener('keydown', press);
  }, [isUsed]);
}

export function ToolLine(): JSX.Element | null {
  const store = useStore();
  const tool = store.tool.value;
  useEscape(store, tool !== null);
  if (tool === null) return null;
  return (
    <div class="tool-line" role="group" aria-label="Drawing on the map">
      {tool.kind === 'draw' ? (
        <Drawing {...tool} />
      ) : tool.kind === 'reshape' ? (
        <Reshaping {...tool} />
      ) : (
        <Measuring {...tool} />
      )}
    </div>
  );
}
