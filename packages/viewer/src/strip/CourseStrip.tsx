/** The course drawn straight from left to right: left-hand side above, right-hand side below. */
import type { Course, Leg, RaceSpacing } from '@halfcup/core';
import { formatMeasure } from '@halfcup/core';
import { area } from 'd3-shape';
import type { JSX } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { chooseStation } from '../state/actions.ts';
import { aboutLeg, courseOf, coursesOf, isOpen, keep, samplesOf } from '../state/derive.ts';
import { useStore, type OpenPlan, type Store } from '../state/store.ts';
import { longFigure } from '../words.ts';
import { axisTicks, detail, legLabels, panView, profile, rings, stripPasses, stripScale, wholeView, zoomView, fitView, type StripPass, type StripScale, type View } from './geometry.ts';
import { StripItems } from './StripItems.tsx';
import { StripTools } from './StripTools.tsx';

const MARGIN = 18;
const GAP = 22;
const LEVELS = 2;
/** From the top: rings on the left, the course, rings on the right, one lane for each race, the axis. */
const LINE_Y = 62;
const LANES_Y = 128;
const LANE = 19;
const AXIS = 22;

const passesOf = keep((open: OpenPlan) => {
  const known = new Map<string, StripPass[]>();
  return (course: string): StripPass[] => {
    const passes = known.get(course) ?? stripPasses(open.analysis.stations, course);
    known.set(course, passes);
    return passes;
  };
});

const viewOf = (store: Store, course: Course): View => (store.stripView.value === null ? wholeView(course) : fitView(store.stripView.value, course));

function Elevation({ course, scale, base }: { readonly course: Course; readonly scale: StripScale; readonly base: number }): JSX.Element | null {
  const drawn = profile(samplesOf(course), scale);
  if (drawn === null) return null;
  const span = Math.max(20, drawn.high - drawn.low);
  const path = area<readonly [number, number]>()
    .x(([x]) => x)
    .y0(base)
    .y1(([, height]) => base - 8 - ((height - drawn.low) / span) * 54)(drawn.points as [number, number][]);
  return <path class="strip-elevation" d={path ?? ''} />;
}

function Lanes({ races, open, scale }: { readonly races: readonly RaceSpacing[]; readonly open: OpenPlan; readonly scale: StripScale }): JSX.Element {
  const { units } = useStore();
  const [low = 0] = scale.range();
  const flagOf = (race: RaceSpacing, leg: Leg): string => {
    const found = open.findings.find((finding) => isOpen(finding) && aboutLeg(finding) && finding.severity !== 'note' && finding.where.race === race.race && finding.where.measure === leg.end);
    return found === undefined ? '' : `flag-${found.severity}`;
  };
  return (
    <g aria-hidden="true">
      {races.map((race, index) => {
        const y = LANES_Y + index * LANE + LANE / 2;
        return (
          <g key={race.race} class="strip-lane">
            {legLabels(race.legs, scale, (length) => longFigure(length, units.value)).map(({ x, from, to, text, leg }) => (
              <g key={`${leg.from}-${leg.end}`}>
                <path d={`M${from.toFixed(1)} ${y + 4}v3h${(to - from).toFixed(1)}v-3`} />
                {text === '' ? null : <text class={flagOf(race, leg)} x={x} y={y + 3} text-anchor="middle">{text}</text>}
              </g>
            ))}
            <text class="strip-lane-name" x={low} y={y - 7}>{races.length > 1 ? (open.analysis.plan.races.find((one) => one.id === race.race)?.name ?? '') : ''}</text>
          </g>
        );
      })}
    </g>
  );
}

function Axis({ scale, y }: { readonly scale: StripScale; readonly y: number }): JSX.Element {
  const { units } = useStore();
  const [low = 0, high = 1] = scale.range();
  return (
    <g class="strip-axis" aria-hidden="true">
      <line x1={low} x2={high} y1={y} y2={y} />
      {axisTicks(scale, units.value).map((tick) => (
        <g key={tick.label}>
          <line x1={tick.x} x2={tick.x} y1={y} y2={y + 4} />
          <text x={tick.x} y={y + 16} text-anchor={tick.x < low + 12 ? 'start' : tick.x > high - 20 ? 'end' : 'middle'}>{tick.label}</text>
        </g>
      ))}
    </g>
  );
}

const away = (side: StripPass['side']): -1 | 0 | 1 => (side === 'left' ? -1 : side === 'right' ? 1 : 0);

function Rings({ passes, scale }: { readonly passes: readonly StripPass[]; readonly scale: StripScale }): JSX.Element {
  const store = useStore();
  const selected = store.selected.value;
  const room = detail(scale);
  const near = room === 'none' ? 24 : 46;
  const press = (id: string) => (event: KeyboardEvent) => {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    event.preventDefault();
    chooseStation(store, id);
  };
  return (
    <>
      {rings(passes, scale, GAP, LEVELS).map(({ pass, x, level }) => {
        const sign = away(pass.side);
        const y = LINE_Y + sign * (near + level * (room === 'none' ? 21 : 0));
        const label = `Station ${pass.number}, ${pass.name}, ${formatMeasure(pass.measure, store.units.value)}, ${pass.side === 'unclear' ? 'side unclear' : `${pass.side}-hand side`}`;
        return (
          <g
            key={`${pass.id}-${pass.measure}`}
            class={`strip-ring${pass.id === selected ? ' picked' : ''}${sign === 0 ? ' unclear' : ''}`}
            role="button"
            tabindex={0}
            aria-label={label}
            aria-pressed={pass.id === selected}
            onClick={() => chooseStation(store, pass.id)}
            onKeyDown={press(pass.id)}
          >
            <title>{label}</title>
            <line x1={x} x2={x} y1={LINE_Y} y2={y - sign * 9} />
            <circle class="strip-touch" cx={x} cy={y} r={12} />
            <circle cx={x} cy={y} r={9} />
            <text x={x} y={y + 4} text-anchor="middle">{pass.number}</text>
            {room === 'none' ? null : <text class="strip-name" x={x + 13} y={y + 4}>{pass.name}</text>}
          </g>
        );
      })}
    </>
  );
}

/** Passes that are merely seen: a short tick across the course. */
const Seen = ({ passes, scale }: { readonly passes: readonly StripPass[]; readonly scale: StripScale }): JSX.Element => {
  const [low = 0, high = 0] = scale.range();
  return (
    <g class="strip-seen" aria-hidden="true">
      {passes
        .filter((pass) => !pass.served && scale(pass.measure) >= low && scale(pass.measure) <= high)
        .map((pass) => {
          const sign = away(pass.side);
          const x = scale(pass.measure);
          return (
            <g key={`${pass.id}-${pass.measure}`}>
              <line x1={x} x2={x} y1={LINE_Y} y2={LINE_Y + (sign === 0 ? 8 : sign * 10)} />
              <text x={x} y={LINE_Y + (sign === -1 ? -14 : 22)} text-anchor="middle">({pass.number})</text>
            </g>
          );
        })}
    </g>
  );
};

function Cursor({ course, scale, bottom }: { readonly course: Course; readonly scale: StripScale; readonly bottom: number }): JSX.Element | null {
  const { cursor, units } = useStore();
  const place = cursor.value;
  if (place === null || place.course !== course.id) return null;
  const x = scale(place.measure);
  const [low = 0, high = 0] = scale.range();
  if (x < low - 1 || x > high + 1) return null;
  const end = x > high - 80;
  return (
    <g class="strip-cursor" aria-hidden="true">
      <line x1={x} x2={x} y1={4} y2={bottom} />
      <text x={end ? x - 5 : x + 5} y={13} text-anchor={end ? 'end' : 'start'}>{formatMeasure(place.measure, units.value)}</text>
    </g>
  );
}

/** Pointing, dragging, wheel and keys on the strip's ground. */
function useGround(store: Store, course: Course, scale: StripScale): JSX.IntrinsicElements['rect'] {
  const drag = useRef<{ readonly x: number; readonly view: View } | null>(null);
  const view = viewOf(store, course);
  const [low = 0, high = 1] = scale.range();
  const inside = (measure: number): number => Math.min(Math.max(measure, 0), wholeView(course)[1]);
  const measureAt = (event: MouseEvent): number => inside(scale.invert(event.clientX - (event.currentTarget as SVGRectElement).ownerSVGElement!.getBoundingClientRect().left));
  const put = (measure: number): void => {
    store.cursor.value = { course: course.id, measure };
    if (measure < view[0] || measure > view[1]) store.stripView.value = panView(view, measure < view[0] ? measure - view[0] : measure - view[1], course);
  };
  const here = store.cursor.value?.course === course.id ? store.cursor.value.measure : (view[0] + view[1]) / 2;
  const keys: Readonly<Record<string, () => void>> = {
    ArrowLeft: () => put(inside(here - (view[1] - view[0]) / 100)),
    ArrowRight: () => put(inside(here + (view[1] - view[0]) / 100)),
    PageDown: () => put(inside(here - (view[1] - view[0]) / 10)),
    PageUp: () => put(inside(here + (view[1] - view[0]) / 10)),
    Home: () => put(0),
    End: () => put(wholeView(course)[1]),
    '+': () => void (store.stripView.value = zoomView(view, here, 0.5, course)),
    '=': () => void (store.stripView.value = zoomView(view, here, 0.5, course)),
    '-': () => void (store.stripView.value = zoomView(view, here, 2, course)),
    '0': () => void (store.stripView.value = null),
    Enter: () => void (store.destination.value = { kind: 'place', course: course.id, measure: here, at: null }),
  };
  return {
    onPointerDown: (event) => {
      drag.current = { x: event.clientX, view };
      (event.currentTarget as SVGRectElement).setPointerCapture(event.pointerId);
    },
    onPointerMove: (event) => {
      const from = drag.current;
      if (from === null) store.cursor.value = { course: course.id, measure: measureAt(event) };
      else if (store.stripView.value !== null) store.stripView.value = panView(from.view, ((from.x - event.clientX) / (high - low)) * (from.view[1] - from.view[0]), course);
    },
    onPointerUp: () => void (drag.current = null),
    onPointerLeave: () => void (store.cursor.value = null),
    onDblClick: (event) => void (store.stripView.value = zoomView(view, measureAt(event), 0.4, course)),
    onKeyDown: (event) => {
      const act = keys[event.key];
      if (act === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
      event.preventDefault();
      act();
    },
  };
}

function Chart({ course, open, width }: { readonly course: Course; readonly open: OpenPlan; readonly width: number }): JSX.Element {
  const store = useStore();
  const svg = useRef<SVGSVGElement>(null);
  const races = open.analysis.spacing.filter((race) => race.course === course.id);
  const height = LANES_Y + Math.max(1, races.length) * LANE + AXIS + 10;
  const base = height - AXIS;
  const scale = stripScale(viewOf(store, course), width, MARGIN);
  const passes = passesOf(open)(course.id);
  const ground = useGround(store, course, scale);
  const [low = 0, high = 1] = scale.range();
  const cursor = store.cursor.value;
  const here = cursor?.course === course.id ? cursor.measure : (scale.domain()[0] ?? 0);
  useLayoutEffect(() => {
    const element = svg.current;
    if (element === null) return undefined;
    const wheel = (event: WheelEvent): void => {
      event.preventDefault();
      const view = viewOf(store, course);
      const now = stripScale(view, width, MARGIN);
      const sideways = Math.abs(event.deltaX) > Math.abs(event.deltaY) || event.shiftKey;
      const by = Math.abs(event.deltaX) > Math.abs(event.deltaY) ? event.deltaX : event.deltaY;
      store.stripView.value = sideways
        ? panView(view, (by / width) * (view[1] - view[0]), course)
        : zoomView(view, now.invert(event.clientX - element.getBoundingClientRect().left), Math.exp(event.deltaY * 0.0016), course);
    };
    element.addEventListener('wheel', wheel, { passive: false });
    return () => element.removeEventListener('wheel', wheel);
  }, [course, width]);
  return (
    <svg ref={svg} class="strip-chart" width={width} height={height} viewBox={`0 0 ${width} ${height}`}>
      <Elevation course={course} scale={scale} base={base} />
      <Lanes races={races} open={open} scale={scale} />
      <Axis scale={scale} y={base} />
      <rect
        class="strip-ground"
        x={low}
        y={0}
        width={high - low}
        height={base}
        role="slider"
        tabindex={0}
        aria-label={`Place on ${course.name}`}
        aria-valuemin={0}
        aria-valuemax={Math.round(wholeView(course)[1])}
        aria-valuenow={Math.round(here)}
        aria-valuetext={formatMeasure(here, store.units.value)}
        {...ground}
      />
      <line class="strip-course" x1={low} x2={high} y1={LINE_Y} y2={LINE_Y} />
      <Seen passes={passes} scale={scale} />
      {detail(scale) === 'none' ? null : <StripItems passes={passes} scale={scale} lineY={LINE_Y} words={detail(scale) === 'words'} />}
      <Rings passes={passes} scale={scale} />
      <Cursor course={course} scale={scale} bottom={base} />
    </svg>
  );
}

export function CourseStrip(): JSX.Element {
  const store = useStore();
  const frame = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = frame.current;
    if (element === null) return undefined;
    setWidth(element.clientWidth);
    const observer = new ResizeObserver(() => setWidth(element.clientWidth));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  const open = store.open.value;
  const course = courseOf(open, store.course.value) ?? (open === null ? undefined : coursesOf(open.analysis)[0]);
  return (
    <section class="strip" aria-label="Course strip">
      <StripTools open={open} course={course ?? null} />
      <div ref={frame} class="strip-frame">
        {open === null || course === undefined || width === 0 ? null : <Chart course={course} open={open} width={width} />}
      </div>
    </section>
  );
}
