/**
 * How many full jugs should be left at each half hour: those that are sent, less what has been poured by then. Poured
 * is what stood ready and what the pourers have refilled since, no faster than they pour and no more than was taken.
 */
import type { JugsLeft, Pack, StationDay } from './day.ts';
import { demandOf, type Site, takeAt } from './site.ts';
import { DRINKS, type Drink } from './take.ts';

/** Between two rows of the table, seconds. */
const EVERY = 30 * 60;

const JUG = { water: 'waterJug', sportsDrink: 'sportsDrinkJug' } as const;

export function jugsLeftOf(
  site: Site,
  prePour: StationDay['prePour'],
  packs: readonly Pack[],
  { from, last }: { readonly from: number; readonly last: number },
): JugsLeft[] {
  const drinks = DRINKS.filter((drink) => packs.some(({ kind }) => kind === JUG[drink]));
  const litresAt = drinks.map((drink) => litresBy(site, drink, prePour, from));
  const rows: JugsLeft[] = [];
  for (let at = Math.ceil((from + 1) / EVERY) * EVERY; at < last && drinks.length > 0; at += EVERY) {
    const left = drinks.map((drink, k): [Drink, number] => {
      const { count, pack } = packs.find(({ kind }) => kind === JUG[drink])!;
      return [drink, Math.max(0, count - Math.ceil(litresAt[k]!(at) / pack - 1e-9))];
    });
    rows.push({ at, ...Object.fromEntries(left) });
  }
  return rows;
}

/** Litres that have left the jugs by a clock time. */
function litresBy(site: Site, drink: Drink, prePour: StationDay['prePour'], phase: number): (at: number) => number {
  const { supplies, rules, needs } = site;
  if (supplies.handOut === 'bottles') {
    return (at) =>
      site.flows.reduce(
        (sum, flow) => sum + flow.times.filter((time) => time < at).length * takeAt(site, flow).litres[drink],
        0,
      );
  }
  const { cups: poured = 0, pourers = 0 } = prePour[drink] ?? {};
  const { from, cups } = demandOf(site, drink, phase);
  const all = needs.cups.water + needs.cups.sportsDrink;
  const rate = (pourers * rules.pourRate * needs.cups[drink]) / Math.max(1, all);
  return (at) => {
    const minutes = Math.max(0, Math.floor((at - from) / 60));
    const taken = cups.slice(0, minutes).reduce((sum, count) => sum + count, 0);
    return (poured + Math.min(taken, rate * minutes, needs.cups[drink] - poured)) * supplies.cup * supplies.fill;
  };
}
