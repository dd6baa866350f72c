/** The map's place on the page. The map itself is fetched after the first paint. */
import { signal, type Signal } from '@preact/signals';
import type { ComponentChildren, JSX } from 'preact';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import { reasonOf } from '../trouble.ts';
import { MapTools } from './MapTools.tsx';
import { useStore } from '../state/store/store.ts';

/** Why there is no map, as a clause. MapLibre's own error says that the browser has no WebGL. */
const whyNoMap = (error: unknown): string =>
  error instanceof Error && error.name === 'GPUInitializationError'
    ? 'this browser offers no WebGL, or it is switched off'
    : reasonOf(error);

interface Props {
  /** What stands over the map's foot. */
  readonly children?: ComponentChildren;
  /** What opens over the map, at a place of it. */
  readonly over?: ComponentChildren;
}

export function MapPane({ children, over }: Props): JSX.Element {
  const store = useStore();
  const container = useRef<HTMLDivElement>(null);
  const trouble: Signal<string | null> = useMemo(() => signal(null), []);
  const along = useMemo(() => signal(false), []);
  const loading = useMemo(() => signal(true), []);
  useEffect(() => {
    const element = container.current;
    if (element === null) return undefined;
    let closed = false;
    const fail = (error: unknown): void => {
      trouble.value = whyNoMap(error);
      element.dataset['map'] = 'failed';
    };
    let close: (() => void) | undefined;
    const start = async (): Promise<void> => {
      try {
        const { connect } = await import('./connect.ts');
        close = await connect(store, element, along, fail, () => void (loading.value = false));
        if (closed) close();
      } catch (error) {
        fail(error);
      }
    };
    // Two frames: the first paint is the page without the map.
    requestAnimationFrame(() => requestAnimationFrame(() => void start()));
    return () => {
      closed = true;
      close?.();
    };
  }, []);
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
        <p class="map-trouble" role="status" tabindex={0}>
          The map cannot be drawn: {trouble.value}. The course strip and the tables show the same places and distances.
        </p>
      )}
      <div class="map-foot">{children}</div>
      {over}
    </main>
  );
}
