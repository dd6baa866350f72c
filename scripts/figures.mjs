/**
 * Writes the last figures of the benches (packages/core/bench/results.json, growth.json and batch.json, packages/viewer/bench/results.json)
 * into packages/core/BENCHMARKS.md, and between their marks what follows from the sources: the list of checks (packages/core/CHECKS.md), the
 * limits (packages/core/LIMITS.md) and the ranges of a plan's numbers (packages/core/PLAN.md). `--check` changes nothing and exits 1 where one is stale.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { rangeTable } from './planRanges.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
// The list is that of the sources as they are, not of what was built some time ago.
const { status } = spawnSync(process.execPath, ['node_modules/typescript/bin/tsc', '-b', 'packages/core'], {
  cwd: root,
  stdio: 'inherit',
});
if (status !== 0) throw new Error('core does not compile; fix that first');
const { CHECKS, PLACED_RULES, STAGE_RULES, THEMES } = await import('@halfcup/core/stages');
const { limitTable, themeText } = await import('@halfcup/core/sentences');
const { planJsonSchema } = await import('@halfcup/core/schemas');
const benchmarks = join(root, 'packages/core/BENCHMARKS.md');

const checks = join(root, 'packages/core/CHECKS.md');
const limits = join(root, 'packages/core/LIMITS.md');
const ranges = join(root, 'packages/core/PLAN.md');

function between(text, name, content) {
  const pattern = new RegExp(`(<!-- ${name} -->\\n)[\\s\\S]*?(<!-- /${name} -->)`);
  if (!pattern.test(text))
    throw new Error(`found no marks for "${name}"; expected <!-- ${name} --> and <!-- /${name} -->`);
  return text.replace(pattern, (_, open, close) => `${open}${content}\n${close}`);
}

function figure(value) {
  const digits = value >= 100 ? 2 : 3;
  return Number(value.toPrecision(digits)).toLocaleString('en', { maximumSignificantDigits: digits });
}

function speedTable() {
  const { node, rows } = JSON.parse(readFileSync(join(root, 'packages/core/bench/results.json'), 'utf8'));
  return [
    figureTable(rows),
    '',
    `Node ${node.slice(1)}, both sides in one run, medians of five interleaved rounds. Repeat: \`npx -y pnpm@12 bench\`.`,
  ].join('\n');
}

/** A table of figures, of which some have no target. */
function figureTable(rows) {
  const reach = (row) =>
    row.bound === undefined ? '' : `${row.bound} ${figure(row.target)}${row.unit}${row.met ? '' : ': missed'}`;
  const lines = rows.map((row) => `| ${row.work} | ${row.peer} | ${figure(row.figure)}${row.unit} | ${reach(row)} |`);
  return ['| work | figure | measured | must reach |', '|---|---|--:|--:|', ...lines].join('\n');
}

/** How the time of each stage grows with what a plan holds more of. */
function growthTable() {
  const { node, rows } = JSON.parse(readFileSync(join(root, 'packages/core/bench/growth.json'), 'utf8'));
  const lines = rows.map(
    ({ work, seconds, figure: exponent, target, met }) =>
      `| ${work} | ${figure(seconds * 1000)} ms | ${exponent.toFixed(2)} | at most ${target}${met ? '' : ': missed'} |`,
  );
  return [
    '| work | processor time of the larger | exponent | must reach |',
    '|---|--:|--:|--:|',
    ...lines,
    '',
    `Node ${node.slice(1)}; an exponent of 1 is twice the time for twice as many. The least of some rounds. Repeat: \`node packages/core/bench/run.mjs growth\`, then \`node scripts/figures.mjs\`.`,
  ].join('\n');
}

/** How the page keeps up while a station is dragged or the clock plays; p95 has no target. */
function draggingTable() {
  const { rows } = JSON.parse(readFileSync(join(root, 'packages/viewer/bench/results.json'), 'utf8'));
  return `${figureTable(rows)}\n\nChromium drawing in software on two cores in a window of 1920 × 1080, both sides in one hold of the station; frames count in whole refreshes of the screen. Repeat: \`node packages/viewer/bench/drag.mjs\`, then \`node scripts/figures.mjs\`.`;
}

/** How fast and how steadily the command line comes through many plans. */
function batchTable() {
  const { node, processors, rows } = JSON.parse(readFileSync(join(root, 'packages/core/bench/batch.json'), 'utf8'));
  return `${figureTable(rows)}\n\nNode ${node.slice(1)} on ${processors} processors; heap: what V8 keeps after its own full garbage collections, all threads together; process memory (RSS): the whole process. Each worker warms up by itself, so two of them still grow in the second hundred. Repeat: \`node packages/core/bench/batch.mjs\`, then \`node scripts/figures.mjs\`.`;
}

/** The checks, a table for each theme. */
const checkTable = () =>
  THEMES.map((theme) =>
    [
      `## ${themeText(theme, 'en')}\n`,
      '| code | severity | how it should be | source |',
      '|---|---|---|---|',
      ...[...STAGE_RULES, ...CHECKS, ...PLACED_RULES]
        .filter((check) => check.theme === theme)
        .map((check) => `| \`${check.code}\` | ${check.severity} | ${check.title} | ${check.source} |`),
    ].join('\n'),
  ).join('\n\n');

/** What each reader takes. */
const limitLines = () =>
  [
    '| read | at most |',
    '|---|---|',
    ...limitTable().map(({ title, most }) => `| ${title} | ${most.join(', ')} |`),
  ].join('\n');

/** What is made of the sources alone, and so can be stale. */
const made = [
  [checks, 'checks', checkTable()],
  [limits, 'limits', limitLines()],
  [ranges, 'ranges', rangeTable(planJsonSchema())],
].map(([file, name, content]) => {
  const listed = readFileSync(file, 'utf8');
  return { file, listed, current: between(listed, name, content) };
});
if (process.argv.includes('--check')) {
  const stale = made.filter(({ listed, current }) => current !== listed);
  for (const { file } of stale) console.error(`${relative(root, file)} is stale; run \`node scripts/figures.mjs\`.`);
  process.exitCode = stale.length === 0 ? 0 : 1;
} else {
  for (const { file, current } of made) writeFileSync(file, current);
  const tables = [
    ['speed', speedTable()],
    ['growth', growthTable()],
    ['dragging', draggingTable()],
    ['batch', batchTable()],
  ];
  writeFileSync(
    benchmarks,
    tables.reduce((text, [name, content]) => between(text, name, content), readFileSync(benchmarks, 'utf8')),
  );
}
