/**
 * A station held by its ring and moved along the strip: its offset kept, across the course where the
 * pointer crosses the line. At most one place is tried in each frame of the screen.
 */
import type { Course } from '@halfcup/core';
import { alongPlacement, holdOf, type Hold } from '../state/edits/placing.ts';
import type { Store } from '../state/store/store.ts';
import { dropTrial, holdStation, letGo, tryPlace } from '../state/edits/workbench.ts';
import { LINE_Y, viewOf } from './frame.ts';
import { panView, type StripPass, type StripScale } from './geometry.ts';

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

/** Begins with the press of a pointer on a ring; a press that does not move is left to be a click. */
export function startDrag(strip: Strip, pass: StripPass, event: PointerEvent): void {
  const svg = (event.currentTarget as SVGElement).ownerSVGElement;
  if (event.button !== 0 || !event.isPrimary || svg === null) return;
  const { store, course } = strip;
  const { pointerId } = event;
  const within = ({ clientX, clientY }: PointerEvent): Spot => {
    const box = svg.getBoundingClientRect();
    return { x: clientX - box.left, y: clientY - box.top };
  };
  const first = within(event);
  const grip = pass.measure - strip.scale().invert(first.x);
  let last = first;
  let side: 'left' | 'right' | undefined;
  let hold: Hold | null = null;
  let frame = 0;
  const place = (): void => {
    frame = 0;
    const from = store.trial.value?.from;
    const station = from?.analysis.stations.find(({ id }) => id === pass.id);
    if (from === undefined || station === undefined || hold === null) return end();
    const again = moveOn(strip, last.x);
    if (Math.abs(last.y - LINE_Y) > STAYS) side = last.y < LINE_Y ? 'left' : 'right';
    const placement = alongPlacement(from.analysis, station, hold, strip.scale().invert(last.x) + grip, side);
    if (placement !== null) tryPlace(store, placement);
    if (again) frame = requestAnimationFrame(place);
  };
  const begin = (): void => {
    holdStation(store, pass.id);
    const station = store.trial.value?.from.analysis.stations.find(({ id }) => id === pass.id);
    hold = station === undefined ? null : holdOf(station, course.id, pass.measure);
    if (hold === null) return drop();
    store.cursor.value = null;
    svg.setPointerCapture(pointerId);
    svg.classList.add('holding');
  };
  const move = (moved: PointerEvent): void => {
    if (moved.pointerId !== pointerId) return;
    last = within(moved);
    if (hold === null) {
      if (Math.hypot(last.x - first.x, last.y - first.y) <= SLACK) return;
      begin();
    }
    if (hold !== null && frame === 0) frame = requestAnimationFrame(place);
  };
  const up = (done: PointerEvent): void => {
    if (done.pointerId !== pointerId) return;
    if (hold !== null) {
      last = within(done);
      cancelAnimationFrame(frame);
      place();
      const [trouble] = letGo(store);
      if (trouble !== undefined) store.notice.value = { text: trouble.message };
    }
    end();
  };
  const drop = (): void => {
    if (hold !== null) dropTrial(store);
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
    svg.classList.remove('holding');
    for (const [name, act] of heard) window.removeEventListener(name, act as EventListener);
  };
  for (const [name, act] of heard) window.addEventListener(name, act as EventListener);
}
