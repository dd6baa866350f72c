import { expect, it } from 'vitest';
import { ORIGIN } from '../testing/courses.ts';
import { frameAt } from '../geodesy/frame.ts';
import { squaresIn } from './squares.ts';

it('a square of 150,000 corners holds what is inside', () => {
  const [lon, lat] = ORIGIN;
  const angles = Array.from({ length: 150_001 }, (_, k) => ((k % 150_000) * 2 * Math.PI) / 150_000);
  const ring = {
    lon: Float64Array.from(angles, (angle) => lon + 1e-3 * Math.cos(angle)),
    lat: Float64Array.from(angles, (angle) => lat + 1e-3 * Math.sin(angle)),
  };
  const square = { id: 'way/1', tags: { highway: 'pedestrian', area: 'yes' }, rings: [ring] };
  const at = squaresIn([square], { frame: frameAt(lon, lat), near: true });
  expect([at(10, 10), at(500, 0)]).toEqual([square, null]);
});
