/** Handles on the map: buttons at places, moved by pointer and by arrow keys. */
import { Marker, type Map as MapLibreMap } from 'maplibre-gl';
import type { LonLat } from '@halfcup/core';

export interface Handle {
  /** Stays that of the handle while others come and go. */
  readonly key: string;
  readonly kind: 'corner' | 'middle' | 'whole';
  readonly at: LonLat;
  readonly label: string;
  /** Where it is pulled to; `done`: it is let go there. */
  readonly pull: (to: LonLat, done: boolean) => void;
  /** By a key: metres east and north. */
  readonly step: (east: number, north: number) => void;
  /** Enter, and a press that does not move; absent where nothing comes of it. */
  readonly press?: () => void;
  readonly remove?: () => void;
  /** Pulling was given up. */
  readonly drop: () => void;
}

interface Shown {
  readonly marker: Marker;
  readonly element: HTMLButtonElement;
  handle: Handle;
}

const STEPS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
};
/** Pixels that a press may move before it pulls. */
const SLOP = 3;

function onKey(shown: Shown, event: KeyboardEvent): void {
  const { handle } = shown;
  const step = STEPS[event.key];
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  if (step !== undefined) {
    const by = event.shiftKey ? 10 : 1;
    handle.step(step[0] * by, step[1] * by);
  } else if ((event.key === 'Delete' || event.key === 'Backspace') && handle.remove !== undefined) handle.remove();
  else if ((event.key === 'Enter' || event.key === ' ') && handle.press !== undefined) handle.press();
  else return;
  event.preventDefault();
  event.stopPropagation();
}

function listen(map: MapLibreMap, shown: Shown): void {
  const { element } = shown;
  let from: readonly [number, number] | null = null;
  let pulled = false;
  const ground = (event: PointerEvent): LonLat => {
    const { left, top } = map.getCanvasContainer().getBoundingClientRect();
    const { lng, lat } = map.unproject([event.clientX - left, event.clientY - top]);
    return [lng, lat];
  };
  // The map neither pans nor asks about the place.
  for (const type of ['mousedown', 'touchstart', 'click', 'dblclick', 'contextmenu'] as const)
    element.addEventListener(type, (event) => event.stopPropagation());
  element.addEventListener('pointerdown', (event) => {
    event.stopPropagation();
    if (event.button !== 0) return;
    [from, pulled] = [[event.clientX, event.clientY], false];
    element.setPointerCapture(event.pointerId);
  });
  element.addEventListener('pointermove', (event) => {
    if (from === null) return;
    pulled ||= Math.hypot(event.clientX - from[0], event.clientY - from[1]) > SLOP;
    if (pulled) shown.handle.pull(ground(event), false);
  });
  element.addEventListener('pointerup', (event) => {
    if (from === null) return;
    from = null;
    if (pulled) shown.handle.pull(ground(event), true);
    else shown.handle.press?.();
  });
  element.addEventListener('pointercancel', () => {
    from = null;
    if (pulled) shown.handle.drop();
  });
  element.addEventListener('keydown', (event) => onKey(shown, event));
}

/** Shows handles in place of those shown before; those with the same key stay, with the focus and the pointer that they hold. */
export function createHandles(map: MapLibreMap): (handles: readonly Handle[]) => void {
  const shown = new Map<string, Shown>();
  const make = (handle: Handle): Shown => {
    const element = document.createElement('button');
    element.type = 'button';
    element.className = `handle handle-${handle.kind}`;
    const marker = new Marker({ element }).setLngLat([handle.at[0], handle.at[1]]).addTo(map);
    const one = { marker, element, handle };
    listen(map, one);
    return one;
  };
  return (handles) => {
    const keys = new Set(handles.map(({ key }) => key));
    for (const [key, { marker }] of shown)
      if (!keys.has(key)) {
        marker.remove();
        shown.delete(key);
      }
    for (const handle of handles) {
      const one = shown.get(handle.key) ?? make(handle);
      shown.set(handle.key, one);
      one.handle = handle;
      one.marker.setLngLat([handle.at[0], handle.at[1]]);
      one.element.setAttribute('aria-label', handle.label);
      one.element.title = handle.label;
    }
  };
}
