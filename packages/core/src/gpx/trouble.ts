/** Collects the findings of one file in reading order; of faults that repeat the first are kept and the rest counted. */

import type { Finding, Severity } from '../finding.ts';
import type { GpxParams } from '../text/params/gpx.ts';
import { gpxFinding } from './gpxFinding.ts';

/** Counted from 1. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

/** Why no more of the file is read: a code with its own parameters. */
export type RefusalOf<C extends keyof GpxParams> = {
  readonly [code in C]: { readonly code: code; readonly params: GpxParams[code] };
}[C];
export type Refusal = RefusalOf<keyof GpxParams>;

/** Faults of one element, which a file may have many times. */
export type RepeatingCode = 'gpx-latitude' | 'gpx-longitude' | 'gpx-elevation' | 'gpx-hdop' | 'gpx-misplaced';

export interface Trouble {
  readonly report: <C extends RepeatingCode>(
    severity: Severity,
    code: C,
    params: GpxParams[C],
    place: Place,
    facts?: Pick<Finding, 'measured' | 'limit' | 'unit'>,
  ) => void;
  readonly refuse: (refusal: Refusal, place: Place) => void;
  readonly failed: () => boolean;
  readonly findings: () => readonly Finding[];
}

const REPEATS = 20;

/** Keeps the first 20 findings of each code and closes with how many more there were. */
export function createTrouble(file: string): Trouble {
  const kept: Finding[] = [];
  const counts = new Map<RepeatingCode, { count: number; readonly severity: Severity }>();

  const report: Trouble['report'] = (severity, code, params, place, facts = {}) => {
    const entry = counts.get(code) ?? { count: 0, severity };
    entry.count += 1;
    counts.set(code, entry);
    if (entry.count <= REPEATS) kept.push(gpxFinding(code, params, { severity, where: { file, ...place }, ...facts }));
  };

  const refuse = <C extends keyof GpxParams>({ code, params }: RefusalOf<C>, place: Place): void => {
    kept.push(gpxFinding<C>(code, params, { severity: 'error', where: { file, ...place } }));
  };

  const closing = (): Finding[] =>
    [...counts]
      .filter(([, { count }]) => count > REPEATS)
      .map(([code, { count, severity }]) =>
        gpxFinding(code, { more: count - REPEATS, all: count }, { severity, where: { file } }),
      );

  return {
    report,
    refuse,
    failed: () => kept.some(({ severity }) => severity === 'error'),
    findings: () => [...kept, ...closing()],
  };
}

/** A piece of the file as it can stand in a sentence: one line, at most 40 characters. */
export function excerpt(text: string): string {
  const line = text
    .trim()
    .slice(0, 80)
    .replaceAll(/[\s\p{Cc}\p{Cs}\u{FFFD}]+/gu, ' ');
  const printable = Array.from(line.trim());
  return printable.length > 40 ? `${printable.slice(0, 39).join('')}…` : printable.join('');
}
