/** The ends of a range in round figures that are inside it, in the units that the reader uses. */
import { formatDuration } from '../format.ts';
import type { UnitSystem } from '../units.ts';
import type { QuantityKind } from './params/plan.ts';
import type { Words } from './words.ts';

type Unit = readonly [name: string, size: number];

/** From the largest; nought has the last but one, which is the unit that people think in. */
const UNITS: Readonly<Record<Exclude<QuantityKind, 'duration'>, Readonly<Record<UnitSystem, readonly Unit[]>>>> = {
  length: {
    metric: [
      ['km', 1000],
      ['m', 1],
      ['cm', 0.01],
    ],
    imperial: [
      ['mi', 1609.344],
      ['ft', 0.3048],
      ['in', 0.0254],
    ],
  },
  volume: {
    metric: [
      ['l', 1],
      ['ml', 0.001],
    ],
    imperial: [
      ['gal', 3.785411784],
      ['fl oz', 0.0295735295625],
    ],
  },
  mass: { metric: [['kg', 1]], imperial: [['lb', 0.45359237]] },
};

/** Three figures are enough of a limit that nobody comes near. */
const FIGURES = 3;

/** Rounded to three figures by `way`, so that what is printed is inside the range. */
function rounded(value: number, way: (value: number) => number): number {
  if (value === 0) return 0;
  const power = FIGURES - 1 - Math.floor(Math.log10(Math.abs(value)));
  // What a division has put beside a whole number is none of it.
  const scaled = power >= 0 ? value * 10 ** power : value / 10 ** -power;
  const near = Math.round(scaled);
  const figure = Math.abs(scaled - near) < 1e-6 ? near : way(scaled);
  return power >= 0 ? figure / 10 ** power : figure * 10 ** -power;
}

const numberText = (value: number, words: Words): string =>
  Number.isInteger(value) && value >= 0 ? words.count(value) : String(value);

/** One end with its unit; `way` rounds it inwards. */
function endText(
  quantity: Exclude<QuantityKind, 'duration'>,
  value: number,
  units: UnitSystem,
  way: (value: number) => number,
): readonly [value: number, unit: string] {
  const list = UNITS[quantity][units];
  const usual = list.at(list.length > 1 ? -2 : -1)!;
  const [name, size] = value === 0 ? usual : (list.find((unit) => Math.abs(value) >= unit[1]) ?? list.at(-1)!);
  return [rounded(value / size, way), name];
}

/** "1 m to 10,000 km", "0 to 100". */
export function boundsText(
  quantity: QuantityKind | undefined,
  [from, to]: readonly [from: number, to: number],
  units: UnitSystem,
  words: Words,
): string {
  if (quantity === undefined) return `${numberText(from, words)} ${words.to} ${numberText(to, words)}`;
  if (quantity === 'duration') return `${formatDuration(from)} ${words.to} ${formatDuration(to)}`;
  const [low, high] = [endText(quantity, from, units, Math.ceil), endText(quantity, to, units, Math.floor)];
  return `${numberText(low[0], words)} ${low[1]} ${words.to} ${numberText(high[0], words)} ${high[1]}`;
}
