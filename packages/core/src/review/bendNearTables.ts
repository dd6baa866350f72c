/**
 * A bend by the tables: runners bunch, cut in or swing out where cups are handed over. Model: the
 * net turn of the course over any 30 m, of the corners that lie within `bendClear` of the tables;
 * recorded tracks smoothed over 10 m, places where the recorder stood still left out. Wiggles that
 * turn back within the 30 m are no bend.
 */
import { pointAt } from '../course/locate.ts';
import { toMeasure, toRaw } from '../course/scale.ts';
import type { IndexedCourse } from '../course/segmentIndex.ts';
import type { LonLat } from '../finding.ts';
import { DEGREES } from '../geodesy/ellipsoid.ts';
import { inverseLength } from '../geodesy/karney.ts';
import type { Corner } from '../geodesy/offsetLine.ts';
import type { LaidDirection, StationLayout } from '../layout/layout.ts';
import { wheelLine } from '../layout/wheel.ts';
import { type Check, COMMON_PRACTICE, type Case, type Ground, atStation, stationCheck } from './check.ts';
import { courseOf, tableEnds } from './standing.ts';

/** Course over which a turn counts as one bend, metres. */
const WINDOW = 30;
/** Degrees. */
const SHARPEST = 45;
/** Bends nearer than this, metres, are one bend drawn by two courses. */
const ONE_BEND = 30;
/** A turn of more degrees has no sides. */
const SIDELESS_TURN = 150;
/** Rounding of a turn, degrees. */
const SAME = 1e-6;

export const bendNearTables: Check = stationCheck(
  {
    code: 'bend-near-tables',
    severity: 'warning',
    source: COMMON_PRACTICE,
  },
  bendsAt,
);

interface Bend {
  readonly direction: LaidDirection;
  readonly course: string;
  /** Degrees, left positive. */
  readonly turn: number;
  readonly measure: number;
  readonly at: LonLat;
  /** From the tables, metres along the course, upstream negative; 0 beside them. */
  readonly away: number;
}

/** The sharpest bend of each course that is served there; one that several courses share once. */
function bendsAt(station: StationLayout, ground: Ground): Case<'bend-near-tables'>[] {
  const bends = station.directions.flatMap((direction) => {
    const served = direction.passes.map((k) => station.passes[k]!).filter((pass) => pass.served);
    return served.flatMap(({ course, measure }) =>
      sharpest(direction, courseOf(ground, course), measure, station.practice.bendClear),
    );
  });
  const kept: Bend[] = [];
  for (const bend of bends)
    if (!kept.some(({ at }) => inverseLength(at[0], at[1], bend.at[0], bend.at[1]) <= ONE_BEND)) kept.push(bend);
  return kept.map((bend) => foundOf(bend, station));
}

function sharpest(direction: LaidDirection, indexed: IndexedCourse, measure: number, clear: number): Bend[] {
  const ends = tableEnds(direction);
  if (ends === null) return [];
  const { course } = indexed;
  const [from, to] = [ends[0] + measure - direction.measure, ends[1] + measure - direction.measure];
  const turned = largestTurn(cornersBetween(indexed, from - clear, to + clear));
  const degrees = (turned?.turn ?? 0) * DEGREES;
  if (turned === null || Math.abs(degrees) <= SHARPEST + SAME) return [];
  const at = toMeasure(course, turned.at);
  const ground = pointAt(course, at);
  if (ground === null) return [];
  return [
    {
      direction,
      course: course.id,
      turn: degrees,
      measure: at,
      at: ground.at,
      away: at < from ? at - from : Math.max(at - to, 0),
    },
  ];
}

function cornersBetween({ course, tangles }: IndexedCourse, from: number, to: number): Corner[] {
  const [first, last] = [toRaw(course, from), toRaw(course, to)];
  return wheelLine(course, from, to).corners.filter(
    ({ at }) => at >= first && at <= last && !tangles.some((tangle) => at >= tangle.from && at <= tangle.to),
  );
}

/** The largest net turn, radians, over 30 m of raw measure, and its middle, weighed by turn; `null` without corners. */
function largestTurn(corners: readonly Corner[]): Corner | null {
  let largest: Corner | null = null;
  corners.forEach((first, k) => {
    let turn = 0;
    let weight = 0;
    let moment = 0;
    for (const corner of corners.slice(k)) {
      if (corner.at - first.at > WINDOW) break;
      turn += corner.turn;
      weight += Math.abs(corner.turn);
      moment += Math.abs(corner.turn) * (corner.at - first.at);
      if (largest === null || Math.abs(turn) > Math.abs(largest.turn))
        largest = { at: first.at + moment / weight, turn };
    }
  });
  return largest;
}

function foundOf(
  { direction, course, turn, measure, at, away }: Bend,
  station: StationLayout,
): Case<'bend-near-tables'> {
  const bends = turn > 0 ? 'left' : 'right';
  // Where the course turns back there is no inside.
  const sideless = direction.side === 'unclear' || Math.abs(turn) > SIDELESS_TURN;
  const tables = sideless ? null : direction.side === bends ? 'inside' : 'outside';
  return {
    params: { turn, most: SHARPEST, within: station.practice.bendClear, away, tables },
    where: { ...atStation(station), course, measure, at },
    measured: Math.abs(turn),
    limit: SHARPEST,
    unit: '°',
  };
}
