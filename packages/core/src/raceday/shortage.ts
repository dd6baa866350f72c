/**
 * When a station would run out if runners drank half as much again as they are taken to (an assumption), and at which
 * half hour its captain would see it, by fewer full jugs than there should be. What is called for then has to come before.
 */
import type { JugsLeft, Pack, Shortage } from './day.ts';
import { demandOf, type Site, takeAt } from './site.ts';
import { DRINKS, type Drink } from './take.ts';

/** Runners drink so many times what is planned. */
export const THIRSTY = 1.5;

const JUG = { water: 'waterJug', sportsDrink: 'sportsDrinkJug' } as const;

/** Litres of a drink that runners take by each minute from `from` on, as planned. */
function litresByMinute(site: Site, drink: Drink, from: number): { readonly from: number; readonly litres: number[] } {
  const { supplies } = site;
  if (supplies.handOut === 'cups') {
    const { from: start, cups } = demandOf(site, drink, from);
    let sum = 0;
    return { from: start, litres: cups.map((count) => (sum += count * supplies.cup * supplies.fill)) };
  }
  const last = Math.max(from, ...site.flows.map(({ times }) => times.at(-1) ?? from));
  const litres = Array.from({ length: Math.floor((last - from) / 60) + 1 }, () => 0);
  for (const flow of site.flows)
    for (const time of flow.times)
      litres[Math.max(0, Math.floor((time - from) / 60))]! += takeAt(site, flow).litres[drink];
  let sum = 0;
  return { from, litres: litres.map((one) => (sum += one)) };
}

/** The first drink to run out; `null` where even so much lasts. `first`: the first arrival; `poured`: litres that stand ready. */
export function shortageOf(
  site: Site,
  packs: readonly Pack[],
  jugsLeft: readonly JugsLeft[],
  first: number,
  poured: (drink: Drink) => number,
): Shortage | null {
  const found = DRINKS.flatMap((drink): Shortage[] => {
    const jugs = packs.find(({ kind }) => kind === JUG[drink]);
    if (jugs === undefined) return [];
    const { from, litres } = litresByMinute(site, drink, first);
    const minute = litres.findIndex((taken) => taken * THIRSTY > jugs.count * jugs.pack + 1e-9);
    if (minute < 0) return [];
    const takenBy = (at: number): number =>
      (litres[Math.min(litres.length, Math.floor((at - from) / 60)) - 1] ?? 0) * THIRSTY;
    // What stands on the tables is in no jug; as much is poured again as was taken.
    const leftAt = (at: number): number =>
      Math.max(0, jugs.count - Math.ceil((poured(drink) + takenBy(at)) / jugs.pack - 1e-9));
    const seen = jugsLeft.find((row) => row[drink] !== undefined && leftAt(row.at) < row[drink]);
    return [{ drink, at: from + minute * 60, seen: seen?.at ?? null }];
  });
  return found.length === 0 ? null : found.reduce((a, b) => (b.at < a.at ? b : a));
}
