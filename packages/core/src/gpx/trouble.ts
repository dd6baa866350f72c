/** Collects what is to be said of one file: in reading order, repeated ones up to a limit and then counted. */

import type { Finding, Severity } from '../finding.ts';

/** Counted from 1. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

export interface Trouble {
  readonly report: (
    severity: Severity,
    code: string,
    message: string,
    place: Place | null,
    facts?: Pick<Finding, 'measured' | 'limit' | 'unit'>,
  ) => void;
  readonly failed: () => boolean;
  readonly findings: () => readonly Finding[];
}

const REPEATS = 20;

/** Keeps the first 20 findings of each code and closes with how many more there were. */
export function createTrouble(file: string): Trouble {
  const kept: Finding[] = [];
  const counts = new Map<string, { count: number; readonly severity: Severity }>();

  const report: Trouble['report'] = (severity, code, message, place, facts = {}) => {
    const entry = counts.get(code) ?? { count: 0, severity };
    entry.count += 1;
    counts.set(code, entry);
    if (entry.count <= REPEATS)
      kept.push({ code, severity, message, where: place === null ? { file } : { file, ...place }, ...facts });
  };

  const closing = (): Finding[] =>
    [...counts]
      .filter(([, { count }]) => count > REPEATS)
      .map(([code, { count, severity }]) => ({
        code,
        severity,
        message: `${count - REPEATS} more of the same kind (${code}) are not listed; ${count} in all.`,
        where: { file },
      }));

  return {
    report,
    failed: () => kept.some(({ severity }) => severity === 'error'),
    findings: () => [...kept, ...closing()],
  };
}

/** A piece of the file as it can stand in a message: one line, at most 40 characters, in quotes. */
export function quoted(text: string): string {
  // A literal not-a-number mark in a message would look like a fault of ours.
  if (/^[+-]?nan$/i.test(text.trim())) return 'a "not a number" mark';
  const printable = Array.from(text.slice(0, 80).replaceAll(/[\s\p{Cc}\p{Cs}\u{FFFD}]+/gu, ' '));
  return `"${printable.length > 40 ? `${printable.slice(0, 39).join('')}…` : printable.join('')}"`;
}
