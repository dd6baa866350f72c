// The background drawing: land, beaches, woods, roads, houses and names as GeoJSON features with a `kind`.
import { add, between, smoothstep, sub, lengthOf, toLonLat } from './frame.mjs';
import { area, makeGrid, polygons, rings, simplify } from './contour.mjs';
import { distances, harbour, landField, tideGap } from './land.mjs';
import { fractal } from './random.mjs';
import { labels } from './labels.mjs';
import { lanesOfIsland } from './lanes.mjs';
import { houses, inTown } from './settle.mjs';
import { ground } from './terrain.mjs';
import { park, town } from './roads.mjs';

const frame = { west: -5.7, south: -5.0, east: 7.2, north: 5.8, step: 0.016 };
const works = new Set(['causeway', 'bridge', 'pier']);

const printed = (points, decimals) => points.map((p) => toLonLat(p, decimals));
const feature = (kind, type, coordinates, more = {}) => ({
  type: 'Feature',
  properties: { kind, ...more },
  geometry: { type, coordinates },
});
const polygon = (kind, ringsOf, more) =>
  feature(
    kind,
    'Polygon',
    ringsOf.map((ring) => printed(ring, 6)),
    more,
  );

/** A strip of a half width along an open line, with square ends and mitred corners. */
function strip(line, half) {
  const side = (points) =>
    points.map((p, i) => {
      const d = sub(points[Math.min(i + 1, points.length - 1)], points[Math.max(i - 1, 0)]);
      const n = lengthOf(d);
      return [p[0] - (d[1] / n) * half, p[1] + (d[0] / n) * half];
    });
  const [left, right] = [side(line), side(line.toReversed())];
  const all = [...right, ...left];
  return [...all, all[0]];
}

/** Land, and the fields that the rest is laid on. */
function groundOf(net, lanes) {
  const roads = [...net.values(), ...lanes];
  const dry = roads.filter((road) => !works.has(road.id)).map((road) => road.points);
  const field = landField(frame, { dry, causeway: net.get('causeway').points, bridge: net.get('bridge').points });
  const grid = makeGrid(frame, field);
  const landAt = (i, j) => grid.values[j * grid.columns + i];
  const landOf = ([x, y]) =>
    landAt(Math.round((x - frame.west) / frame.step), Math.round((y - frame.south) / frame.step));
  return { roads, dry, grid, landAt, landOf, causeway: net.get('causeway').points, bridge: net.get('bridge').points };
}

function covers({ dry, grid, landAt, causeway, bridge }) {
  const toBank = distances(frame, [causeway, bridge], 0.08);
  const toRoad = distances(frame, dry, 0.08);
  const beach = makeGrid(frame, (x, y, i, j) => {
    const f = landAt(i, j);
    const sandy = fractal(x, y, { seed: 402, wave: 0.9, octaves: 2 }) - 0.12;
    return Math.abs(f) > 0.2 || inTown([x, y])
      ? -1
      : Math.min(toBank.at(i, j) - 0.05, f + 0.004, 0.034 + 0.03 * sandy - f, sandy * 0.12, toRoad.at(i, j) - 0.012);
  });
  const wood = makeGrid(frame, (x, y, i, j) => {
    const f = landAt(i, j);
    if (f < 0.05) return -1;
    const open =
      Math.min(between([x, y], park.centre) - 0.5, between([x, y], town(0.3, 0.45)) - 1.15) +
      0.12 * fractal(x, y, { seed: 530, wave: 0.3, octaves: 2 });
    const high = ground(x, y);
    const tree =
      fractal(x, y, { seed: 521, wave: 0.95, octaves: 5, gain: 0.45 }) -
      0.3 +
      0.2 * smoothstep(20, 60, high) -
      0.75 * smoothstep(120, 180, high);
    return Math.min(f - 0.07, open, tree * 0.2, toRoad.at(i, j) - 0.016);
  });
  const shallow = makeGrid(
    frame,
    (x, y, i, j) => landAt(i, j) + 0.1 + 0.03 * fractal(x, y, { seed: 611, wave: 0.5, octaves: 3 }),
  );
  return {
    land: polygons(grid, 0, { tolerance: 0.002, least: 0.0004 }),
    shallow: polygons(shallow, 0, { tolerance: 0.009, least: 0.01 }),
    beach: polygons(beach, 0, { tolerance: 0.003, least: 0.002 }),
    wood: polygons(wood, 0, { tolerance: 0.0035, least: 0.006 }),
  };
}

/** The pieces of a line that lie on dry ground. */
function onLand(line, landOf) {
  const pieces = [[]];
  for (const p of line) {
    if (landOf(p) > 0.012) pieces.at(-1).push(p);
    else if (pieces.at(-1).length > 0) pieces.push([]);
  }
  return pieces.filter((piece) => piece.length > 4);
}

function heightLines(landOf) {
  const grid = makeGrid({ ...frame, step: 0.04 }, ground);
  return [20, 40, 60, 80, 100, 120, 140, 160, 180, 200, 220].flatMap((level) =>
    rings(grid, level)
      .filter((ring) => Math.abs(area(ring)) > 0.02)
      .flatMap((ring) => onLand(ring, landOf))
      .map((line) => feature('contour', 'LineString', printed(simplify(line, 0.004), 5), { height: level })),
  );
}

const disc = ([x, y], r, n = 16) =>
  Array.from({ length: n + 1 }, (_, i) => [
    x + r * Math.cos((2 * Math.PI * (i % n)) / n),
    y + r * Math.sin((2 * Math.PI * (i % n)) / n),
  ]);

/** The lighthouse, beside the end of its road and clear of the paths from there. */
export const lighthouse = (net) => disc(add(net.get('zigzag').points.at(-1), [0.004, 0.022]), 0.007);

/** A line with each of its segments cut into ten. */
const tenths = (line) =>
  line.slice(1).flatMap((q, i) => Array.from({ length: 10 }, (_, k) => add(line[i], sub(q, line[i]), k / 10)));

/** What of the bridge's road lies over water, with a vertex of dry road at each end. */
export function deckOf(bridge, landOf) {
  const wet = bridge.filter((p) => landOf(p) < 0);
  const first = bridge.indexOf(wet[0]);
  return bridge.slice(Math.max(0, first - 1), first + wet.length + 1);
}

function structures(net, landOf) {
  const pier = net.get('pier').points;
  const deck = deckOf(net.get('bridge').points, landOf);
  const gap = tenths(net.get('causeway').points).filter((p) => between(p, tideGap) < 0.052);
  return [
    polygon('harbour', [harbour.basin], { name: 'Harbour' }),
    ...harbour.moles.map((mole) => polygon('pier', [strip(mole, 0.007)], { name: 'Mole' })),
    polygon('pier', [strip([pier[0], ...pier.slice(1)], 0.009)], { name: 'Packet Pier' }),
    polygon('bridge', [strip(deck, 0.008)], { name: 'Sallow Bridge' }),
    polygon('bridge', [strip(gap, 0.008)], { name: 'Tide Bridge' }),
  ];
}

const roadWidth = { main: 8, street: 7, lane: 5, pier: 8, path: 3.5 };

/** The island that both the drawing and the street map show: its fields, roads, woods and houses. */
export function islandOf(net) {
  const base = groundOf(net, lanesOfIsland());
  const cover = covers(base);
  return { ...base, cover, houses: houses({ ...base, woods: cover.wood, works }) };
}

export const ponds = [
  { name: 'Quillet Pond', shore: pond([2.2, -2.83]) },
  { name: 'Mill Tarn', shore: pond([-2.75, 0.32], 1.9) },
];

/** All features of the drawing, from the ground up. */
export function contextFeatures(net, base) {
  const { cover } = base;
  const ring = net.get('ring').points;
  const onCourse = new Set(net.values());
  return [
    ...cover.shallow.map((p) => polygon('shallow', p)),
    ...cover.land.map((p) => polygon('land', p)),
    ...cover.beach.map((p) => polygon('beach', p)),
    ...heightLines(base.landOf),
    ...cover.wood.map((p) => polygon('wood', p)),
    polygon('park', [ring], { name: 'Quillet Park' }),
    ...ponds.map(({ name, shore }) => polygon('water', [shore], { name })),
    ...structures(net, base.landOf),
    ...base.roads.map((road) =>
      feature(road.kind === 'path' ? 'path' : 'road', 'LineString', printed(road.points, onCourse.has(road) ? 7 : 6), {
        class: road.kind,
        ...(road.name && { name: road.name }),
        width: roadWidth[road.kind],
      }),
    ),
    ...base.houses.map((house) => polygon('building', [[...house, house[0]]])),
    polygon('building', [lighthouse(net)], {
      name: 'Ganneth Light',
      class: 'lighthouse',
    }),
    ...labels.map(([name, of, x, y]) => feature('label', 'Point', toLonLat([x, y], 6), { name, class: of })),
  ];
}

/** A pond's shore: a disc with a few bays. */
function pond([x, y], size = 1) {
  const n = 40;
  const shore = Array.from({ length: n }, (_, i) => {
    const t = (2 * Math.PI * i) / n;
    const r = 0.055 * size * (1 + 0.25 * Math.cos(2 * t + 0.6) + 0.12 * Math.cos(3 * t + 2) + 0.06 * Math.cos(5 * t));
    return [x + 1.25 * r * Math.cos(t), y + r * Math.sin(t)];
  });
  return [...shore, shore[0]];
}
