/** What zod finds wrong, in our words: one fault for each thing, with what was found and what is accepted. */
import { z } from 'zod';
import { pathText, type Fault } from './fault.ts';
import { nearest, suggestion } from './nearest.ts';
import { told } from './told.ts';

type Issue = z.core.$ZodIssue;
type Path = Fault['path'];

const KINDS: Readonly<Record<string, string>> = {
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  tuple: 'a list',
  object: 'an object',
  record: 'an object',
};

function valueMessage(input: unknown, values: readonly unknown[]): string {
  const accepted = values.map((value) => JSON.stringify(value)).join(', ');
  const texts = values.filter((value) => typeof value === 'string');
  const near = typeof input === 'string' ? nearest(input, texts) : undefined;
  return near === undefined ? told(input, accepted) : `${told(input, accepted)}; did you mean ${JSON.stringify(near)}?`;
}

const ENTRIES = ['entry', 'entries'] as const;
const PIECES: Readonly<Record<string, readonly [one: string, more: string]>> = {
  array: ENTRIES,
  tuple: ENTRIES,
  string: ['character', 'characters'],
};

/** The bound that a value breaks: "more than 0", "at least 2 entries". */
function boundMessage(issue: z.core.$ZodRawIssue<z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig>): string {
  const small = issue.code === 'too_small';
  const bound = small ? issue.minimum : issue.maximum;
  const pieces = PIECES[issue.origin];
  if (pieces !== undefined)
    return told(issue.input, `${small ? 'at least' : 'at most'} ${bound} ${pieces[Number(bound) === 1 ? 0 : 1]}`);
  const strict = issue.inclusive === false;
  if (small) return told(issue.input, strict ? `more than ${bound}` : `${bound} or more`);
  return told(issue.input, strict ? `less than ${bound}` : `${bound} or less`);
}

/** Known keys of the object schema that raised an issue. */
function knownKeys(issue: { readonly inst?: unknown }): readonly string[] {
  const { inst } = issue;
  return inst instanceof z.ZodObject ? Object.keys(inst.shape) : [];
}

/** The message of an issue as zod raises it; of unknown keys one line for each. */
function rawMessage(issue: z.core.$ZodRawIssue): string | undefined {
  switch (issue.code) {
    case 'invalid_type':
      return told(issue.input, KINDS[issue.expected] ?? 'another kind of value');
    case 'invalid_value':
      return valueMessage(issue.input, issue.values);
    case 'too_small':
    case 'too_big':
      return boundMessage(issue);
    case 'unrecognized_keys':
      return issue.keys
        .map(
          (key) =>
            `found the key ${JSON.stringify(key.slice(0, 60))}, which is not known here; ${suggestion(key, knownKeys(issue), 'accepted')}`,
        )
        .join('\n');
    default:
      return undefined;
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
  if (best === undefined || best.far === second?.far) return [{ code: 'plan-value', path, message: issue.message }];
  return best.issues.flatMap((inner) => faultsOf(inner, path));
}

function faultsOf(issue: Issue, prefix: Path = []): readonly Fault[] {
  const path = [...prefix, ...issue.path.filter(isText)];
  if (issue.code === 'invalid_union') return unionFaults(issue, path);
  if (issue.code === 'unrecognized_keys') {
    const lines = issue.message.split('\n');
    return issue.keys.map((key, index) => ({
      code: 'plan-key',
      path: [...path, key],
      message: lines[index] ?? issue.message,
    }));
  }
  const code = issue.code === 'custom' && issue.params?.['code'] === 'plan-reference' ? 'plan-reference' : 'plan-value';
  return [{ code, path, message: issue.message }];
}

/** Reads a value with a schema: the value, or every fault in it. */
export function parseWith<T>(
  schema: z.ZodType<T>,
  value: unknown,
): { readonly ok: true; readonly value: T } | { readonly ok: false; readonly faults: readonly Fault[] } {
  const parsed = schema.safeParse(value, { error: rawMessage });
  return parsed.success
    ? { ok: true, value: parsed.data }
    : { ok: false, faults: parsed.error.issues.flatMap((issue) => faultsOf(issue)) };
}

/** The message of a fault with the place it is about in front. */
export const faultMessage = (fault: Fault): string =>
  fault.path.length === 0
    ? fault.message
    : `${pathText(fault.code === 'plan-key' ? fault.path.slice(0, -1) : fault.path) || 'plan'}: ${fault.message}`;
