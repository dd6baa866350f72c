/** The JSON document that `halfcup compare` prints. Lengths in metres to 1e-6, degrees to 1e-9. */
import type { Finding } from '../finding.ts';
import type { Change, ChangedItem, ChangedSpacing, Comparison } from '../improve/compare.ts';
import { findingDocument } from './documents.ts';
import { toMicro, toPosition } from './rounding.ts';
import { want } from '../wants.ts';
import { isComparison } from '../improve/shapes.ts';

const orNull = (value: number | null): number | null => (value === null ? null : toMicro(value));
const both = ([before, after]: Change<number>): Change<number> => [toMicro(before), toMicro(after)];
const bothOrNull = ([before, after]: Change<number | null>): Change<number | null> => [orNull(before), orNull(after)];

const spacing = ({ race, legs, longest, shortest, mean }: ChangedSpacing): ChangedSpacing => ({
  race,
  legs: legs.map(({ from, to, length }) => ({ from, to, length: bothOrNull(length) })),
  longest: both(longest),
  shortest: both(shortest),
  mean: both(mean),
});

const item = (changed: ChangedItem): ChangedItem => ({
  ...changed,
  along: bothOrNull(changed.along),
  wheel: bothOrNull(changed.wheel),
  alongEnd: bothOrNull(changed.alongEnd),
  wheelEnd: bothOrNull(changed.wheelEnd),
});

const findings = (list: readonly Finding[]): Finding[] => list.map(findingDocument);

/**
 * What `halfcup compare` prints: a comparison with its numbers rounded; `gained` and `lost` as they are to be printed.
 * @example
 * ```ts
 * import { analyse, compareAnalyses, readPlan } from '@halfcup/core';
 * import { compareDocument } from '@halfcup/core/schemas';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const result = analyse(read.value.plan, { gpx: new Map() });
 * if (!result.ok) throw new Error(result.findings[0]?.message);
 * const same = compareAnalyses(['today', 'tomorrow'], result.value, result.value);
 * compareDocument(same).spacing[0]?.longest; // → [2000, 2000]
 * ```
 */
export function compareDocument(comparison: Comparison): Comparison {
  want('compareDocument', 'comparison', isComparison, comparison);
  return {
    variants: comparison.variants,
    stations: comparison.stations.map(({ id, name, moved, from, to }) => ({
      id,
      name,
      moved: toMicro(moved),
      from: toPosition(from),
      to: toPosition(to),
    })),
    spacing: comparison.spacing.map(spacing),
    items: comparison.items.map(item),
    findings: { gained: findings(comparison.findings.gained), lost: findings(comparison.findings.lost) },
  };
}
