/**
 * A bend by the tables: runners bunch, cut in or swing out where cups are handed over. Model: the sharpest bend (`bends.ts`)
 * of the corners that lie within `bendClear` of the tables.
 */
import type { IndexedCourse } from '../course/segmentIndex.ts';
import { inverseLength } from '../geodesy/karney.ts';
import type { LaidDirection, StationLayout } from '../layout/layout.ts';
import { type Bend, SHARP, sharpBend } from './bends.ts';
import { type Check, COMMON_PRACTICE, type Case, type Ground, atStation, stationCheck } from './check.ts';
import { courseOf, tableEnds } from './standing.ts';

/** Bends nearer than this, metres, are one bend drawn by two courses. */
const ONE_BEND = 30;
/** A turn of more degrees has no sides. */
const SIDELESS_TURN = 150;

export const bendNearTables: Check = stationCheck(
  {
    code: 'bend-near-tables',
    severity: 'warning',
    source: COMMON_PRACTICE,
  },
  bendsAt,
);

interface BendByTables extends Bend {
  readonly direction: LaidDirection;
  readonly course: string;
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
  const kept: BendByTables[] = [];
  for (const bend of bends)
    if (!kept.some(({ at }) => inverseLength(at[0], at[1], bend.at[0], bend.at[1]) <= ONE_BEND)) kept.push(bend);
  return kept.map((bend) => foundOf(bend, station));
}

function sharpest(direction: LaidDirection, indexed: IndexedCourse, measure: number, clear: number): BendByTables[] {
  const ends = tableEnds(direction);
  if (ends === null) return [];
  const [from, to] = [ends[0] + measure - direction.measure, ends[1] + measure - direction.measure];
  const bend = sharpBend(indexed, from - clear, to + clear);
  if (bend === null) return [];
  const away = bend.measure < from ? bend.measure - from : Math.max(bend.measure - to, 0);
  return [{ ...bend, direction, course: indexed.course.id, away }];
}

function foundOf(
  { direction, course, turn, measure, at, away }: BendByTables,
  station: StationLayout,
): Case<'bend-near-tables'> {
  const bends = turn > 0 ? 'left' : 'right';
  // Where the course turns back there is no inside.
  const sideless = direction.side === 'unclear' || Math.abs(turn) > SIDELESS_TURN;
  const tables = sideless ? null : direction.side === bends ? 'inside' : 'outside';
  return {
    params: { turn, most: SHARP, within: station.practice.bendClear, away, tables },
    where: { ...atStation(station), course, measure, at },
    measured: Math.abs(turn),
    limit: SHARP,
    unit: '°',
  };
}
