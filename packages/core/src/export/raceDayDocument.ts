/**
 * The JSON document of race day: clock times as HH:MM:SS (minutes as HH:MM), lengths metres, volumes
 * litres, masses kilograms. Its JSON Schema stands in `schemas/raceDay.ts`.
 */
import type { Analysis } from '../analyse.ts';
import type { Finding, LonLat } from '../finding.ts';
import { findById } from '../plan/lookups.ts';
import { type PlanWeather, type WeatherHour, weatherHours } from '../plan/weather.ts';
import type {
  FittedField,
  JugsLeft,
  Pack,
  PrePour,
  Quantiles,
  RaceDay,
  Resupply,
  Run,
  Shortage,
  StationDay,
  Stop,
} from '../raceday/day.ts';
import { supplyKey } from '../raceday/packs.ts';
import { formatClock, formatMinute } from '../format.ts';
import type { WeatherLevel } from '../kinds.ts';
import type { Kilograms } from '../units.ts';
import { findingDocument } from './documents.ts';
import { toMicro, toPosition } from './rounding.ts';
import { listOf, want } from '../wants.ts';
import { isRaceDay } from '../raceday/shapes.ts';
import { isFinding } from '../finding.ts';
import { isAnalysis } from '../review/shapes.ts';

type Clock = string;
/** Quantiles of arrivals as clock times, HH:MM:SS. */
export type QuantileTexts = { readonly [key in keyof Quantiles]: string };

/** A station's day as `halfcup raceday` prints it; times HH:MM:SS, minutes HH:MM. */
export interface StationDayDocument extends Omit<
  StationDay,
  | 'races'
  | 'quantiles'
  | 'perMinute'
  | 'peak'
  | 'crewAt'
  | 'openFrom'
  | 'openUntil'
  | 'packedAt'
  | 'jugsLeft'
  | 'shortage'
  | 'packs'
> {
  readonly races: readonly (QuantileTexts &
    Pick<StationDay['races'][number], 'race' | 'arrivals' | 'sinceDrink' | 'take'>)[];
  readonly first: Clock | null;
  readonly p10: Clock | null;
  readonly p50: Clock | null;
  readonly p90: Clock | null;
  readonly last: Clock | null;
  readonly perMinute: readonly (readonly [Clock, Readonly<Record<string, number>>])[];
  readonly peak: { readonly count: number; readonly at: Clock } | null;
  readonly crewAt: Clock | null;
  readonly openFrom: Clock | null;
  readonly openUntil: Clock | null;
  readonly packedAt: Clock | null;
  /** Full jugs that should be left at a time, HH:MM. */
  readonly jugsLeft: readonly (Omit<JugsLeft, 'at'> & { readonly at: Clock })[];
  /** If runners drank half as much again: what runs out first, and when it would be seen. */
  readonly shortage: (Omit<Shortage, 'at' | 'seen'> & { readonly at: Clock; readonly seen: Clock | null }) | null;
  readonly packs: readonly PackDocument[];
}

/** What is sent of one thing, in whole packs; `item` is `sign: ` and the wording of a sign, else a name as in the plan. */
export interface PackDocument extends Omit<Pack, 'kind' | 'wording' | 'empty'> {
  readonly item: string;
}

/** What is put down or taken up at a stop; empty jugs and full trash bags are items of their own. */
export interface LoadDocument {
  readonly item: string;
  readonly count: number;
  readonly kg: Kilograms;
}

/** An hour of weather as the plan gives it, and the level that it stands for; `null` without a temperature. */
export interface WeatherDocument extends Omit<PlanWeather, 'at'> {
  readonly at: Clock;
  readonly level: WeatherLevel | null;
}

/** What `halfcup raceday` prints. Lengths metres, volumes litres, masses kilograms. */
export interface RaceDayDocument {
  readonly stations: readonly StationDayDocument[];
  readonly totals: { readonly packs: readonly PackDocument[]; readonly crew: number };
  readonly runs: readonly (Omit<Run, 'stops'> & {
    readonly stops: readonly (Omit<Stop, 'arrive' | 'leave' | 'load'> & {
      readonly arrive: Clock;
      readonly leave: Clock;
      readonly at: LonLat | null;
      readonly load: readonly LoadDocument[];
    })[];
  })[];
  /** Second deliveries to stations that would run out if runners drank half as much again; absent where there are none. */
  readonly resupply?: readonly (Omit<Resupply, 'called' | 'arrives' | 'runsOut'> & {
    readonly called: Clock | null;
    readonly arrives: Clock | null;
    readonly runsOut: Clock;
  })[];
  /** The weather that the plan expects, with its level; absent where it gives none. */
  readonly weather?: readonly WeatherDocument[];
  /** Races whose runners slow as splits of past results tell; absent where there are none. */
  readonly fitted?: readonly FittedField[];
  readonly findings: readonly Finding[];
}

const clockOrNull = (seconds: number | null): Clock | null => (seconds === null ? null : formatClock(seconds));

const quantileTexts = (quantiles: Quantiles): QuantileTexts => ({
  first: formatClock(quantiles.first),
  p10: formatClock(quantiles.p10),
  p50: formatClock(quantiles.p50),
  p90: formatClock(quantiles.p90),
  last: formatClock(quantiles.last),
});

const prePourDocument = (one: PrePour): PrePour => ({
  ...one,
  share: toMicro(one.share),
  massCurve: toMicro(one.massCurve),
  floor: toMicro(one.floor),
});

const packDocument = (pack: Pack): PackDocument => ({
  item: supplyKey(pack),
  need: toMicro(pack.need),
  pack: toMicro(pack.pack),
  count: pack.count,
});

const shortageDocument = (found: Shortage | null): StationDayDocument['shortage'] =>
  found === null ? null : { ...found, at: formatClock(found.at), seen: clockOrNull(found.seen) };

/** What one arrival takes is rounded to a millionth. */
function raceAtStation({
  race,
  arrivals,
  sinceDrink,
  take,
  ...own
}: StationDay['races'][number]): StationDayDocument['races'][number] {
  return {
    race,
    arrivals,
    ...quantileTexts(own),
    ...(sinceDrink === undefined ? {} : { sinceDrink: toMicro(sinceDrink) }),
    ...(take === undefined
      ? {}
      : {
          take: {
            water: toMicro(take.water),
            sportsDrink: toMicro(take.sportsDrink),
            gel: toMicro(take.gel),
            litres: toMicro(take.litres),
          },
        }),
  };
}

function stationDocument({ quantiles, ...day }: StationDay): StationDayDocument {
  const { water, sportsDrink } = day.prePour;
  const none = { first: null, p10: null, p50: null, p90: null, last: null };
  return {
    ...day,
    races: day.races.map(raceAtStation),
    ...(quantiles === null ? none : quantileTexts(quantiles)),
    perMinute: day.perMinute.map(([minute, counts]) => [formatMinute(minute), counts]),
    peak: day.peak === null ? null : { count: day.peak.count, at: formatClock(day.peak.at) },
    crewAt: clockOrNull(day.crewAt),
    openFrom: clockOrNull(day.openFrom),
    openUntil: clockOrNull(day.openUntil),
    packedAt: clockOrNull(day.packedAt ?? null),
    shortage: shortageDocument(day.shortage ?? null),
    jugsLeft: (day.jugsLeft ?? []).map((row) => ({ ...row, at: formatMinute(row.at) })),
    prePour: {
      ...(water === undefined ? {} : { water: prePourDocument(water) }),
      ...(sportsDrink === undefined ? {} : { sportsDrink: prePourDocument(sportsDrink) }),
    },
    volume: { water: toMicro(day.volume.water), sportsDrink: toMicro(day.volume.sportsDrink) },
    packs: day.packs.map(packDocument),
    crew: { ...day.crew, hours: toMicro(day.crew.hours) },
  };
}

/** Every key of the plan's hour; `index` and the rest of `heat` are for the papers. */
const weatherDocument = ({ at, wbgtC, airC, humidity, windKmh, heat }: WeatherHour): WeatherDocument => ({
  at: formatClock(at),
  ...(wbgtC === undefined ? {} : { wbgtC }),
  ...(airC === undefined ? {} : { airC }),
  ...(humidity === undefined ? {} : { humidity }),
  ...(windKmh === undefined ? {} : { windKmh }),
  level: heat?.level ?? null,
});

/** A stop stands at the station's drop point, else at its pin. */
function stopPlace({ stations }: Analysis, id: string): LonLat | null {
  const station = findById(stations, id);
  const at = station?.station.points.find(({ kind }) => kind === 'drop')?.at ?? station?.at;
  return at === undefined ? null : toPosition(at);
}

/**
 * Race day of an analysis that has one (`day` is not `null`); `findings` as they are to be printed.
 * @example
 * ```ts
 * import { analyse, readPlan } from '@halfcup/core';
 * import { raceDayDocument } from '@halfcup/core/schemas';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c",
 *     "waves": [{ "time": "08:00", "entrants": 200 }], "finish": { "median": "0:24:00", "spread": 0.2 } }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const result = analyse(read.value.plan, { gpx: new Map() });
 * if (!result.ok) throw new Error(result.findings[0]?.message);
 * const { day, findings } = result.value;
 * const document = day && raceDayDocument(result.value, day, findings);
 * document?.stations.map(({ first, last, crewAt }) => [first, last, crewAt]); // → [['08:07:17', '08:21:09', '06:34:11']]
 * ```
 */
export function raceDayDocument(analysis: Analysis, day: RaceDay, findings: readonly Finding[]): RaceDayDocument {
  want('raceDayDocument', 'analysis', isAnalysis, analysis);
  want('raceDayDocument', 'day', isRaceDay, day);
  want('raceDayDocument', 'findings', listOf(isFinding), findings);
  return {
    stations: day.stations.map(stationDocument),
    totals: {
      ...day.totals,
      packs: day.totals.packs.map(packDocument),
    },
    runs: day.runs.map((run) => ({
      ...run,
      kg: toMicro(run.kg),
      stops: run.stops.map((stop) => ({
        ...stop,
        arrive: formatClock(stop.arrive),
        leave: formatClock(stop.leave),
        measure: toMicro(stop.measure),
        at: stopPlace(analysis, stop.station),
        load: stop.load.map((part) => ({ item: supplyKey(part), count: part.count, kg: toMicro(part.kg) })),
      })),
    })),
    ...(day.resupply === undefined
      ? {}
      : {
          resupply: day.resupply.map((one) => ({
            ...one,
            takes: toMicro(one.takes),
            called: clockOrNull(one.called),
            arrives: clockOrNull(one.arrives),
            runsOut: formatClock(one.runsOut),
          })),
        }),
    ...(analysis.plan.weather === undefined
      ? {}
      : { weather: weatherHours(analysis.plan.weather).map(weatherDocument) }),
    ...(day.fitted === undefined ? {} : { fitted: day.fitted }),
    findings: findings.map(findingDocument),
  };
}
