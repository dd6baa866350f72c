/**
 * How long the installed core takes to load, against a peer in the same run: `node scripts/proof/importTimes.mjs`.
 * Each time is that of a fresh process, ours and the peer's in turn; medians are compared. Ends with 1 over a limit.
 */
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, proven, runAlone, said, tool } from './project.mjs';

const ROUNDS = 41;
const median = (values) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];

/** Milliseconds that a dynamic import takes, by the clock of the process that does it; `from` where the project does not have it. */
function importTime(folder, name, from = name) {
  const file = join(folder, `time-${name.replaceAll(/\W+/gu, '-')}.mjs`);
  writeFileSync(
    file,
    `const began = performance.now();\nawait import('${from}');\nconsole.log(performance.now() - began);\n`,
  );
  return () => Number(said(process.execPath, [file], folder));
}

/** Milliseconds of a whole process. */
const processTime = (folder, args) => () => {
  const from = performance.now();
  const { status } = spawnSync(process.execPath, args, { cwd: folder, stdio: 'ignore' });
  if (status !== 0) throw new Error(`node ${args.join(' ')} ended with ${status}`);
  return performance.now() - from;
};

/** Medians of both, one after the other, after one warm-up of each. */
function inTurn(ours, peer) {
  ours();
  peer();
  const pairs = Array.from({ length: ROUNDS }, () => [ours(), peer()]);
  return [median(pairs.map(([own]) => own)), median(pairs.map(([, other]) => other))];
}

function hold(what, peerName, [own, other], limit) {
  const times = `${own.toFixed(1)} ms, ${peerName} ${other.toFixed(1)} ms: ${(own / other).toFixed(2)} ×`;
  expect(own > 0 && other > 0 && own <= limit * other, `${what} takes ${times}; expected at most ${limit} ×`);
  proven(
    `time of ${what}`,
    `${times}, limit ${limit} × (medians of ${ROUNDS} fresh processes of Node ${process.version} each)`,
  );
}

export function proveImportTimes({ folder, core }) {
  hold(
    "import '@halfcup/core/geometry'",
    "import 'flatbush'",
    inTurn(
      importTime(folder, '@halfcup/core/geometry'),
      importTime(folder, 'flatbush', pathToFileURL(tool('flatbush/index.js'))),
    ),
    6,
  );
  hold(
    'halfcup --help',
    'node -e 0',
    inTurn(processTime(folder, [join(core, 'dist/packed/cli/main.js'), '--help']), processTime(folder, ['-e', '0'])),
    2,
  );
}

await runAlone(import.meta.url, proveImportTimes);
