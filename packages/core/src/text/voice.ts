/** In which language and units people are spoken to, and by which names they know races, stations and courses. */
import type { UnitSystem } from '../units.ts';

/** Names by id; an id that has none stands for itself. */
export interface Names {
  readonly station: (id: string) => string;
  readonly race: (id: string) => string;
  readonly course: (id: string) => string;
}

/** How a finding is put into words. */
export interface Voice {
  /** BCP 47 tag; English where Halfcup does not speak it. */
  readonly language: string;
  readonly units: UnitSystem;
  readonly names: Names;
}

const asIs = (id: string): string => id;

/** Nobody's names: ids stand for themselves. */
export const NO_NAMES: Names = { station: asIs, race: asIs, course: asIs };
