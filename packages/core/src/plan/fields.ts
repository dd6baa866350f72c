/**
 * The single values of a plan, as zod schemas: quantities in SI units out, texts with their
 * rules, coordinate pairs. Each carries its JSON Schema as metadata where zod cannot derive it.
 */
import * as z from 'zod';
import type { LonLat } from '../finding.ts';
import { foundOf } from '../text/found.ts';
import type { Accepted, PlainKind, QuantityKind, ValueProblem } from '../text/params/plan.ts';
import {
  parseClock,
  parseDuration,
  parseLength,
  parseMass,
  parseVolume,
  QUANTITY_PATTERNS,
  QUANTITY_UNITS,
  type Parsed,
} from '../units.ts';
import { carried, carriedValue } from './carried.ts';
import { refused } from './fault.ts';

type Checked<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: ValueProblem };

/** A value read by a function that says itself what is wrong; `json` is its JSON Schema. */
function read<T>(parse: (value: unknown) => Checked<T>, json: object): z.ZodType<T> {
  // zod asks for every key, also for those that may be missing and are: what it then hears is always the same.
  let absent: string | undefined;
  const messageOf = (problem: ValueProblem): string => carried({ code: 'plan-value', problem });
  return z
    .unknown()
    .transform((value, context): T => {
      if (value === undefined && absent !== undefined) {
        context.issues.push({ code: 'custom', message: absent, input: value });
        return z.NEVER;
      }
      const parsed = parse(value);
      if (parsed.ok) return parsed.value;
      const message = messageOf(parsed.problem);
      if (value === undefined) absent = message;
      context.issues.push({ code: 'custom', message, input: value });
      return z.NEVER;
    })
    .meta({ ...json });
}

const quantityJson = (kind: keyof typeof QUANTITY_PATTERNS, minimum: object, description: string): object => ({
  description,
  anyOf: [
    { type: 'number', ...minimum },
    { type: 'string', pattern: QUANTITY_PATTERNS[kind] },
  ],
});

const PARSERS: Readonly<Record<QuantityKind, (value: unknown) => Parsed>> = {
  length: parseLength,
  duration: parseDuration,
  volume: parseVolume,
  mass: parseMass,
};

/** What would have been accepted of a quantity, and what helps: the units where it has another or none. */
function acceptedQuantity(kind: QuantityKind, value: unknown, positive: boolean): Accepted {
  const accepted: Accepted = { kind, ...(positive ? { positive } : {}) };
  if (typeof value !== 'string' || !/^\s*[.\d]/u.test(value) || PARSERS[kind](value).ok) return accepted;
  return value.includes(':') && kind === 'duration'
    ? { ...accepted, colons: true }
    : { ...accepted, units: QUANTITY_UNITS[kind] };
}

/** A quantity in SI units; `positive` ones refuse 0, which would be divided by. */
function quantity(kind: QuantityKind, positive: boolean, description: string): z.ZodType<number> {
  return read(
    (value): Checked<number> => {
      const parsed = PARSERS[kind](value);
      return parsed.ok && !(positive && parsed.value === 0)
        ? parsed
        : { ok: false, problem: refused(value, acceptedQuantity(kind, value, positive)) };
    },
    quantityJson(kind, positive ? { exclusiveMinimum: 0 } : { minimum: 0 }, description),
  );
}

export const length: z.ZodType<number> = quantity('length', false, 'A length: metres, or a text such as "100 yd".');
export const positiveLength: z.ZodType<number> = quantity(
  'length',
  true,
  'A length over 0: metres, or a text such as "100 yd".',
);
export const duration: z.ZodType<number> = quantity(
  'duration',
  false,
  'A duration: seconds, or a text such as "30 min" or "4:25:00".',
);
export const positiveDuration: z.ZodType<number> = quantity(
  'duration',
  true,
  'A duration over 0: seconds, or a text such as "4:25:00".',
);
export const positiveVolume: z.ZodType<number> = quantity(
  'volume',
  true,
  'A volume: litres, or a text such as "7 fl oz".',
);
export const mass: z.ZodType<number> = quantity('mass', false, 'A mass: kilograms, or a text such as "8.3 lb".');
export const positiveMass: z.ZodType<number> = quantity('mass', true, 'A mass: kilograms, or a text such as "8.3 lb".');
export const clock: z.ZodType<number> = read(
  (value): Checked<number> => {
    const parsed = parseClock(value);
    return parsed.ok ? parsed : { ok: false, problem: refused(value, { kind: 'clock' }) };
  },
  {
    type: 'string',
    pattern: QUANTITY_PATTERNS.clock,
    description: 'A clock time, HH:MM or HH:MM:SS; hours may pass 24.',
  },
);

/** Longitude and latitude of a list; says when the two look swapped. */
function parsePosition(value: unknown, most: 2 | 3): Checked<readonly number[]> {
  const numbers =
    Array.isArray(value) &&
    value.length >= 2 &&
    value.length <= most &&
    value.every((one) => typeof one === 'number' && Number.isFinite(one));
  if (!numbers)
    return { ok: false, problem: refused(value, { kind: most === 2 ? 'position' : 'positionWithElevation' }) };
  const position = value as readonly number[];
  const [lon = 0, lat = 0] = position;
  if (Math.abs(lat) > 90)
    return {
      ok: false,
      problem: { problem: 'latitude', found: lat, ...(Math.abs(lon) <= 90 ? { swapped: true } : {}) },
    };
  if (Math.abs(lon) > 180) return { ok: false, problem: { problem: 'longitude', found: lon } };
  return { ok: true, value: position };
}

const positionJson = (most: 2 | 3): object => ({
  type: 'array',
  description: 'Degrees, WGS 84: longitude first.',
  prefixItems: [
    { type: 'number', minimum: -180, maximum: 180 },
    { type: 'number', minimum: -90, maximum: 90 },
    ...(most === 3 ? [{ type: 'number' }] : []),
  ],
  items: false,
  minItems: 2,
});

export const pair: z.ZodType<LonLat> = read((value) => parsePosition(value, 2) as Checked<LonLat>, positionJson(2));
export const position: z.ZodType<readonly number[]> = read((value) => parsePosition(value, 3), positionJson(3));

/** A text that fits a pattern, `kind` saying which. */
const fitting = (pattern: RegExp, kind: PlainKind): z.ZodString =>
  z
    .string({ error: (issue) => carriedValue(issue.input, { kind }) })
    .regex(pattern, { abort: true, error: (issue) => carriedValue(issue.input, { kind }) });

export const text: z.ZodType<string> = z.string();
export const words: z.ZodType<string> = fitting(/\S/u, 'filledText');
/** An id of one's own: `start` and `finish` are taken. */
export const id: z.ZodType<string> = fitting(/^(?!(start|finish)$)(?=[\s\S]*\S)/u, 'id');

const NO_WAY_OUT = /^(?!\/)(?![A-Za-z][A-Za-z0-9+.-]*:)(?!(.*\/)?\.\.(\/|$))[^\\\p{Cc}]*[^\\/\p{Cc}]$/u;
/** A file in the plan's own folder or below. */
export const path: z.ZodType<string> = fitting(NO_WAY_OUT, 'file');

const isDate = (value: string): boolean => {
  const date = new Date(`${value}T00:00:00Z`);
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(value);
};
export const date: z.ZodType<string> = fitting(/^\d{4}-\d{2}-\d{2}$/u, 'date').refine(isDate, {
  error: ({ input }) => carried({ code: 'plan-value', problem: { problem: 'noSuchDay', found: foundOf(input) } }),
});

/** The zone that was asked for last, since plans are read again and again and asking takes long. */
let known = { zone: '', there: false };
const isTimeZone = (value: string): boolean => {
  if (value !== known.zone) known = { zone: value, there: hasTimeZone(value) };
  return known.there;
};

function hasTimeZone(value: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: value }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
}
export const timeZone: z.ZodType<string> = fitting(/^[A-Za-z]/u, 'timeZone').refine(isTimeZone, {
  error: (issue) => carriedValue(issue.input, { kind: 'timeZone' }),
});
export const language: z.ZodType<string> = fitting(/^[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*$/u, 'language');

/** A whole number of things, up to a million. */
export const count: z.ZodType<number> = z.int().min(0).max(1_000_000);
export const positiveCount: z.ZodType<number> = z.int().min(1).max(1_000_000);
export const amount: z.ZodType<number> = z.number().min(0);
export const positiveAmount: z.ZodType<number> = z.number().gt(0);
/** 0 to 1. */
export const share: z.ZodType<number> = z.number().min(0).max(1);
