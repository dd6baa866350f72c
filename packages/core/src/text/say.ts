/**
 * The parts of a sentence: lengths, times, volumes, names and items as a crew can use them. Rounding: metres, yards and
 * feet are whole from 10 on and have one decimal below; under 30 yd imperial lengths are feet; km and miles have two decimals.
 */
import { formatDuration, formatMinute, plainFixed } from '../format.ts';
import type { ItemKind, PointKind, Served } from '../kinds.ts';
import {
  type Kilograms,
  type LengthUnit,
  type Litres,
  type Metres,
  type Seconds,
  lengthIn,
  massIn,
  volumeIn,
} from '../units.ts';
import { boundsText } from './bounds.ts';
import { type Found, foundText } from './found.ts';
import type { QuantityKind } from './params/plan.ts';
import type { Voice } from './voice.ts';
import type { Words } from './words.ts';

/** A measured value and its limit, rounded so that what is printed stands to one another as the values do. */
export interface Compared {
  readonly measured: string;
  /** One bound, or both: "82 to 101 m". */
  readonly limit: string;
}

/** What a sentence is made with. Numbers are SI; ids become names. */
export interface Say {
  readonly units: Voice['units'];
  /** "70 m", "5.5 m"; "230 ft", "100 yd". */
  readonly length: (metres: Metres) => string;
  /** "82 to 101 m". */
  readonly range: (from: Metres, to: Metres) => string;
  /** Both as lengths, with more decimals where rounding would hide that the limit is missed. */
  readonly compare: (measured: Metres, limit: Metres | readonly [Metres, Metres]) => Compared;
  /** Course distance, or any length of that order: "41.39 km". */
  readonly far: (metres: Metres) => string;
  /** Both as course distances, with more decimals where rounding would hide that the limit is missed. */
  readonly compareFar: (measured: Metres, limit: Metres | readonly [Metres, Metres]) => Compared;
  /** Both shares of 1 as percentages, with more decimals where rounding would hide that the limit is missed. */
  readonly comparePercent: (measured: number, limit: number) => Compared;
  /** A length to move or to add, rounded up: "13 m" for 12.3 m. */
  readonly enough: (metres: Metres) => string;
  /** "08:22", of seconds after midnight. */
  readonly clock: (seconds: Seconds) => string;
  /** "30 min". */
  readonly duration: (seconds: Seconds) => string;
  /** "12 kg", "26 lb"; one decimal under 10. */
  readonly mass: (kilograms: Kilograms) => string;
  /** Both masses, with more decimals where rounding would hide that the limit is missed. */
  readonly compareMass: (measured: Kilograms, limit: Kilograms) => Compared;
  /** "386 l", "102 gal"; one decimal under 10. */
  readonly volume: (litres: Litres) => string;
  /** A share of 1: "4.5 %". */
  readonly percent: (share: number) => string;
  /** A whole number with the language's marks: "2,250". */
  readonly count: (value: number) => string;
  /** Name of the station with that id. */
  readonly station: (id: string) => string;
  /** Name of the race with that id. */
  readonly race: (id: string) => string;
  /** Name of the course with that id. */
  readonly course: (id: string) => string;
  /** "Sign". */
  readonly item: (kind: ItemKind) => string;
  /** "sign". */
  readonly itemInside: (kind: ItemKind) => string;
  /** What is handed out, as it stands inside a sentence: "sports drink". */
  readonly served: (kind: Served) => string;
  /** A kind of point, as it stands at the head of a line: "Supplies drop". */
  readonly point: (kind: PointKind) => string;
  /** "left". */
  readonly side: (side: 'left' | 'right') => string;
  /** "a, b and c". */
  readonly all: (texts: readonly string[]) => string;
  /** "a, b or c". */
  readonly any: (texts: readonly string[]) => string;
  /** In quotation marks: for texts of the user's own. */
  readonly quote: (text: string) => string;
  /** The ends of a range, both included, in round figures that are inside it: "1 m to 10,000 km". */
  readonly bounds: (quantity: QuantityKind | undefined, range: readonly [from: number, to: number]) => string;
  /** A value of any kind: texts in quotation marks, numbers as they are, else what it is. */
  readonly found: (value: Found) => string;
}

/** Under this many metres imperial lengths are feet: 30 yd. */
const FEET_BELOW = 27.432;
const MOST_DECIMALS = 3;

/** So many decimals, never "-0" and none of them a zero at the end where there is no need. */
function fixed(value: number, decimals: number): string {
  const text = plainFixed(value, decimals);
  const short = text.includes('.') ? text.replace(/\.?0+$/u, '') : text;
  return Number(short) === 0 ? '0' : short;
}

const decimalsOf = (value: number): number => (Math.abs(value) < 9.95 ? 1 : 0);

/** The unit in which people give lengths up to this one. */
function unitFor(largest: Metres, units: Voice['units']): LengthUnit {
  if (units === 'metric') return 'm';
  return Math.abs(largest) < FEET_BELOW ? 'ft' : 'yd';
}

function lengthText(metres: Metres, units: Voice['units']): string {
  if (!Number.isFinite(metres)) return '–';
  const unit = unitFor(metres, units);
  const value = lengthIn(metres, unit);
  return `${fixed(value, decimalsOf(value))} ${unit}`;
}

/** Two numbers with a unit between them, the unit once: "82 to 101 m". */
const rangeText = (low: string, high: string, unit: string, to: string): string =>
  low === high ? `${low} ${unit}` : `${low} ${to} ${high} ${unit}`;

type Limit = number | readonly [number, number];
const boundsOf = (limit: Limit): readonly number[] => (typeof limit === 'number' ? [limit] : limit);

/** How values of a kind are printed beside each other; `more`: decimals that are not usual. */
interface Scale {
  readonly unit: string;
  readonly of: (value: number) => number;
  readonly digits: (value: number, more: number) => string;
}

const lengthScale = (unit: LengthUnit): Scale => ({
  unit,
  of: (metres) => lengthIn(metres, unit),
  digits: (value, more) => fixed(value, decimalsOf(value) + more),
});

const KILOGRAMS: Scale = {
  unit: 'kg',
  of: (kilograms) => kilograms,
  digits: (value, more) => fixed(value, decimalsOf(value) + more),
};
const POUNDS: Scale = { ...KILOGRAMS, unit: 'lb', of: (kilograms) => massIn(kilograms, 'lb') };
const PERCENT: Scale = {
  unit: '%',
  of: (share) => share * 100,
  digits: (value, more) => fixed(value, decimalsOf(value) + more),
};

function comparedIn({ unit, of, digits }: Scale, measured: number, limit: Limit, to: string): Compared {
  const bounds = boundsOf(limit);
  const values = [measured, ...bounds].map(of);
  const printed = Array.from({ length: MOST_DECIMALS + 1 }, (_, more) => values.map((value) => digits(value, more)));
  const kept = printed.find(([own, ...ends]) =>
    ends.every((end, k) => Math.sign(Number(own) - Number(end)) === Math.sign(measured - bounds[k]!)),
  );
  // What no decimals tell apart is the same for everybody.
  const [own, ...ends] = kept ?? printed[0]!;
  return { measured: `${own} ${unit}`, limit: rangeText(ends[0]!, ends.at(-1)!, unit, to) };
}

function compared(measured: Metres, limit: Limit, units: Voice['units'], to: string): Compared {
  const unit = unitFor(Math.max(Math.abs(measured), ...boundsOf(limit).map(Math.abs)), units);
  return comparedIn(lengthScale(unit), measured, limit, to);
}

/** Rounding that is no length, metres. */
const NOTHING = 1e-6;

/** Rounded up, so that whoever does it does enough. */
function enoughText(metres: Metres, units: Voice['units']): string {
  const unit = unitFor(metres, units);
  const value = lengthIn(metres - NOTHING, unit);
  const tenth = 10 ** decimalsOf(value);
  return `${fixed(Math.ceil(value * tenth) / tenth, decimalsOf(value))} ${unit}`;
}

const farUnit = (units: Voice['units']): LengthUnit => (units === 'metric' ? 'km' : 'mi');
/** Two decimals and so many more, never "-0.00". */
const farDigits = (value: number, more: number): string => plainFixed(value, 2 + more).replace(/^-(?=0\.0+$)/u, '');

const farScale = (units: Voice['units']): Scale => ({ ...lengthScale(farUnit(units)), digits: farDigits });

function farText(metres: Metres, units: Voice['units']): string {
  const value = lengthIn(metres, farUnit(units));
  return Number.isFinite(value) ? `${farDigits(value, 0)} ${farUnit(units)}` : '–';
}

const listed = (texts: readonly string[], last: string): string =>
  texts.length < 2 ? (texts[0] ?? '') : `${texts.slice(0, -1).join(', ')} ${last} ${texts.at(-1)!}`;

/** How sentences are made in a voice, with the words of its language. */
export function sayIn({ units, names }: Omit<Voice, 'language'>, words: Words): Say {
  const metric = units === 'metric';
  const whole = (value: number, unit: string): string => `${fixed(value, decimalsOf(value))} ${unit}`;
  return {
    units,
    length: (metres) => lengthText(metres, units),
    range: (from, to) => {
      const unit = unitFor(Math.max(Math.abs(from), Math.abs(to)), units);
      const [low, high] = [from, to].map((one) => lengthIn(one, unit)).map((one) => fixed(one, decimalsOf(one)));
      return rangeText(low!, high!, unit, words.to);
    },
    compare: (measured, limit) => compared(measured, limit, units, words.to),
    far: (metres) => farText(metres, units),
    compareFar: (measured, limit) => comparedIn(farScale(units), measured, limit, words.to),
    comparePercent: (measured, limit) => comparedIn(PERCENT, measured, limit, words.to),
    enough: (metres) => enoughText(metres, units),
    clock: formatMinute,
    duration: formatDuration,
    compareMass: (measured, limit) => comparedIn(metric ? KILOGRAMS : POUNDS, measured, limit, words.to),
    mass: (kilograms) => {
      const value = metric ? kilograms : massIn(kilograms, 'lb');
      const unit = metric ? 'kg' : 'lb';
      return value < 1000 ? whole(value, unit) : `${words.count(Math.round(value))} ${unit}`;
    },
    volume: (litres) => (metric ? whole(litres, 'l') : whole(volumeIn(litres, 'gal'), 'gal')),
    percent: (share) => `${fixed(share * 100, 1)} %`,
    count: (value) => words.count(Math.round(value)),
    ...names,
    item: (kind) => words.items[kind],
    itemInside: (kind) => words.items[kind].toLowerCase(),
    served: (kind) => words.served[kind],
    point: (kind) => words.points[kind],
    side: (side) => words[side],
    all: (texts) => listed(texts, words.and),
    any: (texts) => listed(texts, words.or),
    quote: (text) => `${words.quotes[0]}${text}${words.quotes[1]}`,
    bounds: (quantity, range) => boundsText(quantity, range, units, words),
    found: (value) => foundText(value, words),
  };
}
