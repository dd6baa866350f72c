/**
 * The gesture of dragging a station: a press on its pin, tables, stem or ring, then a move of some pixels. The pin comes
 * under the pointer and stays there, so that the station stands where somebody points, and on the side on which they
 * point. Moves are told once a frame, the last one only.
 */
import type { Map as MapLibreMap } from 'maplibre-gl';
import type { LonLat } from '@halfcup/core';
import { DRAG_LAYERS } from '../style/stations.ts';

export interface Dragging {
  /** Every pin, for a press on the pin itself. */
  readonly pins: () => readonly { readonly id: string; readonly at: LonLat }[];
  /** Whether a tool has the presses. */
  readonly off: () => boolean;
  readonly begin: (station: string) => void;
  /** Where the pin is meant to go; false where the trial has ended meanwhile. */
  readonly move: (pin: LonLat, along: boolean) => boolean;
  readonly finish: () => void;
  readonly drop: () => void;
}

export interface DragState {
  /** A station is pressed or dragged: no other gesture of the map begins. */
  readonly busy: () => boolean;
  /** What is pressed is put back, and the rest of the gesture does nothing. */
  readonly forget: () => void;
}

type At = readonly [x: number, y: number];

interface Press {
  readonly pointer: number;
  readonly station: string;
  readonly x: number;
  readonly y: number;
  /** The map's corner, which stays where it is while something is pressed: asked for once, since asking lays the page out. */
  readonly corner: At;
  readonly slop: number;
  dragged: boolean;
  ended: boolean;
}

/** Pixels that a press may move before it drags; a finger is never still. */
const SLOP = 4;
const FINGER_SLOP = 10;
/** Pixels about a pin that count as on it. */
const ON_PIN = 7;

function stationUnder(map: MapLibreMap, dragging: Dragging, [x, y]: At, reach: number): string | null {
  const layers = DRAG_LAYERS.filter((id) => map.getLayer(id) !== undefined);
  const [feature] = map.queryRenderedFeatures(
    [
      [x - reach, y - reach],
      [x + reach, y + reach],
    ],
    { layers },
  );
  const id: unknown = feature?.properties['id'] ?? feature?.properties['station'];
  if (typeof id === 'string') return id;
  const near = dragging.pins().map((pin) => {
    const pixel = map.project([pin.at[0], pin.at[1]]);
    return { id: pin.id, distance: Math.hypot(pixel.x - x, pixel.y - y) };
  });
  const nearest = near.toSorted((a, b) => a.distance - b.distance)[0];
  return nearest !== undefined && nearest.distance <= ON_PIN + reach ? nearest.id : null;
}

function pressOn(map: MapLibreMap, dragging: Dragging, event: PointerEvent): Press | null {
  const { left, top } = map.getCanvasContainer().getBoundingClientRect();
  const [x, y] = [event.clientX - left, event.clientY - top];
  const finger = event.pointerType === 'touch';
  const station = stationUnder(map, dragging, [x, y], finger ? 8 : 2);
  if (station === null) return null;
  return {
    pointer: event.pointerId,
    station,
    x,
    y,
    corner: [left, top],
    slop: finger ? FINGER_SLOP : SLOP,
    dragged: false,
    ended: false,
  };
}

/** Keeps the last place of a pointer until the next frame, and passes on that one only. */
function everyFrame(act: (at: At, along: boolean) => void): {
  readonly put: (at: At, along: boolean) => void;
  readonly now: () => void;
  readonly forget: () => void;
} {
  let waiting: { readonly at: At; readonly along: boolean } | null = null;
  let frame = 0;
  const now = (): void => {
    cancelAnimationFrame(frame);
    frame = 0;
    const one = waiting;
    waiting = null;
    if (one !== null) act(one.at, one.along);
  };
  return {
    put: (at, along) => {
      waiting = { at, along };
      if (frame === 0) frame = requestAnimationFrame(now);
    },
    now,
    forget: () => {
      waiting = null;
      now();
    },
  };
}

/** The map does not pan while something is pressed: it asks after the press has been seen here. */
function keepStill(map: MapLibreMap, pressed: () => boolean): void {
  for (const type of ['mousedown', 'touchstart'] as const) {
    map.on(type, (event) => {
      if (pressed()) event.preventDefault();
    });
  }
}

export function listenForDragging(map: MapLibreMap, dragging: Dragging): DragState {
  const box = map.getCanvasContainer();
  let press: Press | null = null;
  const moves = everyFrame(([x, y], along) => {
    if (press === null || press.ended) return;
    const pin = map.unproject([x, y]);
    // Escape may have put it back meanwhile: what remains of the gesture does nothing.
    if (!dragging.move([pin.lng, pin.lat], along)) press.ended = true;
  });
  const cancel = (): void => {
    moves.forget();
    if (press?.dragged === true && !press.ended) dragging.drop();
    if (press !== null) press.ended = true;
  };
  const end = (): void => {
    press = null;
    box.classList.remove('dragging');
  };
  box.addEventListener('pointerdown', (event) => {
    // A press of the same pointer means that its release was seen by nobody here.
    if (press !== null && press.pointer !== event.pointerId) return cancel();
    cancel();
    end();
    if (event.button !== 0 || event.ctrlKey || dragging.off()) return undefined;
    press = pressOn(map, dragging, event);
    return undefined;
  });
  keepStill(map, () => press !== null);
  box.addEventListener('pointermove', (event) => {
    if (press === null || press.ended || event.pointerId !== press.pointer) return;
    const [x, y] = [event.clientX - press.corner[0], event.clientY - press.corner[1]];
    if (!press.dragged) {
      if (Math.hypot(x - press.x, y - press.y) <= press.slop) return;
      press.dragged = true;
      box.setPointerCapture(press.pointer);
      box.classList.add('dragging');
      dragging.begin(press.station);
    }
    moves.put([x, y], event.shiftKey);
  });
  box.addEventListener('pointerup', (event) => {
    if (press === null || event.pointerId !== press.pointer) return;
    moves.now();
    if (press.dragged && !press.ended) dragging.finish();
    end();
  });
  box.addEventListener('pointercancel', () => {
    cancel();
    end();
  });
  box.addEventListener('lostpointercapture', (event) => {
    // A finger is captured by what it touches until it is captured here; that loss comes by as well.
    if (press !== null && event.target === box) {
      cancel();
      end();
    }
  });
  window.addEventListener('blur', cancel);
  map.on('remove', () => window.removeEventListener('blur', cancel));
  return { busy: () => press !== null, forget: cancel };
}
