/** The hours of a station: when the crew comes, when it serves, when it is released and when all is packed. */
import type { StationDay } from './day.ts';
import type { Site } from './site.ts';
import type { Stock } from './stock.ts';
import { DRINKS } from './take.ts';

export interface Hours {
  readonly crewAt: number;
  readonly openFrom: number;
  readonly openUntil: number;
  readonly packedAt: number;
}

/** Cups of all drinks that stand poured before the first runner. */
export const pouredCups = (prePour: StationDay['prePour']): number =>
  DRINKS.reduce((sum, drink) => sum + (prePour[drink]?.cups ?? 0), 0);

/** Seconds in which so many people pour so many cups, `rate` a minute each. */
export const pourTime = (cups: number, people: number, rate: number): number =>
  cups === 0 ? 0 : Math.ceil((cups / (Math.max(1, people) * rate)) * 60);

/** Before opening all but the captain pour: an assumption. */
export function hoursOf(site: Site, stock: Stock, first: number, last: number, sweep: number | null): Hours {
  const { rules } = site;
  const people = site.handOut + site.gel + site.clean + stock.pourers;
  const openFrom = first - rules.ready;
  const openUntil = Math.max(last, sweep ?? last);
  const tables = stock.tables.gel + stock.tables.sportsDrink + stock.tables.water;
  return {
    crewAt: openFrom - rules.setUp - pourTime(pouredCups(stock.prePour), people, rules.pourRate),
    openFrom,
    openUntil,
    packedAt: openUntil + rules.breakDown + tables * rules.breakDownTable,
  };
}
