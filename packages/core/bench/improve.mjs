/**
 * Better places for the stations of the demo, as a multiple of one review of it (layout and all checks)
 * in the same process. Run by hand after a build: `node packages/core/bench/improve.mjs`. Exits 1 above the target.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { analyse, improve, readPlan } from '@halfcup/core';
import { layoutStage, reviewLayout } from '@halfcup/core/stages';
import { readGpx } from '@halfcup/core/gpx';
import { timed } from './timing.mjs';

const TARGET = 300;
const ROUNDS = 9;

const inDemo = (name) =>
  readFileSync(fileURLToPath(new URL(`../../../fixtures/demo/${name}`, import.meta.url)), 'utf8');
const must = (result) => {
  if (!result.ok) throw new Error(result.findings[0].message);
  return result.value;
};
const median = (values) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];

const { plan } = must(readPlan(inDemo('plan.json'), 'plan.json'));
const gpx = new Map(
  plan.courses.flatMap(({ gpx: file }) => (file === undefined ? [] : [[file, must(readGpx(inDemo(file), file))]])),
);
const analysis = must(analyse(plan, { gpx }));

const review = () => reviewLayout(must(layoutStage(plan, analysis.courses)));
for (let k = 0; k < 50; k++) review();
improve(analysis);
const pairs = Array.from({ length: ROUNDS }, () => [
  timed(() => improve(analysis)),
  median(Array.from({ length: 20 }, () => timed(review))),
]);
const ratio = median(pairs.map(([whole, one]) => whole / one));
const { before, after, moves, proof } = improve(analysis);

const told = ({ error, warning, longest }) =>
  `${error} errors, ${warning} warnings, longest legs ${longest.map(({ race, length }) => `${race} ${length.toFixed(0)} m`).join(', ')}`;
console.log(`before: ${told(before)}\nafter:  ${told(after)}; ${moves.length} moves, ${JSON.stringify(proof)}`);
console.log(
  `improve: ${median(pairs.map(([whole]) => whole)).toFixed(0)} ms, review: ${median(pairs.map(([, one]) => one)).toFixed(2)} ms, ratio ${ratio.toFixed(0)} (at most ${TARGET})`,
);
process.exitCode = ratio <= TARGET ? 0 : 1;
