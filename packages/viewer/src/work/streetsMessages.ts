/** What passes between the page and the worker that cuts streets out of a map file. */
import type { Finding } from '@halfcup/core';
import type { Ground } from '@halfcup/core/ground';
import type { Course } from '@halfcup/core/stages';

export interface StreetsTask {
  readonly name: string;
  readonly blob: Blob;
  readonly courses: readonly Course[];
}

/** The streets beside the courses, and the file that keeps them with the plan. */
export interface Streets {
  readonly ground: Ground;
  readonly file: Blob;
  /** What reading has left out. */
  readonly findings: readonly Finding[];
}

export type StreetsTold =
  | { readonly kind: 'progress'; readonly done: number }
  | { readonly kind: 'read'; readonly streets: Streets }
  | { readonly kind: 'refused'; readonly findings: readonly Finding[] }
  | { readonly kind: 'failed'; readonly message: string };
