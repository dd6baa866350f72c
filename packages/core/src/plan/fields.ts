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
import { type Range, ELEVATION, outside, quantityDescription, within } from './ranges.ts';

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

const PARSERS: Readonly<Record<QuantityKind, (value: unknown) => Parsed>> = {
  length: parseLength,
  duration: parseDuration,
  volume: parseVolume,
  mass: parseMass,
};

/** What would have been accepted of a quantity, and what helps: the units where it has another or none. */
function acceptedQuantity(kind: QuantityKind, value: unknown, range: Range): Accepted {
  const accepted: Accepted = { kind, ...(range[0] > 0 ? { positive: true } : {}) };
  if (typeof value === 'number' && Number.isFinite(value)) return { kind: 'within', quantity: kind, range };
  if (typeof value !== 'string' || !/^\s*[.\d]/u.test(value) || PARSERS[kind](value).ok) return accepted;
  return value.includes(':') && kind === 'duration'
    ? { ...accepted, colons: true }
    : { ...accepted, units: QUANTITY_UNITS[kind] };
}

/** A quantity in SI units within a range; its JSON Schema bounds numbers, and says the same of texts. */
function quantity(kind: QuantityKind, range: Range): z.ZodType<number> {
  return read(
    (value): Checked<number> => {
      const parsed = PARSERS[kind](value);
      if (!parsed.ok) return { ok: false, problem: refused(value, acceptedQuantity(kind, value, range)) };
      return within(parsed.value, range)
        ? parsed
        : { ok: false, problem: outside(value, kind, range, (text) => PARSERS[kind](text)) };
    },
    {
      description: quantityDescription(kind, range),
      anyOf: [
        { type: 'number', minimum: range[0], maximum: range[1] },
        { type: 'string', pattern: QUANTITY_PATTERNS[kind] },
      ],
    },
  );
}

/** Metres, from and to. */
export const length = (...range: Range): z.ZodType<number> => quantity('length', range);
/** Seconds, from and to. */
export const duration = (...range: Range): z.ZodType<number> => quantity('duration', range);
/** Litres, from and to. */
export const volume = (...range: Range): z.ZodType<number> => quantity('volume', range);
/** Kilograms, from and to. */
export const mass = (...range: Range): z.ZodType<number> => quantity('mass', range);
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
export function parsePosition(value: unknown, most: 2 | 3): Checked<readonly number[]> {
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
  const elevation = position[2];
  if (elevation !== undefined && !within(elevation, ELEVATION))
    return { ok: false, problem: { problem: 'elevation', found: elevation, range: ELEVATION } };
  return { ok: true, value: position };
}

const positionJson = (most: 2 | 3): object => ({
  type: 'array',
  description: 'Degrees, WGS 84: longitude first.',
  prefixItems: [
    { type: 'number', minimum: -180, maximum: 180 },
    { type: 'number', minimum: -90, maximum: 90 },
    ...(most === 3 ? [{ type: 'number', minimum: ELEVATION[0], maximum: ELEVATION[1] }] : []),
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
/** Years that every calendar and every time zone can hold with the days around them (RFC 5545, 3.3.4: four digits). */
const DATE = /^(?:19|2\d)\d{2}-\d{2}-\d{2}$/u;
export const date: z.ZodType<string> = fitting(DATE, 'date').refine(isDate, {
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

/** A number, from and to. */
export const amount = (...range: Range): z.ZodType<number> => {
  const error = (issue: { readonly input?: unknown }): string => carriedValue(issue.input, { kind: 'within', range });
  return z.number().min(range[0], { error }).max(range[1], { error });
};
/** A whole number, from and to. */
export const count = (...range: Range): z.ZodType<number> => {
  const error = (issue: { readonly input?: unknown }): string => carriedValue(issue.input, { kind: 'within', range });
  return z.int().min(range[0], { error }).max(range[1], { error });
};
/** 0 to 1. */
export const share: z.ZodType<number> = amount(0, 1);
