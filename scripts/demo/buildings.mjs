// Houses along the streets: rectangles set back from the kerb, clear of every road, of the water and of each other.
import { add, between, lengthOf, sub, toSegment } from './frame.mjs';
import { generator } from './random.mjs';

const cell = 0.1;
const key = (x, y) => `${Math.floor(x / cell)},${Math.floor(y / cell)}`;

/** A bag of things by place, to look up neighbours. */
function bag() {
  const cells = new Map();
  const put = (thing, [x, y]) => cells.set(key(x, y), [...(cells.get(key(x, y)) ?? []), thing]);
  const near = ([x, y]) =>
    [-1, 0, 1].flatMap((i) => [-1, 0, 1].flatMap((j) => cells.get(key(x + i * cell, y + j * cell)) ?? []));
  return { put, near };
}

/** A rectangle's corners: front middle, unit along, unit away from the road, width, depth. */
function rectangle(front, along, away, width, depth) {
  const left = add(front, along, -width / 2);
  const right = add(front, along, width / 2);
  return [left, right, add(right, away, depth), add(left, away, depth)];
}

const axes = (r) => [sub(r[1], r[0]), sub(r[3], r[0])].map((d) => [d[0] / lengthOf(d), d[1] / lengthOf(d)]);
const extent = (r, axis) => {
  const values = r.map((p) => p[0] * axis[0] + p[1] * axis[1]);
  return [Math.min(...values), Math.max(...values)];
};

/** Whether two rectangles come nearer than a gap (by separating axes). */
function touch(r, s, gap) {
  return [...axes(r), ...axes(s)].every((axis) => {
    const [[a, b], [c, d]] = [extent(r, axis), extent(s, axis)];
    return a < d + gap && c < b + gap;
  });
}

const middle = (r) => [(r[0][0] + r[2][0]) / 2, (r[0][1] + r[2][1]) / 2];

function roadIndex(roads) {
  const index = bag();
  for (const { points } of roads) {
    for (let i = 1; i < points.length; i += 1) {
      const [p, q] = [points[i - 1], points[i]];
      const n = Math.ceil(between(p, q) / 0.05);
      for (let k = 0; k <= n; k += 1) index.put([p, q], add(p, sub(q, p), k / n));
    }
  }
  return index;
}

/**
 * Houses as rectangles. `streets` are { points, fill, town } (fill: share of plots that are built on);
 * `allowed` says whether a point may be built on; `halls` are large rectangles that come first.
 */
export function buildings({ streets, roads, allowed, halls, seed }) {
  const random = generator(seed);
  const index = roadIndex(roads);
  const built = bag();
  const out = [];
  const clear = (r) => {
    const probes = [...r, middle(r), ...r.map((p, i) => add(p, sub(r[(i + 1) % 4], p), 0.5))];
    const segments = index.near(middle(r));
    if (!probes.every((p) => allowed(p) && segments.every(([s, t]) => toSegment(p, s, t) > 0.0095))) return false;
    return built.near(middle(r)).every((other) => !touch(r, other, 0.0025));
  };
  const walk = ({ points, fill, tight }, side) => {
    let rest = 0.008;
    for (let i = 1; i < points.length; i += 1) {
      const d = sub(points[i], points[i - 1]);
      const leg = lengthOf(d);
      const along = [d[0] / leg, d[1] / leg];
      const away = side > 0 ? [-along[1], along[0]] : [along[1], -along[0]];
      while (rest < leg) {
        const [width, depth, back] = [
          0.01 + 0.013 * random(),
          0.009 + 0.008 * random(),
          tight ? 0.0105 + 0.002 * random() : 0.013 + 0.02 * random(),
        ];
        const build = random() < fill(add(points[i - 1], along, rest));
        const house = rectangle(
          add(add(points[i - 1], along, rest + width / 2), away, back),
          along,
          away,
          width,
          depth,
        );
        if (build && clear(house)) {
          built.put(house, middle(house));
          out.push(house);
        }
        rest += width + (tight ? 0.003 + 0.005 * random() : 0.012 + 0.03 * random());
      }
      rest -= leg;
    }
  };
  for (const hall of halls) {
    built.put(hall, middle(hall));
    out.push(hall);
  }
  for (const street of streets) for (const side of [1, -1]) walk(street, side);
  return out;
}
