/** The words of race day: clock times, whole counts, packs, and the text that stands for the chart. */
import { formatClock, formatMinute, formatVolume, type RaceDay, type StationDay, type Units } from '@halfcup/core';
import { DASH } from '../../words.ts';

type Pack = StationDay['packs'][number];

export const RUN_WORD = { drop: 'Drop', collect: 'Collection' } as const;

/** What a vehicle drops or takes at a stop, kilograms. */
export const kgOf = ({ load }: RaceDay['runs'][number]['stops'][number]): number =>
  load.reduce((sum, { kg }) => sum + kg, 0);

/** "1,968"; up to one decimal. */
export const grouped = (count: number): string =>
  new Intl.NumberFormat('en-GB', { maximumFractionDigits: 1 }).format(count);

export const minuteOrDash = (seconds: number | null): string => (seconds === null ? DASH : formatMinute(seconds));

export const wholePercent = (share: number): string => `${Math.round(share * 100)} %`;

/** Tasks in the order in which a captain gives them out. */
export const TASK_WORD: Readonly<Record<'captain' | 'pour' | 'handOut' | 'gel' | 'clean', string>> = {
  captain: 'Captain',
  pour: 'Pour',
  handOut: 'Hand out cups',
  gel: 'Hand out gels',
  clean: 'Clean up',
};

const PACK_WORD: Readonly<Record<string, string>> = {
  waterJug: 'Water, jugs',
  sportsDrinkJug: 'Sports drink, jugs',
  cups: 'Cups',
  gels: 'Gels',
  gloves: 'Gloves',
  bags: 'Bags',
  towels: 'Towels',
  stackingSheets: 'Stacking sheets',
  table: 'Tables',
  box: 'Trash boxes',
  instructions: 'Sheet of instructions',
};

/** What an item of supplies is called; a sign by its wording. */
export const packWord = (item: string): string =>
  PACK_WORD[item] ?? (item.startsWith('sign: ') ? `Sign “${item.slice(6)}”` : item);

const amount = ({ item }: Pack, value: number, units: Units): string =>
  item === 'waterJug' || item === 'sportsDrinkJug' ? formatVolume(value, units) : grouped(Math.ceil(value));

export const needText = (pack: Pack, units: Units): string => amount(pack, pack.need, units);

/** What one pack holds; a dash where it comes by the piece. */
export const packText = (pack: Pack, units: Units): string =>
  pack.pack === 1 && !pack.item.endsWith('Jug') ? DASH : amount(pack, pack.pack, units);

/** "1,968 + 984 cups poured": water before sports drink; `null` where none stand poured. */
export function pouredText({ prePour }: StationDay): string | null {
  const cups = [prePour.water, prePour.sportsDrink].flatMap((one) => (one === undefined ? [] : [grouped(one.cups)]));
  return cups.length === 0 ? null : `${cups.join(' + ')} cups poured`;
}

/** What the chart shows, for those who do not see it. */
export function chartText(name: string, { arrivals, quantiles, peak }: StationDay): string {
  if (quantiles === null || peak === null) return `Arrivals at ${name}: nobody arrives.`;
  return `Arrivals at ${name}: ${grouped(arrivals)}, first at ${formatClock(quantiles.first)}, busiest ${grouped(peak.count)} in the minute from ${formatClock(peak.at)}, last at ${formatClock(quantiles.last)}.`;
}
