/**
 * Changes core's geometry, passes, layout and review in some hundred small ways, one at a time, and counts how many
 * the tests beside the sources notice: `node scripts/mutants/run.mjs [--seed N] [--only path]`. Survivors are listed.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { Stryker } from '@stryker-mutator/core';

const FEWEST = 300;
const LEAST = 0.85;
const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const GROUPS = [
  ['passes', /\/course\/(passes|minima|segmentIndex)\.ts$/],
  ['geometry', /\/(geodesy|course)\//],
  ['layout', /\/layout\//],
  ['review', /\/review\//],
];

const groupOf = ({ fileName }) => GROUPS.find(([, path]) => path.test(fileName))[0];
const isKilled = ({ status }) => status === 'Killed' || status === 'Timeout';
const isValid = (mutant) => isKilled(mutant) || mutant.status === 'Survived' || mutant.status === 'NoCoverage';

/** "12 mutants, 11 killed (91.7 %), 1 survived" */
function told(mutants) {
  const killed = mutants.filter(isKilled).length;
  return `${mutants.length} mutants, ${killed} killed (${((100 * killed) / mutants.length).toFixed(1)} %), ${mutants.length - killed} survived`;
}

const place = ({ fileName, location: { start } }) => `${relative(ROOT, fileName)}:${start.line}:${start.column}`;

function survivor(mutant) {
  const replacement = mutant.replacement.replace(/\s+/g, ' ').slice(0, 120);
  return `  ${place(mutant)} ${mutant.mutatorName} → ${replacement}${mutant.status === 'NoCoverage' ? ' (no test comes here)' : ''}`;
}

async function run(seed, only) {
  const at = mkdtempSync(join(tmpdir(), 'halfcup-mutants-'));
  Object.assign(process.env, { HALFCUP_MUTANT_SEED: String(seed), HALFCUP_MUTANT_DIR: at });
  try {
    const mutate = only === undefined ? {} : { mutate: [only, '!**/*.test.ts'] };
    return await new Stryker({
      configFile: 'scripts/mutants/stryker.config.mjs',
      tempDirName: join(at, 'sandbox'),
      ...mutate,
    }).runMutationTest();
  } finally {
    rmSync(at, { recursive: true, force: true });
  }
}

const { values } = parseArgs({ options: { seed: { type: 'string', default: '1' }, only: { type: 'string' } } });
if (!/^\d+$/u.test(values.seed)) {
  console.error(`Found --seed ${JSON.stringify(values.seed)}; expected a whole number, such as --seed 2.`);
  process.exit(2);
}
process.chdir(ROOT);
const started = Date.now();
const results = await run(Number(values.seed), values.only);
const valid = results.filter(isValid);
console.log(
  `Seed ${values.seed}: of ${results.length} mutants ${valid.length} are drawn and compile; ${Math.round((Date.now() - started) / 1000)} s.`,
);
for (const [group] of GROUPS) {
  const own = valid.filter((mutant) => groupOf(mutant) === group);
  if (own.length > 0) console.log(`${group}: ${told(own)}`);
}
for (const mutant of valid
  .filter((mutant) => !isKilled(mutant))
  .sort((a, b) => place(a).localeCompare(place(b), 'en', { numeric: true })))
  console.log(survivor(mutant));
console.log(told(valid));
const few = values.only === undefined && valid.length < FEWEST;
if (few) console.error(`Only ${valid.length} mutants; at least ${FEWEST} are wanted: raise SHARE in sample.mjs.`);
if (few || valid.filter(isKilled).length < LEAST * valid.length) process.exitCode = 1;
