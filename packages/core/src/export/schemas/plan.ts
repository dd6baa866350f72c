/**
 * The JSON Schema (draft 2020-12) of a plan's file, made from the one schema in code. It knows every
 * key, form and bound; references between parts, dates and time zones are for `readPlan` alone.
 */
import * as z from 'zod';
import { planSchema } from '../../plan/schema.ts';

type Json = { [key: string]: unknown };

const at = (json: Json, ...path: readonly string[]): Json => path.reduce((node, key) => node[key] as Json, json);

/** A variant's entry: the keys of a station, each optional, without its id. */
function patchOf(station: Json): Json {
  const { id: _, ...properties } = at(station, 'properties');
  return { type: 'object', properties, additionalProperties: false, not: { required: ['at', 'on'] } };
}

/**
 * The JSON Schema (draft 2020-12) of a plan's file, version 1, for editors and other tools; a new object each time. It knows
 * every key, form and bound; references, dates and time zones are for `readPlan` alone.
 * @example
 * ```ts
 * import { planJsonSchema } from '@halfcup/core/schemas';
 * const schema = planJsonSchema();
 * 'required' in schema && schema.required; // → ['format', 'version', 'courses', 'races', 'stations']
 * ```
 */
export function planJsonSchema(): object {
  const json = z.toJSONSchema(planSchema, { io: 'input', target: 'draft-2020-12', reused: 'inline' }) as Json;
  const stations = at(json, 'properties', 'variants', 'items', 'properties', 'stations');
  stations['additionalProperties'] = patchOf(at(json, 'properties', 'stations', 'items'));
  return { title: 'Halfcup plan, version 1', ...json };
}
