/** What the keys do on a ring of the strip. */
import { type StationLayout } from '@halfcup/core';
import { type Course } from '@halfcup/core/stages';
import { formatMeasure, metres } from '@halfcup/core/units';
import { courseLength } from '@halfcup/core/geometry';
import { moveStation } from '../state/edits/edits.ts';
import { duplicate, remove } from '../state/edits/moves.ts';
import { alongPlacement, offsetLineOf, passNear } from '../state/edits/placing.ts';
import type { Store } from '../state/store/store.ts';
import { run } from '../state/edits/workbench.ts';
import { messageOf } from '../state/view/voice.ts';
import { sideWords } from '../words.ts';
import { viewOf } from './frame.ts';
import { panView, type StripPass } from './geometry.ts';
import { beginTrial, finishTrial, moveTrial } from '../state/trial/trial.ts';
import { chooseStation } from '../state/view/choose.ts';

const find = (store: Store, id: string): StationLayout | undefined =>
  store.open.value?.analysis.stations.find((one) => one.id === id);

/** Shows where the station stands now, to a metre, and keeps it in view. */
function showPlace(store: Store, course: Course, pass: StripPass, measure: number): void {
  const station = find(store, pass.id);
  const now = station === undefined ? undefined : passNear(station, course.id, measure);
  if (station === undefined || now === undefined) return;
  store.notice.value = {
    text: `${station.name}: ${formatMeasure(now.measure, store.units.value)}, ${sideWords(now.side)}`,
  };
  const view = viewOf(store, course);
  if (store.stripView.value !== null && (now.measure < view[0] || now.measure > view[1]))
    store.stripView.value = panView(
      view,
      now.measure < view[0] ? now.measure - view[0] : now.measure - view[1],
      course,
    );
}

/** Along the course of the strip by so many metres; moves that follow one another are one step of undo. */
function along(store: Store, course: Course, pass: StripPass, by: number): void {
  const open = store.open.value;
  const station = find(store, pass.id);
  const line = station === undefined ? null : offsetLineOf(station, course.id, pass.measure);
  if (open === null || station === undefined || line === null) return;
  const to = Math.min(Math.max(pass.measure + by, 0), courseLength(course));
  const placement = alongPlacement(open.analysis, station, line, to);
  if (placement === null) {
    store.notice.value = { text: 'The course has a gap there. The station stays where it is.' };
    return;
  }
  store.selected.value = pass.id;
  run(store, moveStation(pass.id, pass.name, placement, null, `nudge ${pass.id}`));
  showPlace(store, course, pass, to);
}

/** To a side of the course, as the runners of this pass see it; the side as the lead direction sees it is declared. */
function across(store: Store, course: Course, pass: StripPass, side: 'left' | 'right'): void {
  const open = store.open.value;
  const station = find(store, pass.id);
  const line = station === undefined ? null : offsetLineOf(station, course.id, pass.measure);
  const placement =
    open === null || station === undefined || line === null
      ? null
      : alongPlacement(open.analysis, station, line, pass.measure, side);
  if (placement === null) return;
  beginTrial(store, pass.id);
  moveTrial(store, placement);
  finishTrial(store);
  showPlace(store, course, pass, pass.measure);
}

/** The ring before or after in the page's order takes the focus when a station goes, with all of its rings. */
function focusNeighbour(target: EventTarget | null): void {
  const ring = target as SVGElement;
  const all = [...(ring.ownerSVGElement?.querySelectorAll<SVGElement>('.strip-ring') ?? [])];
  const others = (some: readonly SVGElement[]): SVGElement[] =>
    some.filter((one) => one.dataset['station'] !== ring.dataset['station']);
  const at = all.indexOf(ring);
  const next =
    others(all.slice(at))[0] ??
    others(all.slice(0, at)).at(-1) ??
    ring.ownerSVGElement?.querySelector<SVGElement>('.strip-ground');
  next?.focus();
}

export function pressOnRing(store: Store, course: Course, pass: StripPass, event: KeyboardEvent): void {
  if (event.ctrlKey || event.metaKey) return;
  const unit = store.units.value === 'metric' ? 'm' : 'yd';
  const step = metres(event.altKey ? 100 : event.shiftKey ? 10 : 1, unit);
  const acts: Readonly<Record<string, () => void>> = {
    ArrowLeft: () => along(store, course, pass, -step),
    ArrowRight: () => along(store, course, pass, step),
    PageDown: () => along(store, course, pass, -metres(100, unit)),
    PageUp: () => along(store, course, pass, metres(100, unit)),
    ArrowUp: () => across(store, course, pass, 'left'),
    ArrowDown: () => across(store, course, pass, 'right'),
    s: () => across(store, course, pass, pass.side === 'left' ? 'right' : 'left'),
    d: () => {
      const [trouble] = duplicate(store, pass.id);
      store.notice.value = {
        text:
          trouble === undefined ? `Added a copy of ${pass.name} farther along the course.` : messageOf(store, trouble),
      };
    },
    Delete: () => {
      focusNeighbour(event.currentTarget);
      const [trouble] = remove(store, pass.id);
      store.notice.value = {
        text: trouble === undefined ? `Deleted ${pass.name}. Undo brings it back.` : messageOf(store, trouble),
      };
    },
    Enter: () => chooseStation(store, pass.id),
    ' ': () => chooseStation(store, pass.id),
  };
  const act = acts[event.key.length === 1 ? event.key.toLowerCase() : event.key];
  if (act === undefined) return;
  event.preventDefault();
  act();
}
