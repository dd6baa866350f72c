/** The map's place on the page. The map itself is fetched after the first paint. */
import { signal, useComputed, type Signal } from '@preact/signals';
import type { ComponentChildren, JSX } from 'preact';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import { useStore } from '../state/store/store.ts';

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
    let close: (() => void) | undefined;
    const start = async (): Promise<void> => {
      try {
        const { connect } = await import('./connect.ts');
        close = await connect(store, element, along);
        if (closed) close();
      } catch (error) {
        trouble.value = error instanceof Error ? error.message : String(error);
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
      <div class="map-tools">
        <button type="button" disabled={idle} onClick={() => void (store.destination.value = { kind: 'whole' })}>
          Whole plan
        </button>
        <button
          type="button"
          disabled={idle}
          aria-pressed={along.value}
          title="A dragged station keeps its distance from the course; the same with Shift"
          onClick={() => void (along.value = !along.value)}
        >
          Along the course
        </button>
      </div>
      {trouble.value === null ? null : (
        <p class="map-trouble" role="status">
          The map cannot be drawn here, because this browser gives no WebGL. The course strip and the tables show the
          same places and distances.
        </p>
      )}
      <div class="map-foot">{children}</div>
    </main>
  );
}
