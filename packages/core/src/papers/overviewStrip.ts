/**
 * One course drawn straight: ground in grey, stations in rings on their side with a stem to the line, distance
 * marks, and for each race the length of every leg between the stations that it is served at.
 */
import { type Course, courseLength, startMeasure } from '../course/course.ts';
import { elevationAt } from '../course/locate.ts';
import type { Layout, StationLayout } from '../layout/layout.ts';
import { nameById } from '../plan/lookups.ts';
import type { Units } from '../plan/plan.ts';
import type { RaceSpacing } from '../station/station.ts';
import { formatLength } from '../format.ts';
import { lengthIn, metres } from '../units.ts';
import type { SheetText } from '../text/sheetText.ts';
import { shortened } from './frame.ts';
import { type Html, html } from './html.ts';
import { ring } from './overviewMap.ts';
import { numberOf } from '../layout/layout.ts';
import { mm, svgFrame, svgPath, svgText, through } from './svg.ts';
import { POINT, textWidth } from './textBox.ts';

export interface Strip {
  readonly svg: Html;
  /** Millimetres. */
  readonly height: number;
  /** Lowest and highest ground, metres; `null` without elevations. */
  readonly ground: readonly [number, number] | null;
}

interface Called {
  readonly number: number;
  readonly id: string;
  readonly side: 'left' | 'right' | 'unclear';
  readonly measure: number;
}

const SIZE = 9;
const GUTTER = 33;
const LEVEL = 6.2;
const ROW = 3.9;

/** Served passes of a course, one where races share it, in running order. */
export function calledAt(stations: readonly StationLayout[], course: string): Called[] {
  const all = stations.flatMap((station) =>
    station.passes.flatMap((pass, k): Called[] => {
      if (pass.course !== course || !pass.served) return [];
      const { side } = station.directions.find(({ passes }) => passes.includes(k))!;
      return [{ number: numberOf(station), id: station.id, side, measure: pass.measure }];
    }),
  );
  const ordered = all.sort((a, b) => a.measure - b.measure);
  return ordered.filter(
    (one, k) =>
      !ordered.slice(0, k).some((before) => before.id === one.id && Math.abs(before.measure - one.measure) < 1),
  );
}

/** The strip of a course, so many millimetres wide. */
export function courseStrip(
  { stations, spacing, plan }: Layout,
  course: Course,
  width: number,
  text: SheetText,
): Strip {
  const [start, end] = [startMeasure(course), courseLength(course)];
  const x = (measure: number): number => GUTTER + ((measure - start) / (end - start)) * (width - GUTTER - 5);
  const called = levelled(calledAt(stations, course.id), x);
  const up = Math.max(0, ...called.filter(({ side }) => side === 'left').map(({ level }) => level + 1));
  const down = Math.max(0, ...called.filter(({ side }) => side !== 'left').map(({ level }) => level + 1));
  const line = Math.max(up * LEVEL + 5, 12);
  const axis = line + Math.max(down * LEVEL + 5, 6);
  const lanes = lanesOf(
    spacing.filter((race) => race.course === course.id),
    plan,
    x,
    axis + 6,
  );
  const height = lanes.bottom + 1;
  const ground = profileOf(course, start, end);
  const content = [
    ground === null ? html`` : svgPath(area(ground, x, 1.5, axis), 'fill="#dcdcdc"'),
    ...(ground === null ? [] : heightMarks(ground, axis, plan.units)),
    svgPath(`M${mm(x(start))} ${mm(line)}H${mm(x(end))}`, 'stroke="#000" stroke-width="0.8"'),
    ...called.map((one) => {
      const y = line + (one.side === 'left' ? -1 : 1) * (one.level * LEVEL + 5);
      return html`<g data-station="${one.id}">${svgPath(`M${mm(x(one.measure))} ${mm(line)}V${mm(y)}`, 'stroke="#000" stroke-width="0.35"')}${ring(x(one.measure), y, one.number, one.side === 'unclear')}</g>`;
    }),
    ...axisMarks(start, end, plan.units, x, axis),
    ...lanes.drawn,
  ];
  return {
    svg: svgFrame(width, height, text.lists.overview.strip(course.name), content, 'strip'),
    height,
    ground: ground === null ? null : [Math.min(...ground.map(([, z]) => z)), Math.max(...ground.map(([, z]) => z))],
  };
}

/** The scale of the ground at its left: lowest and highest. */
function heightMarks(ground: readonly Sample[], foot: number, units: Units): Html[] {
  const heights = ground.map(([, z]) => z);
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const y = (z: number): number => foot - 1 - ((z - low) / Math.max(high - low, 20)) * (foot - 1 - 1.5);
  const mark = (z: number, base: number): Html =>
    html`${svgPath(`M${mm(GUTTER - 1.2)} ${mm(y(z))}h1.2`, 'stroke="#000" stroke-width="0.3"')}${svgText(GUTTER - 1.8, base, formatLength(z, units, 'table', 0), { points: SIZE, anchor: 'end' })}`;
  const [top, bottom] = [y(high), y(low)];
  // Two figures that would touch are one: the ground is flat.
  const marks = bottom - top < SIZE * POINT ? [mark(low, bottom)] : [mark(high, top + 2.4), mark(low, bottom)];
  return [svgPath(`M${mm(GUTTER)} ${mm(top)}V${mm(bottom)}`, 'stroke="#000" stroke-width="0.3"'), ...marks];
}

/** Rings that would lie on one another go a level out. */
function levelled(called: readonly Called[], x: (measure: number) => number): (Called & { readonly level: number })[] {
  const last = new Map<string, number>();
  return called.map((one) => {
    const side = one.side === 'left' ? 'left' : 'right';
    let level = 0;
    while (x(one.measure) - (last.get(`${side}${level}`) ?? -Infinity) < 6) level++;
    last.set(`${side}${level}`, x(one.measure));
    return { ...one, level };
  });
}

type Sample = readonly [measure: number, elevation: number];

/** Elevations at 240 places; `null` where the course has none. */
function profileOf(course: Course, start: number, end: number): Sample[] | null {
  if (course.ele === null) return null;
  const samples = Array.from({ length: 241 }, (_, k) => start + ((end - start) * k) / 240).flatMap(
    (measure): Sample[] => {
      const elevation = elevationAt(course, measure);
      return elevation === null || !Number.isFinite(elevation) ? [] : [[measure, elevation]];
    },
  );
  return samples.length < 2 ? null : samples;
}

function area(samples: readonly Sample[], x: (measure: number) => number, top: number, foot: number): string {
  const heights = samples.map(([, z]) => z);
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const y = (z: number): number => foot - 1 - ((z - low) / Math.max(high - low, 20)) * (foot - 1 - top);
  const [first, last] = [samples[0]!, samples.at(-1)!];
  return `${through(samples.map(([measure, z]) => [x(measure), y(z)]))}L${mm(x(last[0]))} ${mm(foot)}L${mm(x(first[0]))} ${mm(foot)}Z`;
}

const MOST_TICKS = 500;

/** A tick each km or mile, a figure as often as there is room. */
function axisMarks(start: number, end: number, units: Units, x: (measure: number) => number, y: number): Html[] {
  const unit = units === 'metric' ? 'km' : 'mi';
  const step = metres(1, unit);
  const every = [1, 5, 10, 20, 50, 100].find((count) => x(start + count * step) - x(start) >= 7.5) ?? 200;
  const first = Math.ceil(lengthIn(start, unit) - 1e-9);
  // Past some hundreds the ticks without a figure would be one grey bar.
  const least = (end - start) / step > MOST_TICKS ? every : 1;
  const numbers = Array.from({ length: Math.floor(lengthIn(end, unit)) - first + 1 }, (_, k) => first + k).filter(
    (number) => number % least === 0,
  );
  const foot = svgPath(`M${mm(x(start))} ${mm(y)}H${mm(x(end))}`, 'stroke="#000" stroke-width="0.3"');
  return [
    foot,
    svgText(GUTTER - 2, y + 4.2, unit, { points: SIZE, anchor: 'end' }),
    ...numbers.flatMap((number) => {
      const at = x(number * step);
      const long = number % every === 0;
      return [
        svgPath(`M${mm(at)} ${mm(y)}v${long ? 1.3 : 0.7}`, 'stroke="#000" stroke-width="0.3"'),
        ...(long ? [svgText(at, y + 4.2, String(number), { points: SIZE, anchor: 'middle' })] : []),
      ];
    }),
  ];
}

interface Lanes {
  readonly drawn: readonly Html[];
  readonly bottom: number;
}

/** A lane a race: ticks where it is served, the length of each leg between; figures that would touch go a row down. */
function lanesOf(
  races: readonly RaceSpacing[],
  { races: named, units }: Layout['plan'],
  x: (measure: number) => number,
  top: number,
): Lanes {
  const drawn: Html[] = [];
  let y = top;
  for (const { race, legs } of races) {
    const name = nameById(named, race);
    const ends = legs.map(({ end }) => x(end));
    const starts = legs.map(({ end, length }) => x(end - length));
    drawn.push(
      svgText(0, y + 1.1, `${fitted(name, GUTTER - 9)}, ${units === 'metric' ? 'km' : 'mi'}`, { points: SIZE }),
    );
    drawn.push(
      svgPath(
        `M${mm(starts[0]!)} ${mm(y)}H${mm(ends.at(-1)!)}${[starts[0]!, ...ends].map((at) => `M${mm(at)} ${mm(y - 1)}v2`).join('')}`,
        'stroke="#000" stroke-width="0.35"',
      ),
    );
    const last: number[] = [];
    for (const [k, { length }] of legs.entries()) {
      const shown = formatLength(length, units, 'long').split(' ')[0]!;
      const half = textWidth(shown, SIZE) / 2;
      const middle = Math.max(GUTTER + half, (starts[k]! + ends[k]!) / 2);
      let row = 0;
      while ((last[row] ?? -Infinity) > middle - half - 1) row++;
      last[row] = middle + half;
      drawn.push(
        svgText(middle, y + 1.2 + SIZE * POINT * 0.8 + row * ROW, shown, {
          points: SIZE,
          anchor: 'middle',
          data: html` data-leg="${race}"`,
        }),
      );
    }
    y += 2.2 + Math.max(1, last.length) * ROW + 1;
  }
  return { drawn, bottom: y - 1 };
}

/** A name cut to a width in millimetres. */
function fitted(name: string, width: number): string {
  let most = Array.from(name).length;
  while (most > 1 && textWidth(shortened(name, most), SIZE) > width) most--;
  return shortened(name, most);
}
