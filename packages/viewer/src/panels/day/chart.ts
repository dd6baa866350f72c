/**
 * The chart of arrivals as geometry: clock bins, stacked outlines and ticks, in pixels.
 * Times are seconds after midnight and may pass 24 hours; nothing here knows the page.
 */
import type { StationDay } from '@halfcup/core';
import { scaleLinear, type ScaleLinear } from 'd3-scale';

/** Above this span of arrivals one minute is too thin to draw. */
const LONG_SPAN = 3 * 3600;

/** Clock steps that people count in, minutes. */
const CLOCK_STEPS = [1, 2, 5, 10, 15, 30, 60, 120, 180, 240, 360, 720, 1440] as const;

/** Arrivals within one clock step. */
export interface Bin {
  readonly from: number;
  /** In the order of the races asked for. */
  readonly counts: readonly number[];
}

export interface Bins {
  /** Seconds: 60, or 300 where arrivals span more than three hours. */
  readonly step: 60 | 300;
  /** Ascending, without gaps: a step in which nobody arrives counts 0. */
  readonly bins: readonly Bin[];
}

/** Arrivals by clock step from the first minute to the last, each race apart. */
export function arrivalBins(perMinute: StationDay['perMinute'], races: readonly string[]): Bins {
  const first = perMinute[0]?.[0];
  const last = perMinute.at(-1)?.[0];
  if (first === undefined || last === undefined) return { step: 60, bins: [] };
  const step = last + 60 - first > LONG_SPAN ? 300 : 60;
  const from = Math.floor(first / step);
  const bins = Array.from({ length: Math.floor(last / step) - from + 1 }, (_, at) => ({
    from: (from + at) * step,
    counts: races.map(() => 0),
  }));
  for (const [minute, counts] of perMinute) {
    const bin = bins[Math.floor(minute / step) - from];
    for (const [at, race] of races.entries())
      if (bin !== undefined) bin.counts[at] = (bin.counts[at] ?? 0) + (counts[race] ?? 0);
  }
  return { step, bins };
}

export interface ChartFrame {
  readonly width: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface ArrivalsGeometry {
  readonly x: ScaleLinear<number, number>;
  readonly y: ScaleLinear<number, number>;
  readonly step: 60 | 300;
  /** Closed outlines, one for each race in the order asked for, each standing on those before it; empty where nobody of it comes. */
  readonly outlines: readonly string[];
  readonly clockTicks: readonly number[];
  readonly countTicks: readonly number[];
}

const sum = (counts: readonly number[]): number => counts.reduce((all, one) => all + one, 0);

/** Clock times on the smallest round step that leaves `room` pixels between them; from and to in seconds. */
export function clockTicks(from: number, to: number, pixels: number, room: number): number[] {
  const most = Math.max(1, Math.floor(pixels / room));
  const step = 60 * (CLOCK_STEPS.find((minutes) => (to - from) / (minutes * 60) <= most) ?? 1440);
  const first = Math.ceil(from / step);
  return Array.from({ length: Math.max(0, Math.floor(to / step) - first + 1) }, (_, at) => (first + at) * step);
}

/** One race's bars as a path, standing on the races before it; neighbouring bars share their outline. */
function outline(
  { bins, step }: Bins,
  race: number,
  x: (time: number) => number,
  y: (count: number) => number,
): string {
  const parts: string[] = [];
  let top: string[] = [];
  let base: string[] = [];
  const close = (): void => {
    if (top.length > 0) parts.push(`M${[...top, ...base.toReversed()].join('L')}Z`);
    top = [];
    base = [];
  };
  for (const { from, counts } of bins) {
    const count = counts[race] ?? 0;
    if (count === 0) {
      close();
      continue;
    }
    const below = sum(counts.slice(0, race));
    const [left, right] = [x(from).toFixed(2), x(from + step).toFixed(2)];
    const [foot, head] = [y(below).toFixed(2), y(below + count).toFixed(2)];
    top.push(`${left},${head}`, `${right},${head}`);
    base.push(`${left},${foot}`, `${right},${foot}`);
  }
  close();
  return parts.join('');
}

/** The whole chart; `since` (seconds) is a time before the first arrival that shall be seen as well, or `null`. */
export function arrivalsGeometry(bins: Bins, races: number, since: number | null, frame: ChartFrame): ArrivalsGeometry {
  const first = bins.bins[0]?.from ?? 0;
  const end = (bins.bins.at(-1)?.from ?? 0) + bins.step;
  const from = since === null ? first : Math.min(first, since);
  const right = Math.max(frame.left + 1, frame.width - frame.right);
  const x = scaleLinear().domain([from, end]).range([frame.left, right]);
  const tallest = Math.max(1, ...bins.bins.map(({ counts }) => sum(counts)));
  const y = scaleLinear().domain([0, tallest]).nice(4).range([frame.bottom, frame.top]);
  return {
    x,
    y,
    step: bins.step,
    outlines: Array.from({ length: races }, (_, race) => outline(bins, race, x, y)),
    clockTicks: clockTicks(from, end, right - frame.left, 52),
    countTicks: y.ticks(4).filter(Number.isInteger),
  };
}
