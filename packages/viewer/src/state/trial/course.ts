/** A course made of parts of others: shown on map and strip while it is drawn up, then taken as one step of undo. */
import { reanalyse, type Finding } from '@halfcup/core';
import { courseLength } from '@halfcup/core/geometry';
import type { PlanPart } from '@halfcup/core/plan';
import { batch } from '@preact/signals';
import { setValue, together } from '../edits/edits.ts';
import { freeId } from '../edits/freeId.ts';
import { run } from '../edits/workbench.ts';
import type { Store } from '../store/store.ts';
import { dropTrial, planWithoutTrial } from '../store/trial.ts';
import { openPlanOf } from '../view/compute.ts';

export interface DrawnUp {
  readonly name: string;
  readonly parts: readonly PlanPart[];
}

/** What came of showing it: its length in metres, or why it is no course. */
export type Tried =
  | { readonly ok: true; readonly length: number }
  | { readonly ok: false; readonly findings: readonly Finding[] };

const idIn = (taken: readonly { readonly id: string }[], word: string): string =>
  freeId(
    word,
    taken.map(({ id }) => id),
  );

/** Shows the course as if the plan had it; where it is none, the plan without it. */
export function tryCourse(store: Store, { name, parts }: DrawnUp): Tried {
  const from = planWithoutTrial(store);
  if (from === null) return { ok: false, findings: [] };
  const { plan } = from.analysis;
  const id = idIn(plan.courses, 'c');
  const course = { id, name, parts, gaps: 'refuse', reverse: false, drawn: 'recorded', marks: [] } as const;
  const made = openPlanOf(from, reanalyse(from.analysis, { ...plan, courses: [...plan.courses, course] }, from.files));
  if (!made.ok) {
    dropTrial(store);
    return { ok: false, findings: made.findings.filter(({ severity }) => severity === 'error') };
  }
  const drawn = made.value.analysis.courses.find((one) => one.course.id === id);
  batch(() => {
    store.trial.value = { from, station: '' };
    store.open.value = made.value;
    store.course.value = id;
    store.stripView.value = null;
  });
  return { ok: true, length: drawn === undefined ? 0 : courseLength(drawn.course) };
}

/** Which race is to run on a course that is taken: one of the plan, by its id, or a new one. */
export type TakenBy = { readonly race: string } | 'new';

/** Takes the course into the plan, for a race. `written`: its parts as the file is to have them. */
export function takeCourse(store: Store, name: string, written: readonly object[], by: TakenBy): readonly Finding[] {
  dropTrial(store);
  const open = store.open.value;
  if (open === null) return [];
  const { courses, races } = open.document.plan;
  const id = idIn(courses, 'c');
  const at = by === 'new' ? -1 : races.findIndex((race) => race.id === by.race);
  const findings = run(
    store,
    together(`add course ${name}`, [
      setValue(['courses', '-'], { id, name, parts: written }, ''),
      at < 0
        ? setValue(['races', '-'], { id: idIn(races, 'r'), name, course: id }, '')
        : setValue(['races', at, 'course'], id, ''),
    ]),
  );
  if (findings.length === 0) store.course.value = id;
  return findings;
}
