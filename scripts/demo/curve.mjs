// Lines of the road network: a smooth curve through control points, broken at corners, sampled as a
// careful person draws: few points on straights, many on bends.
import { add, between, sub } from './frame.mjs';

const step = 0.004;

const gap = (p, q) => Math.max(Math.sqrt(between(p, q)), 1e-6);
const mix = (p, q, s, e, t) => add([p[0] * ((e - t) / (e - s)), p[1] * ((e - t) / (e - s))], q, (t - s) / (e - s));

/** One span of a centripetal Catmull-Rom curve, from b to c, sampled every few metres (c left out). */
function span(a, b, c, d) {
  const [t1, t2, t3] = [gap(a, b), gap(a, b) + gap(b, c), gap(a, b) + gap(b, c) + gap(c, d)];
  const n = Math.max(2, Math.ceil(between(b, c) / step));
  return Array.from({ length: n }, (_, i) => {
    if (i === 0) return b;
    const t = t1 + ((t2 - t1) * i) / n;
    const [p, q, r] = [mix(a, b, 0, t1, t), mix(b, c, t1, t2, t), mix(c, d, t2, t3, t)];
    return mix(mix(p, q, 0, t2, t), mix(q, r, t1, t3, t), t1, t2, t);
  });
}

const beyond = (p, q) => add(p, sub(p, q));

function dense(points, closed, before, after) {
  const n = points.length;
  if (n === 2 && !closed) return [points[0], points[1]];
  const at = (i) => {
    if (closed) return points[(i + n) % n];
    if (i < 0) return before ?? beyond(points[0], points[1]);
    return i >= n ? (after ?? beyond(points[n - 1], points[n - 2])) : points[i];
  };
  const spans = Array.from({ length: closed ? n : n - 1 }, (_, i) => span(at(i - 1), at(i), at(i + 1), at(i + 2)));
  return [...spans.flat(), closed ? points[0] : points[n - 1]];
}

const heading = (p, q) => Math.atan2(q[1] - p[1], q[0] - p[0]);
const turn = (from, to) => Math.abs(Math.atan2(Math.sin(to - from), Math.cos(to - from)));

/** Leaves as many points as bends need: no step over 78 m, none turning over 6 degrees unless under 10 m. */
function thin(line, keep) {
  const out = [line[0]];
  let last = 0;
  let turned = 0;
  for (let i = 1; i < line.length - 1; i += 1) {
    turned += turn(heading(line[i - 1], line[i]), heading(line[i], line[i + 1]));
    const gone = between(line[last], line[i]);
    const ahead = between(line[last], line[i + 1]);
    const due = ahead > 0.078 || (turned > 0.08 && gone >= 0.011);
    if (!keep(line[i]) && !due) continue;
    out.push(line[i]);
    last = i;
    turned = 0;
  }
  return [...out, line.at(-1)];
}

function divide(p, q) {
  const n = Math.ceil(between(p, q) / 0.075);
  return Array.from({ length: n }, (_, i) => add(p, sub(q, p), i / n));
}

/**
 * Samples a line; `controls` are { at, corner, node }, and every control with a node stays a vertex. `before` and
 * `after` are the neighbours' control points, so that one road runs smoothly into the next.
 */
export function sample(controls, { closed = false, before, after } = {}) {
  const nodes = new Set(controls.filter((c) => c.node).map((c) => c.at));
  const out = [];
  let run = [controls[0].at];
  const flush = (last) => {
    const straight = run.length === 2 && !closed;
    const line = straight
      ? [...divide(run[0], run[1]), run[1]]
      : thin(dense(run, closed, out.length > 0 ? undefined : before, last ? after : undefined), (p) => nodes.has(p));
    out.push(...line.slice(out.length > 0 ? 1 : 0));
  };
  for (const control of controls.slice(1)) {
    run.push(control.at);
    if (control.corner && control !== controls.at(-1)) {
      flush(false);
      run = [control.at];
    }
  }
  flush(true);
  return out;
}
