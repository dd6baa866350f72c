// Seeded chance: a 32-bit generator (mulberry32) and value noise on an integer lattice, both free of Math.random.

/** A generator of numbers in [0, 1) with a fixed seed. */
export function generator(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

function lattice(ix, iy, seed) {
  let h = Math.imul(ix, 374761393) ^ Math.imul(iy, 668265263) ^ Math.imul(seed, 2147483647);
  h = Math.imul(h ^ (h >>> 13), 1274126177);
  h = Math.imul(h ^ (h >>> 16), 2246822519);
  return ((h ^ (h >>> 15)) >>> 0) / 2147483648 - 1;
}

const fade = (t) => t * t * t * (t * (t * 6 - 15) + 10);

/** Smooth noise in [-1, 1]; one lattice step is one unit. */
export function noise(x, y, seed) {
  const [ix, iy] = [Math.floor(x), Math.floor(y)];
  const [u, v] = [fade(x - ix), fade(y - iy)];
  const low = lattice(ix, iy, seed) * (1 - u) + lattice(ix + 1, iy, seed) * u;
  const high = lattice(ix, iy + 1, seed) * (1 - u) + lattice(ix + 1, iy + 1, seed) * u;
  return low * (1 - v) + high * v;
}

/** Fractal noise: octaves of half the length and `gain` of the height each. */
export function fractal(x, y, { seed, wave, octaves, gain = 0.5 }) {
  let sum = 0;
  let height = 1;
  let k = 1 / wave;
  for (let i = 0; i < octaves; i += 1) {
    // A turn of each octave hides the lattice's own axes.
    const [c, s] = [Math.cos(i + 0.5), Math.sin(i + 0.5)];
    sum += height * noise((x * c - y * s) * k, (x * s + y * c) * k, seed + i);
    height *= gain;
    k *= 2;
  }
  return sum;
}
