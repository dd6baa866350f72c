/** The map's place on the page. The map itself is fetched after the first paint. */
import { signal, useComputed, type Signal } from '@preact/signals';
import type { ComponentChildren, JSX } from 'preact';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import { reasonOf } from '../trouble.ts';
import { useStore } from '../state/store/store.ts';

/** Why there is no map, as a clause. MapLibre's own error says that the browser has no WebGL. */
const whyNoMap = (error: unknown): string =>
  error instanceof Error && error.name === 'GPUInitializationError'
    ? 'this browser offers no WebGL, or it is switched off'
    : reasonOf(error);

/** `children`: what stands over the map's foot. */
export function MapPane({ children }: { readonly children?: ComponentChildren }): JSX.Element {
  const store = useStore();
  const container = useRef<HTMLDivElement>(null);
  const trouble: Signal<string | null> = useMemo(() => signal(null), []);
  const along = useMemo(() => signal(false), []);
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
        close = await connect(store, element, along, fail);
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
  // Not the plan itself, so that a plan that changes does not draw this again.
  const idle = useComputed(() => store.open.value === null).value;
  return (
    <main class="map-pane" aria-label="Map">
      <div ref={container} class="map" data-map="waiting" />
      {trouble.value === null ? (
        <div class="map-tools">
          <button type="button" disabled={idle} onClick={() => void (store.destination.value = { kind: 'whole' })}>
            Whole plan
          </button>
          <button
            type="button"
            disabled={idle}
            aria-pressed={along.value}
            title="Stations dragged on the map move along the course and keep their distance from it. Holding Shift does the same."
            onClick={() => void (along.value = !along.value)}
          >
            Keep offset<span class="wide-only"> while dragging</span>
          </button>
        </div>
      ) : (
        <p class="map-trouble" role="status" tabindex={0}>
          The map cannot be drawn: {trouble.value}. The course strip and the tables show the same places and distances.
        </p>
      )}
      <div class="map-foot">{children}</div>
    </main>
  );
}
