import { analyse, readPlan } from '@halfcup/core';
import { readGpx } from '@halfcup/core/gpx';
import halfFile from '../../../../../fixtures/demo/half.gpx?url';
import text from '../../../../../fixtures/demo/plan.json?raw';
import { must, table } from '../show.js';
import { gpx } from './course.js';

const bytes = new Uint8Array(await (await fetch(halfFile)).arrayBuffer());
const files = new Map([
  ['full.gpx', gpx],
  ['half.gpx', must(readGpx(bytes, 'half.gpx'))],
]);
const { plan } = must(readPlan(text, 'plan.json'));
const [station] = must(analyse(plan, { gpx: files })).stations;

const { side, items } = station.directions[0];
const words = (kind) => kind.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
const ends = (pair) => {
  if (pair === null) return 'cannot be wheeled';
  const [from, to] = pair.map((metres) => metres.toFixed(1));
  return from === to ? from : `${from} to ${to}`;
};

export default table(
  `${station.name}, tables on the ${side}: metres from the chalk mark`,
  ['Item', ' Along the course', ' By wheel'],
  items.map(({ kind, along, wheel }) => [words(kind), ends(along), ends(wheel)]),
);
