/**
 * Lanes of runners who share a road: laps of a race and races after one another lie side by side. A place takes the next lane beyond
 * those of earlier races, and of earlier laps, that come along there in the same direction; so a race alone on its road is next to it.
 * Abreast within 25 m is the same road, within 60° the same direction, over 300 m away by measure another lap. For drawing only.
 */
import type { Samples } from '../../state/view/derive.ts';

const NEAR = 25;
const TURN_DEG = 60;
const APART = 300;
/** Between two samples, metres. */
const STEP = 10;

const turn = (a: number, b: number): number => Math.abs(((a - b + 540) % 360) - 180);

interface Place {
  readonly race: number;
  readonly measure: number;
  readonly x: number;
  readonly y: number;
  readonly azimuthDeg: number;
  readonly lane: number;
}

/** `reach`: how far ahead or behind still is abreast, metres. */
function isBeside(one: Place, at: Omit<Place, 'lane'>, reach: number): boolean {
  if (one.race === at.race && at.measure - one.measure <= APART) return false;
  const [x, y, angle] = [one.x - at.x, one.y - at.y, (at.azimuthDeg * Math.PI) / 180];
  const ahead = x * Math.sin(angle) + y * Math.cos(angle);
  return Math.abs(ahead) <= reach && Math.hypot(x, y) <= NEAR && turn(one.azimuthDeg, at.azimuthDeg) < TURN_DEG;
}

/** The lane of each sample of each race, 0 next to the course; `races`: the samples of their courses, in order. */
export function lanesOf(races: readonly Samples[]): Uint8Array[] {
  const [lon0, lat0] = [races[0]?.lon[0] ?? 0, races[0]?.lat[0] ?? 0];
  const east = 111_320 * Math.cos((lat0 * Math.PI) / 180);
  const cells = new Map<string, Place[]>();
  return races.map(({ measure, lon, lat, azimuthDeg }, race) => {
    const lanes = new Uint8Array(measure.length);
    const reach = Math.max(STEP, (measure[1] ?? 0) - (measure[0] ?? 0)) * 0.75;
    for (let k = 0; k < measure.length; k++) {
      const at = {
        race,
        measure: measure[k] ?? 0,
        x: ((lon[k] ?? 0) - lon0) * east,
        y: ((lat[k] ?? 0) - lat0) * 110_600,
        azimuthDeg: azimuthDeg[k] ?? 0,
      };
      const [cx, cy] = [Math.floor(at.x / NEAR), Math.floor(at.y / NEAR)];
      const around = [-1, 0, 1].flatMap((dx) => [-1, 0, 1].flatMap((dy) => cells.get(`${cx + dx},${cy + dy}`) ?? []));
      lanes[k] = around.reduce((most, one) => (isBeside(one, at, reach) ? Math.max(most, one.lane + 1) : most), 0);
      const place = { ...at, lane: lanes[k] ?? 0 };
      const cell = cells.get(`${cx},${cy}`);
      if (cell === undefined) cells.set(`${cx},${cy}`, [place]);
      else cell.push(place);
    }
    return lanes;
  });
}
