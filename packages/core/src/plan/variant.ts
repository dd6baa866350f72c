/** A plan with one of its named variants laid over: the keys of stations that differ, read by the same schema. */
import { bad, good, type Result } from '../finding.ts';
import { readJson } from './json.ts';
import { migrate } from './migrate.ts';
import type { PlanDocument } from './plan.ts';
import { faultFindings, planDocument } from './read.ts';
import { layVariant, validateBare, variantIndex } from './validate.ts';

/**
 * The document with a variant's station keys laid over (`at` replaces `on` and the reverse); its text and places stay those
 * of the file. A name that is not known is a finding that lists the known ones.
 */
export function withVariant(document: PlanDocument, name: string): Result<PlanDocument> {
  const { file, text, plan } = document;
  const found = variantIndex(plan, name);
  if (!found.ok) return bad([{ code: 'plan-variant', severity: 'error', message: found.message, where: { file, ...document.placeOf('/variants'), path: '/variants' } }]);
  const json = readJson(text);
  const migrated = json.ok ? migrate(json.value.value) : undefined;
  if (!json.ok || migrated?.ok !== true) throw new Error('withVariant needs a document that readPlan gave');
  const laid = validateBare(layVariant(migrated.value, found.index));
  if (!laid.ok) return bad(faultFindings(laid.faults, json.value, text, file));
  return good(planDocument(laid.plan, json.value, text, file));
}
