/** What is wrong at one place of a plan, before line and column are known, as data; and the finding that reports it. */
import type { Finding, Where } from '../finding.ts';
import { plan as planTexts } from '../text/en/findings/plan.ts';
import { foundOf } from '../text/found.ts';
import type {
  Accepted,
  KeyProblem,
  PlanParams,
  ReferenceProblem,
  Thing,
  ValueProblem,
  VersionProblem,
} from '../text/params/plan.ts';
import { words } from '../text/en/words.ts';
import { findingMaker, joined, type Maker } from '../text/sentence.ts';
import { type AnyTexts, sentenceWith } from '../text/spoken.ts';
import { NO_NAMES } from '../text/voice.ts';
import type { UnitSystem } from '../units.ts';

export type Path = readonly (string | number)[];

/** What is wrong: what was found and what is accepted, as data. */
export type Wrong =
  | { readonly code: 'plan-value'; readonly problem: ValueProblem }
  | { readonly code: 'plan-key'; readonly problem: KeyProblem }
  | { readonly code: 'plan-reference'; readonly problem: ReferenceProblem }
  | { readonly code: 'plan-version'; readonly problem: VersionProblem };

export type Fault = Wrong & { readonly path: Path };

/** Makes the findings on plans. */
export const planFinding: Maker<PlanParams> = findingMaker(planTexts);

/** A value that is not what is accepted. */
export const refused = (found: unknown, accepted: Accepted): ValueProblem => ({
  problem: 'value',
  found: foundOf(found),
  accepted,
});

/** The rules that a station may have of its own: they are called as those of the plan. */
const RULES: ReadonlySet<unknown> = new Set(['practice', 'supplies', 'crew']);

/** Keys that a variant, a station or a wave lays over others are called as the ones that they stand for. */
function ownPath(path: Path): Path {
  if (path[0] === 'variants' && path[2] === 'stations' && path.length > 4)
    return ownPath(['stations', 0, ...path.slice(4)]);
  if (path[0] === 'variants' && path[2] === 'stations' && path.length === 4) return [...path.slice(0, 3), '*'];
  // Whatever a finding names: any key.
  if (path[0] === 'waivers' && path[2] === 'seen' && path.length === 4) return [...path.slice(0, 3), '*'];
  if (path[0] === 'numbers' && path.length === 2) return [path[0], '*'];
  if (path[0] === 'stations' && RULES.has(path[2])) return path.slice(2);
  if (path[0] === 'races' && path[2] === 'waves' && path[4] === 'finish')
    return [...path.slice(0, 2), ...path.slice(4)];
  return path;
}

/** Which value a path leads to, so that a language can name it. */
export function thingOf(path: Path): Thing {
  const own = ownPath(path);
  return {
    keys: own.map((part, k) => (typeof part === 'number' ? '[]' : `${k === 0 ? '' : '.'}${part}`)).join(''),
    numbers: own.flatMap((part) => (typeof part === 'number' ? [part + 1] : [])),
  };
}

function metric(fault: Fault, where: Where): Finding {
  const facts = { severity: 'error', where } as const;
  if (fault.code === 'plan-key') return planFinding(fault.code, fault.problem, facts);
  if (fault.code === 'plan-version') return planFinding(fault.code, fault.problem, facts);
  const thing = thingOf(fault.path);
  return fault.code === 'plan-value'
    ? planFinding(fault.code, { ...fault.problem, ...thing }, facts)
    : planFinding(fault.code, { ...fault.problem, ...thing }, facts);
}

/** A fault as a finding with its place, in the units that the plan asks for. */
export function faultFinding(fault: Fault, where: Where, units: UnitSystem): Finding {
  const finding = metric(fault, where);
  const spoken = { texts: planTexts as unknown as AnyTexts, words };
  return { ...finding, message: joined(sentenceWith(finding, { units, names: NO_NAMES }, spoken)) };
}

/** A path as a JSON pointer (RFC 6901). */
export const pointerOf = (path: Path): string =>
  path.map((part) => `/${String(part).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');

/** The parts of a JSON pointer (RFC 6901), all as texts. */
export const pointerParts = (pointer: string): readonly string[] =>
  pointer === ''
    ? []
    : pointer
        .slice(1)
        .split('/')
        .map((part) => part.replaceAll('~1', '/').replaceAll('~0', '~'));
