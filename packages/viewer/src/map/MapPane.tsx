/** The map's place on the page. The map itself is fetched after the first paint. */
import { signal, type Signal } from '@preact/signals';
import type { ComponentChildren, JSX } from 'preact';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { reasonOf } from '../trouble.ts';
import type { Connected } from './connect.ts';
import { MapTools } from './MapTools.tsx';
import { useStore, type Store } from '../state/store/store.ts';

/** Why there is no map, as a clause. MapLibre's own error says that the browser has no WebGL. */
const whyNoMap = (error: unknown): string =>
  error instanceof Error && error.name === 'GPUInitializationError'
    ? 'this browser offers no WebGL, or it is switched off'
    : reasonOf(error);

/** How long the map may take before the page says that it has not come, milliseconds. */
const PATIENCE = 15_000;
const SLOW = 'nothing of it has come yet; this browser or the connection is slow, or something blocks it';

interface Props {
  /** What stands over the map's foot. */
  readonly children?: ComponentChildren;
  /** What opens over the map, at a place of it. */
  readonly over?: ComponentChildren;
}

interface Shown {
  readonly trouble: Signal<string | null>;
  readonly along: Signal<boolean>;
  readonly loading: Signal<boolean>;
}

/** Fetches and starts the map; answers with what ends it. A map that comes late takes its trouble back. */
function startMap(store: Store, element: HTMLElement, { trouble, along, loading }: Shown): () => void {
  let closed = false;
  let map: Connected | undefined;
  const fail = (error: unknown): void => {
    if (closed) return;
    trouble.value = whyNoMap(error);
    element.dataset['map'] = 'failed';
  };
  const drawn = (): void => {
    loading.value = false;
    if (!closed) trouble.value = null;
  };
  const late = setTimeout(() => {
    if (!loading.peek() || trouble.peek() !== null) return;
    trouble.value = SLOW;
    map?.askWhy();
  }, PATIENCE);
  const start = async (): Promise<void> => {
    try {
      const { connect } = await import('./connect.ts');
      if (closed) return;
      map = await connect(store, element, along, fail, drawn);
      if (closed) map.close();
    } catch (error) {
      fail(error);
    }
  };
  // Two frames: the first paint is the page without the map.
  requestAnimationFrame(() => requestAnimationFrame(() => void start()));
  return () => {
    closed = true;
    clearTimeout(late);
    map?.close();
  };
}

function Trouble({ why, again }: { readonly why: string; readonly again: () => void }): JSX.Element {
  return (
    <div class="map-trouble" role="status" tabindex={0}>
      <p>The map cannot be drawn: {why}. The table and the strip work without it.</p>
      <button type="button" onClick={again}>
        Try again
      </button>
    </div>
  );
}

export function MapPane({ children, over }: Props): JSX.Element {
  const store = useStore();
  const container = useRef<HTMLDivElement>(null);
  const shown: Shown = useMemo(() => ({ trouble: signal(null), along: signal(false), loading: signal(true) }), []);
  const { trouble, along, loading } = shown;
  const [attempt, setAttempt] = useState(0);
  useEffect(() => (container.current === null ? undefined : startMap(store, container.current, shown)), [attempt]);
  const again = (): void => {
    [trouble.value, loading.value] = [null, true];
    container.current!.dataset['map'] = 'waiting';
    setAttempt(attempt + 1);
  };
  return (
    <main class="map-pane" aria-label="Map">
      <div ref={container} class="map" data-map="waiting" />
      {trouble.value === null ? (
        <>
          <MapTools along={along} />
          {loading.value ? (
            <p class="map-loading" role="status">
              Loading the map…
            </p>
          ) : null}
        </>
      ) : (
        <Trouble why={trouble.value} again={again} />
      )}
      <div class="map-foot">{children}</div>
      {over}
    </main>
  );
}
