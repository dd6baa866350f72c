/** What every answer of a reader keeps to, whatever it was given. Not part of the package. */
import { expect } from 'vitest';
import { type Finding, type Result, findingLine } from '../../finding.ts';

/** Words of the inside of a program; what is quoted is the file's own. */
const INTERNAL = /\b(?:NaN|Infinity|undefined|TypeError|RangeError|at file:)\b|\[object|\n\s+at /u;
const QUOTED = /"(?:[^"\\]|\\.)*"|“[^”]*”|<[^>]*>/gu;

/** Cases that are tried in full (`FULL=1`), in continuous integration, and while writing. */
export const CASES: number = process.env['FULL'] ? 5000 : process.env['CI'] ? 1000 : 200;

/** Numbers that are all finite; gives how many values there are, for the counters. */
export function valuesIn(value: unknown): number {
  if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`the result holds ${value}`);
  if (typeof value !== 'object' || value === null) return 1;
  if (ArrayBuffer.isView(value)) return (value as Float64Array).length;
  if (value instanceof Map) return [...value.values()].reduce((sum: number, one) => sum + valuesIn(one), 1);
  return Object.values(value).reduce((sum: number, one) => sum + valuesIn(one), 1);
}

function expectFinding(finding: Finding): void {
  const line = findingLine(finding).replaceAll(QUOTED, '');
  expect(line).not.toMatch(INTERNAL);
  expect(finding.message.length).toBeGreaterThan(10);
  valuesIn({ ...finding, where: finding.where });
}

/** Findings in words and not too many of them; an answer without a value says why. Gives how many there are. */
export function expectSound(result: Pick<Result<unknown>, 'ok' | 'findings'>, most: number): void {
  result.findings.forEach(expectFinding);
  expect(result.findings.length).toBeLessThanOrEqual(most);
  if (!result.ok) expect(result.findings.some(({ severity }) => severity === 'error')).toBe(true);
}

/** Runs the cases of one reader; each that fails tells its number. Gives how many were read. */
export function fuzzed(one: (k: number) => boolean): { readonly read: number; readonly refused: number } {
  const said = { read: 0, refused: 0 };
  for (let k = 0; k < CASES; k++) {
    try {
      said[one(k) ? 'read' : 'refused'] += 1;
    } catch (error) {
      throw new Error(`case ${k}: ${error instanceof Error ? error.message : String(error)}`, { cause: error });
    }
  }
  return said;
}
