import type { Finding } from '../finding.ts';
import type { Names } from './voice.ts';
import { want } from '../wants.ts';
import { isFinding } from '../finding.ts';
import { isNames } from './voice.ts';

/**
 * What a finding is about, by name: its station, else its race, else its course; empty where it is about none.
 * @example
 * ```ts
 * import { readPlan } from '@halfcup/core';
 * import { findingSubject, voiceOf } from '@halfcup/core/sentences';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "name": "Ten", "course": "c" }], "stations": [] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const own = { code: 'own-rule', severity: 'note', message: 'The café is shut.', where: { race: 'r' } } as const;
 * findingSubject(own, voiceOf(read.value.plan).names); // → 'Ten'
 * ```
 */
export function findingSubject(finding: Finding, names: Names): string {
  want('findingSubject', 'finding', isFinding, finding);
  want('findingSubject', 'names', isNames, names);
  const { where } = finding;
  if (where.station !== undefined) return names.station(where.station);
  if (where.race !== undefined) return names.race(where.race);
  return where.course === undefined ? '' : names.course(where.course);
}
