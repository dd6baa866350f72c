/** JSON Schema of a pass, in a snap and in a layout. */
import { type JsonSchema, azimuth, count, length, number, position, record, side, text } from './shared.ts';

const geometry: Readonly<Record<string, JsonSchema>> = {
  measure: number,
  distance: length,
  offset: { ...number, description: 'Metres, left of the running direction positive.' },
  side,
  confidence: { type: 'number', minimum: 0.5, maximum: 1 },
  azimuthDeg: azimuth,
  foot: position,
};

const end: JsonSchema = { enum: ['start', 'finish'] };
const why: JsonSchema = { enum: ['position', 'turn', 'onLine'], description: 'Why the side is unclear.' };

/** A pass of a bare point. */
export const passSchema: JsonSchema = record(geometry, { why, end });

/** A pass of a station by one race. */
export const stationPassSchema: JsonSchema = record(
  { race: text, course: text, pass: count, ...geometry, served: { type: 'boolean' } },
  { why, end },
);
