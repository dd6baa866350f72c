/** Better places for people: how the plan stands before and after, what moves where, what is proven, what to look at. */
import type { Improvement } from '../../src/improve/improve.ts';
import type { LongestLeg } from '../../src/improve/standing.ts';
import type { Move } from '../../src/improve/verify.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { itemWord } from '../../src/station/wording.ts';
import { formatLength, formatMeasure } from '../../src/format.ts';
import type { UnitSystem } from '../../src/units.ts';
import { type View, findingsText } from '../findings.ts';
import { oneLine } from '../breaks.ts';
import { paragraph } from '../lineBreaks.ts';
import { table } from '../tables.ts';
import { heading, page, section } from './blocks.ts';

export interface Asked {
  readonly plan: Plan;
  readonly within: number | undefined;
  readonly out: string | undefined;
}

export function improveText(improvement: Improvement, asked: Asked, view: View): string {
  const { moves, analysis } = improvement;
  const left = analysis.findings.filter(({ severity, waived }) => severity !== 'note' && waived === undefined);
  const lines = (texts: readonly string[]): string =>
    texts.map((text) => paragraph(oneLine(text), view.screen.width)).join('\n');
  return page(
    [
      heading([asked.plan.name], view.screen),
      standingTable(improvement, view),
      moves.length === 0 ? 'No station would be better elsewhere: nothing moves.' : moveTable(improvement, view),
      lines(remarks(improvement, asked, view)),
      left.length === 0 ? 'No error or warning is left.' : `Left for you: ${findingsText(left, view)}`,
      lines(written(moves, asked)),
    ],
    view.screen,
  );
}

function standingTable({ before, after }: Improvement, { units, names, screen }: View): string {
  const leg = ({ from, to, length }: LongestLeg): string =>
    `${formatLength(length, units, 'long')}, ${names.station(from)} to ${names.station(to)}`;
  const rows = [
    ['Errors', String(before.error), String(after.error)],
    ['Warnings', String(before.warning), String(after.warning)],
    ...before.longest.map((longest, k) => [
      `Longest leg, ${names.race(longest.race)}`,
      leg(longest),
      leg(after.longest[k]!),
    ]),
  ];
  return table(['', 'Before', 'After'], rows, screen);
}

function moveTable({ moves }: Improvement, { units, names, screen }: View): string {
  const dropped = moves.some((move) => move.dropped.length > 0);
  const rows = moves.map((move) => [
    names.station(move.station),
    `${formatLength(Math.abs(move.shift), units, 'wheel', 0)} ${move.shift < 0 ? 'upstream' : 'downstream'}`,
    formatMeasure(move.measure, units),
    ...(dropped ? [move.dropped.map((kind) => `${itemWord(kind)} back to the usual distance`).join('; ')] : []),
  ]);
  const head = ['Station', ' Moves', ' To', ...(dropped ? ['Was placed by hand'] : [])];
  return section('Stations that move', table(head, rows, screen), screen);
}

function remarks(improvement: Improvement, { plan, within }: Asked, { units, names }: View): string[] {
  const { moves, stays, before, after } = improvement;
  const list = (picked: readonly Move[]): string => picked.map(({ station }) => names.station(station)).join(', ');
  const walked = moves.filter((move) => move.walked);
  const pointed = moves.filter(
    ({ station }) => (plan.stations.find(({ id }) => id === station)?.points.length ?? 0) > 0,
  );
  return [
    ...(improvement.stopped
      ? ['Stopped after 10 minutes: better places may be left to find. Name fewer stations with --only.']
      : []),
    proofText(improvement, within, (metres) => shortLength(metres, units)),
    ...stays.map(({ station, why }) => `${names.station(station)} stays: ${why}.`),
    ...(walked.length === 0 ? [] : [`Walk the new place; only the old one was checked on foot: ${list(walked)}.`]),
    ...(pointed.length === 0
      ? []
      : [`Access, drop and medical points stay where they are. Check that they still serve ${list(pointed)}.`]),
    ...(after.idle > before.idle ? ['A waiver is no longer needed: remove it from the plan.'] : []),
  ];
}

/** Metres or yards below a kilometre, else kilometres or miles. */
const shortLength = (metres: number, units: UnitSystem): string =>
  metres < 1000 ? formatLength(metres, units, 'wheel', 0) : formatLength(metres, units, 'long');

/** How far the search can vouch for its result. */
function proofText(
  { proof, tried, step, stepBeyond }: Improvement,
  within: number = 500,
  length: (metres: number) => string,
): string {
  if (proof !== 'optimal')
    return `Not proven to be the best. No combination has fewer than ${proof.bound.error} errors, or with as few of them fewer than ${proof.bound.warning} warnings, or longest legs that add up to less than ${length(proof.bound.longest)}.`;
  const reach =
    stepBeyond > step ? `${length(500)}, every ${length(stepBeyond)} beyond to ${length(within)}` : length(within);
  return `Proven: no combination of the ${tried.toLocaleString('en')} places tried is better (every ${length(step)} within ${reach}, then finer around the best).`;
}

function written(moves: readonly Move[], { out }: Asked): string[] {
  if (out !== undefined) return [`The ${moves.length === 0 ? 'unchanged' : 'changed'} plan is in ${out}.`];
  return moves.length === 0 ? [] : ['The plan is unchanged; --out FILE writes the changed one.'];
}
