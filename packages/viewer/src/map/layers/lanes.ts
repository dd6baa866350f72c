/**
 * Where a course comes back over its own ground the other way, so that it is drawn as two lanes.
 * Works on samples: a stretch counts where another sample lies within 12 m, runs against it
 * (over 135° apart) and is over 60 m away by measure. For drawing only.
 */
import type { Samples } from '../../state/view/derive.ts';

export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly retraced: boolean;
}

const NEAR = 12;
const AGAINST_DEG = 135;
const APART = 60;
const CELL = 24;

const turn = (a: number, b: number): number => Math.abs(((a - b + 540) % 360) - 180);

interface Flat {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly cells: ReadonlyMap<string, readonly number[]>;
}

function flatten({ lon, lat }: Samples): Flat {
  const east = 111_320 * Math.cos(((lat[0] ?? 0) * Math.PI) / 180);
  const x = lon.map((value) => (value - (lon[0] ?? 0)) * east);
  const y = lat.map((value) => (value - (lat[0] ?? 0)) * 110_600);
  const cells = new Map<string, number[]>();
  for (let index = 0; index < x.length; index++) {
    const key = `${Math.floor((x[index] ?? 0) / CELL)},${Math.floor((y[index] ?? 0) / CELL)}`;
    const cell = cells.get(key);
    if (cell === undefined) cells.set(key, [index]);
    else cell.push(index);
  }
  return { x, y, cells };
}

function comesBack(samples: Samples, { x, y, cells }: Flat, index: number): boolean {
  const [px, py] = [x[index] ?? 0, y[index] ?? 0];
  const [cx, cy] = [Math.floor(px / CELL), Math.floor(py / CELL)];
  for (let dx = -1; dx <= 1; dx++) {
    for (let dy = -1; dy <= 1; dy++) {
      for (const other of cells.get(`${cx + dx},${cy + dy}`) ?? []) {
        if (Math.abs((samples.measure[other] ?? 0) - (samples.measure[index] ?? 0)) < APART) continue;
        if (Math.hypot((x[other] ?? 0) - px, (y[other] ?? 0) - py) > NEAR) continue;
        if (turn(samples.azimuthDeg[other] ?? 0, samples.azimuthDeg[index] ?? 0) > AGAINST_DEG) return true;
      }
    }
  }
  return false;
}

/** The whole course in order, cut where it begins or ends to be retraced; stretches under 40 m join their neighbour. */
export function stretches(samples: Samples): Stretch[] {
  const flat = flatten(samples);
  const found: { from: number; to: number; retraced: boolean }[] = [];
  for (let index = 0; index < samples.measure.length; index++) {
    const retraced = comesBack(samples, flat, index);
    const measure = samples.measure[index] ?? 0;
    const last = found.at(-1);
    if (last !== undefined) last.to = measure;
    if (last === undefined || last.retraced !== retraced) found.push({ from: measure, to: measure, retraced });
  }
  const joined: Stretch[] = [];
  for (const stretch of found) {
    const last = joined.at(-1);
    if (last !== undefined && (stretch.to - stretch.from < 40 || last.retraced === stretch.retraced))
      joined[joined.length - 1] = { ...last, to: stretch.to };
    else joined.push(stretch);
  }
  return joined.filter((stretch) => stretch.to > stretch.from);
}
