/** The course strip's geometry: what stands where along one course, and what there is room to draw. Pure. */
import type { Item, LaidDirection, Leg, StationLayout } from '@halfcup/core';
import type { Units } from '@halfcup/core/plan';
import type { Course } from '@halfcup/core/stages';
import { lengthIn } from '@halfcup/core/units';
import { courseLength } from '@halfcup/core/geometry';
import { bisector } from 'd3-array';
import type { ScaleLinear } from 'd3-scale';
import { scaleLinear } from 'd3-scale';
import { numberOf, type Samples } from '../state/view/derive.ts';

export type View = readonly [from: number, to: number];
export type StripScale = ScaleLinear<number, number>;

/** Nobody needs less of the course across the whole strip, metres. */
export const CLOSEST = 60;

export const wholeView = (course: Course): View => [0, Math.max(CLOSEST, courseLength(course))];

/** Inside the course, no closer than CLOSEST, keeping the width where it only has to be moved. */
export function fitView([from, to]: View, course: Course): View {
  const [, length] = wholeView(course);
  const width = Math.min(length, Math.max(CLOSEST, to - from));
  const start = Math.min(Math.max(0, (from + to) / 2 - width / 2), length - width);
  return [start, start + width];
}

/** Zooms about a measure that stays where it is; a factor under 1 comes closer. */
export const zoomView = ([from, to]: View, about: number, factor: number, course: Course): View =>
  fitView([about - (about - from) * factor, about + (to - about) * factor], course);

export const panView = ([from, to]: View, by: number, course: Course): View => fitView([from + by, to + by], course);

export const stripScale = (view: View, width: number, margin: number, right: number = margin): StripScale =>
  scaleLinear()
    .domain(view)
    .range([margin, Math.max(margin + 1, width - right)]);

/** Up on the strip for the left-hand side, down for the right-hand side, neither where it is unclear. */
export const awayOf = (side: 'left' | 'right' | 'unclear'): -1 | 0 | 1 =>
  side === 'left' ? -1 : side === 'right' ? 1 : 0;

export interface StripItem {
  readonly kind: Item['kind'];
  readonly from: number;
  readonly to: number;
  readonly side: 'left' | 'right';
  readonly boxes: readonly number[];
}

export interface StripPass {
  readonly id: string;
  /** Which of the station's passes by this course, in running order, from 0: it keeps its number while it moves. */
  readonly nth: number;
  readonly number: number;
  readonly name: string;
  readonly measure: number;
  readonly side: 'left' | 'right' | 'unclear';
  readonly served: boolean;
  readonly items: readonly StripItem[];
}

const shifted = (item: Item, by: number): StripItem[] =>
  item.side === 'unclear'
    ? []
    : [
        {
          kind: item.kind,
          from: item.from + by,
          to: item.to + by,
          side: item.side,
          boxes: (item.boxes ?? []).map((box) => box.measure + by),
        },
      ];

function directionOf(station: StationLayout, pass: number): LaidDirection | undefined {
  return station.directions.find((direction) => direction.passes.includes(pass));
}

/** Passes of every station by one course, in running order; races that share the course give one. */
export function stripPasses(stations: readonly StationLayout[], courseId: string): StripPass[] {
  const all = stations.flatMap((station) =>
    station.passes.flatMap((pass, index): StripPass[] => {
      if (pass.course !== courseId) return [];
      const direction = directionOf(station, index);
      const items =
        direction === undefined || !pass.served
          ? []
          : direction.items.flatMap((item) => shifted(item, pass.measure - direction.measure));
      const side = direction !== undefined && pass.served ? direction.side : pass.side;
      return [
        {
          id: station.id,
          nth: 0,
          number: numberOf(station),
          name: station.name,
          measure: pass.measure,
          side,
          served: pass.served,
          items,
        },
      ];
    }),
  );
  const ordered = all.toSorted((a, b) => a.measure - b.measure || Number(b.served) - Number(a.served));
  const single = ordered.filter(
    (pass, index) =>
      !ordered
        .slice(0, index)
        .some(
          (before) =>
            before.id === pass.id && Math.abs(before.measure - pass.measure) < 1 && before.served >= pass.served,
        ),
  );
  const counts = new Map<string, number>();
  return single.map((pass) => {
    const nth = counts.get(pass.id) ?? 0;
    counts.set(pass.id, nth + 1);
    return { ...pass, nth };
  });
}

/** A pass for as long as its station is there, wherever it moves. */
export const passKey = ({ id, nth }: StripPass): string => `${id}#${nth}`;

export interface Ring {
  readonly pass: StripPass;
  readonly x: number;
  /** 0 nearest to the course; more where rings would cover each other. */
  readonly level: number;
}

/** One ring for each served pass in view; neighbours on the same side closer than `gap` pixels go one level up. */
export function rings(passes: readonly StripPass[], scale: StripScale, gap: number, levels: number): Ring[] {
  const [low = 0, high = 0] = scale.range();
  const lastAt = new Map<string, number>();
  const placed: Ring[] = [];
  for (const pass of passes) {
    const x = scale(pass.measure);
    if (!pass.served || x < low - 1 || x > high + 1) continue;
    const free = Array.from({ length: levels }, (_, level) => level).find(
      (level) => x - (lastAt.get(`${pass.side}${level}`) ?? Number.NEGATIVE_INFINITY) >= gap,
    );
    const level = free ?? levels - 1;
    lastAt.set(`${pass.side}${level}`, x);
    placed.push({ pass, x, level });
  }
  return placed;
}

/** How much of the items there is room for: none, their shapes, or their words as well. */
export function detail(scale: StripScale): 'none' | 'shapes' | 'words' {
  const [from = 0, to = 1] = scale.domain();
  const [low = 0, high = 1] = scale.range();
  const metresAPixel = (to - from) / (high - low);
  return metresAPixel > 4 ? 'none' : metresAPixel > 0.42 ? 'shapes' : 'words';
}

export interface LegLabel {
  readonly x: number;
  readonly text: string;
  readonly from: number;
  readonly to: number;
  readonly leg: Leg;
}

/** Legs of a race in view, each with its length where that fits between its ends. */
export function legLabels(legs: readonly Leg[], scale: StripScale, text: (length: number) => string): LegLabel[] {
  const [low = 0, high = 0] = scale.range();
  return legs.flatMap((leg) => {
    const from = Math.max(low, scale(leg.end - leg.length));
    const to = Math.min(high, scale(leg.end));
    if (to - from < 1) return [];
    const figure = text(leg.length);
    return [{ x: (from + to) / 2, from, to, leg, text: to - from > figure.length * 6 + 4 ? figure : '' }];
  });
}

export interface AxisTick {
  readonly x: number;
  readonly label: string;
}

const UNIT = { metric: 'km', imperial: 'mi' } as const;

/** Round course distances in the units chosen; the first carries the unit. */
export function axisTicks(scale: StripScale, units: Units): AxisTick[] {
  const unit = UNIT[units];
  const [from = 0, to = 1] = scale.domain();
  const [low = 0, high = 1] = scale.range();
  const local = scaleLinear()
    .domain([lengthIn(from, unit), lengthIn(to, unit)])
    .range([low, high]);
  const count = Math.max(2, Math.floor((high - low) / 84));
  const format = local.tickFormat(count, 'f');
  const values = local.ticks(count);
  const step = (values[1] ?? 1) - (values[0] ?? 0);
  const decimals = Math.max(0, Math.min(3, Math.ceil(-Math.log10(Math.max(step, 1e-3)) - 1e-9)));
  return values.map((value) => ({
    x: local(value),
    label: `${decimals === 0 ? format(value).replace(/\.0+$/u, '') : value.toFixed(decimals)} ${unit}`,
  }));
}

export interface Profile {
  readonly points: readonly (readonly [x: number, elevation: number])[];
  readonly low: number;
  readonly high: number;
}

const byMeasure = bisector((value: number) => value);

/** The elevation in view at about one point every two pixels, and its range over the whole course. */
export function profile(samples: Samples, scale: StripScale): Profile | null {
  const { elevation, measure } = samples;
  if (elevation === null) return null;
  const [from = 0, to = 1] = scale.domain();
  const first = Math.max(0, byMeasure.left(measure, from) - 1);
  const last = Math.min(measure.length - 1, byMeasure.right(measure, to));
  const [low = 0, high = 1] = scale.range();
  const step = Math.max(1, Math.floor((last - first) / Math.max(1, (high - low) / 2)));
  const points: [number, number][] = [];
  for (let index = first; index <= last; index += step)
    points.push([clamp(scale(measure[index] ?? 0), low, high), elevation[index] ?? 0]);
  const end = points.at(-1);
  if (end !== undefined && end[0] < high)
    points.push([clamp(scale(measure[last] ?? 0), low, high), elevation[last] ?? 0]);
  return { points, low: Math.min(...elevation), high: Math.max(...elevation) };
}

const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));
