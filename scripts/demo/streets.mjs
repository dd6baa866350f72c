// The road network as a street map has it: every road with a node wherever another meets or crosses it, ends snapped to
// the road that they reach, stubs past a crossing cut off. Points in the plane, kilometres; a node is one shared point.
import { add, between, lengthOf, sub } from './frame.mjs';

/** An end this near to another road meets it; a dangling end this short past its last junction is cut off. */
const reach = 0.008;
const stub = 0.03;

/** Where two segments cross, as shares of both; null where they do not or run side by side. */
function crossing([p, q], [r, s]) {
  const [d, e, f] = [sub(q, p), sub(s, r), sub(r, p)];
  const cross = d[0] * e[1] - d[1] * e[0];
  if (Math.abs(cross) < 1e-9) return null;
  const t = (f[0] * e[1] - f[1] * e[0]) / cross;
  const u = (f[0] * d[1] - f[1] * d[0]) / cross;
  return t >= 0 && t <= 1 && u >= 0 && u <= 1 ? [t, u] : null;
}

/** The nearest place on a line: { segment, at, off }. */
function foot(point, line) {
  let best = { off: Infinity };
  for (let i = 1; i < line.length; i += 1) {
    const [p, d] = [line[i - 1], sub(line[i], line[i - 1])];
    const t = ((point[0] - p[0]) * d[0] + (point[1] - p[1]) * d[1]) / (d[0] * d[0] + d[1] * d[1] || 1);
    const at = t <= 0 ? p : t >= 1 ? line[i] : add(p, d, t);
    const off = between(at, point);
    if (off < best.off) best = { segment: i, at, off };
  }
  return best;
}

/** A vertex of a line near a point, so that no second one is put beside it. */
const vertexNear = (line, at) => line.find((p) => between(p, at) < 0.001);

/** Puts a point into a segment of a line; gives the vertex that stands there. */
function put(line, segment, at) {
  const known = vertexNear(line, at);
  if (known !== undefined) return known;
  line.splice(segment, 0, at);
  return at;
}

/** Ends brought onto the roads that they reach. The first of `lines` are not moved. */
function snapEnds(lines, fixed) {
  for (const [k, own] of lines.entries()) {
    if (k < fixed) continue;
    for (const end of [0, own.length - 1]) {
      const found = lines
        .filter((other) => other !== own)
        .map((other) => ({ other, ...foot(own[end], other) }))
        .reduce((a, b) => (b.off < a.off ? b : a));
      if (found.off < reach) own[end] = put(found.other, found.segment, found.at);
    }
  }
}

const apart = ([p, q], [r, s]) =>
  Math.max(p[0], q[0]) < Math.min(r[0], s[0]) ||
  Math.max(r[0], s[0]) < Math.min(p[0], q[0]) ||
  Math.max(p[1], q[1]) < Math.min(r[1], s[1]) ||
  Math.max(r[1], s[1]) < Math.min(p[1], q[1]);

/** One node in both lines wherever they cross. */
function nodeCrossings(a, b) {
  for (let i = 1; i < a.length; i += 1) {
    for (let j = 1; j < b.length; j += 1) {
      const [one, two] = [
        [a[i - 1], a[i]],
        [b[j - 1], b[j]],
      ];
      if (one.some((p) => two.includes(p)) || apart(one, two)) continue;
      const found = crossing(one, two);
      if (found === null) continue;
      const at = put(a, i, add(one[0], sub(one[1], one[0]), found[0]));
      const known = vertexNear(b, at);
      if (known === undefined) b.splice(j, 0, at);
      else b[b.indexOf(known)] = at;
    }
  }
}

/** A line without what dangles past its first and last junction, where that is short. */
function trimmed(line, shared) {
  const cut = (from) => {
    const first = from.findIndex((p) => shared.has(p));
    let length = 0;
    for (let i = 1; i <= first; i += 1) length += lengthOf(sub(from[i], from[i - 1]));
    return first > 0 && length < stub ? from.slice(first) : from;
  };
  return cut(cut(line).toReversed()).toReversed();
}

/** Roads with a node wherever two meet: the same records with other points. The first `fixed` and those with tags keep their shape. */
export function noded(roads, fixed) {
  // One point for one place, so that a shared point is the same record.
  const places = new Map();
  const same = (p) => {
    const key = `${p[0].toFixed(7)},${p[1].toFixed(7)}`;
    places.set(key, places.get(key) ?? p);
    return places.get(key);
  };
  const lines = roads.map(({ points }) => points.map(same));
  snapEnds(lines, fixed);
  for (const [k, a] of lines.entries()) for (const b of lines.slice(k + 1)) nodeCrossings(a, b);
  const uses = new Map();
  for (const line of lines) for (const p of new Set(line)) uses.set(p, (uses.get(p) ?? 0) + 1);
  const shared = new Set([...uses].filter(([, count]) => count > 1).map(([p]) => p));
  return roads.map((road, k) => ({ ...road, points: k < fixed || road.tags ? lines[k] : trimmed(lines[k], shared) }));
}
