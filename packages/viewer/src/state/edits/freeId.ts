/** An id that none of a list has: the first letter and the next number that is free. */
export function freeId(letter: string, taken: readonly string[]): string {
  for (let number = taken.length + 1; ; number++)
    if (!taken.includes(`${letter}${number}`)) return `${letter}${number}`;
}
