/** Reads a plan's text: strict JSON, then the schema; every problem is a finding with its place in the text. */
import { bad, good, type Finding, type Result, type Where } from '../finding.ts';
import { faultFinding, planFinding, pointerOf, type Fault } from './fault.ts';
import { passedIn } from '../jsonExtent.ts';
import { LIMITS } from '../limits.ts';
import { limitFinding, moreProblems } from '../text/limitFinding.ts';
import type { UnitSystem } from '../units.ts';
import type { PlanInput } from './input.ts';
import { deepFault, DEEPEST, nearestNode, placer, readJson, type JsonFault, type JsonText } from './json.ts';
import { longLists, withoutManyWrong } from './longLists.ts';
import type { Plan, PlanDocument } from './plan.ts';
import { validatePlan } from './validate.ts';
import { aText, want } from '../wants.ts';

/** Faults that are listed; whoever has more begins with these. */
const LISTED = 200;

const KINDS = { stations: 'station', races: 'race', courses: 'course' } as const;

/** The station, race or course that a path is about, by its id. */
function subject(path: Fault['path'], value: unknown): Pick<Where, 'station' | 'race' | 'course'> {
  const [list, index, , varied] = path;
  if (list === 'variants') return typeof varied === 'string' ? { station: varied } : {};
  if ((list !== 'stations' && list !== 'races' && list !== 'courses') || typeof index !== 'number') return {};
  const entries = (
    value as { readonly [key: string]: readonly ({ readonly id?: unknown } | null)[] } | null | undefined
  )?.[list];
  const id = entries?.[index]?.id;
  return typeof id === 'string' && id !== '' ? { [KINDS[list]]: id } : {};
}

/** Where a fault stands: an unknown key at the key itself, else at its value or the nearest parent there is. */
function faultOffset(json: JsonText, fault: Fault): number {
  const node = nearestNode(json.root, pointerOf(fault.path));
  const isKey = fault.code === 'plan-key' && node.parent?.type === 'property';
  return isKey ? node.parent.offset : node.offset;
}

const unitsOf = (value: unknown): UnitSystem =>
  (value as { readonly units?: unknown } | null | undefined)?.units === 'imperial' ? 'imperial' : 'metric';

/** Faults in a plan's text as findings, in the order of the text and in the plan's units. */
export function faultFindings(
  faults: readonly Fault[],
  json: JsonText,
  text: string,
  file: string,
): readonly Finding[] {
  const placeAt = placer(text);
  const units = unitsOf(json.value);
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

/** The value of a plan that is no text without keys that are `undefined`; what is nested too deeply, or in itself, is left out and reported. */
function writtenOf(value: unknown, report: () => void, depth: number = 0): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if (depth > DEEPEST) return report();
  if (Array.isArray(value)) return value.map((one: unknown) => writtenOf(one, report, depth + 1));
  const entries = Object.entries(value).filter(([, one]) => one !== undefined);
  return Object.fromEntries(entries.map(([key, one]) => [key, writtenOf(one, report, depth + 1)]));
}

/**
 * Reads a plan from the text of its file (strict JSON) or from its value: quantities turned to SI, defaults filled in. `file`: its
 * name, for findings (absent: `plan.json`). Not ok with every problem there is, of more than 200 the first 200 (of broken JSON the first, since what follows it hangs
 * on it); each has line, column and JSON pointer. A byte order mark is allowed; unknown keys are refused. A value has no file: what is
 * wrong in it has its JSON pointer alone, keys that are `undefined` count as left out, and the document's text is its JSON.
 * @example
 * ```ts
 * import { findingLine, readPlan } from '@halfcup/core';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * read.value.plan.stations[0]?.on?.measure; // → 2000
 * readPlan({ format: 'halfcup-plan', version: 1, courses: [], races: [], stations: [] }).findings.map(({ where }) => where.path); // → ['/courses', '/races']
 * const broken = readPlan('{ "format": "halfcup-plan",, }', 'plan.json');
 * broken.findings.map(findingLine)[0]?.slice(0, 15); // → 'plan.json:1:28:'
 * ```
 */
export function readPlan(plan: string | PlanInput, file?: string): Result<PlanDocument> {
  if (file !== undefined) want('readPlan', 'file', aText, file);
  return typeof plan === 'string' ? readText(plan, file ?? 'plan.json') : readValue(plan, file);
}

function jsonFinding(fault: JsonFault, place: Where): Finding {
  const where = fault.path === undefined ? place : { ...place, path: fault.path };
  const facts = { severity: 'error', where } as const;
  return fault.code === 'plan-not-json'
    ? planFinding(fault.code, fault.problem, facts)
    : planFinding(fault.code, fault.problem, facts);
}

/** Why a plan's text is too much to be read; none where it is not. */
function tooLarge(text: string, file: string): readonly Finding[] {
  const { bytes, values, points, depth } = LIMITS.plan;
  if (text.length > bytes) return [limitFinding('plan', 'bytes', { file }, text.length)];
  // No text has more values than signs.
  const past = text.length > values ? passedIn(text, { values, points, depth }) : null;
  if (past === null) return [];
  const where = { file, ...placer(text)(past.offset) };
  // Depth has a finding of its own.
  return [past.what === 'depth' ? jsonFinding(deepFault(past.offset), where) : limitFinding('plan', past.what, where)];
}

/** Lists that are too long, each at its first entry too many. */
const longListFindings = (value: unknown, whereOf: (pointer: string) => Where): readonly Finding[] =>
  longLists(value).map(({ what, found, path }) => limitFinding('plan', what, whereOf(pointerOf(path)), found));

/** Findings of the first faults, and that there are more. */
function listed<F>(faults: readonly F[], findingsOf: (faults: readonly F[]) => readonly Finding[]): readonly Finding[] {
  const findings = findingsOf(faults.slice(0, LISTED));
  return faults.length > LISTED ? [...findings, moreProblems(LISTED, findings.at(-1)?.where ?? {})] : findings;
}

function readText(text: string, file: string): Result<PlanDocument> {
  const large = tooLarge(text, file);
  if (large.length > 0) return bad(large);
  const json = readJson(text);
  const placeAt = placer(text);
  if (!json.ok)
    return bad(
      listed(json.faults, (shown) => shown.map((fault) => jsonFinding(fault, { file, ...placeAt(fault.offset) }))),
    );
  const long = longListFindings(json.value.value, (pointer) => ({
    file,
    ...placeAt(nearestNode(json.value.root, pointer).offset),
    path: pointer,
  }));
  if (long.length > 0) return bad(long);
  const validated = validatePlan(withoutManyWrong(json.value.value));
  if (!validated.ok) return bad(listed(validated.faults, (shown) => faultFindings(shown, json.value, text, file)));
  return good(planDocument(validated.plan, json.value, text, file));
}

function readValue(plan: unknown, file: string | undefined): Result<PlanDocument> {
  const named = file === undefined ? {} : { file };
  let deep = false;
  const value = writtenOf(plan, () => {
    deep = true;
  });
  if (deep)
    return bad([planFinding('plan-not-json', { problem: 'deep', most: DEEPEST }, { severity: 'error', where: named })]);
  const long = longListFindings(value, (path) => ({ ...named, path }));
  if (long.length > 0) return bad(long);
  const validated = validatePlan(withoutManyWrong(value));
  if (validated.ok) {
    const text = JSON.stringify(value, null, 2);
    const json = readJson(text);
    if (!json.ok) return bad(json.faults.map((fault) => jsonFinding(fault, named)));
    return good(planDocument(validated.plan, json.value, text, file ?? 'plan.json'));
  }
  const units = unitsOf(value);
  return bad(
    listed(validated.faults, (shown) =>
      shown.map((fault) =>
        faultFinding(fault, { ...named, path: pointerOf(fault.path), ...subject(fault.path, value) }, units),
      ),
    ),
  );
}
