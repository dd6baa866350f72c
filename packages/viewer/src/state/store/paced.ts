/** A value that follows another at most so often: for what costs the browser more to draw than anybody reads. */
import { effect, signal, type ReadonlySignal, type Signal } from '@preact/signals';

/** Set at once where the last change lies `ms` back or either value is `null`, else when that time is over. */
export function paced<T>(source: ReadonlySignal<T | null>, ms: number): Signal<T | null> {
  const target = signal(source.peek());
  let [last, timer]: [number, ReturnType<typeof setTimeout> | null] = [-Infinity, null];
  const follow = (): void => {
    if (timer !== null) clearTimeout(timer);
    timer = null;
    last = performance.now();
    target.value = source.peek();
  };
  effect(() => {
    const next = source.value;
    const wait = last + ms - performance.now();
    if (next === target.peek()) return;
    if (next === null || target.peek() === null || wait <= 0) follow();
    else timer ??= setTimeout(follow, wait);
  });
  return target;
}
