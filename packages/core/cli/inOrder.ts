/** Work on many things at once, its results in the order of the things, and never far ahead of who takes them. */

/**
 * Results in the order of `things`. At most `ahead` are begun and not yet taken: who takes them slowly slows the
 * work, and no more results wait in memory. `work` must not reject: nobody waits yet for what is far ahead.
 */
export async function* inOrder<T, R>(
  things: Iterable<T>,
  ahead: number,
  work: (thing: T) => Promise<R>,
): AsyncGenerator<R, void, void> {
  const begun: Promise<R>[] = [];
  for (const thing of things) {
    begun.push(work(thing));
    if (begun.length >= ahead) yield await begun.shift()!;
  }
  while (begun.length > 0) yield await begun.shift()!;
}
