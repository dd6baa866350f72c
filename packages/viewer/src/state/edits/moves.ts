/** What a person does to a station as a whole: nudge it, send it to a measure, add, duplicate and delete it. */
import type { Finding, LonLat, StationLayout } from '@halfcup/core';
import { courseLength } from '@halfcup/core/geometry';
import { courseOf } from '../view/derive.ts';
import { addStation, deleteStation, duplicateStation, moveStation } from './edits.ts';
import { freeId } from './freeId.ts';
import { alongPlacement, freePlacement, leadOffsetLine, type Placement } from './placing.ts';
import type { Store } from '../store/store.ts';
import { run } from './workbench.ts';
import { farText } from '../../words.ts';
import { chooseStation } from '../view/choose.ts';

const trouble = (message: string, station?: string): readonly Finding[] => [
  { code: 'not-moved', severity: 'error', message, where: station === undefined ? {} : { station } },
];

const stationOf = (store: Store, id: string): StationLayout | undefined =>
  store.open.value?.analysis.stations.find((one) => one.id === id);

/** Sends a station along its lead direction's course to a measure, offset and side kept. Says why where it cannot go there. */
export function sendTo(store: Store, id: string, measure: number, merge?: string): readonly Finding[] {
  const open = store.open.value;
  const station = stationOf(store, id);
  if (open === null || station === undefined) return [];
  const line = leadOffsetLine(station);
  if (line === null)
    return trouble(
      `No course passes ${station.name}, so it has no course distance. Drag it to a course on the map.`,
      id,
    );
  const course = courseOf(open, line.course);
  const length = course === undefined ? 0 : courseLength(course);
  if (!Number.isFinite(measure) || measure < 0 || measure > length)
    return trouble(
      `The course is ${farText(length, store.units.value)} long. Choose a distance from 0 to ${farText(length, store.units.value)}.`,
      id,
    );
  const placement = alongPlacement(open.analysis, station, line, measure);
  if (placement === null) return trouble('The course has a gap there. Choose another distance.', id);
  return run(store, moveStation(id, station.name, placement, null, merge));
}

/** Nudges a station by metres along its lead direction's course; nudges that follow one another are one step of undo. */
export function nudge(store: Store, id: string, by: number): readonly Finding[] {
  const station = stationOf(store, id);
  const line = station === undefined ? null : leadOffsetLine(station);
  const course = courseOf(store.open.value, line?.course);
  const to =
    line === null || course === undefined ? Number.NaN : Math.min(Math.max(line.measure + by, 0), courseLength(course));
  return sendTo(store, id, to, `nudge ${id}`);
}

/** Adds a station where a point is, named as the next of the plan, and selects it. */
export function addAt(store: Store, at: LonLat, name?: string): readonly Finding[] {
  const open = store.open.value;
  if (open === null) return [];
  const { stations } = open.document.plan;
  const id = freeId(
    's',
    stations.map((station) => station.id),
  );
  const placement: Placement = { at: [Number(at[0].toFixed(7)), Number(at[1].toFixed(7))] };
  const found = run(store, addStation(id, name ?? `Station ${stations.length + 1}`, placement, null));
  if (found.length === 0) chooseStation(store, id);
  return found;
}

/** Adds a station at the kerb of a course. */
export function addOnCourse(store: Store, course: string, measure: number, side: 'left' | 'right'): readonly Finding[] {
  const open = store.open.value;
  if (open === null) return [];
  const { stations, practice } = open.document.plan;
  const id = freeId(
    's',
    stations.map((station) => station.id),
  );
  const on = { course, measure: Number(measure.toFixed(1)), side, offset: practice.kerb };
  const found = run(store, addStation(id, `Station ${stations.length + 1}`, { on }, side));
  if (found.length === 0) chooseStation(store, id);
  return found;
}

/** How far past the first its copy stands, metres. */
const APART = 200;

/** Adds a station like another, farther along the course (before it, where the course ends), and selects it. */
export function duplicate(store: Store, id: string): readonly Finding[] {
  const open = store.open.value;
  const station = stationOf(store, id);
  if (open === null || station === undefined) return [];
  const fresh = freeId(
    's',
    open.document.plan.stations.map((one) => one.id),
  );
  const line = leadOffsetLine(station);
  const course = courseOf(open, line?.course);
  const to =
    line === null || course === undefined
      ? 0
      : line.measure + APART <= courseLength(course)
        ? line.measure + APART
        : Math.max(0, line.measure - APART);
  const along = line === null ? null : alongPlacement(open.analysis, station, line, to);
  const placement = along ?? freePlacement(open.analysis, station, [station.at[0] + 0.002, station.at[1]]);
  const found = run(store, duplicateStation(id, fresh, `${station.name} (copy)`, placement));
  if (found.length === 0) chooseStation(store, fresh);
  return found;
}

export function remove(store: Store, id: string): readonly Finding[] {
  const station = stationOf(store, id);
  return station === undefined ? [] : run(store, deleteStation(id, station.name));
}
