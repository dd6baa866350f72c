/**
 * Finding: the one record for everything that is said about an input or a layout,
 * be it a byte that cannot be read or a sign that stands too near its tables.
 */

import type { Latitude, Longitude, Metres } from './units.ts';
import {
  type Shape,
  type Shapes,
  aText,
  anything,
  either,
  finite,
  listOf,
  maybe,
  oneOf,
  position,
  recordOf,
  tableOf,
  tuple,
  want,
} from './wants.ts';

/** Longitude and latitude in degrees, WGS 84, in the order of RFC 7946. */
export type LonLat = readonly [lon: Longitude, lat: Latitude];

/** How grave a finding is: an `error` stops the work, a `warning` is to be looked at, a `note` says what was done. */
export type Severity = 'error' | 'warning' | 'note';

/** What a finding points at; any part may be absent. */
export interface Where {
  /** As the caller named it. */
  readonly file?: string;
  /** In the file, from 1. */
  readonly line?: number;
  /** In the line, from 1. */
  readonly column?: number;
  /** JSON pointer (RFC 6901) into the plan, e.g. `/stations/0/at`. */
  readonly path?: string;
  /** Its id. */
  readonly course?: string;
  /** Its id. */
  readonly race?: string;
  /** Its id. */
  readonly station?: string;
  /** Kind of an item. */
  readonly item?: string;
  /** Course distance in metres. */
  readonly measure?: Metres;
  readonly at?: LonLat;
}

/** One thing that is to be said of an input or a layout. */
export interface Finding {
  /** Stable, hyphenated, e.g. `station-off-course`. */
  readonly code: string;
  readonly severity: Severity;
  /** Up to three short sentences: what is the matter, what it should be, what to do. English, in the plan's units. */
  readonly message: string;
  /** What the message is made of, by name: lengths in metres, times in seconds, ids. Absent: nothing but the message is known. */
  readonly params?: Readonly<Record<string, unknown>>;
  readonly where: Where;
  /** What was found, in `unit`. */
  readonly measured?: number;
  /** One bound, or the lowest and the highest value allowed. */
  readonly limit?: number | readonly [number, number];
  /** Of `measured` and `limit`, e.g. `m`; absent for plain numbers. */
  readonly unit?: string;
  /** Where the rule comes from. */
  readonly source?: string;
  /** The position error does not allow an answer: neither passed nor failed. */
  readonly cannotTell?: true;
  /** Of a station as it was recorded on the ground, not as the plan has it. */
  readonly built?: true;
  /** The plan accepts the finding: who did, why, when (ISO 8601). */
  readonly waived?: { readonly by: string; readonly reason: string; readonly date?: string };
}

/** A value with what is to be said of it, or, when it cannot be had, the reasons. */
export type Result<T> =
  | { readonly ok: true; readonly value: T; readonly findings: readonly Finding[] }
  | { readonly ok: false; readonly findings: readonly Finding[] };

/** A usable value, with findings that do not stand in its way. */
export const good = <T>(value: T, findings: readonly Finding[] = []): Result<T> => ({ ok: true, value, findings });

/** No value: `findings` holds at least one reason. */
export const bad = (findings: readonly Finding[]): { readonly ok: false; readonly findings: readonly Finding[] } => ({
  ok: false,
  findings,
});

/**
 * A finding as a line of text, `FILE:LINE:COLUMN: message`, leaving out what is not known.
 * @example
 * ```ts
 * import { findingLine } from '@halfcup/core/gpx';
 *
 * findingLine({ code: 'gpx-empty', severity: 'error', message: 'The file is empty.', where: { file: 'run.gpx', line: 1, column: 1 } }); // → 'run.gpx:1:1: The file is empty.'
 * findingLine({ code: 'leg-long', severity: 'warning', message: 'A leg is long.', where: { race: 'run' } }); // → 'A leg is long.'
 * ```
 */
export function findingLine(finding: Finding): string {
  want('findingLine', 'finding', isLine, finding);
  const { file, line, column } = finding.where;
  const place = [file, line, line === undefined ? undefined : column].filter((part) => part !== undefined).join(':');
  return place === '' ? finding.message : `${place}: ${finding.message}`;
}

const WHERE: Shapes<Where> = {
  file: maybe(aText),
  line: maybe(finite),
  column: maybe(finite),
  path: maybe(aText),
  course: maybe(aText),
  race: maybe(aText),
  station: maybe(aText),
  item: maybe(aText),
  measure: maybe(finite),
  at: maybe(position),
};
export const isWhere: Shape = recordOf('what findings point at, such as {}', WHERE);

/** What a line is made of. */
const isLine: Shape = recordOf<Pick<Finding, 'message' | 'where'>>('a finding', { message: aText, where: isWhere });

export const isFinding: Shape = recordOf<Finding>('a finding', {
  code: aText,
  severity: oneOf('error', 'warning', 'note'),
  message: aText,
  params: maybe(tableOf(anything)),
  where: isWhere,
  measured: maybe(finite),
  limit: maybe(either(tuple(finite, finite), finite)),
  unit: maybe(aText),
  source: maybe(aText),
  cannotTell: maybe(oneOf(true)),
  built: maybe(oneOf(true)),
  waived: maybe(recordOf('a waiver', { by: aText, reason: aText, date: maybe(aText) })),
});

/** What a step that may refuse its input has given. */
export const isResultOf = (value: Shape): Shape => {
  const findings = listOf(isFinding);
  const good = recordOf('a result', { ok: oneOf(true), value, findings });
  const bad = recordOf('a result', { ok: oneOf(false), findings });
  return (result) => ((result as { readonly ok?: unknown } | null | undefined)?.ok === false ? bad : good)(result);
};
