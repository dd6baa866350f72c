/** What passes between the page and the worker that searches for better places. */
import type { Finding, Plan } from '@halfcup/core';
import type { Ground } from '@halfcup/core/ground';
import type { Course } from '@halfcup/core/stages';
import type { Improved } from '../state/store/store.ts';

/** What the line of the job says, by which the panel knows its own. */
export const SEARCHING = 'Searching for better places';

export interface ImproveTask {
  /** As shown. */
  readonly plan: Plan;
  /** Without their indexes; no file of the plan goes along but the texts of past results. */
  readonly courses: readonly Course[];
  readonly courseFindings: readonly Finding[];
  readonly results: ReadonlyMap<string, string>;
  /** The plan's maps of the ground, read. */
  readonly ground: ReadonlyMap<string, Ground>;
  readonly only: readonly string[];
  /** Metres. */
  readonly within: number;
}

export type ImproveTold =
  | { readonly kind: 'progress'; readonly share: number }
  | { readonly kind: 'improved'; readonly improvement: Omit<Improved, 'text' | 'variant' | 'within'> }
  | { readonly kind: 'failed'; readonly message: string };
