/**
 * The single values of a plan, as zod schemas: quantities in SI units out, texts with their
 * rules, coordinate pairs. Each carries its JSON Schema as metadata where zod cannot derive it.
 */
import { z } from 'zod';
import type { LonLat } from '../finding.ts';
import {
  describeValue,
  parseClock,
  parseDuration,
  parseLength,
  parseMass,
  parseVolume,
  QUANTITY_PATTERNS,
  type Parsed,
} from '../units.ts';
import { told } from './told.ts';

/** A value read by a function that says itself what is wrong; `json` is its JSON Schema. */
function read<T>(
  parse: (
    value: unknown,
  ) => { readonly ok: true; readonly value: T } | { readonly ok: false; readonly message: string },
  json: object,
): z.ZodType<T> {
  return z
    .unknown()
    .transform((value, context): T => {
      const parsed = parse(value);
      if (parsed.ok) return parsed.value;
      context.issues.push({
        code: 'custom',
        message: value === undefined ? parsed.message.replace('found nothing', 'missing') : parsed.message,
        input: value,
      });
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

/** Refuses nought, which would be divided by. */
const positively =
  (parse: (value: unknown) => Parsed) =>
  (value: unknown): Parsed => {
    const parsed = parse(value);
    return parsed.ok && parsed.value === 0
      ? { ok: false, message: `found ${describeValue(value)}; accepted: more than 0` }
      : parsed;
  };

export const length: z.ZodType<number> = read(
  parseLength,
  quantityJson('length', { minimum: 0 }, 'A length: metres, or a text such as "100 yd".'),
);
export const positiveLength: z.ZodType<number> = read(
  positively(parseLength),
  quantityJson('length', { exclusiveMinimum: 0 }, 'A length over 0: metres, or a text such as "100 yd".'),
);
export const duration: z.ZodType<number> = read(
  parseDuration,
  quantityJson('duration', { minimum: 0 }, 'A duration: seconds, or a text such as "30 min" or "4:25:00".'),
);
export const positiveDuration: z.ZodType<number> = read(
  positively(parseDuration),
  quantityJson('duration', { exclusiveMinimum: 0 }, 'A duration over 0: seconds, or a text such as "4:25:00".'),
);
export const positiveVolume: z.ZodType<number> = read(
  positively(parseVolume),
  quantityJson('volume', { exclusiveMinimum: 0 }, 'A volume: litres, or a text such as "7 fl oz".'),
);
export const mass: z.ZodType<number> = read(
  parseMass,
  quantityJson('mass', { minimum: 0 }, 'A mass: kilograms, or a text such as "8.3 lb".'),
);
export const positiveMass: z.ZodType<number> = read(
  positively(parseMass),
  quantityJson('mass', { exclusiveMinimum: 0 }, 'A mass: kilograms, or a text such as "8.3 lb".'),
);
export const clock: z.ZodType<number> = read(parseClock, {
  type: 'string',
  pattern: QUANTITY_PATTERNS.clock,
  description: 'A clock time, HH:MM or HH:MM:SS; hours may pass 24.',
});

type Checked<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly message: string };

/** Longitude and latitude of a list; says when the two look swapped. */
function parsePosition(value: unknown, most: 2 | 3): Checked<readonly number[]> {
  const accepted =
    most === 2 ? '[longitude, latitude] in degrees' : '[longitude, latitude] or [longitude, latitude, elevation]';
  const numbers =
    Array.isArray(value) &&
    value.length >= 2 &&
    value.length <= most &&
    value.every((one) => typeof one === 'number' && Number.isFinite(one));
  if (!numbers) return { ok: false, message: told(value, accepted) };
  const position = value as readonly number[];
  const [lon = 0, lat = 0] = position;
  if (Math.abs(lat) > 90) {
    const hint = Math.abs(lon) <= 90 ? '; longitude comes first: the two may be swapped' : '';
    return { ok: false, message: `found the latitude ${lat}; accepted: -90 to 90 in ${accepted}${hint}` };
  }
  if (Math.abs(lon) > 180)
    return { ok: false, message: `found the longitude ${lon}; accepted: -180 to 180 in ${accepted}` };
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

/** A text that fits a pattern, `accepted` saying which. */
const fitting = (pattern: RegExp, accepted: string): z.ZodString =>
  z
    .string({ error: (issue) => told(issue.input, accepted) })
    .regex(pattern, { abort: true, error: (issue) => told(issue.input, accepted) });

export const text: z.ZodType<string> = z.string();
export const words: z.ZodType<string> = fitting(/\S/u, 'a text that is not empty');
/** An id of one's own: `start` and `finish` are taken. */
export const id: z.ZodType<string> = fitting(
  /^(?!(start|finish)$)(?=[\s\S]*\S)/u,
  'an id that is not empty, nor "start" or "finish" (reserved)',
);

const NO_WAY_OUT = /^(?!\/)(?![A-Za-z][A-Za-z0-9+.-]*:)(?!(.*\/)?\.\.(\/|$))[^\\\p{Cc}]*[^\\/\p{Cc}]$/u;
/** A file in the plan's own folder or below. */
export const path: z.ZodType<string> = fitting(
  NO_WAY_OUT,
  'a file in the plan\'s own folder or below, such as "full.gpx" or "tracks/full.gpx" (no "..", no leading "/", no "\\", no address)',
);

const isDate = (value: string): boolean => {
  const date = new Date(`${value}T00:00:00Z`);
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(value);
};
export const date: z.ZodType<string> = fitting(/^\d{4}-\d{2}-\d{2}$/u, 'a date such as "2027-09-12"').refine(isDate, {
  error: (issue) =>
    `found ${describeValue(issue.input)}, a day that the calendar does not have; accepted: a date such as "2027-09-12"`,
});

const isTimeZone = (value: string): boolean => {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: value }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
};
const ZONE = 'an IANA time zone such as "Atlantic/Azores" or "UTC"';
export const timeZone: z.ZodType<string> = fitting(/^[A-Za-z]/u, ZONE).refine(isTimeZone, {
  error: (issue) => told(issue.input, ZONE),
});
export const language: z.ZodType<string> = fitting(
  /^[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*$/u,
  'a language tag such as "en"',
);

/** A whole number of things, up to a million. */
export const count: z.ZodType<number> = z.int().min(0).max(1_000_000);
export const positiveCount: z.ZodType<number> = z.int().min(1).max(1_000_000);
export const amount: z.ZodType<number> = z.number().min(0);
export const positiveAmount: z.ZodType<number> = z.number().gt(0);
/** 0 to 1. */
export const share: z.ZodType<number> = z.number().min(0).max(1);
