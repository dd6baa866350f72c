/** Lanes of runners on shared roads. */
import { describe, expect, it } from 'vitest';
import type { Samples } from '../../state/view/derive.ts';
import { lanesOf } from './laps.ts';

/** A ring of 2 km, so many laps of it, a sample every 10 m; `away`: metres between it and the road of the others. */
function ring(laps: number, away = 0, backwards = false): Samples {
  const radius = 2000 / (2 * Math.PI);
  const count = laps * 200;
  const at = (k: number): number => ((backwards ? -k : k) / 200) * 2 * Math.PI;
  const column = (of: (k: number) => number): Float64Array => Float64Array.from({ length: count }, (_, k) => of(k));
  return {
    measure: column((k) => k * 10),
    lon: column((k) => (radius * Math.sin(at(k)) + away) / 111_320),
    lat: column((k) => (radius * Math.cos(at(k))) / 110_600),
    azimuthDeg: column((k) => ((at(k) * 180) / Math.PI + (backwards ? 270 : 90) + 720) % 360),
    elevation: null,
  };
}
const lanesIn = (lanes: Uint8Array): number[] => [...new Set(lanes)].toSorted((a, b) => a - b);

describe('lanes of runners', () => {
  it('gives each lap its own, and the next race the one after', () => {
    const [long, short] = lanesOf([ring(2), ring(1)]);
    expect(lanesIn(long!.slice(0, 200))).toEqual([0]);
    expect(lanesIn(long!.slice(200))).toEqual([1]);
    expect(lanesIn(short!)).toEqual([2]);
  });

  it('keeps a race next to its course where nobody shares the road in its direction', () => {
    const [, elsewhere] = lanesOf([ring(2), ring(1, 5000)]);
    expect(lanesIn(elsewhere!.slice(0, 190))).toEqual([0]);
    const [, against] = lanesOf([ring(1), ring(1, 0, true)]);
    expect(lanesIn(against!.slice(0, 190))).toEqual([0]);
  });
});
