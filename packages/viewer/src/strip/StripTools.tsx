/** Above the strip: which course it shows, and how closely. */
import type { Course } from '@halfcup/core/stages';
import { useComputed } from '@preact/signals';
import type { JSX } from 'preact';
import { setClock, spanOf, turnOff } from '../state/view/clock.ts';
import { coursesOf } from '../state/view/derive.ts';
import { useStore, type OpenPlan } from '../state/store/store.ts';
import { FoldButton } from '../panels/ui/FoldButton.tsx';
import { steepOf } from './steep.ts';
import { StripKeys } from './StripKeys.tsx';
import { percentText } from '../words.ts';
import { fitView, wholeView, zoomView, type View } from './geometry.ts';

/** Metres of course about the pin when the strip goes to a station: sign and trash drop are both in. */
const AROUND = 150;

interface Props {
  readonly open: OpenPlan | null;
  readonly course: Course | null;
}

function CourseChoice({ open, course }: Props & { readonly open: OpenPlan }): JSX.Element {
  const store = useStore();
  return (
    <label class="field">
      <span class="soft">Course</span>
      <select
        value={course?.id ?? ''}
        onChange={(event) => {
          store.stripView.value = null;
          store.cursor.value = null;
          store.course.value = event.currentTarget.value;
        }}
      >
        {coursesOf(open.analysis).map((one) => (
          <option key={one.id} value={one.id}>
            {one.name}
          </option>
        ))}
      </select>
    </label>
  );
}

function ZoomTools({ open, course }: Props): JSX.Element {
  const store = useStore();
  const view = (): View | null =>
    course === null
      ? null
      : store.stripView.value === null
        ? wholeView(course)
        : fitView(store.stripView.value, course);
  const zoom = (factor: number): void => {
    const now = view();
    if (now === null || course === null) return;
    const pass = passOf();
    const about = pass !== null && pass > now[0] && pass < now[1] ? pass : (now[0] + now[1]) / 2;
    store.stripView.value = zoomView(now, about, factor, course);
  };
  const passOf = (): number | null => {
    const station = open?.analysis.stations.find((one) => one.id === store.selected.value);
    const passes = station?.passes.filter((pass) => pass.course === course?.id) ?? [];
    return (passes.find((pass) => pass.served) ?? passes[0])?.measure ?? null;
  };
  const here = passOf();
  return (
    <div class="group" role="group" aria-label="Zoom of the course strip">
      <button
        type="button"
        aria-label="Zoom out on the strip"
        disabled={course === null || store.stripView.value === null}
        onClick={() => zoom(2)}
      >
        −
      </button>
      <button type="button" aria-label="Zoom in on the strip" disabled={course === null} onClick={() => zoom(0.5)}>
        +
      </button>
      <button
        type="button"
        disabled={course === null || store.stripView.value === null}
        onClick={() => void (store.stripView.value = null)}
      >
        Whole course
      </button>
      <button
        type="button"
        disabled={course === null || here === null}
        onClick={() =>
          void (
            course !== null &&
            here !== null &&
            (store.stripView.value = fitView([here - AROUND, here + AROUND], course))
          )
        }
      >
        Selected station
      </button>
    </div>
  );
}

/** Shows race day at a time, or hides it; absent where the plan says nothing of runners. */
function ClockButton({ open }: { readonly open: OpenPlan }): JSX.Element | null {
  const store = useStore();
  const on = useComputed(() => store.clock.value !== null).value;
  if (spanOf(open.analysis).span === null) return null;
  const first = Math.min(...open.analysis.plan.races.flatMap(({ waves }) => waves.map(({ time }) => time)));
  return (
    <button type="button" aria-pressed={on} onClick={() => (on ? turnOff(store) : setClock(store, first))}>
      Clock
    </button>
  );
}

/** What the dark parts of the ground are. */
function SteepKey({ open, course }: { readonly open: OpenPlan; readonly course: Course }): JSX.Element | null {
  const { clock } = useStore();
  const on = useComputed(() => clock.value !== null).value;
  const { maxGrade } = open.analysis.plan.practice;
  return on || steepOf(course, maxGrade).length === 0 ? null : (
    <span class="soft steep-key">
      <svg width={16} height={11} aria-hidden="true">
        <rect class="strip-steep" width={16} height={11} />
      </svg>
      steeper than {percentText(maxGrade)}
    </span>
  );
}

export function StripTools({ open, course }: Props): JSX.Element {
  const store = useStore();
  const folded = !store.narrow.value && store.folds.value.has('strip');
  return (
    <div class="strip-tools">
      <h2 class="strip-title">Course strip</h2>
      {open === null || coursesOf(open.analysis).length < 2 ? null : <CourseChoice open={open} course={course} />}
      {open === null ? null : <ClockButton open={open} />}
      <span class="spring" />
      {open === null || course === null || folded ? null : <SteepKey open={open} course={course} />}
      {folded ? null : (
        <>
          <StripKeys />
          <ZoomTools open={open} course={course} />
        </>
      )}
      {store.narrow.value ? null : <FoldButton part="strip" name="Course strip" controls="strip-frame" />}
    </div>
  );
}
