/** A course of a first plan, built and calibrated, with what its waypoints stand for. */
import { buildCourse } from '../../course/build.ts';
import { type Mark, calibrate } from '../../course/calibrate.ts';
import { type IndexedCourse, indexCourse } from '../../course/segmentIndex.ts';
import { type Result, type Where, good } from '../../finding.ts';
import { chooseLine } from '../../gpx/chooseLine.ts';
import type { GpxDocument } from '../../gpx/document.ts';
import { type WaypointRoles, rolesOf } from '../waypointRoles.ts';
import type { CourseAnswers, SetUpAnswers } from './answers.ts';

export interface ReadyCourse {
  readonly answers: CourseAnswers;
  readonly id: string;
  readonly name: string;
  readonly indexed: IndexedCourse;
  readonly marks: readonly Mark[];
  readonly roles: WaypointRoles;
}

/** `marks`: whether waypoints that are named by a distance become marks of it. */
export function readyCourse(
  answers: CourseAnswers,
  id: string,
  { name, marks: wanted }: Pick<SetUpAnswers, 'name' | 'marks'>,
  document: GpxDocument,
): Result<ReadyCourse> {
  const line = chooseLine(document, answers.track, { file: document.file });
  if (!line.ok) return line;
  const where: Where = { file: document.file, line: line.value.line, column: line.value.column };
  const called = answers.name ?? line.value.name ?? (id === 'course' ? name : id);
  const built = buildCourse({ ...answers, id, name: called, segments: line.value.segments, where });
  if (!built.ok) return built;
  const raw = indexCourse(built.value);
  const given = { marks: [], where, ...(answers.length === undefined ? {} : { length: answers.length }) };
  const roles = rolesOf(document, raw, given);
  if (!roles.ok) return roles;
  const base = wanted ? good(roles.value.indexed) : calibrate(raw, given);
  if (!base.ok) return base;
  return good(
    { answers, id, name: called, indexed: base.value, marks: wanted ? roles.value.marks : [], roles: roles.value },
    [...line.findings, ...built.findings, ...(wanted ? roles.findings : base.findings)],
  );
}
