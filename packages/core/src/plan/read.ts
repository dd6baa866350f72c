/** Reads a plan's text: strict JSON, then the schema; every problem is a finding with its place in the text. */
import { bad, good, type Finding, type Result, type Where } from '../finding.ts';
import { faultFinding, planFinding, pointerOf, type Fault } from './fault.ts';
import { nearestNode, placer, readJson, type JsonText } from './json.ts';
import type { Plan, PlanDocument } from './plan.ts';
import { validatePlan } from './validate.ts';
import { aText, want } from '../wants.ts';

const KINDS = { stations: 'station', races: 'race', courses: 'course' } as const;

/** The station, race or course that a path is about, by its id. */
function subject(path: Fault['path'], value: unknown): Pick<Where, 'station' | 'race' | 'course'> {
  const [list, index, , varied] = path;
  if (list === 'variants') return typeof varied === 'string' ? { station: varied } : {};
  if ((list !== 'stations' && list !== 'races' && list !== 'courses') || typeof index !== 'number') return {};
  const entries = (value as { readonly [key: string]: readonly ({ readonly id?: unknown } | null)[] } | null)?.[list];
  const id = entries?.[index]?.id;
  return typeof id === 'string' && id !== '' ? { [KINDS[list]]: id } : {};
}

/** Where a fault stands: an unknown key at the key itself, else at its value or the nearest parent there is. */
function faultOffset(json: JsonText, fault: Fault): number {
  const node = nearestNode(json.root, pointerOf(fault.path));
  const isKey = fault.code === 'plan-key' && node.parent?.type === 'property';
  return isKey ? node.parent.offset : node.offset;
}

/** Faults in a plan's text as findings, in the order of the text and in the plan's units. */
export function faultFindings(
  faults: readonly Fault[],
  json: JsonText,
  text: string,
  file: string,
): readonly Finding[] {
  const placeAt = placer(text);
  const asked = (json.value as { readonly units?: unknown } | null)?.units;
  const units = asked === 'imperial' ? 'imperial' : 'metric';
  return faults
    .map((fault) => ({ fault, offset: faultOffset(json, fault) }))
    .sort((a, b) => a.offset - b.offset)
    .map(({ fault, offset }): Finding => {
      const where: Where = {
        file,
        ...placeAt(offset),
        path: pointerOf(fault.path),
        ...subject(fault.path, json.value),
      };
      return faultFinding(fault, where, units);
    });
}

/** A plan with the text it stands in. */
export function planDocument(plan: Plan, json: JsonText, text: string, file: string): PlanDocument {
  const placeAt = placer(text);
  return { file, text, plan, placeOf: (pointer) => placeAt(nearestNode(json.root, pointer).offset) };
}

/**
 * Reads a plan from the text of its file: strict JSON, quantities turned to SI, defaults filled in. `file`: its name, for
 * findings. Not ok with every problem there is (of broken JSON the first, since what follows it hangs on it); each has
 * line, column and JSON pointer. A byte order mark is allowed; unknown keys are refused.
 * @example
 * ```ts
 * import { findingLine, readPlan } from '@halfcup/core';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * read.value.plan.stations[0]?.on?.measure; // → 2000
 * const broken = readPlan('{ "format": "halfcup-plan",, }', 'plan.json');
 * broken.findings.map(findingLine)[0]?.slice(0, 15); // → 'plan.json:1:28:'
 * ```
 */
export function readPlan(text: string, file: string): Result<PlanDocument> {
  want('readPlan', 'text', aText, text);
  want('readPlan', 'file', aText, file);
  const json = readJson(text);
  if (!json.ok) {
    const placeAt = placer(text);
    return bad(
      json.faults.map((fault) => {
        const path = fault.path === undefined ? {} : { path: fault.path };
        const facts = { severity: 'error', where: { file, ...placeAt(fault.offset), ...path } } as const;
        return fault.code === 'plan-not-json'
          ? planFinding(fault.code, fault.problem, facts)
          : planFinding(fault.code, fault.problem, facts);
      }),
    );
  }
  const validated = validatePlan(json.value.value);
  if (!validated.ok) return bad(faultFindings(validated.faults, json.value, text, file));
  return good(planDocument(validated.plan, json.value, text, file));
}
