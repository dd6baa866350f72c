/** Which file is meant by which name of a plan. No file answers for two names, and none of two is taken by chance. */
import { lastName, type NamedFile } from './fileKinds.ts';

/** What a file holds, beside the file. */
export interface Found<T> {
  readonly file: NamedFile;
  readonly content: T;
}

/** A file that may be any of several of the plan's, or one of several that may be the same. */
export interface Unclear<T> {
  readonly one: Found<T>;
  readonly names: readonly string[];
}

export interface Matched<T> {
  /** Each file under the name by which the plan calls it. */
  readonly sure: ReadonlyMap<string, Found<T>>;
  readonly unclear: readonly Unclear<T>[];
}

/** First by the whole name with its folders, the longest names first; what is left by the last part, where that leaves no choice. */
export function matched<T>(wanted: readonly string[], found: readonly Found<T>[]): Matched<T> {
  const sure = new Map<string, Found<T>>();
  const left = new Set(found);
  const take = (name: string, candidates: readonly Found<T>[]): void => {
    const [one] = candidates;
    if (one === undefined || candidates.length > 1) return;
    sure.set(name, one);
    left.delete(one);
  };
  const byLength = wanted.toSorted((a, b) => b.length - a.length);
  for (const name of byLength) take(name, [...left].filter(({ file }) => file.name === name).slice(0, 1));
  for (const name of byLength)
    if (!sure.has(name))
      take(
        name,
        [...left].filter(({ file }) => file.name.endsWith(`/${name}`)),
      );
  const open = wanted.filter((name) => !sure.has(name));
  const unclear: Unclear<T>[] = [];
  for (const last of new Set(open.map(lastName))) {
    const names = open.filter((name) => lastName(name) === last);
    const files = [...left].filter(({ file }) => lastName(file.name) === last);
    if (names.length === 1) take(names[0]!, files);
    if (names.length > 1 || files.length > 1) unclear.push(...files.map((one) => ({ one, names })));
  }
  return { sure, unclear };
}
