/** The course drawn straight from left to right: left-hand side above, right-hand side below. */
import { formatMeasure, type Course } from '@halfcup/core';
import type { JSX } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { courseOf, coursesOf, keep } from '../state/derive.ts';
import { useStore, type OpenPlan } from '../state/store.ts';
import { useWidth } from '../state/useWidth.ts';
import { Axis } from './Axis.tsx';
import { Cursor } from './Cursor.tsx';
import { Elevation } from './Elevation.tsx';
import { AXIS, LANE, LANES_Y, LINE_Y, MARGIN, viewOf } from './frame.ts';
import { detail, panView, stripPasses, stripScale, wholeView, zoomView, type StripPass } from './geometry.ts';
import { Lanes } from './Lanes.tsx';
import { Rings, Stems } from './Rings.tsx';
import { Seen } from './Seen.tsx';
import { StripItems } from './StripItems.tsx';
import { StripTools } from './StripTools.tsx';
import { useGround } from './useGround.ts';

const passesOf = keep((open: OpenPlan) => {
  const known = new Map<string, StripPass[]>();
  return (course: string): StripPass[] => {
    const passes = known.get(course) ?? stripPasses(open.analysis.stations, course);
    known.set(course, passes);
    return passes;
  };
});

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
      <Stems passes={passes} scale={scale} />
      {detail(scale) === 'none' ? null : <StripItems passes={passes} scale={scale} lineY={LINE_Y} words={detail(scale) === 'words'} />}
      <Rings passes={passes} scale={scale} />
      <Cursor course={course} scale={scale} bottom={base} />
    </svg>
  );
}

export function CourseStrip(): JSX.Element {
  const store = useStore();
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame);
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
