/**
 * The part of the journal that is written while the page waits (Web Storage, HTML standard): what stands there is there
 * after a reload, whatever else was under way. Anything may be refused or full; the browser's database has the other part.
 */
import { isEntry, type Entry } from './journal.ts';

const PREFIX = 'halfcup-journal:';
const keyOf = ({ plan, seq }: Pick<Entry, 'plan' | 'seq'>): string => `${PREFIX}${plan}:${seq}`;

/** `false`: the browser has no room, or does not allow it. */
export function noteInPage(entry: Entry): boolean {
  try {
    localStorage.setItem(keyOf(entry), JSON.stringify(entry));
    return true;
  } catch {
    return false;
  }
}

function keys(): string[] {
  try {
    return Array.from({ length: localStorage.length }, (_, k) => localStorage.key(k) ?? '').filter((key) =>
      key.startsWith(PREFIX),
    );
  } catch {
    return [];
  }
}

function entryAt(key: string): Entry | null {
  try {
    const value: unknown = JSON.parse(localStorage.getItem(key) ?? 'null');
    return isEntry(value) ? value : null;
  } catch {
    return null;
  }
}

export const notedInPage = (): readonly Entry[] =>
  keys().flatMap((key) => {
    const entry = entryAt(key);
    return entry === null ? [] : [entry];
  });

/** Lets go what the database holds by now. */
export function dropFromPage(plan: string, seq: number): void {
  const own = `${PREFIX}${plan}:`;
  for (const key of keys()) {
    if (!key.startsWith(own) || Number(key.slice(own.length)) > seq) continue;
    try {
      localStorage.removeItem(key);
    } catch {
      // It is older than the record and will not be used.
    }
  }
}
