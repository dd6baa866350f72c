/** A plan with one of its named variants laid over: the keys of stations that differ, read by the same schema. */
import { bad, good, type Result } from '../finding.ts';
import { planFinding } from './fault.ts';
import { readJson } from './json.ts';
import { migrate } from './migrate.ts';
import type { PlanDocument } from './plan.ts';
import { faultFindings, planDocument } from './read.ts';
import { layVariant, validateBare, variantIndex } from './validate.ts';
import { aText, want } from '../wants.ts';
import { isPlanDocument } from './shapes.ts';

/**
 * The document with one of its named variants laid over: the variant's station keys (`at` replaces `on` and the reverse);
 * text and places stay those of the file. Not ok with a finding that names the known ones where there is none of that name.
 * @example
 * ```ts
 * import { readPlan, withVariant } from '@halfcup/core';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }],
 *   "variants": [{ "name": "past the bend", "stations": { "s1": { "side": "left" } } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const other = withVariant(read.value, 'past the bend');
 * other.ok && other.value.plan.stations[0]?.side; // → 'left'
 * withVariant(read.value, 'nowhere').findings[0]?.code; // → 'plan-variant'
 * ```
 */
export function withVariant(document: PlanDocument, name: string): Result<PlanDocument> {
  want('withVariant', 'document', isPlanDocument, document);
  want('withVariant', 'name', aText, name);
  const { file, text, plan } = document;
  const found = variantIndex(plan, name);
  if (!found.ok)
    return bad([
      planFinding(
        'plan-variant',
        { variant: found.unknown },
        { severity: 'error', where: { file, ...document.placeOf('/variants'), path: '/variants' } },
      ),
    ]);
  const json = readJson(text);
  const migrated = json.ok ? migrate(json.value.value) : undefined;
  if (!json.ok || migrated?.ok !== true)
    throw new RangeError('withVariant wants the document that readPlan gives; the text of this one is no plan');
  const laid = validateBare(layVariant(migrated.value, found.index));
  if (!laid.ok) return bad(faultFindings(laid.faults, json.value, text, file));
  return good(planDocument(laid.plan, json.value, text, file));
}
