/**
 * The state of a station at a clock time: who has come, what has been poured and taken, what stands and what is left in
 * the jugs, minute by minute from the day's own counts. Poured = taken + standing, and sent = poured + left, at every time.
 */
import type { Seconds } from '../units.ts';
import type { StationDay } from './day.ts';

type Drink = 'water' | 'sportsDrink';

/** What a station is doing. */
export type StationPhase = 'before' | 'settingUp' | 'ready' | 'open' | 'breakingDown' | 'packed';

/** Cups of one drink at a time, spilt ones among those taken. Cups are of the plan's size, bottles' litres counted in them. */
export interface DrinkState {
  /** Ordered: what the jugs that were sent hold. */
  readonly sent: number;
  readonly poured: number;
  readonly taken: number;
  /** On the tables. */
  readonly standing: number;
  /** Not poured yet. */
  readonly left: number;
  /** Jugs that are sent, and those not yet begun; absent where the drink comes in none. */
  readonly jugs?: { readonly sent: number; readonly full: number };
}

/** A station at one time. */
export interface StationState {
  readonly station: string;
  readonly time: Seconds;
  readonly phase: StationPhase;
  /** So far, by race, and in the clock minute of the time. */
  readonly arrived: Readonly<Record<string, number>>;
  readonly now: number;
  readonly drinks: { readonly [drink in Drink]?: DrinkState };
  /** Of those who hand out, how many are busy with what is handed in this minute; not more than there are. */
  readonly handsBusy: number;
}

const phaseOf = ({ crewAt, openFrom, quantiles, openUntil, packedAt }: StationDay, time: Seconds): StationPhase => {
  if (crewAt === null || time < crewAt) return 'before';
  if (time < openFrom!) return 'settingUp';
  if (time < quantiles!.first) return 'ready';
  if (time <= openUntil!) return 'open';
  return time < (packedAt ?? openUntil!) ? 'breakingDown' : 'packed';
};

/** Rules of the plan at the station that a state goes by. */
export interface ClockRules {
  readonly waste: number;
  readonly pourRate: number;
  readonly handRate: number;
  readonly fromTables: number;
  /** Litres in a cup as it is filled. */
  readonly cup: number;
}

const JUG = { water: 'waterJug', sportsDrink: 'sportsDrinkJug' } as const;

/** Jugs not begun yet, of those sent. */
function jugsOf({ packs }: StationDay, drink: Drink, litres: number): Pick<DrinkState, 'jugs'> {
  const jug = packs.find(({ kind }) => kind === JUG[drink]);
  if (jug === undefined) return {};
  return { jugs: { sent: jug.count, full: Math.max(0, jug.count - Math.ceil(litres / jug.pack - 1e-9)) } };
}

/** Part of the time between set-up and ready in which cups are poured, 0 before it and 1 after. */
function prePoured({ crewAt, openFrom }: StationDay, time: Seconds): number {
  if (crewAt === null || time <= crewAt) return 0;
  return Math.min(1, (time - crewAt) / Math.max(1, openFrom! - crewAt));
}

function drinkState(day: StationDay, drink: Drink, time: Seconds, rules: ClockRules): DrinkState | undefined {
  const stock = day.prePour[drink];
  if (stock === undefined) return undefined;
  const { cups, pourers, tables, cupsPerLayer = cups } = stock;
  const sent = day.ordered?.[drink] ?? day.cups[drink];
  const room = Math.max(cups, tables * cupsPerLayer * Math.max(1, stock.layers));
  const all = Math.max(1, day.cups.water + day.cups.sportsDrink);
  const rate = (pourers * rules.pourRate * day.cups[drink]) / all;
  const ready = Math.floor(cups * prePoured(day, time));
  let [poured, taken] = [ready, 0];
  for (const [minute, counts] of day.perMinute) {
    if (minute > time) break;
    // Of the minute that is running, the part that has passed.
    const part = Math.min(1, (time - minute) / 60);
    const wanted = day.races.reduce(
      (sum, { race, take }) => sum + (counts[race] ?? 0) * (take?.[drink] ?? 0) * (1 + rules.waste),
      0,
    );
    taken += Math.min(wanted * part, Math.max(0, poured - taken));
    poured += Math.max(0, Math.min(rate * part, room - (poured - taken), sent - poured));
  }
  return {
    sent,
    poured,
    taken,
    standing: poured - taken,
    left: sent - poured,
    ...jugsOf(day, drink, poured * rules.cup),
  };
}

/** A station's state at a clock time. */
export function stationStateAt(day: StationDay, time: Seconds, rules: ClockRules): StationState {
  const arrived: Record<string, number> = Object.fromEntries(day.races.map(({ race }) => [race, 0]));
  let now = 0;
  let handed = 0;
  for (const [minute, counts] of day.perMinute) {
    if (minute > time) break;
    const running = time < minute + 60;
    for (const { race, take } of day.races) {
      const count = counts[race] ?? 0;
      arrived[race]! += running ? Math.round((count * (time - minute)) / 60) : count;
      if (!running) continue;
      now += count;
      handed += count * ((take?.water ?? 0) + (take?.sportsDrink ?? 0)) * (1 - rules.fromTables);
    }
  }
  const [water, sportsDrink] = [drinkState(day, 'water', time, rules), drinkState(day, 'sportsDrink', time, rules)];
  return {
    station: day.id,
    time,
    phase: phaseOf(day, time),
    arrived,
    now,
    drinks: { ...(water === undefined ? {} : { water }), ...(sportsDrink === undefined ? {} : { sportsDrink }) },
    handsBusy: Math.min(day.crew.handOut, Math.max(0, Math.ceil(handed / rules.handRate - 1e-9))),
  };
}
