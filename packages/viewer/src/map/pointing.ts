/** What pointing at the map does: to stations, findings, places on a course, and where something is drawn. */
import type { LonLat } from '@halfcup/core';
import { nearestOn } from '@halfcup/core/geometry';
import { addOnCourse } from '../state/edits/moves.ts';
import { sideOfLine } from '../state/edits/placing.ts';
import type { MapMenu, Store } from '../state/store/store.ts';
import { planWithoutTrial } from '../state/store/trial.ts';
import { chooseStation, seekFinding } from '../state/view/choose.ts';
import { courseOf, coursesOf, nearestSample, samplesOf } from '../state/view/derive.ts';
import { ask } from '../state/view/place.ts';
import { reviewList } from '../state/view/placed.ts';
import { firstMessage } from '../state/view/voice.ts';
import type { Pointing } from './gestures/point.ts';
import { finishTool, isDrawing, putPoint } from '../state/edits/tools.ts';

/** Pixels from the course within which pointing at the map counts as pointing at the course. */
const NEAR = 24;
/** A press must come nearer than that: it asks for something. */
const PRESSED = 12;
function pointOver(store: Store, lon: number, lat: number, metresAPixel: number): void {
  const course = courseOf(store.open.value, store.course.value);
  if (course === undefined) return;
  const near = nearestSample(samplesOf(course), lon, lat);
  store.cursor.value = near.distance < NEAR * metresAPixel + 6 ? { course: course.id, measure: near.measure } : null;
}

/** Asks about the place of the course shown that was pressed, or of another course where that one keeps away. */
function askAt(store: Store, at: LonLat, metresAPixel: number): void {
  const open = store.open.value;
  if (open === null) return;
  const ordered = coursesOf(open.analysis).toSorted(
    (a, b) => Number(b.id === store.course.value) - Number(a.id === store.course.value),
  );
  for (const course of ordered) {
    const near = nearestSample(samplesOf(course), at[0], at[1]);
    if (near.distance < PRESSED * metresAPixel + 6) return ask(store, { course: course.id, measure: near.measure });
  }
}

/** The place of a course within a distance of a place, and the side of it; of the course shown before others. */
export function sideAt(store: Store, at: LonLat, within: number): MapMenu['place'] {
  const open = store.open.value;
  if (open === null) return null;
  const ordered = open.analysis.courses.toSorted(
    (a, b) => Number(b.course.id === store.course.value) - Number(a.course.id === store.course.value),
  );
  for (const indexed of ordered) {
    const near = nearestOn(indexed, at);
    if (near !== null && near.distance <= within)
      return { course: indexed.course.id, measure: near.measure, side: sideOfLine(near.offset, 'right') };
  }
  return null;
}

/** A new station at the kerb beside a place, on its side of the course. */
function addThere(store: Store, at: LonLat, metresAPixel: number): void {
  const place = sideAt(store, at, NEAR * metresAPixel + 30);
  ask(store, null);
  if (place === null) {
    store.notice.value = { text: 'No course is near enough. Press twice beside a course to add a station there.' };
    return;
  }
  const message = firstMessage(store, addOnCourse(store, place.course, place.measure, place.side));
  store.notice.value = { text: message ?? `Added a station, ${place.side}-hand side. Drag it to where it belongs.` };
}

/** What pointing at the map does. */
export const pointingOf = (store: Store): Pointing => ({
  choose: (station) => {
    store.foundAt.value = station;
    chooseStation(store, station);
  },
  finding: (index) => {
    const open = planWithoutTrial(store);
    const finding = open === null ? undefined : reviewList(open, store.placed.value)[index];
    if (finding !== undefined) seekFinding(store, finding);
  },
  ask: (lon, lat, metresAPixel) => askAt(store, [lon, lat], metresAPixel),
  over: (lon, lat, metresAPixel) => pointOver(store, lon, lat, metresAPixel),
  left: () => {
    store.cursor.value = null;
    store.pointer.value = null;
  },
  draws: () => isDrawing(store),
  put: (at) => putPoint(store, [at[0], at[1]]),
  hover: (at) => {
    store.pointer.value = [at[0], at[1]];
  },
  twice: (lon, lat, metresAPixel) => (isDrawing(store) ? finishTool(store) : addThere(store, [lon, lat], metresAPixel)),
  menu: (at, { x, y }, station, metresAPixel) => {
    const place = sideAt(store, [at[0], at[1]], PRESSED * 2 * metresAPixel + 30);
    store.menu.value = { at: [at[0], at[1]], x, y, station, place };
  },
});
