/** Better places for people: how the plan stands before and after, what moves where, what is proven, what to look at. */
import type { Improvement } from '../../src/improve/improve.ts';
import type { LongestLeg } from '../../src/improve/standing.ts';
import type { Move } from '../../src/improve/verify.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { itemWord } from '../../src/station/wording.ts';
import { formatLength, formatMeasure } from '../../src/format.ts';
import type { UnitSystem } from '../../src/units.ts';
import { CAUTION } from '../caution.ts';
import { findingsText, oneLine, table } from '../printing.ts';

export interface Asked {
  readonly plan: Plan;
  readonly within: number | undefined;
  readonly out: string | undefined;
  readonly units: UnitSystem;
}

export function improveText(improvement: Improvement, asked: Asked): string {
  const { moves, analysis } = improvement;
  const left = analysis.findings.filter(({ severity, waived }) => severity !== 'note' && waived === undefined);
  const parts = [
    standingTable(improvement, asked),
    moves.length === 0 ? 'No station is better off elsewhere: nothing moves.' : moveTable(improvement, asked),
    remarks(improvement, asked).join('\n'),
    left.length === 0 ? 'No error or warning is left.' : `Left for you: ${findingsText(left)}`,
    written(moves, asked),
  ];
  return `${parts.filter((part) => part !== '').join('\n\n')}\n${CAUTION}\n`;
}

function standingTable({ before, after }: Improvement, { plan, units }: Asked): string {
  const leg = ({ from, to, length }: LongestLeg): string => `${formatLength(length, units, 'long')}, ${from} to ${to}`;
  const rows = [
    ['Errors', String(before.error), String(after.error)],
    ['Warnings', String(before.warning), String(after.warning)],
    ...before.longest.map((longest, k) => [
      `Longest leg, ${plan.races.find(({ id }) => id === longest.race)?.name ?? longest.race}`,
      leg(longest),
      leg(after.longest[k]!),
    ]),
  ];
  return table([oneLine(plan.name), 'Before', 'After'], rows);
}

function moveTable({ moves }: Improvement, { units }: Asked): string {
  const rows = moves.map(({ station, name, shift, measure, to, dropped }) => [
    station,
    name,
    `${formatLength(Math.abs(shift), units, 'wheel', 0)} ${shift < 0 ? 'upstream' : 'downstream'}`,
    formatMeasure(measure, units),
    `${to[0].toFixed(7)},${to[1].toFixed(7)}`,
    dropped.map((kind) => `${itemWord(kind)} back to the usual distance`).join('; '),
  ]);
  return table(['Station', 'Name', ' Moves', ' To course distance', 'To', 'Placed by hand'], rows);
}

function remarks(improvement: Improvement, { plan, within, units }: Asked): string[] {
  const { proof, tried, step, stepBeyond, moves, stays, before, after } = improvement;
  const short = (metres: number): string => formatLength(metres, units, 'wheel', 0);
  const reach =
    stepBeyond > step
      ? `${short(500)}, every ${short(stepBeyond)} beyond to ${short(within ?? 500)}`
      : short(within ?? 500);
  const proven =
    proof === 'optimal'
      ? `Proven: of all combinations of the ${tried} places tried (every ${short(step)} within ${reach}, then finer around the best) none is better.`
      : `Not proven to be the best: no combination has fewer than ${proof.bound.error} errors, nor with as few of them fewer than ${proof.bound.warning} warnings, nor longest legs that add up to less than ${formatLength(proof.bound.longest, units, 'long')}.`;
  const list = (picked: readonly Move[]): string => picked.map(({ station }) => station).join(', ');
  const walked = moves.filter((move) => move.walked);
  const pointed = moves.filter(
    ({ station }) => (plan.stations.find(({ id }) => id === station)?.points.length ?? 0) > 0,
  );
  return [
    proven,
    ...stays.map(({ station, why }) => `${station} stays: ${why}.`),
    ...(walked.length === 0 ? [] : [`Walk again, for the old place was walked: ${list(walked)}.`]),
    ...(pointed.length === 0
      ? []
      : [`Access, drop and medical points stay where they are; see whether they still serve ${list(pointed)}.`]),
    ...(after.idle > before.idle ? ['A waiver is no longer needed: take it out of the plan.'] : []),
  ];
}

function written(moves: readonly Move[], { out }: Asked): string {
  if (out !== undefined) return `The ${moves.length === 0 ? 'unchanged' : 'changed'} plan is in ${out}.`;
  return moves.length === 0 ? '' : 'The plan is as it was; --out FILE writes the changed one.';
}
