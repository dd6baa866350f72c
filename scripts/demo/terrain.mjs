// The height of the ground, metres, as a pure function of the place: hills as bells, a little roughness, and
// fixed decks on causeway, bridge, pier and quay, so that roads that meet there agree.
import { smoothstep, toLine } from './frame.mjs';
import { fractal } from './random.mjs';

// [x, y, height, breadth]: kilometres, metres, kilometres (the bell's standard deviation).
export const hills = [
  [-1.75, -0.95, 236, 0.78],
  [-0.9, -1.9, 60, 0.55],
  [-2.35, 2.25, 168, 0.66],
  [-1.7, 0.85, 34, 0.7],
  [-3.1, -1.0, 40, 0.6],
  [5.3, 4.12, 98, 0.47],
  [2.3, 2.75, 88, 0.75],
  [3.7, 2.3, 52, 0.6],
  [0.4, 3.1, 34, 0.6],
  [3.2, -2.05, 62, 0.6],
  [4.2, -1.55, 26, 0.5],
  [2.06, -2.7, 9, 0.3],
  [0.1, -2.3, 24, 0.5],
];

const bell = (x, y, [cx, cy, height, breadth]) =>
  height * Math.exp(-((x - cx) ** 2 + (y - cy) ** 2) / (2 * breadth * breadth));

/** Height of the natural ground, metres. */
export const ground = (x, y) =>
  hills.reduce((sum, hill) => sum + bell(x, y, hill), 5.5) + 2.2 * fractal(x, y, { seed: 311, wave: 0.9, octaves: 2 });

/** Height of the ground or of the deck, metres; `net` gives the roads that stand on works. */
export function terrain(net) {
  const decks = [
    ['causeway', 3.2],
    ['bridge', 7.6],
    ['pier', 3.4],
    ['quay', 3.4],
  ].map(([id, height]) => ({ line: net.get(id).points, height }));
  return ([x, y]) => {
    let height = ground(x, y);
    for (const deck of decks) {
      const near = 1 - smoothstep(0.02, 0.42, toLine([x, y], deck.line));
      height += (deck.height - height) * near;
    }
    return Math.max(1.5, height);
  };
}
