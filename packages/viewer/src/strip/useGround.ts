/** Pointing, dragging, pinching and keys on the strip's ground. */
import type { Course } from '@halfcup/core/stages';
import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';
import { addOnCourse } from '../state/edits/moves.ts';
import { ask } from '../state/view/place.ts';
import type { Store } from '../state/store/store.ts';
import { LINE_Y, viewOf } from './frame.ts';
import { fitView, panView, wholeView, zoomView, type StripScale, type View } from './geometry.ts';

/** Pixels from the course line that still count as on it. */
const ON_LINE = 12;
const SLACK = 3;

/** The fingers on the ground: one pans, two pinch. */
interface Touch {
  readonly at: Map<number, number>;
  /** Where the fingers stood and what was in view when the last of them came or went. */
  from: { readonly xs: readonly number[]; readonly view: View };
  moved: boolean;
}

/** The view in which two fingers have under them what they had when they came. */
export function pinched(
  view: View,
  scaleX: (x: number) => number,
  before: readonly [number, number],
  now: readonly [number, number],
  course: Course,
): View {
  const [a, b] = [scaleX(before[0]), scaleX(before[1])];
  const apart = Math.abs(now[1] - now[0]);
  if (apart < 8) return view;
  const metresAPixel = Math.abs(b - a) / apart;
  const [left, right] = [scaleX(0), scaleX(1)];
  const width = (view[1] - view[0]) / (right - left);
  // The range's low end, in pixels.
  const low = (view[0] - left) / (right - left);
  const middle = (a + b) / 2;
  const start = middle - ((now[0] + now[1]) / 2 - low) * metresAPixel;
  return fitView([start, start + width * metresAPixel], course);
}

/** The strip's ground as it is drawn now. */
interface Ground {
  readonly store: Store;
  readonly course: Course;
  readonly scale: StripScale;
  readonly view: View;
}

const boxOf = (event: MouseEvent): DOMRect =>
  (event.currentTarget as SVGRectElement).ownerSVGElement!.getBoundingClientRect();
const xOf = (event: MouseEvent): number => event.clientX - boxOf(event).left;
const inside = (measure: number, course: Course): number => Math.min(Math.max(measure, 0), wholeView(course)[1]);

/** Puts the cursor at a measure, and keeps it in view. */
function putCursor({ store, course, view }: Ground, measure: number): void {
  store.cursor.value = { course: course.id, measure };
  if (measure < view[0] || measure > view[1])
    store.stripView.value = panView(view, measure < view[0] ? measure - view[0] : measure - view[1], course);
}

function keysOf(ground: Ground): Readonly<Record<string, () => void>> {
  const { store, course, view } = ground;
  const width = view[1] - view[0];
  const here = store.cursor.value?.course === course.id ? store.cursor.value.measure : (view[0] + view[1]) / 2;
  const by = (metres: number) => (): void => putCursor(ground, inside(here + metres, course));
  const zoom = (factor: number) => (): void => void (store.stripView.value = zoomView(view, here, factor, course));
  return {
    ArrowLeft: by(-width / 100),
    ArrowRight: by(width / 100),
    PageDown: by(-width / 10),
    PageUp: by(width / 10),
    Home: () => putCursor(ground, 0),
    End: () => putCursor(ground, wholeView(course)[1]),
    '+': zoom(0.5),
    '=': zoom(0.5),
    '-': zoom(2),
    '0': () => void (store.stripView.value = null),
    a: () => void addOnCourse(store, course.id, here, 'right'),
    w: () => ask(store, { course: course.id, measure: here }),
    Enter: () => void (store.destination.value = { kind: 'place', course: course.id, measure: here, at: null }),
  };
}

/** Moves the view with the fingers: one pans a zoomed strip, two pinch. */
function follow({ store, course, scale }: Ground, touch: Touch): void {
  const { at, from } = touch;
  const [low = 0, high = 1] = scale.range();
  const [first = 0, second] = at.values();
  const [begun = 0, other] = from.xs;
  if (Math.abs(first - begun) > SLACK || second !== undefined) touch.moved = true;
  if (!touch.moved) return;
  const [start, end] = from.view;
  if (second !== undefined && other !== undefined)
    store.stripView.value = pinched(
      from.view,
      (x) => start + ((x - low) / (high - low)) * (end - start),
      [begun, other],
      [first, second],
      course,
    );
  else if (store.stripView.value !== null)
    store.stripView.value = panView(from.view, ((begun - first) / (high - low)) * (end - start), course);
}

export function useGround(store: Store, course: Course, scale: StripScale): JSX.IntrinsicElements['rect'] {
  const touch = useRef<Touch>({ at: new Map(), from: { xs: [], view: [0, 0] }, moved: false });
  const view = viewOf(store, course);
  const ground: Ground = { store, course, scale, view };
  const measureAt = (event: MouseEvent): number => inside(scale.invert(xOf(event)), course);
  const keys = keysOf(ground);
  const restart = (moved: boolean): void => {
    touch.current.from = { xs: [...touch.current.at.values()], view };
    touch.current.moved = moved;
  };
  const lift = (event: PointerEvent): void => {
    touch.current.at.delete(event.pointerId);
    restart(touch.current.moved);
  };
  return {
    onPointerDown: (event) => {
      touch.current.at.set(event.pointerId, xOf(event));
      restart(touch.current.at.size > 1);
      event.currentTarget.setPointerCapture(event.pointerId);
      if (touch.current.at.size === 1) store.cursor.value = { course: course.id, measure: measureAt(event) };
    },
    onPointerMove: (event) => {
      if (!touch.current.at.has(event.pointerId)) {
        store.cursor.value = { course: course.id, measure: measureAt(event) };
        return;
      }
      touch.current.at.set(event.pointerId, xOf(event));
      follow(ground, touch.current);
    },
    onPointerUp: lift,
    onPointerCancel: lift,
    onPointerLeave: (event) => {
      if (event.pointerType === 'mouse') store.cursor.value = null;
    },
    onClick: (event) => {
      if (!touch.current.moved && Math.abs(event.clientY - boxOf(event).top - LINE_Y) <= ON_LINE)
        ask(store, { course: course.id, measure: measureAt(event) });
    },
    onDblClick: (event) => void (store.stripView.value = zoomView(view, measureAt(event), 0.4, course)),
    onKeyDown: (event) => {
      const act = keys[event.key.length === 1 ? event.key.toLowerCase() : event.key];
      if (act === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
      event.preventDefault();
      act();
    },
  };
}
