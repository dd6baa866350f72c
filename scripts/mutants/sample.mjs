/**
 * Stryker's checker "sample": lets through the mutants that a seed draws and that compile.
 * A mutant is drawn if the hash of the seed and of what it is falls under SHARE: each on its own, so in
 * proportion to the size of a file. Exported names carry their types (isolatedDeclarations), so an
 * error stays in the file that has it: one mutant of each file is compiled at a time, all files at once.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';

/** Of about 7,200 mutants. */
const SHARE = 0.09;
export const NOT_DRAWN = 'not drawn';

const ROOT = new URL('../..', import.meta.url).pathname;
const CORE = 'packages/core';

function isDrawn({ fileName, location, mutatorName, replacement }, seed) {
  const what = JSON.stringify([seed, relative(ROOT, fileName), location, mutatorName, replacement]);
  return createHash('sha256').update(what).digest().readUInt32BE(0) < SHARE * 2 ** 32;
}

const offsetOf = (lines, { line, column }) =>
  lines.slice(0, line).reduce((sum, text) => sum + text.length + 1, 0) + column;

/** A source with one mutant in it. */
function mutated(source, { location, replacement }) {
  const lines = source.split('\n');
  return source.slice(0, offsetOf(lines, location.start)) + replacement + source.slice(offsetOf(lines, location.end));
}

/** A copy of core to compile changed files in. */
function fillWorkshop(at) {
  cpSync(join(ROOT, CORE, 'src'), join(at, CORE, 'src'), { recursive: true });
  for (const name of ['tsconfig.base.json', `${CORE}/tsconfig.json`, `${CORE}/package.json`])
    cpSync(join(ROOT, name), join(at, name));
  for (const name of ['node_modules', `${CORE}/node_modules`]) symlinkSync(join(ROOT, name), join(at, name));
}

/** The files, from the root, in which the compiler finds an error; unused names are no error here. */
function broken(at) {
  const loose = [
    '--noEmit',
    '--composite',
    'false',
    '--incremental',
    'false',
    '--noUnusedLocals',
    'false',
    '--noUnusedParameters',
    'false',
    '--pretty',
    'false',
  ];
  const { stdout } = spawnSync(join(ROOT, 'node_modules/.bin/tsc'), ['-p', CORE, ...loose], {
    cwd: at,
    encoding: 'utf8',
  });
  return new Set([...stdout.matchAll(/^(\S+?)\(\d+,\d+\): error/gm)].map(([, file]) => file));
}

class Sample {
  async init() {
    this.seed = Number(process.env.HALFCUP_MUTANT_SEED);
    this.at = join(process.env.HALFCUP_MUTANT_DIR, 'compile');
    fillWorkshop(this.at);
  }

  async group(mutants) {
    const drawn = mutants.filter((mutant) => isDrawn(mutant, this.seed));
    const rest = mutants.filter((mutant) => !drawn.includes(mutant));
    const byFile = [...new Set(drawn.map(({ fileName }) => fileName))].map((name) =>
      drawn.filter(({ fileName }) => fileName === name),
    );
    const rounds = Math.max(0, ...byFile.map((of) => of.length));
    const groups = Array.from({ length: rounds }, (_, round) => byFile.flatMap((of) => of.slice(round, round + 1)));
    return [...groups, rest].filter((group) => group.length > 0).map((group) => group.map(({ id }) => id));
  }

  async check(mutants) {
    if (!isDrawn(mutants[0], this.seed))
      return Object.fromEntries(mutants.map(({ id }) => [id, { status: 'compileError', reason: NOT_DRAWN }]));
    const nameOf = ({ fileName }) => relative(ROOT, fileName);
    const sources = mutants.map((mutant) => readFileSync(join(this.at, nameOf(mutant)), 'utf8'));
    mutants.forEach((mutant, k) => writeFileSync(join(this.at, nameOf(mutant)), mutated(sources[k], mutant)));
    const failed = broken(this.at);
    mutants.forEach((mutant, k) => writeFileSync(join(this.at, nameOf(mutant)), sources[k]));
    return Object.fromEntries(
      mutants.map((mutant) => [
        mutant.id,
        failed.has(nameOf(mutant)) ? { status: 'compileError', reason: 'does not compile' } : { status: 'passed' },
      ]),
    );
  }
}

export const strykerPlugins = [{ kind: 'Checker', name: 'sample', injectableClass: Sample }];
