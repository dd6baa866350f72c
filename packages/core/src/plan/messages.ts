/** What zod finds wrong, as our own data: one fault for each thing, with what was found and what is accepted. */
import * as z from 'zod';
import type { Accepted, PlainKind } from '../text/params/plan.ts';
import { foundOf } from '../text/found.ts';
import { carried, carriedValue, wrongIn } from './carried.ts';
import type { Fault, Path } from './fault.ts';
import { nearest, unknownWords } from './nearest.ts';

type Issue = z.core.$ZodIssue;

const KINDS: Readonly<Record<string, PlainKind>> = {
  string: 'text',
  number: 'number',
  int: 'whole',
  boolean: 'boolean',
  array: 'list',
  tuple: 'list',
  object: 'object',
  record: 'object',
};

function oneOf(input: unknown, values: readonly unknown[]): Accepted {
  const texts = values.filter((value) => typeof value === 'string');
  const near = typeof input === 'string' ? nearest(input, texts) : undefined;
  return { kind: 'oneOf', values: values.map(foundOf), ...(near === undefined ? {} : { near }) };
}

const PIECES: Readonly<Record<string, 'entries' | 'characters'>> = {
  array: 'entries',
  tuple: 'entries',
  string: 'characters',
};

/** The bound that a value breaks: more than 0, at least 2 entries. */
function boundOf(issue: z.core.$ZodRawIssue<z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig>): Accepted {
  const small = issue.code === 'too_small';
  const bound = Number(small ? issue.minimum : issue.maximum);
  const of = PIECES[issue.origin];
  if (of !== undefined) return { kind: small ? 'fewest' : 'most', count: bound, of };
  const strict = issue.inclusive === false;
  if (small) return { kind: strict ? 'over' : 'atLeast', bound };
  return { kind: strict ? 'under' : 'atMost', bound };
}

/** Known keys of the object schema that raised an issue. */
function knownKeys(issue: { readonly inst?: unknown }): readonly string[] {
  const { inst } = issue;
  return inst instanceof z.ZodObject ? Object.keys(inst.shape) : [];
}

/** What an issue carries as zod raises it; of unknown keys one problem for each. */
function rawMessage(issue: z.core.$ZodRawIssue, unknown: ReturnType<typeof unknownWords>): string {
  switch (issue.code) {
    case 'invalid_type':
      return carriedValue(issue.input, { kind: KINDS[issue.expected] ?? 'other' });
    case 'invalid_value':
      return carriedValue(issue.input, oneOf(issue.input, issue.values));
    case 'too_small':
    case 'too_big':
      return carriedValue(issue.input, boundOf(issue));
    case 'unrecognized_keys': {
      const known = knownKeys(issue);
      return carried(
        ...issue.keys.map((key) => ({
          code: 'plan-key' as const,
          problem: { problem: 'unknown' as const, key: unknown(key, known) },
        })),
      );
    }
    default:
      return carriedValue(issue.input, { kind: 'other' });
  }
}

/** How far an attempt at one form of a union went: fewer faults, and none of the whole value, are nearer. */
const remoteness = (issues: readonly Issue[]): number =>
  issues.reduce(
    (sum, issue) =>
      sum +
      (issue.path.length === 0 && issue.code !== 'unrecognized_keys' ? 100 : 1) +
      (issue.code === 'unrecognized_keys' ? issue.keys.length : 0),
    0,
  );

const isText = (part: PropertyKey): part is string | number => typeof part !== 'symbol';

/** The faults of the form that was meant; where several may have been, what the union itself says of its forms. */
function unionFaults(issue: z.core.$ZodIssueInvalidUnion, path: Path): readonly Fault[] {
  const ranked = issue.errors.map((issues) => ({ issues, far: remoteness(issues) })).sort((a, b) => a.far - b.far);
  const [best, second] = ranked;
  if (best === undefined || best.far === second?.far) return [{ ...wrongIn(issue.message)[0], path }];
  return best.issues.flatMap((inner) => faultsOf(inner, path));
}

function faultsOf(issue: Issue, prefix: Path = []): readonly Fault[] {
  const path = [...prefix, ...issue.path.filter(isText)];
  if (issue.code === 'invalid_union') return unionFaults(issue, path);
  const wrong = wrongIn(issue.message);
  if (issue.code === 'unrecognized_keys')
    return wrong.map((one, index) => ({ ...one, path: [...path, issue.keys[index]!] }));
  return [{ ...wrong[0], path }];
}

/** Reads a value with a schema of the plan: the value, or every fault in it. */
export function parseWith<T>(
  schema: z.ZodType<T>,
  value: unknown,
): { readonly ok: true; readonly value: T } | { readonly ok: false; readonly faults: readonly Fault[] } {
  const unknown = unknownWords();
  const parsed = schema.safeParse(value, { error: (issue) => rawMessage(issue, unknown) });
  return parsed.success
    ? { ok: true, value: parsed.data }
    : { ok: false, faults: parsed.error.issues.flatMap((issue) => faultsOf(issue)) };
}
