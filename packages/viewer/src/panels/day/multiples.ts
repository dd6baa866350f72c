/** All stations' race day on one time axis, as geometry in pixels; times are seconds after midnight. Pure. */
import type { RaceDay, StationDay } from '@halfcup/core';
import { scaleLinear, type ScaleLinear } from 'd3-scale';
import { clockTicks } from './chart.ts';

export const ROW = 38;
export const TOP = 18;
/** Names of the stations. */
export const NAMES = 128;
const RIGHT = 14;
/** Arrivals of one bar, seconds. */
const STEP = 300;
/** Pixels of the tallest bar of the tallest station. */
const TALL = 20;

export type Span = readonly [from: number, to: number];

export interface DayRow {
  readonly id: string;
  /** Arrivals in each five minutes: a closed outline, empty where nobody comes. */
  readonly arrivals: string;
  readonly crew: Span | null;
  readonly open: Span | null;
  readonly drops: readonly Span[];
  readonly collections: readonly Span[];
  /** When a second delivery would come. */
  readonly resupply: number | null;
}

/** Each stop of the runs of a kind at a station, from arriving to leaving. */
const stopsAt = ({ runs }: RaceDay, kind: 'drop' | 'collect', station: string): Span[] =>
  runs
    .filter((run) => run.kind === kind)
    .flatMap(({ stops }) =>
      stops.filter((stop) => stop.station === station).map(({ arrive, leave }) => [arrive, leave]),
    );

function binsOf({ perMinute }: StationDay): ReadonlyMap<number, number> {
  const bins = new Map<number, number>();
  for (const [minute, counts] of perMinute) {
    const bin = Math.floor(minute / STEP) * STEP;
    bins.set(bin, (bins.get(bin) ?? 0) + Object.values(counts).reduce((sum, count) => sum + count, 0));
  }
  return bins;
}

/** Bars from the foot of a row up, all rows on one scale. */
function outline(bins: ReadonlyMap<number, number>, most: number, x: (time: number) => number): string {
  return [...bins]
    .filter(([, count]) => count > 0)
    .map(([from, count]) => {
      const height = Math.max(1, (count / most) * TALL);
      return `M${x(from).toFixed(1)} 24v-${height.toFixed(1)}H${x(from + STEP).toFixed(1)}v${height.toFixed(1)}Z`;
    })
    .join('');
}

export interface Multiples {
  readonly x: ScaleLinear<number, number>;
  readonly ticks: readonly number[];
  readonly rows: readonly DayRow[];
  /** Arrivals in five minutes that the tallest bar stands for. */
  readonly most: number;
}

export function multiplesOf(day: RaceDay, span: Span, width: number): Multiples {
  const right = Math.max(NAMES + 1, width - RIGHT);
  const x = scaleLinear().domain(span).range([NAMES, right]);
  const all = day.stations.map((station) => ({ station, bins: binsOf(station) }));
  const most = Math.max(1, ...all.flatMap(({ bins }) => [...bins.values()]));
  const rows = all.map(({ station, bins }): DayRow => {
    const { id, crewAt, openFrom, openUntil, packedAt = openUntil } = station;
    return {
      id,
      arrivals: outline(bins, most, x),
      crew: crewAt === null || packedAt === null ? null : [crewAt, packedAt],
      open: openFrom === null || openUntil === null ? null : [openFrom, openUntil],
      drops: stopsAt(day, 'drop', id),
      collections: stopsAt(day, 'collect', id),
      resupply: day.resupply?.find((one) => one.station === id)?.arrives ?? null,
    };
  });
  return { x, ticks: clockTicks(span[0], span[1], right - NAMES, 48), rows, most };
}
