/** What a course file offers a first plan, by what was chosen about it: its line, its gaps, its direction, its faults. */
import type { Result } from '@halfcup/core';
import { offeredCourse, type GapRule, type OfferedCourse } from '@halfcup/core/plan';
import type { CourseFile } from '../store/store.ts';
import { fixedFile } from './starting.ts';

export interface CourseChoice {
  readonly track: string;
  readonly gaps: GapRule;
  readonly reverse: boolean;
  /** Without the spikes and tangles of its track. */
  readonly fixed: boolean;
}

/** Before anybody has chosen anything. */
export const FIRST_CHOICE: CourseChoice = { track: '', gaps: 'refuse', reverse: false, fixed: false };

export const sameChoice = (a: CourseChoice, b: CourseChoice): boolean =>
  a.track === b.track && a.gaps === b.gaps && a.reverse === b.reverse && a.fixed === b.fixed;

export interface OfferedFile {
  /** As it would be taken. */
  readonly file: CourseFile;
  readonly offered: Result<OfferedCourse>;
}

export function offeredFile(original: CourseFile, { track, gaps, reverse, fixed }: CourseChoice): OfferedFile {
  const file = fixed ? fixedFile(original) : original;
  const answers = { gpx: file.name, gaps, reverse, ...(track === '' ? {} : { track: Number(track) }) };
  return { file, offered: offeredCourse(answers, file.document) };
}
