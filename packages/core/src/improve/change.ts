/** The plan's text with its stations moved: only the bytes of a moved station's place, and of items given up, change. */
import { editPlan } from '../plan/edit.ts';
import type { PlanDocument, PlanStation } from '../plan/plan.ts';
import { type LengthUnit, lengthIn, parseLength } from '../units.ts';
import type { Move } from './verify.ts';

/** Metres by which a measure in another unit may miss. */
const MISS = 1e-3;

/** The text of the document with the moves of an improvement made; `stations` are those of the changed plan. */
export function movedText({ text, plan }: PlanDocument, stations: readonly PlanStation[], moves: readonly Move[]): string {
  return moves.reduce((changed, move) => {
    const index = plan.stations.findIndex(({ id }) => id === move.station);
    const station = stations[index]!;
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
  const value = JSON.parse(text.replace(/^\uFEFF/u, '')) as { readonly stations: readonly { readonly on: { readonly measure: unknown } }[] };
  return value.stations[index]!.on.measure;
}

/**
 * Metres in the form of another length, to a millimetre: a number, or a text in the same unit with as many decimals as that takes.
 * `like`: a length as a plan's file has it (`2620`, `"2.62 km"`); anything else gives a number.
 */
export function lengthLike(like: unknown, measure: number): number | string {
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
