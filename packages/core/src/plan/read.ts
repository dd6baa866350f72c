/** Reads a plan's text: strict JSON, then the schema; every problem is a finding with its place in the text. */
import { bad, good, type Finding, type Result, type Where } from '../finding.ts';
import { pointerOf, type Fault } from './fault.ts';
import { nearestNode, placeAt, readJson, type JsonText } from './json.ts';
import { faultMessage } from './messages.ts';
import type { Place, Plan, PlanDocument } from './plan.ts';
import { validatePlan } from './validate.ts';

const KINDS = { stations: 'station', races: 'race', courses: 'course' } as const;

/** The station, race or course that a path is about, by its id. */
function subject(path: Fault['path'], value: unknown): Pick<Where, 'station' | 'race' | 'course'> {
  const [list, index] = path;
  if ((list !== 'stations' && list !== 'races' && list !== 'courses') || typeof index !== 'number') return {};
  const entries = (value as { readonly [key: string]: readonly ({ readonly id?: unknown } | null)[] } | null)?.[list];
  const id = entries?.[index]?.id;
  return typeof id === 'string' && id !== '' ? { [KINDS[list]]: id } : {};
}

/** Where a fault stands: an unknown key at the key itself, else at its value or the nearest parent there is. */
function faultPlace(json: JsonText, text: string, fault: Fault): Place {
  const node = nearestNode(json.root, pointerOf(fault.path));
  const isKey = fault.code === 'plan-key' && node.parent?.type === 'property';
  return placeAt(text, isKey ? node.parent.offset : node.offset);
}

/** A fault in a plan's text as a finding. */
export function faultFinding(fault: Fault, json: JsonText, text: string, file: string): Finding {
  const where: Where = { file, ...faultPlace(json, text, fault), path: pointerOf(fault.path), ...subject(fault.path, json.value) };
  return { code: fault.code, severity: 'error', message: faultMessage(fault), where };
}

/** A plan with the text it stands in. */
export function planDocument(plan: Plan, json: JsonText, text: string, file: string): PlanDocument {
  return { file, text, plan, placeOf: (pointer) => placeAt(text, nearestNode(json.root, pointer).offset) };
}

/**
 * Reads a plan from the text of a file; `file` is its name as given, for findings. Fails with every problem there is
 * (of broken JSON the first, since what follows it hangs on it); each has line, column and JSON pointer.
 */
export function readPlan(text: string, file: string): Result<PlanDocument> {
  const json = readJson(text);
  if (!json.ok) {
    return bad(
      json.faults.map((fault) => ({
        code: fault.code,
        severity: 'error',
        message: fault.message,
        where: { file, ...placeAt(text, fault.offset), ...(fault.path === undefined ? {} : { path: fault.path }) },
      })),
    );
  }
  const validated = validatePlan(json.value.value);
  if (!validated.ok) return bad(validated.faults.map((fault) => faultFinding(fault, json.value, text, file)));
  return good(planDocument(validated.plan, json.value, text, file));
}
