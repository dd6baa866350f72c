/**
 * The sweep: the vehicle or marshal behind whom the road reopens. Model: it leaves with the last wave, once the last
 * starter has crossed the line, and reaches the finish at the cutoff, even pace; where the plan's clock gives sweep
 * times on that course it is there then, linear between.
 */
import type { Finding } from '../finding.ts';
import type { PlanClock } from '../plan/plan.ts';
import type { RacedayParams } from '../text/params/raceday.ts';
import type { Metres, Seconds } from '../units.ts';
import type { Field } from './day.ts';
import { linearAt } from './finishTimes.ts';
import { racedayFinding } from './racedayFinding.ts';

/** When the sweep is where: knots, both columns rising, between them linear. */
export interface Sweep {
  /** Calibrated. */
  readonly measures: readonly Metres[];
  /** Clock times, after midnight. */
  readonly times: readonly Seconds[];
}

type Knot = readonly [measure: number, time: number];

/**
 * The sweep of a field on a course whose calibrated measure runs from `start` to `finish`. `null` where the plan says
 * nothing of one, and, with an error, where the cutoff is not after the last start, its times do not rise or it leaves
 * before the last wave.
 */
export function sweepOf(
  field: Field,
  course: string,
  [start, finish]: readonly [number, number],
  clock: readonly PlanClock[],
): { readonly sweep: Sweep | null; readonly findings: readonly Finding[] } {
  const { cutoff, id } = field.race;
  const given = clock
    .flatMap(({ course: of, measure, sweep }): Knot[] =>
      of === course && sweep !== undefined ? [[measure, sweep]] : [],
    )
    .sort((a, b) => a[0] - b[0]);
  if (given.length === 0 && cutoff === undefined) return { sweep: null, findings: [] };
  const lastStart = field.start.reduce((a, b) => Math.max(a, b), 0);
  if (cutoff !== undefined && cutoff <= lastStart) {
    const facts = { measured: lastStart - cutoff, limit: 0, unit: 's', where: { race: id, course } };
    return {
      sweep: null,
      findings: [racedayFinding('cutoff-early', { cutoff, start: lastStart }, { severity: 'error', ...facts })],
    };
  }
  const knots: Knot[] = [
    ...((given[0]?.[0] ?? Infinity) > start ? [[start, lastStart] as const] : []),
    ...given,
    ...(cutoff !== undefined && (given.at(-1)?.[0] ?? -Infinity) < finish ? [[finish, cutoff] as const] : []),
  ];
  const fault = faultOf(knots, field, start);
  if (fault !== null)
    return {
      sweep: null,
      findings: [racedayFinding('sweep-impossible', fault, { severity: 'error', where: { race: id, course } })],
    };
  return { sweep: { measures: knots.map(([measure]) => measure), times: knots.map(([, time]) => time) }, findings: [] };
}

function faultOf(knots: readonly Knot[], field: Field, start: number): RacedayParams['sweep-impossible'] | null {
  const gun = field.race.waves.reduce((last, wave) => Math.max(last, wave.time), 0);
  const [measure, leaves] = knots[0]!;
  if (measure <= start && leaves < gun) return { problem: 'early', leaves, wave: gun };
  const back = knots.findIndex((knot, k) => k > 0 && (knot[1] <= knots[k - 1]![1] || knot[0] <= knots[k - 1]![0]));
  if (back < 0) return null;
  const [from, to] = [knots[back - 1]!, knots[back]!].map(([at, time]) => ({ measure: at, time }));
  return { problem: 'backwards', from: from!, to: to! };
}

/** When the sweep passes a measure; `Infinity` beyond its last known time. */
export function sweepAt({ measures, times }: Sweep, measure: number): number {
  return measure > measures.at(-1)! ? Infinity : linearAt(measures, times, measure);
}
