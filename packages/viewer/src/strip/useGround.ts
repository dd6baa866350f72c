/** Pointing, dragging and keys on the strip's ground. */
import type { Course } from '@halfcup/core';
import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';
import type { Store } from '../state/store.ts';
import { viewOf } from './frame.ts';
import { panView, wholeView, zoomView, type StripScale, type View } from './geometry.ts';

export function useGround(store: Store, course: Course, scale: StripScale): JSX.IntrinsicElements['rect'] {
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
      event.currentTarget.setPointerCapture(event.pointerId);
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
