// The coast: a coarse outline drawn by hand, roughened by seeded fractal noise, with roads kept dry, the
// harbour dug, the causeway banked up and the bridge's channel kept open; all as one field in kilometres, over
// 0 on land, of which the coast is the zero line.
import { between, smoothstep, toLine, toSegment } from './frame.mjs';
import { fractal } from './random.mjs';
import { holds } from './contour.mjs';
import { town } from './roads.mjs';

const outline = [
  town(-0.62, -0.05),
  [-0.8, -3.8],
  [-1.3, -3.74],
  [-1.68, -3.6],
  [-2.1, -3.72],
  [-2.6, -3.5],
  [-2.9, -3.2],
  [-3.4, -3.2],
  [-3.62, -2.6],
  [-3.95, -2.3],
  [-4.55, -2.0],
  [-4.12, -1.45],
  [-4.55, -0.95],
  [-4.32, -0.5],
  [-4.05, -0.15],
  [-4.25, 0.2],
  [-4.05, 0.6],
  [-4.0, 0.95],
  [-4.25, 1.3],
  [-4.6, 1.8],
  [-4.2, 2.25],
  [-3.72, 2.1],
  [-3.45, 2.55],
  [-3.62, 3.1],
  [-3.2, 3.65],
  [-2.65, 3.75],
  [-2.5, 4.25],
  [-2.0, 4.7],
  [-1.6, 4.35],
  [-1.1, 4.4],
  [-0.85, 4.55],
  [-0.7, 4.8],
  [-0.3, 4.85],
  [0.1, 4.72],
  [0.5, 5.05],
  [1.0, 4.8],
  [1.3, 4.42],
  [1.6, 4.4],
  [1.9, 4.7],
  [2.5, 4.85],
  [2.85, 4.5],
  [3.2, 4.3],
  [3.5, 4.5],
  [3.9, 4.3],
  [4.3, 4.65],
  [4.8, 4.8],
  [5.3, 4.75],
  [5.75, 4.5],
  [5.95, 4.2],
  [5.82, 3.9],
  [5.75, 3.5],
  [5.85, 3.15],
  [6.1, 2.8],
  [5.98, 2.35],
  [6.2, 2.0],
  [6.02, 1.55],
  [5.78, 1.25],
  [5.66, 0.92],
  [5.3, 0.88],
  [4.8, 1.1],
  [4.3, 0.95],
  [3.9, 0.7],
  [3.4, 0.85],
  [2.9, 0.55],
  [2.4, 0.7],
  [1.9, 0.35],
  [1.5, 0.45],
  [1.15, 0.3],
  [0.92, 0.2],
  [0.6, 0.25],
  [0.25, 0.2],
  [0.02, -0.1],
  [0.2, -0.45],
  [0.5, -0.6],
  [0.8, -0.9],
  [1.2, -0.95],
  [1.5, -1.08],
  [1.75, -1.12],
  [2.1, -0.9],
  [2.5, -1.05],
  [3.0, -0.75],
  [3.4, -0.95],
  [3.8, -0.65],
  [4.3, -0.8],
  [4.8, -0.5],
  [5.1, -0.65],
  [5.42, -0.66],
  [5.6, -1.0],
  [5.75, -1.4],
  [5.6, -1.85],
  [5.25, -2.15],
  [5.2, -2.5],
  [4.9, -2.8],
  [4.65, -3.2],
  [4.6, -3.6],
  [4.3, -4.05],
  [3.85, -4.3],
  [3.3, -4.1],
  [3.02, -3.65],
  [2.8, -3.25],
  [2.5, -3.32],
  [2.2, -3.4],
  [1.9, -3.25],
  [1.62, -3.28],
  town(1.25, -0.05),
];
const ring = [...outline, outline[0]];

// [x, y, radius]: the causeway's islet, and rocks off the headlands.
const islets = [
  [1.5, -0.26, 0.15],
  [1.66, -0.42, 0.12],
  [1.72, -0.2, 0.07],
  [-5.0, 2.25, 0.14],
  [-4.95, 1.95, 0.07],
  [6.75, 4.62, 0.09],
  [6.88, 4.38, 0.05],
  [6.68, 4.3, 0.05],
  [-1.35, 5.1, 0.1],
  [2.35, -3.95, 0.12],
  [2.95, -0.1, 0.11],
  [5.15, -3.6, 0.09],
  [-4.75, -1.5, 0.06],
];

/** The harbour: its basin, dug square to the quay, and its moles. */
export const harbour = {
  basin: [
    town(-0.36, -0.024),
    town(1.05, -0.024),
    town(1.085, -0.305),
    town(0.95, -0.33),
    town(0.56, -0.36),
    town(0.3, -0.42),
    town(-0.3, -0.385),
    town(-0.4, -0.33),
    town(-0.37, -0.024),
    town(-0.36, -0.024),
  ],
  moles: [
    [town(-0.37, -0.01), town(-0.4, -0.33), town(-0.3, -0.385), town(0.3, -0.42)],
    [town(1.085, -0.3), town(0.95, -0.33), town(0.56, -0.36)],
  ],
};

/** Where the causeway lets the tide through, under a short bridge. */
export const tideGap = [1.605, -0.74];

const toOutline = (p) => (holds(ring, p) ? 1 : -1) * toLine(p, ring);

/** The least distance to any of the lines, up to `reach`, for every node of a frame: an array by column and row. */
export function distances({ west, south, east, north, step }, lines, reach) {
  const columns = Math.round((east - west) / step) + 1;
  const rows = Math.round((north - south) / step) + 1;
  const out = new Float64Array(columns * rows).fill(reach);
  const range = (a, b, low, count) => [
    Math.max(0, Math.floor((Math.min(a, b) - reach - low) / step)),
    Math.min(count - 1, Math.ceil((Math.max(a, b) + reach - low) / step)),
  ];
  for (const line of lines) {
    for (let s = 1; s < line.length; s += 1) {
      const [p, q] = [line[s - 1], line[s]];
      const [i0, i1] = range(p[0], q[0], west, columns);
      const [j0, j1] = range(p[1], q[1], south, rows);
      for (let j = j0; j <= j1; j += 1) {
        for (let i = i0; i <= i1; i += 1) {
          const n = j * columns + i;
          out[n] = Math.min(out[n], toSegment([west + i * step, south + j * step], p, q));
        }
      }
    }
  }
  return { at: (i, j) => out[j * columns + i], columns, rows };
}

// Waters inside are calmer: less is gnawed off their shores.
const inLagoon = (x, y) =>
  smoothstep(0.2, 0.8, x) * smoothstep(-1.5, -0.9, y) * (1 - smoothstep(0.9, 1.5, y)) * (1 - smoothstep(5.2, 5.6, x));

/** The field of the land over a frame, as a function of a node; lines of roads that stay dry, and of the works. */
export function landField(frame, { dry, causeway, bridge }) {
  const toRoad = distances(frame, dry, 0.14);
  const toBank = distances(frame, [causeway], 0.05);
  const bridgeBody = bridge.slice(3, -2);
  const toBridge = distances(frame, [bridgeBody], 0.4);
  return (x, y, i, j) => {
    const far = toOutline([x, y]);
    const islet = Math.max(...islets.map(([cx, cy, r]) => r - between([x, y], [cx, cy])));
    let f = Math.max(far, islet);
    if (Math.abs(f) < 0.5) {
      const calm = 1 - 0.45 * inLagoon(x, y);
      f += calm * 0.2 * fractal(x, y, { seed: 77, wave: 1.1, octaves: 7, gain: 0.55 });
    }
    if (toBridge.at(i, j) < 0.4) f = Math.min(f, (toBridge.at(i, j) - 0.3) * 1.2);
    if (toRoad.at(i, j) < 0.14)
      f = Math.max(f, 0.052 + 0.018 * fractal(x, y, { seed: 91, wave: 0.16, octaves: 2 }) - toRoad.at(i, j));
    if (toBank.at(i, j) < 0.05 && between([x, y], tideGap) > 0.035) f = Math.max(f, 0.016 - toBank.at(i, j));
    if (holds(harbour.basin, [x, y])) f = Math.min(f, -toLine([x, y], harbour.basin));
    return f;
  };
}
