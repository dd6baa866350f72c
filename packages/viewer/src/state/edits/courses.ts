/** A GPX file that came while a plan was open becomes a course of it, or takes the place of one, as one step of undo. */
import { editPlan, type Finding } from '@halfcup/core';
import type { CourseFile, OpenPlan, Store } from '../store/store.ts';
import { dropTrial } from '../store/trial.ts';
import { plainName } from '../view/fileNames.ts';
import { pointerTo, rawPlan, setValue, together, valueAt, type Command } from './edits.ts';
import { freeId } from './freeId.ts';
import { run } from './workbench.ts';

/** A name that no file of the plan has: the old file stays, so that a step back finds it. */
function freeName({ files }: OpenPlan, name: string): string {
  const taken = new Set([...files.originals.keys(), ...files.gpx.keys()].map((one) => one.toLowerCase()));
  const base = name.replace(/\.gpx$/iu, '');
  let own = `${base}.gpx`;
  for (let k = 2; taken.has(own.toLowerCase()); k++) own = `${base}-${k}.gpx`;
  return own;
}

/** Runs a command with a file beside those that the plan has; where it is refused the file is not kept. */
function runWith(store: Store, name: string, file: CourseFile, command: Command): readonly Finding[] {
  dropTrial(store);
  const before = store.open.value;
  if (before === null) return [];
  const files = {
    ...before.files,
    gpx: new Map([...before.files.gpx, [name, file.document] as const]),
    originals: new Map([...before.files.originals, [name, file.original] as const]),
  };
  store.open.value = { ...before, files };
  const findings = run(store, command);
  if (findings.length > 0) store.open.value = before;
  return findings;
}

const titleOf = ({ document, name }: CourseFile): string =>
  document.tracks[0]?.name ?? document.routes[0]?.name ?? document.name ?? name.replace(/\.gpx$/iu, '');

/** A free id made of a name. */
function idFor(name: string, taken: readonly string[], word: string): string {
  const own = plainName(name);
  return taken.includes(own) || own === 'start' || own === 'finish' ? freeId(word, taken) : own;
}

/** A new course with a race on it. */
export function addCourse(store: Store, file: CourseFile): readonly Finding[] {
  const open = store.open.value;
  if (open === null) return [];
  const { courses, races } = open.document.plan;
  const name = titleOf(file);
  const gpx = freeName(open, file.name);
  const id = idFor(
    name,
    courses.map((one) => one.id),
    'course',
  );
  const race = idFor(
    name,
    races.map((one) => one.id),
    'race',
  );
  return runWith(
    store,
    gpx,
    file,
    together(`add course ${name}`, [
      setValue(['courses', '-'], { id, name, gpx }, ''),
      setValue(['races', '-'], { id: race, name, course: id }, ''),
    ]),
  );
}

/** Another file for a course; its name, its races and its stations stay. */
export function replaceCourse(store: Store, course: string, file: CourseFile): readonly Finding[] {
  const open = store.open.value;
  const at = open?.document.plan.courses.findIndex(({ id }) => id === course) ?? -1;
  if (open === null || at < 0) return [];
  const gpx = freeName(open, file.name);
  const raw = valueAt(rawPlan(open.document), ['courses', at]) as Readonly<Record<string, unknown>>;
  // Of the old line alone: which track of its file, where its gaps are, which way it was recorded.
  const gone = new Set(['line', 'parts', 'track', 'reverse', 'gaps']);
  const kept = Object.fromEntries(Object.entries(raw).filter(([key]) => !gone.has(key)));
  return runWith(store, gpx, file, {
    label: `replace course ${open.document.plan.courses[at]!.name}`,
    edit: ({ document }) => editPlan(document.text, pointerTo(['courses', at]), { ...kept, gpx }),
  });
}
