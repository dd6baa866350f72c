/** A course that is drawn up from parts of others, as it is typed; kept in the browser until it is taken. */
import type { Plan } from '@halfcup/core';
import { courseLength } from '@halfcup/core/geometry';
import type { IndexedCourse, PlanPart, Units } from '@halfcup/core/plan';
import { typedDistance } from '../ui/fields/typedDistance.ts';

export interface StretchDraft {
  readonly of: string;
  readonly from: string;
  readonly to: string;
  readonly reverse: boolean;
}

export interface PartsDraft {
  readonly kind: 'back' | 'laps' | 'stretches';
  readonly name: string;
  readonly of: string;
  readonly from: string;
  readonly to: string;
  readonly laps: string;
  readonly stretches: readonly StretchDraft[];
}

export const freshDraft = (plan: Plan): PartsDraft => {
  const of = plan.courses[0]?.id ?? '';
  return {
    kind: 'back',
    name: '',
    of,
    from: '0',
    to: '',
    laps: '2',
    stretches: [{ of, from: '0', to: '', reverse: false }],
  };
};

/** What is wrong with a field of a draft, by its name; stretches have their index before it. */
export type Troubles = ReadonlyMap<string, string>;

const DISTANCE = 'It should be a distance, such as 2.5.';

interface Reader {
  readonly units: Units;
  readonly courses: readonly IndexedCourse[];
  readonly troubles: Map<string, string>;
}

/** Metres of a field; an empty one is `whole`. */
function distance(
  { units, troubles }: Reader,
  key: string,
  text: string,
  whole: number | undefined,
): number | undefined {
  if (text.trim() === '' && whole !== undefined) return whole;
  const metres = typedDistance(text, units);
  if (metres === null) troubles.set(key, DISTANCE);
  return metres ?? undefined;
}

function stretch(
  reader: Reader,
  { of, from, to, reverse }: StretchDraft,
  prefix: string,
  needsTo: boolean,
): PlanPart | null {
  const course = reader.courses.find((one) => one.course.id === of)?.course;
  if (course === undefined) return null;
  const begin = distance(reader, `${prefix}from`, from, 0);
  const end = distance(reader, `${prefix}to`, to, needsTo ? undefined : courseLength(course));
  if (begin === undefined || end === undefined) return null;
  if (end <= begin) {
    reader.troubles.set(`${prefix}to`, 'It should be farther along that course than where the part begins.');
    return null;
  }
  return { of, from: begin, to: end, ...(reverse ? { reverse } : {}) };
}

/** The parts of a draft, and what is wrong with its fields; no parts where anything is. */
export function partsOf(
  draft: PartsDraft,
  units: Units,
  courses: readonly IndexedCourse[],
): { readonly parts: readonly PlanPart[]; readonly troubles: Troubles } {
  const reader: Reader = { units, courses, troubles: new Map() };
  const parts: (PlanPart | null)[] = [];
  if (draft.kind === 'back') {
    const out = stretch(reader, { ...draft, reverse: false }, '', true);
    parts.push(out, out === null ? null : { ...out, reverse: true });
  } else if (draft.kind === 'laps') {
    const laps = /^\d{1,2}$/u.test(draft.laps.trim()) ? Number(draft.laps) : 0;
    if (laps < 1) reader.troubles.set('laps', 'It should be a whole number from 1 to 99.');
    const lap = stretch(reader, { of: draft.of, from: '', to: '', reverse: false }, '', false);
    for (let k = 0; k < laps; k++) parts.push(lap);
  } else draft.stretches.forEach((one, k) => parts.push(stretch(reader, one, `${k}.`, false)));
  const whole = parts.flatMap((part) => (part === null ? [] : [part]));
  return { parts: whole.length === parts.length && reader.troubles.size === 0 ? whole : [], troubles: reader.troubles };
}

/** As the plan's file is to have them: whole courses without their ends, distances with a unit. */
export const writtenParts = (
  parts: readonly PlanPart[],
  courses: readonly IndexedCourse[],
  write: (metres: number) => unknown,
): object[] =>
  parts.map(({ of, from, to, reverse }) => {
    const length = courses.find((one) => one.course.id === of)?.course;
    const toEnd = to === undefined || (length !== undefined && to === courseLength(length));
    return {
      of,
      ...(from === 0 ? {} : { from: write(from) }),
      ...(toEnd ? {} : { to: write(to) }),
      ...(reverse === true ? { reverse } : {}),
    };
  });

const keyOf = (plan: string): string => `halfcup-parts-${plan}`;

/** The draft that was begun for a plan; `null` where there is none that can be read. */
export function keptDraft(plan: string): PartsDraft | null {
  try {
    return JSON.parse(localStorage.getItem(keyOf(plan)) ?? 'null') as PartsDraft | null;
  } catch {
    return null;
  }
}

/** Keeps a draft, or with `null` lets it go. */
export function keepDraft(plan: string, draft: PartsDraft | null): void {
  try {
    if (draft === null) localStorage.removeItem(keyOf(plan));
    else localStorage.setItem(keyOf(plan), JSON.stringify(draft));
  } catch {
    // It is then kept as long as the form is open.
  }
}
