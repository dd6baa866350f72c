/**
 * Which defaults a plan's race day rests on, and which it has replaced: the table of defaults held against the
 * plan's values. A value that is given but equal to the usual one counts as the usual one: nothing differs.
 */
import type { Analysis } from '../analyse.ts';
import { findById } from '../plan/lookups.ts';
import type { Plan, Supplies, Units } from '../plan/plan.ts';
import { heatOf } from '../raceday/take.ts';
import { DEFAULTS_TABLE, type DefaultRow } from '../raceday/defaultsTable.ts';
import { formatClock, formatDuration, formatLength } from '../format.ts';
import { lengthIn, volumeIn } from '../units.ts';
import type { SheetText } from '../text/sheetText.ts';
import { type Html, NONE, html, said, table } from './html.ts';
import { numberOf } from '../layout/layout.ts';
import { massText, volumeText } from './sheet.ts';

/** A row of the table with what the plan has in its place. */
export interface DefaultInUse {
  readonly row: DefaultRow;
  /** The plan's own values, each once; empty where the default is in use. */
  readonly own: readonly unknown[];
}

/** The rows that have a say in this plan: of the take rates only those of the heat in force. */
export function defaultsInUse(plan: Plan): DefaultInUse[] {
  const { heat } = heatOf(plan.supplies);
  return DEFAULTS_TABLE.flatMap((row, k): DefaultInUse[] => {
    if (row.value === null && valuesAt(plan, row.key).length === 0) return [];
    if (row.key === 'supplies.drinkRate' && !row.what.endsWith(heat)) return [];
    if (row.key.startsWith('vehicles.') && plan.vehicles.length === 0) return [];
    const floor =
      row.key === 'supplies.prePourFloor'
        ? DEFAULTS_TABLE.slice(0, k).filter(({ key }) => key === row.key).length
        : null;
    const values = floor === null ? valuesAt(plan, row.key) : [plan.supplies.prePourFloor[floor === 0 ? 0 : 1]];
    return [{ row, own: [...new Set(values.filter((value) => value !== row.value))] }];
  });
}

/** Every value at a key of the plan; of a list's members each. None where the plan says nothing there, or the row stands for what is no single value. */
function valuesAt(plan: Plan, key: string): unknown[] {
  if (key === '–' || key === 'supplies.weights') return [];
  const step = (values: readonly unknown[], part: string): unknown[] =>
    values
      .flatMap((value) => (Array.isArray(value) ? (value as unknown[]) : [value]))
      .flatMap((value) =>
        typeof value === 'object' && value !== null && Object.hasOwn(value, part)
          ? [(value as Readonly<Record<string, unknown>>)[part]]
          : [],
      );
  return key
    .split('.')
    .reduce(step, [plan])
    .filter((value) => value !== undefined);
}

/** What the table's rows print as: the plan's units where they are lengths, volumes, masses, times. */
export function valueText({ unit, key }: DefaultRow, value: unknown, units: Units, text: SheetText): string {
  const { phrase } = text.lists.supplies;
  if (Array.isArray(value))
    return value.map((one) => valueText({ unit, key } as DefaultRow, one, units, text)).join(', ');
  if (value === null || value === undefined) return phrase('none') ?? '–';
  if (typeof value === 'string') return phrase(value) ?? value;
  if (typeof value !== 'number')
    return isResupply(value)
      ? `${Number((value.at * 100).toFixed(1))} %, ${formatDuration(value.takes)}`
      : text.lists.supplies.yes;
  if (key === 'vehicles.from') return formatClock(value).slice(0, -3);
  if (unit === 's') return formatDuration(value);
  if (unit === 'l') return key === 'supplies.cup' ? cupText(value, units) : volumeText(value, units, text);
  if (unit === 'kg') return massText(value, units, text);
  if (unit === 'm') return formatLength(value, units, 'table');
  if (unit === 'share') return `${Number((value * 100).toFixed(1))} %`;
  if (unit === 'km/h' && units === 'imperial') return `${Math.round(lengthIn(value * 1000, 'mi'))} mph`;
  const number = String(Number(value.toPrecision(4)));
  const noun = phrase(unit) ?? unit;
  return `${number} ${value === 1 ? noun.replace(/s$/u, '') : noun}`;
}

/** Keys that hold more than one value. */
const GROUPS: Readonly<Record<string, string>> = {
  'supplies.take': 'What a runner takes',
  'supplies.packs': 'Pack sizes',
  'supplies.flavours': 'Flavours',
  'supplies.weights': 'Weights',
  'supplies.prePourFloor': 'Share poured before the first runner',
};

/** What a key of the plan sets, in words. */
const keyName = (key: string): string => GROUPS[key] ?? DEFAULTS_TABLE.find((row) => row.key === key)?.what ?? key;

/** Within a sentence: a capital that begins a word of small letters goes. */
const lowered = (phrase: string): string => phrase.replace(/^\p{Lu}(?=\p{Ll})/u, (letter) => letter.toLowerCase());

const isResupply = (value: unknown): value is NonNullable<Supplies['resupply']> =>
  typeof value === 'object' && value !== null && 'takes' in value;

/** A cup in millilitres or fluid ounces: tenths of a litre say too little. */
const cupText = (litres: number, units: Units): string =>
  units === 'metric' ? `${Math.round(litres * 1000)} ml` : `${Number(volumeIn(litres, 'fl oz').toFixed(1))} fl oz`;

/** Defaults in use, those that the plan has replaced, and the stations with rules of their own. */
export function defaultsSection({ plan, stations, day }: Analysis, text: SheetText): Html {
  const words = text.lists.supplies;
  const say = (english: string): string => words.phrase(english) ?? english;
  // A key of the plan is no word for people; it stands in the page for tools.
  const named = ({ key, what }: DefaultRow): Html => html`<span data-key="${key}">${say(what)}</span>`;
  const all = defaultsInUse(plan);
  const fitted = day?.fitted ?? [];
  const paced = plan.races.some(
    ({ id, waves, slow }) => waves.length > 0 && slow === undefined && !fitted.some(({ race }) => race === id),
  );
  const usual = all
    .filter(({ row, own }) => own.length === 0 && (row.key !== 'races.slow' || paced))
    .map(({ row }) => [named(row), valueText(row, row.value, plan.units, text), say(row.source)]);
  const changed = all
    .filter(({ own }) => own.length > 0)
    .map(({ row, own }) => [
      named(row),
      own.map((value) => valueText(row, value, plan.units, text)).join(' / '),
      valueText(row, row.value, plan.units, text),
    ]);
  const slowing = DEFAULTS_TABLE.find(({ key }) => key === 'races.slow')!;
  const bySplits = fitted.map(({ race, splits, runners }) => [
    named(slowing),
    said(words.bySplits(findById(plan.races, race)?.name ?? race, splits, text.frame.count(runners))),
    valueText(slowing, slowing.value, plan.units, text),
  ]);
  const single = stations.flatMap((station) => {
    const keys = [
      ...Object.keys(station.station.supplies).map((key) => `supplies.${key}`),
      ...Object.keys(station.station.crew).map((key) => `crew.${key}`),
    ];
    return keys.length === 0
      ? []
      : [
          html`<li>${text.frame.station} ${numberOf(station)} · ${said(station.name)}: ${keys.map((key, k) => html`${k === 0 ? '' : ', '}<span data-key="${key}">${lowered(say(keyName(key)))}</span>`)}</li>\n`,
        ];
  });
  return html`<h2>${words.defaultsTitle}</h2>
<p>${words.defaultsAbout}</p>
${table([words.what, ` ${words.value}`, words.source], usual, 'defaults')}
${
  changed.length + bySplits.length === 0
    ? NONE
    : html`<h2>${words.changedTitle}</h2>
<p>${words.changedAbout}</p>
${table([words.what, ` ${words.value}`, ` ${words.usual}`], [...changed, ...bySplits], 'defaults')}`
}
${
  single.length === 0
    ? NONE
    : html`<section class="block"><h2>${words.stationsTitle}</h2>
<p>${words.stationsAbout}</p>
<ul>${single}</ul></section>`
}`;
}
