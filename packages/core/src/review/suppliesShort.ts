/** Less ordered than runners took before, or than the heat of the day asks for by the usual rates. */
import { byId } from '../plan/lookups.ts';
import type { Heat, Served, Supplies } from '../plan/plan.ts';
import { suppliesOf } from '../plan/practice.ts';
import { ASSUMED_LEG, heatOf, takeOf } from '../raceday/take.ts';
import type { StationDay } from '../raceday/day.ts';
import type { ShortSupply } from '../text/params/reviewAbsence.ts';
import type { Layout } from '../layout/layout.ts';
import { type Case, type Check, COMMON_PRACTICE, type DayFacts, dayCheck } from './check.ts';

/** What is ordered of a kind: whole cups, or gels. */
const orderedOf = ({ cups, ordered, gels }: StationDay, item: Served): number =>
  item === 'gel' ? gels : (ordered ?? cups)[item];

/** Of what was used before, so much may be missing: another year has another field. */
const ANOTHER_YEAR = 0.1;
const HOTTER: readonly Heat[] = ['cool', 'warm', 'hot'];

/** The heat level that is given, or that of the temperature where it is the hotter; `null` where neither is known. */
function heatGiven(supplies: Supplies): Heat | null {
  const { heat: _heat, ...measured } = supplies;
  const found = [heatOf(supplies), heatOf(measured)].filter(({ by }) => by !== 'assumed');
  return HOTTER.findLast((level) => found.some(({ heat }) => heat === level)) ?? null;
}

/** By the usual rates of the heat that is given, without waste; 0 where no heat is given. */
function askedByHeat(layout: Layout, day: StationDay, item: 'water' | 'sportsDrink'): number {
  const station = byId(layout.plan.stations, day.id);
  const { drinkRate: _own, ...supplies } = suppliesOf(layout.plan, station);
  const heat = heatGiven(supplies);
  if (heat === null) return 0;
  const usual = { ...supplies, heat, take: {} };
  return day.races.reduce((sum, { race, arrivals, sinceDrink }) => {
    const { division } = byId(layout.plan.races, race);
    return sum + arrivals * takeOf(usual, station.serves, division, sinceDrink ?? ASSUMED_LEG).cups[item];
  }, 0);
}

function shortOf(layout: Layout, { day }: DayFacts, by: 'used' | 'heat'): ShortSupply[] {
  return day.stations.flatMap((own) => {
    const { serves, used } = byId(layout.plan.stations, own.id);
    return own.quantiles === null
      ? []
      : serves.flatMap((item) => {
          const before = used?.[item];
          // Who has counted knows better than a usual rate.
          if (by === 'heat' && (item === 'gel' || before !== undefined)) return [];
          const asked = by === 'used' ? (before ?? 0) : Math.ceil(askedByHeat(layout, own, item as 'water'));
          const ordered = orderedOf(own, item);
          const least = by === 'used' ? asked * (1 - ANOTHER_YEAR) : asked;
          return ordered < least ? [{ station: own.id, item, ordered, asked }] : [];
        });
  });
}

function casesOf(layout: Layout, facts: DayFacts, by: 'used' | 'heat'): Case<'supplies-short'>[] {
  const short = shortOf(layout, facts, by).sort((a, b) => b.asked / b.ordered - a.asked / a.ordered);
  const [worst] = short;
  if (worst === undefined) return [];
  const alone = short.length === 1 ? { station: worst.station, item: worst.item } : {};
  return [
    {
      params: { by, short },
      where: { path: '/supplies', ...alone },
      measured: worst.ordered,
      limit: worst.asked,
      unit: 'pieces',
    },
  ];
}

export const suppliesShort: Check = dayCheck(
  { code: 'supplies-short', severity: 'warning', source: COMMON_PRACTICE },
  (layout, facts) => (['used', 'heat'] as const).flatMap((by) => casesOf(layout, facts, by)),
);
