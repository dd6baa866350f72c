/** A value that follows another at most so often: for what costs the browser more to draw than anybody reads. */
import { effect, signal, type ReadonlySignal, type Signal } from '@preact/signals';

/** Of the time between two changes, at most one part in so many goes into drawing the first. */
const PARTS = 5;

/** Calls back with how long the browser was at what has just changed: until the second frame from now, milliseconds. */
export type TimeFrame = (done: (ms: number) => void) => void;

const frameTime: TimeFrame = (done) => {
  if (typeof requestAnimationFrame === 'undefined') return;
  requestAnimationFrame((from) => requestAnimationFrame((to) => done(to - from)));
};

/**
 * Set at once where the last change lies long enough back or either value is `null`, else when that time is over: `ms`, or where
 * the browser draws slowly, several times what it took for the last change, so that whatever follows every frame stays smooth.
 */
export function paced<T>(
  source: ReadonlySignal<T | null>,
  ms: number,
  timeFrame: TimeFrame = frameTime,
): Signal<T | null> {
  const target = signal(source.peek());
  let [last, pause, timer]: [number, number, ReturnType<typeof setTimeout> | null] = [-Infinity, ms, null];
  const follow = (): void => {
    if (timer !== null) clearTimeout(timer);
    timer = null;
    last = performance.now();
    target.value = source.peek();
    timeFrame((took) => {
      pause = Math.max(ms, PARTS * took);
    });
  };
  effect(() => {
    const next = source.value;
    const wait = last + pause - performance.now();
    if (next === target.peek()) return;
    if (next === null || target.peek() === null || wait <= 0) follow();
    else timer ??= setTimeout(follow, wait);
  });
  return target;
}
