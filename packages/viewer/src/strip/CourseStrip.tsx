/** The course drawn straight from left to right: left-hand side above, right-hand side below. */
import type { Course } from '@halfcup/core/stages';
import { useComputed } from '@preact/signals';
import type { JSX, RefObject } from 'preact';
import { useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import { courseOf, coursesOf } from '../state/view/derive.ts';
import { useStore, type OpenPlan } from '../state/store/store.ts';
import { useWidth } from '../panels/ui/useWidth.ts';
import { Axis } from './Axis.tsx';
import { ClockBar } from './ClockBar.tsx';
import { Crowd, crowdHeight } from './Crowd.tsx';
import { Cursor } from './Cursor.tsx';
import { Elevation } from './Elevation.tsx';
import { Flags } from './Flags.tsx';
import { Grades } from './Grades.tsx';
import { AXIS, FLAGS_Y, LANE, LANES_Y, LINE_Y, MARGIN, RIGHT, viewOf } from './frame.ts';
import { detail, panView, stripScale, zoomView } from './geometry.ts';
import { Ghost } from './Ghost.tsx';
import { Ground } from './Ground.tsx';
import { HeightAxis } from './HeightAxis.tsx';
import { Junctions } from './Junctions.tsx';
import { junctionsOf } from './junctions.ts';
import { Lanes } from './Lanes.tsx';
import { OutAndBack } from './OutAndBack.tsx';
import { stripPassesOf } from './passes.ts';
import { Rings, Stems } from './Rings.tsx';
import { Seen } from './Seen.tsx';
import { SideWords } from './SideWords.tsx';
import { StripItems } from './StripItems.tsx';
import { StripTools } from './StripTools.tsx';

interface Props {
  readonly course: Course;
  readonly open: OpenPlan;
  readonly width: number;
}

/** The wheel zooms about the pointer; sideways, or with Shift, it moves the strip. */
function useWheel(svg: RefObject<SVGSVGElement | null>, course: Course, width: number): void {
  const store = useStore();
  useLayoutEffect(() => {
    const element = svg.current;
    if (element === null) return undefined;
    const wheel = (event: WheelEvent): void => {
      event.preventDefault();
      const view = viewOf(store, course);
      const now = stripScale(view, width, MARGIN, RIGHT);
      const sideways = Math.abs(event.deltaX) > Math.abs(event.deltaY) || event.shiftKey;
      const by = Math.abs(event.deltaX) > Math.abs(event.deltaY) ? event.deltaX : event.deltaY;
      store.stripView.value = sideways
        ? panView(view, (by / width) * (view[1] - view[0]), course)
        : zoomView(
            view,
            now.invert(event.clientX - element.getBoundingClientRect().left),
            Math.exp(event.deltaY * 0.0016),
            course,
          );
    };
    element.addEventListener('wheel', wheel, { passive: false });
    return () => element.removeEventListener('wheel', wheel);
  }, [course, width]);
}

function Chart({ course, open, width }: Props): JSX.Element {
  const store = useStore();
  const svg = useRef<SVGSVGElement>(null);
  const races = open.analysis.spacing.filter((race) => race.course === course.id);
  const clock = useComputed(() => store.clock.value !== null).value;
  const crowdY = LANES_Y + Math.max(1, races.length) * LANE;
  const height = crowdY + (clock ? crowdHeight(open, course.id) : 0) + AXIS + 10;
  const base = height - AXIS;
  const [from, to] = viewOf(store, course);
  const scale = useMemo(() => stripScale([from, to], width, MARGIN, RIGHT), [from, to, width]);
  const passes = stripPassesOf(open)(course.id);
  const [low = 0, high = 1] = scale.range();
  const { maxGrade } = open.analysis.plan.practice;
  const junctions = junctionsOf(open, course.id);
  // Runners take the place of the ground. The same records as long as neither course nor view change: a station that moves draws none of them again.
  const still = useMemo(
    () => (
      <>
        {clock ? null : <Elevation course={course} limit={maxGrade} scale={scale} base={base} />}
        <SideWords top={12} bottom={FLAGS_Y - 12} />
        <Axis scale={scale} y={base} />
        {clock ? null : <HeightAxis course={course} scale={scale} base={base} />}
        <Ground course={course} scale={scale} base={base} junctions={junctions} />
        <Junctions junctions={junctions} scale={scale} />
        <line class="strip-course" x1={low} x2={high} y1={LINE_Y} y2={LINE_Y} />
      </>
    ),
    [course, scale, base, maxGrade, clock, junctions],
  );
  useWheel(svg, course, width);
  return (
    <svg ref={svg} class="strip-chart" width={width} height={height} viewBox={`0 0 ${width} ${height}`}>
      {still}
      <OutAndBack course={course} passes={passes} scale={scale} />
      <Lanes races={races} open={open} scale={scale} />
      {clock ? (
        <Crowd course={course} open={open} passes={passes} scale={scale} y={crowdY} />
      ) : (
        <Grades course={course} passes={passes} scale={scale} base={base} limit={maxGrade} />
      )}
      <Seen passes={passes} scale={scale} />
      <Ghost course={course} passes={passes} scale={scale} />
      <Stems passes={passes} scale={scale} />
      {detail(scale) === 'none' ? null : (
        <StripItems passes={passes} scale={scale} lineY={LINE_Y} words={detail(scale) === 'words'} />
      )}
      <Rings
        course={course}
        passes={passes}
        scale={scale}
        scaleNow={() => stripScale(viewOf(store, course), width, MARGIN, RIGHT)}
      />
      <Flags course={course.id} open={open} passes={passes} scale={scale} />
      <Cursor course={course} scale={scale} bottom={base} junctions={junctions} />
    </svg>
  );
}

export function CourseStrip(): JSX.Element {
  const store = useStore();
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame);
  const open = store.open.value;
  const course = courseOf(open, store.course.value) ?? (open === null ? undefined : coursesOf(open.analysis)[0]);
  // Under the map of a narrow window it has a tab of its own, which folds as a whole.
  const folded = !store.narrow.value && store.folds.value.has('strip');
  return (
    <section class="strip" aria-label="Course strip">
      <StripTools open={open} course={course ?? null} />
      <div ref={frame} class="strip-frame" id="strip-frame" hidden={folded}>
        {open === null || course === undefined || width === 0 ? null : (
          <Chart course={course} open={open} width={width} />
        )}
      </div>
      {open === null ? null : <ClockBar open={open} />}
    </section>
  );
}
