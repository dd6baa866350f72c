/**
 * How the open plan changes: by commands over its text, each one step of undo, or by a trial that holds a
 * station in the hand and becomes one step when it is let go. A command that the plan cannot take changes nothing.
 */
import { placeFindings, readPlan, reanalyse, type Finding, type Plan } from '@halfcup/core';
import { batch } from '@preact/signals';
import { allFindings, computeOpen } from '../view/compute.ts';
import { coursesOf, leadOf } from '../view/derive.ts';
import { moveStation, type Command } from './edits.ts';
import { followed } from '../view/followed.ts';
import { recorded, redone, undone, type History } from '../store/history.ts';
import { placed, type Placement } from './placing.ts';
import type { OpenPlan, Store } from '../store/store.ts';

/** Shows another state of the open plan; what is selected stays where it still exists. */
function show(store: Store, open: OpenPlan): void {
  batch(() => {
    store.open.value = open;
    const { stations } = open.analysis;
    if (!stations.some(({ id }) => id === store.selected.value)) store.selected.value = null;
    const courses = coursesOf(open.analysis);
    if (!courses.some(({ id }) => id === store.course.value)) {
      store.course.value = courses[0]?.id ?? null;
      store.stripView.value = null;
    }
  });
}

/** The open plan with another text; why not, where that text is none that can be used. */
function opened(open: OpenPlan, text: string): { readonly plan: OpenPlan } | { readonly findings: readonly Finding[] } {
  const read = readPlan(text, open.document.file);
  if (!read.ok) return { findings: read.findings };
  const variant = followed(open.document.plan, read.value.plan, open.variant) ?? null;
  const made = computeOpen(read.value, open.files, variant, open);
  return made.ok ? { plan: made.value } : { findings: made.findings };
}

/** Carries out a command; the findings say why nothing was changed, and are empty where it was done. */
export function run(store: Store, command: Command): readonly Finding[] {
  dropTrial(store);
  const open = store.open.value;
  if (open === null) return [];
  const text = command.edit(open);
  if (text === open.document.text) return [];
  const after = opened(open, text);
  if ('findings' in after) return after.findings;
  batch(() => {
    store.history.value = recorded(store.history.value, command.label, open.document.text, text, command.merge);
    show(store, after.plan);
  });
  return [];
}

/** Replaces the text by one from elsewhere (another tab, a restored copy) as one step of undo. */
export const replaceText = (store: Store, text: string, label: string): readonly Finding[] =>
  run(store, { label, edit: () => text });

function step(store: Store, move: (history: History, text: string) => ReturnType<typeof undone>): string | null {
  if (store.trial.value !== null) {
    dropTrial(store);
    return null;
  }
  const open = store.open.value;
  const taken = open === null ? null : move(store.history.value, open.document.text);
  if (open === null || taken === null) return null;
  const after = opened(open, taken.text);
  // A text that was shown once can be shown again: its files are those of then.
  if ('findings' in after) throw new Error(`a step of the history cannot be read: ${after.findings[0]?.message ?? ''}`);
  batch(() => {
    store.history.value = taken.history;
    show(store, after.plan);
  });
  return taken.label;
}

/** One step back; tells what was undone, or `null`. While a station is held, puts it back instead. */
export const undo = (store: Store): string | null => step(store, undone);
/** One step forward again; tells what was done again, or `null`. */
export const redo = (store: Store): string | null => step(store, redone);

/** Shows a variant, or with `null` the main plan. */
export function showVariant(store: Store, variant: string | null): readonly Finding[] {
  dropTrial(store);
  const open = store.open.value;
  if (open === null || open.variant === variant) return [];
  const made = computeOpen(open.document, open.files, variant, open);
  if (!made.ok) return made.findings;
  show(store, made.value);
  return [];
}

/** Takes a station in the hand. */
export function holdStation(store: Store, station: string): void {
  const open = store.open.value;
  if (open === null || !open.analysis.stations.some(({ id }) => id === station)) return;
  batch(() => {
    store.trial.value ??= { from: open, station };
    store.selected.value = station;
  });
}

const withStation = (plan: Plan, index: number, placement: Placement, side: 'left' | 'right' | undefined): Plan => {
  const station = placed(plan.stations[index]!, placement);
  return { ...plan, stations: plan.stations.with(index, side === undefined ? station : { ...station, side }) };
};

/** The side on which the lead direction's runners see the pin, by geometry alone. */
function seenSide(open: OpenPlan, station: string): 'left' | 'right' | null {
  const layout = open.analysis.stations.find(({ id }) => id === station);
  const pass = layout?.passes[(layout === undefined ? undefined : leadOf(layout))?.passes[0] ?? -1];
  return pass === undefined || pass.side === 'unclear' ? null : pass.side;
}

/**
 * The open plan with the held station at another place, on the side on which it stands there; `null` where none is held or
 * that place cannot be computed. `now`: what is shown, or the last such plan, of which all is kept that stays the same.
 */
export function tried(store: Store, placement: Placement, now: OpenPlan | null = store.open.value): OpenPlan | null {
  const trial = store.trial.value;
  if (trial === null || now === null) return null;
  const index = trial.from.analysis.plan.stations.findIndex(({ id }) => id === trial.station);
  const at = (before: OpenPlan, side: 'left' | 'right' | undefined): OpenPlan | null => {
    const made = reanalyse(
      before.analysis,
      withStation(trial.from.analysis.plan, index, placement, side),
      trial.from.files,
    );
    return made.ok
      ? {
          ...trial.from,
          analysis: made.value,
          findings: placeFindings(allFindings(trial.from.files, made.value), trial.from.document),
        }
      : null;
  };
  const held = now.analysis.plan.stations[index]?.side;
  const first = at(now, held);
  const side = first === null ? null : seenSide(first, trial.station);
  return first === null || side === null || side === held ? first : at(first, side);
}

/** Shows the held station at another place. A place that cannot be computed changes nothing. */
export function tryPlace(store: Store, placement: Placement): void {
  const shown = tried(store, placement);
  if (shown !== null) store.open.value = shown;
}

/** Puts the held station back. */
export function dropTrial(store: Store): void {
  const trial = store.trial.value;
  if (trial === null) return;
  batch(() => {
    store.trial.value = null;
    store.open.value = trial.from;
  });
}

/** Lets the held station go where it is shown: one step of undo, or none where it has not moved. */
export function letGo(store: Store): readonly Finding[] {
  const trial = store.trial.value;
  const shown = store.open.value;
  if (trial === null || shown === null) return [];
  const station = shown.analysis.stations.find(({ id }) => id === trial.station);
  dropTrial(store);
  if (station === undefined || shown === trial.from) return [];
  return run(store, moveStation(station.id, station.name, placementOf(station.station), seenSide(shown, station.id)));
}

const placementOf = ({ at, on }: Plan['stations'][number]): Placement => (on === undefined ? { at: at! } : { on });
