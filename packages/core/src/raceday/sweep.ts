/**
 * The sweep: the vehicle or marshal behind whom the road reopens. Model: it leaves with the last wave, once the last
 * starter has crossed the line, and reaches the finish at the cutoff, even pace; where the plan's clock gives sweep
 * times on that course it is there then, linear between. The clock's last time is the cutoff's where it is given
 * within 100 m of the finish, or is the same to a minute: two drawings of a course, or two roundings, are no fault.
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

/** `is`: the last start or the race's cutoff, where no sweep time of the clock gives it. */
type Knot = readonly [measure: number, time: number, is?: 'start' | 'cutoff'];

/** A sweep time of the clock so near the finish, metres, is that of the finish. */
const AT_FINISH = 100;
/** Times that differ by no more, seconds, are one. */
const ONE_TIME = 60;

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
    ...((given[0]?.[0] ?? Infinity) > start ? [[start, lastStart, 'start'] as const] : []),
    ...given,
    ...atFinish(given.at(-1), finish, cutoff),
  ];
  const fault = faultOf(knots, field, start, course);
  if (fault !== null)
    return {
      sweep: null,
      findings: [racedayFinding('sweep-impossible', fault, { severity: 'error', where: { race: id, course } })],
    };
  return { sweep: { measures: knots.map(([measure]) => measure), times: knots.map(([, time]) => time) }, findings: [] };
}

/** When the sweep is at the finish, where the clock does not say it there. */
function atFinish(last: Knot | undefined, finish: number, cutoff: number | undefined): Knot[] {
  if (last === undefined) return cutoff === undefined ? [] : [[finish, cutoff, 'cutoff']];
  const [measure, time] = last;
  if (measure >= finish) return [];
  if (finish - measure <= AT_FINISH) return [[finish, time]];
  if (cutoff === undefined) return [];
  return [[finish, Math.abs(cutoff - time) <= ONE_TIME ? Math.max(cutoff, time) : cutoff, 'cutoff']];
}

function faultOf(
  knots: readonly Knot[],
  field: Field,
  start: number,
  course: string,
): RacedayParams['sweep-impossible'] | null {
  const gun = field.race.waves.reduce((last, wave) => Math.max(last, wave.time), 0);
  const [measure, leaves] = knots[0]!;
  if (measure <= start && leaves < gun) return { problem: 'early', leaves, wave: gun };
  const back = knots.findIndex((knot, k) => k > 0 && isBack(knots[k - 1]!, knot, k === knots.length - 1));
  if (back < 0) return null;
  const [from, to] = [knots[back - 1]!, knots[back]!].map(([at, time, is]) => ({
    measure: at,
    time,
    ...(is === undefined ? {} : { is }),
  }));
  return { problem: 'backwards', from: from!, to: to!, course };
}

/** At the finish the time may be the one before. */
const isBack = ([before, earlier]: Knot, [measure, time]: Knot, last: boolean): boolean =>
  measure <= before || (last ? time < earlier : time <= earlier);

/** When the sweep passes a measure; `Infinity` beyond its last known time. */
export function sweepAt({ measures, times }: Sweep, measure: number): number {
  return measure > measures.at(-1)! ? Infinity : linearAt(measures, times, measure);
}
