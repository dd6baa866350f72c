/** What a list of stations is read with, and what comes of it. */
import type { Metres, UnitSystem } from '../../units.ts';
import type { StationInput } from '../input.ts';
import type { ListColumn } from './heads.ts';

/** A course that rows may stand on. */
export interface ListCourse {
  readonly id: string;
  readonly name: string;
  /** Course distances are from `start` to `length`, metres; absent: not compared. */
  readonly start?: Metres;
  readonly length?: Metres;
}

/** How a list is to be read. */
export interface StationListOptions {
  /** Named by the findings. */
  readonly file: string;
  /** Of distances (km or mi) and widths (m or ft) without a unit. */
  readonly units: UnitSystem;
  /** Courses by which rows may say their place; a row that names none stands on the first. */
  readonly courses: readonly ListCourse[];
  /** What the columns hold where the first row is no header, as in rows copied out of a table. */
  readonly columns?: readonly ListColumn[];
}

/** A station of a list, as a plan writes it, without an id where the list has none. */
export interface ListedStation {
  /** In the text, from 1, the header among them. */
  readonly row: number;
  readonly station: Omit<StationInput, 'id'> & { readonly id?: string };
}
