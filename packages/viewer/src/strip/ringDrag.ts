/**
 * A station dragged by its ring along the strip: its offset kept, across the course where the
 * pointer crosses the line. At most one place is tried in each frame of the screen.
 */
import type { Course } from '@halfcup/core/stages';
import { alongPlacement, offsetLineOf, type OffsetLine } from '../state/edits/placing.ts';
import { messageOf } from '../state/view/voice.ts';
import type { Store } from '../state/store/store.ts';
import { LINE_Y, viewOf } from './frame.ts';
import { panView, type StripPass, type StripScale } from './geometry.ts';
import { dropTrial } from '../state/store/trial.ts';
import { beginTrial, finishTrial, moveTrial } from '../state/trial/trial.ts';

/** Pixels before a press is a drag; from the course line within which the side stays as it is; from the strip's ends at which it moves on. */
const SLACK = 3;
const STAYS = 8;
const EDGE = 14;

interface Spot {
  readonly x: number;
  readonly y: number;
}

export interface Strip {
  readonly store: Store;
  readonly course: Course;
  /** Of the view as it is now. */
  readonly scale: () => StripScale;
}

/** Moves a zoomed strip on while the pointer is at its end; true where it did. */
function moveOn({ store, course, scale }: Strip, x: number): boolean {
  const [low = 0, high = 0] = scale().range();
  const over = x < low + EDGE ? x - low - EDGE : x > high - EDGE ? x - high + EDGE : 0;
  if (over === 0 || store.stripView.value === null) return false;
  const view = viewOf(store, course);
  const next = panView(view, (over * 0.2 * (view[1] - view[0])) / (high - low), course);
  if (Math.abs(next[0] - view[0]) < 0.01) return false;
  store.stripView.value = next;
  return true;
}

/** What one drag knows of itself. */
interface Drag {
  readonly strip: Strip;
  readonly pass: StripPass;
  readonly first: Spot;
  /** From the pointer to the station, metres along the course. */
  readonly grip: number;
  last: Spot;
  side: 'left' | 'right' | undefined;
  /** `null` until the press has become a drag. */
  line: OffsetLine | null;
}

/** Begins the trial; false where the course of the strip does not pass the station. */
function begin(drag: Drag): boolean {
  const { store, course } = drag.strip;
  beginTrial(store, drag.pass.id);
  const station = store.trial.value?.from.analysis.stations.find(({ id }) => id === drag.pass.id);
  drag.line = station === undefined ? null : offsetLineOf(station, course.id, drag.pass.measure);
  if (drag.line === null) dropTrial(store);
  else store.cursor.value = null;
  return drag.line !== null;
}

/** Shows the station where the pointer is: `again` where the strip has moved on, `ended` where the trial has. */
function place(drag: Drag): 'done' | 'again' | 'ended' {
  const { strip, last, line } = drag;
  const from = strip.store.trial.value?.from;
  const station = from?.analysis.stations.find(({ id }) => id === drag.pass.id);
  if (from === undefined || station === undefined || line === null) return 'ended';
  const again = moveOn(strip, last.x);
  if (Math.abs(last.y - LINE_Y) > STAYS) drag.side = last.y < LINE_Y ? 'left' : 'right';
  const measure = strip.scale().invert(last.x) + drag.grip;
  const placement = alongPlacement(from.analysis, station, line, measure, drag.side);
  if (placement !== null) moveTrial(strip.store, placement);
  return again ? 'again' : 'done';
}

function finish({ store }: Strip): void {
  const [trouble] = finishTrial(store);
  if (trouble !== undefined) store.notice.value = { text: messageOf(store, trouble) };
}

const within = (svg: SVGElement, { clientX, clientY }: PointerEvent): Spot => {
  const box = svg.getBoundingClientRect();
  return { x: clientX - box.left, y: clientY - box.top };
};

/** Begins with the press of a pointer on a ring; a press that does not move is left to be a click. */
export function startDrag(strip: Strip, pass: StripPass, event: PointerEvent): void {
  const svg = (event.currentTarget as SVGElement).ownerSVGElement;
  if (event.button !== 0 || !event.isPrimary || svg === null) return;
  const { pointerId } = event;
  const first = within(svg, event);
  const grip = pass.measure - strip.scale().invert(first.x);
  const drag: Drag = { strip, pass, first, grip, last: first, side: undefined, line: null };
  let frame = 0;
  const show = (): void => {
    frame = 0;
    const shown = place(drag);
    if (shown === 'ended') end();
    else if (shown === 'again') frame = requestAnimationFrame(show);
  };
  const move = (moved: PointerEvent): void => {
    if (moved.pointerId !== pointerId) return;
    drag.last = within(svg, moved);
    if (drag.line === null) {
      if (Math.hypot(drag.last.x - first.x, drag.last.y - first.y) <= SLACK) return;
      if (!begin(drag)) return end();
      svg.setPointerCapture(pointerId);
      svg.classList.add('dragging');
    }
    if (frame === 0) frame = requestAnimationFrame(show);
  };
  const up = (done: PointerEvent): void => {
    if (done.pointerId !== pointerId) return;
    if (drag.line !== null) {
      drag.last = within(svg, done);
      cancelAnimationFrame(frame);
      show();
      finish(strip);
    }
    end();
  };
  const drop = (): void => {
    if (drag.line !== null) dropTrial(strip.store);
    end();
  };
  const heard: readonly (readonly [string, (event: never) => void])[] = [
    ['pointermove', move],
    ['pointerup', up],
    ['pointercancel', drop],
    ['blur', drop],
  ];
  const end = (): void => {
    cancelAnimationFrame(frame);
    svg.classList.remove('dragging');
    for (const [name, act] of heard) window.removeEventListener(name, act as EventListener);
  };
  for (const [name, act] of heard) window.addEventListener(name, act as EventListener);
}
