/** The plan's text with its stations moved: only the bytes of a moved station's place, and of items given up, change. */
import { editPlan } from '../plan/edit.ts';
import { readJson } from '../plan/json.ts';
import type { PlanDocument, PlanStation } from '../plan/plan.ts';
import { type LengthUnit, lengthIn, parseLength } from '../units.ts';
import type { Move } from './verify.ts';
import { finite, want, listOf } from '../wants.ts';
import { isPlanDocument, isPlanStation } from '../plan/shapes.ts';
import { isMove } from './shapes.ts';

/** Metres by which a measure in another unit may miss. */
const MISS = 1e-3;

/**
 * A plan's text with the moves of an improvement made; `stations` are those of the improved plan. Only the bytes of a moved
 * station's place, and of items given up, change; lengths keep their unit.
 * @example
 * ```ts
 * import { analyse, improve, readPlan } from '@halfcup/core';
 * import { movedText } from '@halfcup/core/stages';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const result = analyse(read.value.plan, { gpx: new Map() });
 * if (!result.ok) throw new Error(result.findings[0]?.message);
 * const { plan, moves } = improve(result.value, { within: 200 });
 * /"measure": "[^"]*"/u.exec(movedText(read.value, plan.stations, moves))?.[0]; // → '"measure": "1.865 km"'
 * ```
 */
export function movedText(document: PlanDocument, stations: readonly PlanStation[], moves: readonly Move[]): string {
  want('movedText', 'document', isPlanDocument, document);
  want('movedText', 'stations', listOf(isPlanStation), stations);
  want('movedText', 'moves', listOf(isMove), moves);
  const { text, plan } = document;
  return moves.reduce((changed, move) => {
    const index = plan.stations.findIndex(({ id }) => id === move.station);
    const station = stations[index];
    if (station === undefined)
      throw new RangeError(`movedText wants moves of the plan's own stations; found “${move.station}”`);
    const pointer = `/stations/${index}`;
    const placed =
      station.on === undefined
        ? editPlan(changed, `${pointer}/at`, station.at)
        : editPlan(changed, `${pointer}/on/measure`, lengthLike(writtenMeasure(changed, index), station.on.measure));
    return move.dropped.length === 0 ? placed : editPlan(placed, `${pointer}/items`, undefined);
  }, text);
}

/** The measure of a station's `on` as its file has it. */
function writtenMeasure(text: string, index: number): unknown {
  const read = readJson(text);
  const value = (read.ok ? read.value.value : {}) as {
    readonly stations?: readonly ({ readonly on?: { readonly measure?: unknown } } | undefined)[];
  };
  return value.stations?.[index]?.on?.measure;
}

/**
 * Metres in the form of another length, to a millimetre: a number, or a text in the same unit with as many decimals as that takes.
 * `like`: a length as a plan's file has it (`2620`, `"2.62 km"`); anything else gives a number.
 * @example
 * ```ts
 * import { lengthLike } from '@halfcup/core/stages';
 * lengthLike('2.62 km', 2750); // → '2.75 km'
 * lengthLike('100 yd', 100); // → '109.361 yd'
 * lengthLike(2620, 2750); // → 2750
 * ```
 */
export function lengthLike(like: unknown, measure: number): number | string {
  want('lengthLike', 'measure', finite, measure);
  const [, space = '', unit = ''] = typeof like === 'string' ? (/^\s*[\d.]+(\s*)(\S.*?)\s*$/u.exec(like) ?? []) : [];
  if (unit === '') return measure;
  const value = lengthIn(measure, unit as LengthUnit);
  for (let decimals = 0; decimals < 9; decimals++) {
    const text = `${value.toFixed(decimals)}${space}${unit}`;
    const read = parseLength(text);
    if (read.ok && Math.abs(read.value - measure) <= MISS) return text;
  }
  return measure;
}
