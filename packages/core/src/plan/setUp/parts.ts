/** Races of a first plan that run on parts of a course: there and back, or laps of it. */
import { courseLength } from '../../course/course.ts';
import { courseOfParts } from '../../course/parts.ts';
import { type IndexedCourse, indexCourse } from '../../course/segmentIndex.ts';
import { type Result, bad, good } from '../../finding.ts';
import type { Metres, UnitSystem } from '../../units.ts';
import { exactText } from '../exactText.ts';
import type { Entry } from '../firstPlan.ts';
import type { ReadyCourse } from './ready.ts';

/** How a race runs on its course: the whole of it where it says neither. */
export interface RunsOn {
  /** From the start to here and back, metres. */
  readonly turnAt?: Metres;
  readonly laps?: number;
}

/** Metres of a race on a course that is `length` long. */
export const raceLength = ({ turnAt, laps = 1 }: RunsOn, length: Metres): Metres =>
  turnAt === undefined ? laps * length : 2 * turnAt;

/** A course that the plan writes as parts of another. */
export interface PartsCourse {
  readonly id: string;
  readonly name: string;
  readonly indexed: IndexedCourse;
  readonly parts: readonly Entry[];
}

/** The course of a race that does not run the whole of `of` once; not ok: laps whose ends are apart. */
export function partsCourse(
  { id, name }: Pick<PartsCourse, 'id' | 'name'>,
  { turnAt, laps = 1 }: RunsOn,
  of: ReadyCourse,
  { units, path }: { readonly units: UnitSystem | undefined; readonly path: string },
): Result<PartsCourse> {
  const { course } = of.indexed;
  const where = { path };
  const whole = { course, from: 0, to: courseLength(course), where };
  const joined = { id, name, drawn: course.drawn, reverse: false, where };
  if (turnAt === undefined) {
    const built = courseOfParts({ ...joined, stretches: Array.from({ length: laps }, () => whole) });
    const parts = Array.from({ length: laps }, () => ({ of: of.id }));
    return built.ok
      ? good({ id, name, indexed: indexCourse(built.value), parts }, built.findings)
      : bad(built.findings);
  }
  const out = { ...whole, to: turnAt };
  const back = courseOfParts({ ...joined, reverse: true, stretches: [out] });
  if (!back.ok) return back;
  const home = { course: back.value, from: 0, to: courseLength(back.value), where };
  const built = courseOfParts({ ...joined, stretches: [out, home] });
  if (!built.ok) return built;
  const part = { of: of.id, to: exactText(turnAt, units) ?? turnAt };
  return good({ id, name, indexed: indexCourse(built.value), parts: [part, { ...part, reverse: true }] });
}
