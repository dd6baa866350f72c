/**
 * The face `@halfcup/core/units`: quantities read from text ("1.5 mi", "4:20:00"), printed for people, and told apart by type.
 * Inside, lengths are metres, durations seconds, volumes litres, masses kilograms.
 * @module @halfcup/core/units
 */

// Types of quantities
export type { Degrees, In, Kilograms, Latitude, Litres, Longitude, Metres, Seconds } from './units.ts';

// Read
export {
  type LengthUnit,
  type Parsed,
  type UnitSystem,
  lengthIn,
  metres,
  parseClock,
  parseDuration,
  parseLength,
  parseMass,
  parseVolume,
} from './units.ts';

// Print
export {
  type LengthStyle,
  formatClock,
  formatDuration,
  formatLength,
  formatMass,
  formatMeasure,
  formatMinute,
  formatVolume,
} from './format.ts';

// Positions as grid references
export { type GridDigits, type GridReference, gridReference } from './export/gridReference.ts';
