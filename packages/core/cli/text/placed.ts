/** Verdicts on recorded points as a table for people. */
import type { PlacedVerdict } from '../../src/review/placed.ts';
import { itemWord } from '../../src/station/wording.ts';
import { formatLength } from '../../src/format.ts';
import type { UnitSystem } from '../../src/units.ts';
import { table } from '../printing.ts';

/** A line each: distance with its error, limits, verdict, and how far to move it. */
export function placedText(verdicts: readonly PlacedVerdict[], units: UnitSystem): string {
  if (verdicts.length === 0)
    return 'As placed: no sign and no trash drop among the recorded points could be held against the plan.';
  const head = ['As placed', 'Item', 'Verdict', ' Distance', ' ±', ' Limits', ' Move', 'By', 'Side'];
  return `${table(
    head,
    verdicts.map((one) => row(one, units)),
  )}\nDistance: of a sign to the first table, of trash from the end of the last.`;
}

const long = (metres: number, units: UnitSystem): string => formatLength(metres, units, 'wheel', 1);

function row(
  { station, item, end, verdict, measured, limit, margin, move, by, reference, side }: PlacedVerdict,
  units: UnitSystem,
): string[] {
  const what = `${itemWord(item)}${end === undefined ? '' : end === 'from' ? ', beginning' : ', end'}`;
  const moved = verdict === 'holds' ? '–' : `${long(Math.abs(move), units)} ${move > 0 ? 'downstream' : 'upstream'}`;
  const limits = `${long(limit[0], units).split(' ')[0]} to ${long(limit[1], units)}`;
  return [
    station,
    what,
    verdict,
    long(measured, units),
    long(margin, units),
    limits,
    moved,
    by === 'wheel' ? 'wheel' : reference === 'planned' ? 'position, planned table' : 'position',
    side,
  ];
}
