/**
 * How many times before a course has come along the same road in the same direction, by sample: laps are drawn side by side. A sample
 * counts as the same road within 25 m, as the same direction within 60°, as another time over 300 m away by measure. For drawing only.
 */
import type { Samples } from '../../state/view/derive.ts';

const NEAR = 25;
const TURN_DEG = 60;
const APART = 300;

const turn = (a: number, b: number): number => Math.abs(((a - b + 540) % 360) - 180);

export function lapsBefore({ measure, lon, lat, azimuthDeg }: Samples): Uint8Array {
  const east = 111_320 * Math.cos(((lat[0] ?? 0) * Math.PI) / 180);
  const x = lon.map((value) => (value - (lon[0] ?? 0)) * east);
  const y = lat.map((value) => (value - (lat[0] ?? 0)) * 110_600);
  const cells = new Map<string, number[]>();
  const laps = new Uint8Array(measure.length);
  for (let at = 0; at < measure.length; at++) {
    const [cx, cy] = [Math.floor((x[at] ?? 0) / NEAR), Math.floor((y[at] ?? 0) / NEAR)];
    const around = [-1, 0, 1].flatMap((dx) => [-1, 0, 1].flatMap((dy) => cells.get(`${cx + dx},${cy + dy}`) ?? []));
    const same = around.filter(
      (other) =>
        (measure[at] ?? 0) - (measure[other] ?? 0) > APART &&
        Math.hypot((x[other] ?? 0) - (x[at] ?? 0), (y[other] ?? 0) - (y[at] ?? 0)) <= NEAR &&
        turn(azimuthDeg[other] ?? 0, azimuthDeg[at] ?? 0) < TURN_DEG,
    );
    laps[at] = same.reduce((most, other) => Math.max(most, (laps[other] ?? 0) + 1), 0);
    const key = `${cx},${cy}`;
    const cell = cells.get(key);
    if (cell === undefined) cells.set(key, [at]);
    else cell.push(at);
  }
  return laps;
}
