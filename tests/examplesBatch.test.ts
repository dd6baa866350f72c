/** The example of many plans over worker threads runs as it is written, and counts what a direct call finds. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { analyse, readPlan } from '@halfcup/core';
import { type GpxDocument } from '@halfcup/core/stages';
import { readGpx } from '@halfcup/core/gpx';
import { expect, it } from 'vitest';
import { CORE, ROOT } from './support/build.ts';

const PLANS = 12;
const EXAMPLES = join(CORE, 'examples');

function courses(): ReadonlyMap<string, GpxDocument> {
  return new Map(
    ['full.gpx', 'half.gpx'].map((name) => {
      const read = readGpx(readFileSync(join(ROOT, 'fixtures/demo', name)), name);
      if (!read.ok) throw new Error(read.findings[0]!.message);
      return [name, read.value];
    }),
  );
}

/** Codes of the errors of a plan that nobody has waived. */
function errorsOf(text: string, gpx: ReadonlyMap<string, GpxDocument>): Set<string> {
  const read = readPlan(text, 'plan.json');
  const analysed = read.ok ? analyse(read.value.plan, { gpx }) : read;
  if (!analysed.ok) throw new Error(analysed.findings[0]!.message);
  return new Set(
    analysed.value.findings
      .filter(({ severity, waived }) => severity === 'error' && waived === undefined)
      .map(({ code }) => code),
  );
}

it('examples/batch counts the plans with errors, and the plans that have each error', async () => {
  const { demoPlans } = (await import(pathToFileURL(join(EXAMPLES, 'plans.mjs')).href)) as {
    demoPlans: (count: number) => Iterable<string>;
  };
  const texts = [...demoPlans(PLANS)];
  expect(new Set(texts).size).toBe(PLANS);
  const gpx = courses();
  const errors = texts.map((text) => errorsOf(text, gpx));
  const tally = new Map<string, number>();
  for (const code of errors.flatMap((codes) => [...codes])) tally.set(code, (tally.get(code) ?? 0) + 1);
  expect(tally.size).toBeGreaterThan(0);
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(EXAMPLES, 'batch/main.mjs'), String(PLANS)], {
    encoding: 'utf8',
  });
  expect([status, stderr]).toEqual([0, '']);
  const [first, ...rest] = stdout.trimEnd().split('\n');
  expect(first).toBe(`${PLANS} plans, ${errors.filter((codes) => codes.size > 0).length} with errors`);
  expect(new Set(rest)).toEqual(new Set(Array.from(tally, ([code, count]) => `${code}: in ${count} plans`)));
});
