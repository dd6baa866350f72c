/** Plans to try things with: the demo's, each with its stations moved by up to 20 m. The same at every run. */
import { readFileSync } from 'node:fs';

/** The folder of the demo: its plan, and the GPX files that the plan names. */
export const DEMO = new URL('../../../fixtures/demo/', import.meta.url);

/** Gives the texts of `count` plans, one after the other. */
export function* demoPlans(count) {
  const demo = JSON.parse(readFileSync(new URL('plan.json', DEMO), 'utf8'));
  const random = seeded(1);
  // 20 m are about 0.0002 degrees.
  const moved = ([lon, lat]) => [lon + (random() - 0.5) * 0.0004, lat + (random() - 0.5) * 0.0004];
  const along = (on) => ({ ...on, measure: Number.parseFloat(on.measure) * 1000 + (random() - 0.5) * 40 });
  for (let k = 1; k <= count; k++) {
    const stations = demo.stations.map((station) =>
      station.at ? { ...station, at: moved(station.at) } : { ...station, on: along(station.on) },
    );
    yield JSON.stringify({ ...demo, name: `Ganneth Island, draft ${k}`, stations }, null, 2);
  }
}

/** Numbers from 0 to 1 that look random and are the same for the same seed. */
export function seeded(seed) {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
}
