/** In which language and units people are spoken to, and by which names they know races, stations and courses. */
import type { UnitSystem } from '../units.ts';
import { type Shape, aFunction, aText, oneOf, partly, recordOf } from '../wants.ts';

/** Names by id; an id that has none stands for itself. */
export interface Names {
  /** Name of the station with that id. */
  readonly station: (id: string) => string;
  /** Name of the race with that id. */
  readonly race: (id: string) => string;
  /** Name of the course with that id. */
  readonly course: (id: string) => string;
}

/** How a finding is put into words. */
export interface Voice {
  /** BCP 47 tag; English where Halfcup does not speak it. */
  readonly language: string;
  readonly units: UnitSystem;
  readonly names: Names;
}

export const isNames: Shape = recordOf<Names>('names, such as NO_NAMES', {
  station: aFunction,
  race: aFunction,
  course: aFunction,
});
export const isVoice: Shape = recordOf<Voice>('the voice that voiceOf gives', {
  language: aText,
  units: oneOf('metric', 'imperial'),
  names: isNames,
});
export const isVoiceOptions: Shape = partly('{ units, language }', {
  units: oneOf('metric', 'imperial'),
  language: aText,
});

const asIs = (id: string): string => id;

/**
 * Nobody's names: ids stand for themselves.
 * @example
 * ```ts
 * import { NO_NAMES } from '@halfcup/core/sentences';
 * NO_NAMES.station('s3'); // → 's3'
 * ```
 */
export const NO_NAMES: Names = { station: asIs, race: asIs, course: asIs };

/** The language of a BCP 47 tag without its region, in lower case: "es" of "es-MX". */
export const mainTag = (language: string): string => language.trim().toLowerCase().split('-', 1)[0]!;
