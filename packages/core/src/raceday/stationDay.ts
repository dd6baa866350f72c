/**
 * One station's day: who comes when, what they take, what stands poured before them, who serves them, and what
 * is sent. Made from arrivals, practice, supplies and crew alone; no place enters.
 */
import type { Finding } from '../finding.ts';
import type { Crew, Plan, PlanStation, Practice, Served, Supplies } from '../plan/plan.ts';
import { crewOf, practiceOf, suppliesOf } from '../plan/practice.ts';
import { DRINKS, gelFindings, gelsOrdered, headsOf, needsOf, takeRates, type Drink, type Needs } from './cups.ts';
import { NO_CREW, dayCrew, handsFor } from './crew.ts';
import type { DayCrew, PrePour, RaceArrivals, StationArrivals, StationDay } from './day.ts';
import { packsOf } from './packs.ts';
import { firstDry, massCurve, prePourOf, type PrePourCase } from './prePour.ts';
import { racedayFinding } from './racedayFinding.ts';
import { busiest, mergedTimes, perMinuteOf, quantilesOf } from './timing.ts';
import { isPlan, isPlanStation } from '../plan/shapes.ts';
import { isStationArrivals } from './shapes.ts';
import { count, want } from '../wants.ts';

/** A station with the rules that hold at it. */
interface Site {
  readonly station: PlanStation;
  readonly supplies: Supplies;
  readonly practice: Practice;
  readonly rules: Crew;
  readonly races: readonly RaceArrivals[];
  readonly needs: Needs;
  /** Cups in the busiest sliding minute, and who hands them out. */
  readonly cupsPeak: number;
  readonly hands: number;
}

type Tables = { readonly [kind in Served]: number };

const cupsEach = ({ station, supplies }: Pick<Site, 'station' | 'supplies'>, { division }: RaceArrivals): number =>
  DRINKS.reduce((sum, drink) => sum + (station.serves.includes(drink) ? takeRates(supplies, division)[drink] : 0), 0);

function siteOf(plan: Plan, station: PlanStation, races: readonly RaceArrivals[]): Site {
  const [supplies, rules] = [suppliesOf(plan, station), crewOf(plan, station)];
  const cupsPeak = busiest(races, 60, (race) => cupsEach({ station, supplies }, race))?.sum ?? 0;
  return {
    station,
    supplies,
    practice: practiceOf(plan, station),
    rules,
    races,
    needs: needsOf(supplies, station.serves, headsOf(races)),
    cupsPeak,
    hands: handsFor(cupsPeak, rules.handRate),
  };
}

const shareOf = ({ needs }: Site, drink: Drink): number =>
  needs.cups[drink] / Math.max(1, needs.cups.water + needs.cups.sportsDrink);

/**
 * The case of one drink. Pourers and frontage are shared between drinks by their cups; wheels take cups, but the
 * pour begins and the floor's spread is measured with those who come on foot.
 */
function caseOf(site: Site, drink: Drink): { readonly one: PrePourCase; readonly first: number } | null {
  const { station, supplies, practice, rules, races, needs } = site;
  const foot = quantilesOf(mergedTimes(races.filter(({ division }) => division !== 'wheels')));
  if (foot === null || !station.serves.includes(drink)) return null;
  const rates = races.map(({ race, division }) => [race, takeRates(supplies, division)[drink]] as const);
  const share = shareOf(site, drink);
  // By minutes of the pour, which begins with the first on foot: a clock minute that he is late in would count as poured.
  const minutes = perMinuteOf(races, foot.first);
  const first = minutes[0]![0];
  const one = {
    demand: minutes.map(([, counts]) => rates.reduce((sum, [race, rate]) => sum + counts[race]! * rate, 0)),
    from: Math.round((foot.first - first) / 60),
    spread: foot.p90 - foot.p10,
    cups: needs.cups[drink],
    fixed: station.tables[drink] ?? null,
    atLeast: Math.max(1, Math.ceil((site.hands * rules.handSpacing * share) / practice.tableLength - 1e-9)),
    cupsPerLayer: supplies.cupsPerLayer,
    layers: supplies.layers,
    floor: supplies.prePourFloor,
    safety: supplies.prePourSafety,
    pour: rules.pourers * rules.pourRate * share,
    rate: rules.pourRate,
  };
  return { one, first };
}

/** How many pourers would do too, where the plan fixes the tables and it is the curve that asks for more than the room, not the floor. */
function orPour(one: PrePourCase, { floor, room, pourers }: PrePour): { readonly pourers?: number } {
  const enough = floor <= room! && massCurve(one.demand, pourers * one.rate, one.from) * one.safety <= floor;
  return enough ? { pourers } : {};
}

/** Where the tables hold less than should stand poured, or the cups run out whatever stands. */
function stockFindings(
  { station }: Site,
  drink: Drink,
  one: PrePourCase,
  prePour: PrePour,
  wanted: number,
  first: number,
): Finding[] {
  // Without a table nothing is laid out: `tables-mismatch`.
  if (one.fixed === 0) return [];
  const where = { station: station.id, item: drink };
  const perTable = one.cupsPerLayer * one.layers;
  if (prePour.cups < wanted) {
    const more = Math.ceil(wanted / perTable) - prePour.tables;
    const { tables, cups: hold } = prePour;
    return [
      racedayFinding(
        'pre-pour-room',
        { drink, tables, hold, wanted, more, ...orPour(one, prePour) },
        { severity: 'warning', where, measured: hold, limit: wanted, unit: 'cups' },
      ),
    ];
  }
  const dry = firstDry(one.demand, one.pour, prePour.cups, prePour.tables * perTable, one.from);
  if (dry === null) return [];
  const pourers = Math.ceil(Math.max(...one.demand) / one.rate);
  const { short } = dry;
  return [
    racedayFinding(
      'cups-run-out',
      { drink, at: first + dry.minute * 60, short, hold: prePour.tables * perTable, pourers },
      { severity: 'warning', where, measured: short, limit: 0, unit: 'cups' },
    ),
  ];
}

interface Stock {
  readonly prePour: StationDay['prePour'];
  readonly tables: Tables;
  readonly findings: readonly Finding[];
}

/** Pre-pour and tables of all kinds; one table where the plan has no number and nothing needs more. */
function stockOf(site: Site): Stock {
  const { station } = site;
  const prePour: { [drink in Drink]?: PrePour } = {};
  const findings: Finding[] = [];
  const given = (kind: Served): number => (station.serves.includes(kind) ? (station.tables[kind] ?? 1) : 0);
  const tables = { gel: given('gel'), sportsDrink: given('sportsDrink'), water: given('water') };
  for (const drink of DRINKS) {
    const found = caseOf(site, drink);
    if (found === null) continue;
    const { one, first } = found;
    const { prePour: stock, wanted } = prePourOf(one);
    prePour[drink] = stock;
    tables[drink] = stock.tables;
    findings.push(...stockFindings(site, drink, one, stock, wanted, first));
  }
  return { prePour, tables, findings };
}

interface Times {
  readonly crewAt: number;
  readonly openFrom: number;
  readonly openUntil: number;
}

/** Before opening, those who will hand out pour too: an assumption. */
function timesOf(site: Site, stock: Stock, first: number, last: number, sweep: number | null): Times {
  const { rules } = site;
  const cups = DRINKS.reduce((sum, drink) => sum + (stock.prePour[drink]?.cups ?? 0), 0);
  const hands = Math.max(1, site.hands + rules.pourers);
  const openFrom = first - rules.ready;
  return {
    openFrom,
    crewAt: openFrom - rules.setUp - Math.ceil((cups / (hands * rules.pourRate)) * 60),
    openUntil: Math.max(last, sweep ?? last),
  };
}

function crewAt(site: Site, { crewAt: from, openUntil }: Times): DayCrew {
  const sum = (span: number, weightOf: (race: RaceArrivals) => number): number =>
    busiest(site.races, span, weightOf)!.sum;
  const gels = site.station.serves.includes('gel');
  return dayCrew(site.rules, {
    cupsPeak: site.cupsPeak,
    gelsPeak: gels
      ? sum(60, ({ division }) =>
          Math.min(takeRates(site.supplies, division).gel, gelsOrdered(site.supplies, division)),
        )
      : 0,
    cupsHour: sum(3600, (race) => cupsEach(site, race)),
    duration: openUntil - from,
  });
}

function closed(
  { station, races }: Site,
  none: Pick<StationDay, 'id' | 'arrivals' | 'races' | 'perMinute' | 'cups' | 'gels' | 'volume'>,
  tables: Tables,
): { day: StationDay; findings: Finding[] } {
  const problem = races.length === 0 ? 'unpassed' : 'nobody';
  const day: StationDay = {
    ...none,
    quantiles: null,
    peak: null,
    crewAt: null,
    openFrom: null,
    openUntil: null,
    prePour: {},
    tables,
    packs: [],
    crew: NO_CREW,
  };
  return {
    day,
    findings: [
      racedayFinding('station-no-arrivals', { problem }, { severity: 'note', where: { station: station.id } }),
    ],
  };
}

/**
 * The day of one station from who arrives. `directions`: how many served directions have a sign and trash of their own.
 * Where nobody arrives, times are `null` and nothing is needed, with a note.
 * @example
 * ```ts
 * import { readPlan } from '@halfcup/core';
 * import { stationDay } from '@halfcup/core/raceday';
 *
 * const text = `{
 *   "format": "halfcup-plan", "version": 1, "name": "Pier run",
 *   "courses": [{ "id": "pier", "line": [[-30.1, 12.2], [-30.01, 12.2]], "drawn": "centre" }],
 *   "races": [{ "id": "run", "course": "pier", "waves": [{ "time": "08:00", "entrants": 400 }], "finish": { "median": "50 min", "spread": 0.2 } }],
 *   "stations": [{ "id": "s1", "at": [-30.06, 12.20004], "used": { "water": 450 } }]
 * }`;
 * const read = readPlan(text, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const { plan } = read.value;
 * const times = Float64Array.from({ length: 360 }, (_, k) => 8 * 3600 + 1200 + 2 * k);
 * const { day } = stationDay(plan, plan.stations[0]!, { station: 's1', races: [{ race: 'run', division: 'run', times, out: 0 }], sweep: null });
 * day.cups; // → { water: 497, sportsDrink: 249 }
 * day.peak; // → { count: 30, at: 30000 }
 * day.crew.total; // → 14
 * ```
 */
export function stationDay(
  plan: Plan,
  station: PlanStation,
  arrivals: StationArrivals,
  directions: number = 1,
): { readonly day: StationDay; readonly findings: readonly Finding[] } {
  want('stationDay', 'plan', isPlan, plan);
  want('stationDay', 'station', isPlanStation, station);
  want('stationDay', 'arrivals', isStationArrivals, arrivals);
  want('stationDay', 'directions', count, directions);
  const { races } = arrivals;
  const heads = headsOf(races);
  const site = siteOf(plan, station, races);
  const quantiles = quantilesOf(mergedTimes(races));
  const perMinute = perMinuteOf(races);
  const stock = stockOf(site);
  const head = {
    id: station.id,
    arrivals: heads.reduce((sum, { count }) => sum + count, 0),
    races: races.flatMap(({ race, times }) => {
      const own = quantilesOf(times);
      return own === null ? [] : [{ race, arrivals: times.length, ...own }];
    }),
    perMinute,
    cups: site.needs.cups,
    gels: site.needs.gels,
    volume: site.needs.volume,
  };
  const peak = busiest(races, 60, () => 1);
  if (quantiles === null || peak === null) return closed(site, head, stock.tables);
  const times = timesOf(site, stock, quantiles.first, quantiles.last, arrivals.sweep);
  const crew = crewAt(site, times);
  const day: StationDay = {
    ...head,
    quantiles,
    peak: { count: peak.sum, at: peak.at },
    ...times,
    prePour: stock.prePour,
    tables: stock.tables,
    crew,
    packs: packsOf(site.supplies, site.practice, station, {
      needs: site.needs,
      tables: stock.tables,
      crew,
      directions,
      language: plan.language,
    }),
  };
  return { day, findings: [...stock.findings, ...gelFindings(plan, station, heads)] };
}
