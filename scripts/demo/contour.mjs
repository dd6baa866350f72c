// Level lines of a field on a square grid (marching squares, linear between nodes), as closed rings,
// and the polygons with holes that they bound. Inside is where the field is over the level.

/** A grid of values: west, south, step in kilometres, columns, rows. Its rim is set outside, so all rings close. */
export function makeGrid({ west, south, east, north, step }, value) {
  const columns = Math.round((east - west) / step) + 1;
  const rows = Math.round((north - south) / step) + 1;
  const values = new Float64Array(columns * rows);
  for (let j = 0; j < rows; j += 1) {
    for (let i = 0; i < columns; i += 1) {
      const rim = i === 0 || j === 0 || i === columns - 1 || j === rows - 1;
      values[j * columns + i] = rim ? -1e3 : value(west + i * step, south + j * step, i, j);
    }
  }
  return { west, south, step, columns, rows, values };
}

// Edges of a cell: 0 south, 1 east, 2 north, 3 west. For each case of inside corners (1 SW, 2 SE, 4 NE, 8 NW),
// pairs of edges, inside on the left.
const cases = [
  [],
  [[0, 3]],
  [[1, 0]],
  [[1, 3]],
  [[2, 1]],
  null,
  [[2, 0]],
  [[2, 3]],
  [[3, 2]],
  [[0, 2]],
  null,
  [[1, 2]],
  [[3, 1]],
  [[0, 1]],
  [[3, 0]],
  [],
];
const saddles = {
  5: {
    in: [
      [0, 1],
      [2, 3],
    ],
    out: [
      [0, 3],
      [2, 1],
    ],
  },
  10: {
    in: [
      [3, 0],
      [1, 2],
    ],
    out: [
      [1, 0],
      [3, 2],
    ],
  },
};

function pairsOf(corners, level) {
  const code = corners.reduce((sum, v, k) => sum + (v > level ? 1 << k : 0), 0);
  const saddle = saddles[code];
  if (!saddle) return cases[code];
  return (corners[0] + corners[1] + corners[2] + corners[3]) / 4 > level ? saddle.in : saddle.out;
}

/** Closed rings at a level; inside is to the left, so outer rings run anticlockwise. */
export function rings(grid, level) {
  const { columns, rows, values, west, south, step } = grid;
  // An edge's number: twice its lower node, plus 1 if it runs north.
  const edgeOf = (i, j, k) =>
    [2 * (j * columns + i), 2 * (j * columns + i + 1) + 1, 2 * ((j + 1) * columns + i), 2 * (j * columns + i) + 1][k];
  const next = new Map();
  for (let j = 0; j < rows - 1; j += 1) {
    for (let i = 0; i < columns - 1; i += 1) {
      const n = j * columns + i;
      const corners = [values[n], values[n + 1], values[n + columns + 1], values[n + columns]];
      for (const [from, to] of pairsOf(corners, level)) next.set(edgeOf(i, j, from), edgeOf(i, j, to));
    }
  }
  const point = (edge) => {
    const node = edge >> 1;
    const [a, b] = [values[node], values[node + (edge & 1 ? columns : 1)]];
    const t = (level - a) / (b - a);
    const [i, j] = [node % columns, Math.floor(node / columns)];
    return edge & 1 ? [west + i * step, south + (j + t) * step] : [west + (i + t) * step, south + j * step];
  };
  const out = [];
  while (next.size > 0) {
    const [first] = next.keys();
    const ring = [];
    for (let edge = first; next.has(edge);) {
      const to = next.get(edge);
      next.delete(edge);
      ring.push(point(edge));
      edge = to;
    }
    out.push([...ring, ring[0]]);
  }
  return out;
}

/** Twice-halved cross sum: the area of a ring, square kilometres, anticlockwise positive. */
export function area(ring) {
  let sum = 0;
  for (let i = 1; i < ring.length; i += 1) sum += ring[i - 1][0] * ring[i][1] - ring[i][0] * ring[i - 1][1];
  return sum / 2;
}

/** Whether a ring holds a point (even-odd). */
export function holds(ring, [x, y]) {
  let inside = false;
  for (let i = 1; i < ring.length; i += 1) {
    const [[ax, ay], [bx, by]] = [ring[i - 1], ring[i]];
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
  }
  return inside;
}

function peel(line, tolerance) {
  const [a, b] = [line[0], line.at(-1)];
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const base = Math.sqrt(dx * dx + dy * dy);
  let far = 0;
  let worst = tolerance;
  for (let i = 1; i < line.length - 1; i += 1) {
    const [px, py] = [line[i][0] - a[0], line[i][1] - a[1]];
    const d = base > 0 ? Math.abs(px * dy - py * dx) / base : Math.sqrt(px * px + py * py);
    if (d > worst) [worst, far] = [d, i];
  }
  if (far === 0) return [a, b];
  return [...peel(line.slice(0, far + 1), tolerance).slice(0, -1), ...peel(line.slice(far), tolerance)];
}

/** Douglas and Peucker's simplification of a ring (1973), split at its middle vertex so that it stays a ring. */
export function simplify(ring, tolerance) {
  const middle = ring.length >> 1;
  return [...peel(ring.slice(0, middle + 1), tolerance).slice(0, -1), ...peel(ring.slice(middle), tolerance)];
}

/** Polygons ([outer, ...holes] each) over a level, without rings under `least` square kilometres. */
export function polygons(grid, level, { tolerance, least }) {
  const all = rings(grid, level)
    .filter((ring) => Math.abs(area(ring)) >= least)
    .map((ring) => simplify(ring, tolerance))
    .filter((ring) => ring.length > 3);
  const outer = all.filter((ring) => area(ring) > 0).map((ring) => [ring]);
  for (const hole of all.filter((ring) => area(ring) < 0)) {
    const owners = outer.filter((polygon) => holds(polygon[0], hole[0]));
    owners.sort((p, q) => area(p[0]) - area(q[0]));
    owners[0]?.push(hole);
  }
  return outer;
}
