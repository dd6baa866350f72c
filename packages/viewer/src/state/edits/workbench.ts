/**
 * How the open plan changes: by commands over its text, each one step of undo. A command that the plan cannot take
 * changes nothing; one that comes while there is a trial puts the station of the trial back first.
 */
import { readPlan, type Finding } from '@halfcup/core';
import { batch } from '@preact/signals';
import { recorded, redone, undone, type History } from '../store/history.ts';
import type { OpenPlan, Store } from '../store/store.ts';
import { dropTrial } from '../store/trial.ts';
import { computeOpen } from '../view/compute.ts';
import { coursesOf } from '../view/derive.ts';
import { followed } from '../view/followed.ts';
import type { Command } from './edits.ts';

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
  stepTo(store, after.plan, command.label, command.merge);
  return [];
}

/** Shows the open plan as it was computed after a change, as one step of undo. */
export function stepTo(store: Store, after: OpenPlan, label: string, merge?: string): void {
  const open = store.open.value;
  if (open === null) return;
  batch(() => {
    store.history.value = recorded(store.history.value, label, open.document.text, after.document.text, merge);
    show(store, after);
  });
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

/** One step back; tells what was undone, or `null`. Where there is a trial, puts its station back instead. */
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
