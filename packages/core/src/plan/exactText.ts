/** Lengths as a plan or a list writes them. */
import { type LengthUnit, type UnitSystem, lengthIn, parseLength } from '../units.ts';

/** A measure as a text that reads back as the very same number, in the wanted unit or the other; nothing where neither is short. */
export function exactText(measure: number, units: UnitSystem = 'metric'): string | undefined {
  const preferred: readonly LengthUnit[] = units === 'metric' ? ['km', 'mi'] : ['mi', 'km'];
  for (const unit of preferred) {
    const text = `${Number(lengthIn(measure, unit).toFixed(3))} ${unit}`;
    const back = parseLength(text);
    if (back.ok && Math.abs(back.value - measure) < 1e-9) return text;
  }
  return undefined;
}
