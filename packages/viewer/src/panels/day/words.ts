/** The words of race day: clock times, whole counts, packs, and the text that stands for the chart. */
import { type RaceDay, type StationDay } from '@halfcup/core';
import { type Units } from '@halfcup/core/plan';
import { type Supply } from '@halfcup/core/stages';
import { formatClock, formatMinute, formatVolume } from '@halfcup/core/units';
import { DASH, SERVED_WORD, grouped } from '../../words.ts';

export { grouped } from '../../words.ts';

type Pack = StationDay['packs'][number];

export const RUN_WORD = { drop: 'Drop-off', collect: 'Collection' } as const;

/** What a vehicle drops or takes at a stop, kilograms. */
export const kgOf = ({ load }: RaceDay['runs'][number]['stops'][number]): number =>
  load.reduce((sum, { kg }) => sum + kg, 0);

export const minuteOrDash = (seconds: number | null): string => (seconds === null ? DASH : formatMinute(seconds));

export const wholePercent = (share: number): string => `${Math.round(share * 100)} %`;

/** Tasks in the order in which a captain gives them out. */
export const TASK_WORD: Readonly<Record<'captain' | 'pour' | 'handOut' | 'gel' | 'clean', string>> = {
  captain: 'Captain',
  pour: 'Pouring',
  handOut: 'Handing out cups',
  gel: 'Handing out gels',
  clean: 'Cleaning up',
};

const PACK_WORD: Readonly<Record<Supply['kind'], string>> = {
  waterJug: 'Water jugs',
  sportsDrinkJug: 'Sports-drink jugs',
  cups: 'Cups',
  gels: 'Gels',
  gloves: 'Gloves',
  bags: 'Trash bags',
  towels: 'Towels',
  stackingSheets: 'Stacking sheets',
  table: 'Tables',
  box: 'Trash boxes',
  sign: 'Signs',
  instructions: 'Instruction sheet',
  trashBags: 'Bags of trash',
};

/** What a supply is called; a sign by its wording. */
export const packWord = ({ kind, wording, empty }: Supply): string =>
  wording === undefined ? `${PACK_WORD[kind]}${empty === true ? ', empty' : ''}` : `Sign “${wording}”`;

const isJug = ({ kind }: Supply): boolean => kind === 'waterJug' || kind === 'sportsDrinkJug';

const amount = (pack: Pack, value: number, units: Units): string =>
  isJug(pack) ? formatVolume(value, units) : grouped(Math.ceil(value));

export const needText = (pack: Pack, units: Units): string => amount(pack, pack.need, units);

/** What one pack holds; a dash where it comes by the piece. */
export const packText = (pack: Pack, units: Units): string =>
  pack.pack === 1 && !isJug(pack) ? DASH : amount(pack, pack.pack, units);

/** "poured: 1,968 water, 984 sports drink"; `null` where none stand poured. */
export function pouredText({ prePour }: StationDay): string | null {
  const cups = (['water', 'sportsDrink'] as const).flatMap((drink) => {
    const poured = prePour[drink];
    return poured === undefined ? [] : [`${grouped(poured.cups)} ${SERVED_WORD[drink]}`];
  });
  return cups.length === 0 ? null : `poured: ${cups.join(', ')}`;
}

/** What the chart shows, for those who do not see it. */
export function chartText(name: string, { arrivals, quantiles, peak }: StationDay): string {
  if (quantiles === null || peak === null) return `Arrivals at ${name}: none.`;
  return `Arrivals at ${name}: ${grouped(arrivals)}, first at ${formatClock(quantiles.first)}, busiest minute from ${formatClock(peak.at)} with ${grouped(peak.count)}, last at ${formatClock(quantiles.last)}.`;
}
