import { expect, it } from 'vitest';
import { inOrder } from './inOrder.ts';

/** Work that ends only when it is told to, so that nothing hangs on time. */
function held(): { work: (thing: number) => Promise<string>; begun: number[]; end: (thing: number) => void } {
  const begun: number[] = [];
  const ends = new Map<number, () => void>();
  const work = async (thing: number): Promise<string> => {
    begun.push(thing);
    await new Promise<void>((resolve) => ends.set(thing, resolve));
    return `done ${thing}`;
  };
  return { work, begun, end: (thing) => ends.get(thing)!() };
}

it('gives results in the order of the things, whichever ends first', async () => {
  const { work, end } = held();
  const results = inOrder([1, 2, 3], 3, work);
  const first = results.next();
  end(3);
  end(2);
  end(1);
  expect([(await first).value, (await results.next()).value, (await results.next()).value]).toEqual([
    'done 1',
    'done 2',
    'done 3',
  ]);
  expect((await results.next()).done).toBe(true);
});

it('begins nothing further ahead of who takes the results than it is told', async () => {
  const { work, begun, end } = held();
  const results = inOrder(
    Array.from({ length: 1000 }, (_, k) => k),
    3,
    work,
  );
  const first = results.next();
  expect(begun).toEqual([0, 1, 2]);
  for (const thing of [1, 2, 0]) end(thing);
  await first;
  // 1 and 2 have ended, and nobody takes them: 3 is not begun.
  expect(begun).toEqual([0, 1, 2]);
  await results.next();
  expect(begun).toEqual([0, 1, 2, 3]);
});

it('one at a time begins the next only when the last is taken', async () => {
  let running = 0;
  let most = 0;
  const work = async (thing: number): Promise<number> => {
    running += 1;
    most = Math.max(most, running);
    await Promise.resolve();
    running -= 1;
    return thing * 2;
  };
  const taken: number[] = [];
  for await (const result of inOrder([1, 2, 3], 1, work)) taken.push(result);
  expect([taken, most]).toEqual([[2, 4, 6], 1]);
});

it('of nothing gives nothing', async () => {
  expect((await inOrder([], 4, async () => 'x').next()).done).toBe(true);
});
