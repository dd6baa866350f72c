// Where people live: which plots along which roads are built on, and the town's larger buildings.
import { holds } from './contour.mjs';
import { between } from './frame.mjs';
import { buildings } from './buildings.mjs';
import { harbour } from './land.mjs';
import { park, town } from './roads.mjs';

// [x, y, radius], kilometres.
const hamlets = [
  [-3.66, 0.72, 0.42],
  [-0.62, 4.25, 0.42],
  [4.1, 3.95, 0.3],
  [5.2, -1.5, 0.42],
  [0.5, 0.6, 0.22],
  [1.75, -1.2, 0.2],
  [-1.8, -3.4, 0.3],
  [5.76, 1.6, 0.25],
  [2.98, 3.86, 0.2],
  [-0.42, -1.12, 0.22],
];
// [along the quay, square to it, width, depth], kilometres of the town's grid: church, school, warehouses and the like.
const halls = [
  [0.295, 0.34, 0.036, 0.016],
  [0.46, 0.355, 0.05, 0.022],
  [-0.24, 0.37, 0.045, 0.03],
  [0.62, 0.05, 0.06, 0.02],
  [0.86, 0.05, 0.07, 0.024],
  [-0.22, 0.06, 0.055, 0.02],
  [0.42, 0.69, 0.06, 0.045],
  [1.12, 0.37, 0.06, 0.03],
  [-0.1, 0.7, 0.05, 0.024],
];
const quay = [town(-0.5, 0.004), town(1.2, 0.004), town(1.2, -0.1), town(-0.5, -0.1), town(-0.5, 0.004)];
const unbuilt = new Set(['ring', 'zigzag']);
const tight = new Set(['market', 'parkRoad']);

export const inTown = (p) => between(p, town(0.25, 0.38)) < 0.95;

/** The share of plots that are built on at a place. */
function fill(p) {
  if (inTown(p)) return 0.88;
  return hamlets.some(([x, y, r]) => between(p, [x, y]) < r) ? 0.6 : 0.03;
}

const hall = ([u, v, width, depth]) => [town(u, v), town(u + width, v), town(u + width, v + depth), town(u, v + depth)];

/** All houses of the island as rectangles; `landOf` is the land's field, `woods` polygons, `works` the roads on decks. */
export function houses({ roads, landOf, woods, works }) {
  const inWood = (p) => woods.some((wood) => holds(wood[0], p));
  const allowed = (p) =>
    landOf(p) > 0.022 && between(p, park.centre) > 0.39 && !holds(quay, p) && !holds(harbour.basin, p) && !inWood(p);
  const streets = roads
    .filter((road) => road.kind !== 'path' && !works.has(road.id) && !unbuilt.has(road.id))
    .map((road) => ({ points: road.points, fill, tight: road.kind === 'street' || tight.has(road.id) }));
  return buildings({ streets, roads, allowed, halls: halls.map(hall), seed: 20270912 });
}
