/** Pieces that the JSON Schemas of the documents share (draft 2020-12). Objects may gain keys; none of these is ever missing. */

/** A JSON Schema, as a plain object. */
export type JsonSchema = { readonly [key: string]: unknown };

export const DRAFT = 'https://json-schema.org/draft/2020-12/schema';

export const text: JsonSchema = { type: 'string' };
export const number: JsonSchema = { type: 'number' };
export const count: JsonSchema = { type: 'integer', minimum: 0 };
export const length: JsonSchema = { type: 'number', minimum: 0, description: 'Metres.' };
export const azimuth: JsonSchema = {
  type: 'number',
  minimum: 0,
  maximum: 360,
  description: 'Degrees clockwise from north.',
};
export const side: JsonSchema = { enum: ['left', 'right', 'unclear'], description: 'As the runners see it.' };

const longitude: JsonSchema = { type: 'number', minimum: -180, maximum: 180 };
const latitude: JsonSchema = { type: 'number', minimum: -90, maximum: 90 };

export const tuple = (...items: readonly JsonSchema[]): JsonSchema => ({
  type: 'array',
  prefixItems: items,
  minItems: items.length,
  maxItems: items.length,
});

export const position: JsonSchema = {
  ...tuple(longitude, latitude),
  description: 'Longitude and latitude, degrees, WGS 84.',
};
export const bounds: JsonSchema = {
  ...tuple(longitude, latitude, longitude, latitude),
  description: 'West, south, east, north (RFC 7946).',
};
export const twoNumbers: JsonSchema = tuple(number, number);
export const twoPlaces: JsonSchema = tuple(
  { anyOf: [position, { type: 'null' }] },
  { anyOf: [position, { type: 'null' }] },
);

export const listOf = (items: JsonSchema): JsonSchema => ({ type: 'array', items });
export const orNull = (schema: JsonSchema): JsonSchema => ({ anyOf: [schema, { type: 'null' }] });

/** An object whose keys are all required, save those in `optional`. */
export const record = (
  required: Readonly<Record<string, JsonSchema>>,
  optional: Readonly<Record<string, JsonSchema>> = {},
): JsonSchema => ({
  type: 'object',
  required: Object.keys(required),
  properties: { ...required, ...optional },
});
