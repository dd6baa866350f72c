/** Runs the clock: with each frame, or once a second where the person wants less motion. */
import { effect } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Store } from '../state/store/store.ts';
import { setClock, spanOf } from '../state/view/clock.ts';

/** Seconds of race day in a second, by what the choice says. */
export const SPEEDS = [60, 300, 900] as const;

/** Sets the clock on by some real seconds; stops it at the end of race day. */
export function advance(store: Store, real: number, speed: number): void {
  const span = store.open.value === null ? null : spanOf(store.open.value.analysis).span;
  const now = store.clock.value;
  if (span === null || now === null) return;
  setClock(store, now + real * speed);
  if (now + real * speed >= span[1]) store.playing.value = false;
}

/** From the beginning again where it stands at the end. */
export function play(store: Store): void {
  const span = store.open.value === null ? null : spanOf(store.open.value.analysis).span;
  if (span === null) return;
  if (store.clock.value === null || store.clock.value >= span[1]) store.clock.value = span[0];
  store.playing.value = true;
}

/** No frame makes the clock jump: where the page was hidden, it goes on from where it stood. */
const LONGEST = 0.5;

function run(store: Store, speed: () => number): () => void {
  if (matchMedia('(prefers-reduced-motion: reduce)').matches) {
    const timer = setInterval(() => advance(store, 1, speed()), 1000);
    return () => clearInterval(timer);
  }
  let before = performance.now();
  let frame = 0;
  const step = (now: number): void => {
    advance(store, Math.min(LONGEST, Math.max(0, now - before) / 1000), speed());
    before = now;
    frame = requestAnimationFrame(step);
  };
  frame = requestAnimationFrame(step);
  return () => cancelAnimationFrame(frame);
}

export function useClock(store: Store, speed: () => number): void {
  useEffect(() => {
    let stop: (() => void) | null = null;
    const end = effect(() => {
      const playing = store.playing.value;
      stop?.();
      stop = playing ? run(store, speed) : null;
    });
    return () => {
      end();
      stop?.();
    };
  }, [store]);
}
