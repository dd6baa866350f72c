/**
 * One station's day: who comes when, what they take, what stands poured before them, who serves them, and what
 * is sent. Made from arrivals, practice, supplies and crew alone; no place enters.
 */
import type { Finding } from '../finding.ts';
import type { Plan, PlanStation } from '../plan/plan.ts';
import { isPlan, isPlanStation } from '../plan/shapes.ts';
import { count, want } from '../wants.ts';
import { boxesFor } from './boxes.ts';
import { NO_CREW, dayCrew } from './crew.ts';
import { gelFindings } from './cups.ts';
import type { Quantiles, RaceArrivals, StationArrivals, StationDay } from './day.ts';
import { hoursOf } from './hours.ts';
import { jugsLeftOf } from './jugsLeft.ts';
import { packsOf } from './packs.ts';
import { racedayFinding } from './racedayFinding.ts';
import { shortageOf } from './shortage.ts';
import { isStationArrivals } from './shapes.ts';
import { type Site, siteOf, takeAt } from './site.ts';
import { type Stock, stockOf } from './stock.ts';
import { busiest, mergedTimes, perMinuteOf, quantilesOf } from './timing.ts';

type Head = Pick<
  StationDay,
  'id' | 'arrivals' | 'races' | 'perMinute' | 'handOut' | 'cups' | 'ordered' | 'gels' | 'volume'
>;

/** What is known of a station's day whether anybody comes or not. */
const headOf = (site: Site): Head => ({
  id: site.station.id,
  arrivals: site.flows.reduce((sum, { times }) => sum + times.length, 0),
  races: site.races.flatMap((race) => raceAt(site, race)),
  perMinute: perMinuteOf(site.races),
  handOut: site.supplies.handOut,
  cups: site.needs.cups,
  ordered: site.needs.ordered.cups,
  gels: site.needs.gels,
  volume: site.needs.volume,
});

/** One race at the station: when it comes, how long since it last drank, and what one of it takes on average. */
function raceAt(site: Site, { race, times }: RaceArrivals): StationDay['races'] {
  const own = quantilesOf(times);
  if (own === null) return [];
  const flows = site.flows.filter((flow) => flow.race === race);
  const mean = (of: (flow: Site['flows'][number]) => number): number =>
    flows.reduce((sum, flow) => sum + flow.times.length * of(flow), 0) / times.length;
  const take = {
    water: mean((flow) => takeAt(site, flow).cups.water),
    sportsDrink: mean((flow) => takeAt(site, flow).cups.sportsDrink),
    gel: mean((flow) => takeAt(site, flow).gels),
    litres: mean((flow) => takeAt(site, flow).litres.water + takeAt(site, flow).litres.sportsDrink),
  };
  return [{ race, arrivals: times.length, ...own, sinceDrink: mean(({ leg }) => leg), take }];
}

function closed(site: Site, head: Head, { tables }: Stock): { day: StationDay; findings: Finding[] } {
  const problem = site.races.length === 0 ? 'unpassed' : 'nobody';
  const day: StationDay = {
    ...head,
    quantiles: null,
    peak: null,
    crewAt: null,
    openFrom: null,
    openUntil: null,
    packedAt: null,
    prePour: {},
    tables,
    packs: [],
    crew: NO_CREW,
  };
  const where = { station: site.station.id };
  return { day, findings: [racedayFinding('station-no-arrivals', { problem }, { severity: 'note', where })] };
}

const litresOf = ({ supplies }: Site, cups: number = 0): number => cups * supplies.cup * supplies.fill;

/** The day of a station that somebody comes to. */
function openDay(
  site: Site,
  head: Head,
  stock: Stock,
  come: {
    readonly quantiles: Quantiles;
    readonly peak: NonNullable<StationDay['peak']>;
    readonly sweep: number | null;
  },
  { directions, language }: { readonly directions: number; readonly language: string },
): StationDay {
  const { quantiles, peak, sweep } = come;
  const hours = hoursOf(site, stock, quantiles.first, quantiles.last, sweep);
  const parts = { handOut: site.handOut, pour: stock.pourers, gel: site.gel, clean: site.clean };
  const crew = dayCrew(site.rules, parts, hours.packedAt - hours.crewAt);
  const boxes = boxesFor(site, directions);
  const layers = Math.max(0, ...Object.values(stock.prePour).map((poured) => poured.layers));
  const packs = packsOf(site.supplies, site.station, {
    needs: site.needs,
    tables: stock.tables,
    layers,
    crew,
    boxes,
    directions,
    language,
  });
  const jugsLeft = jugsLeftOf(site, stock.prePour, packs, { from: quantiles.first, last: quantiles.last });
  return {
    ...head,
    quantiles,
    peak,
    ...hours,
    prePour: stock.prePour,
    tables: stock.tables,
    boxes,
    jugsLeft,
    shortage: shortageOf(site, packs, jugsLeft, quantiles.first, (drink) => litresOf(site, stock.prePour[drink]?.cups)),
    crew,
    packs,
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
 * day.cups; // → { water: 534, sportsDrink: 267 }
 * day.peak; // → { count: 30, at: 30000 }
 * day.crew.total; // → 6
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
  const { races, sweep } = arrivals;
  const site = siteOf(plan, station, races);
  const [head, stock] = [headOf(site), stockOf(site)];
  const quantiles = quantilesOf(mergedTimes(races));
  const peak = busiest(races, 60, () => 1);
  if (quantiles === null || peak === null) return closed(site, head, stock);
  const come = { quantiles, peak: { count: peak.sum, at: peak.at }, sweep };
  const day = openDay(site, head, stock, come, { directions, language: plan.language });
  return { day, findings: [...stock.findings, ...gelFindings(plan, station, site.flows)] };
}
