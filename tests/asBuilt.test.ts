/** Every fixture recorded where its plan has it: as built the review finds nothing new, and nothing grave of the noise of receivers. */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { type Analysis, type Finding, type LonLat, reviewBuilt, reviewPlan } from '@halfcup/core';
import type { GpxDocument } from '@halfcup/core/gpx';
import { type Recorded, disturbed, gaussian, placedDocument } from '../packages/core/src/testing/placed.ts';

const root = fileURLToPath(new URL('../fixtures', import.meta.url));
const plans = readdirSync(root).filter((name) => readdirSync(join(root, name)).includes('plan.json'));

function analysisOf(name: string): Analysis {
  const folder = join(root, name);
  const lines = readdirSync(folder).filter((file) => file.endsWith('.gpx'));
  const files = Object.fromEntries(lines.map((file) => [file, readFileSync(join(folder, file), 'utf8')]));
  const read = reviewPlan({ plan: readFileSync(join(folder, 'plan.json'), 'utf8'), files });
  if (!read.ok) throw new Error(read.findings[0]?.message);
  return read.value.analysis;
}

/** Every sign, table and trash drop, each moved so. */
function recorded({ stations }: Analysis, hdop: number, shaken: (at: LonLat) => LonLat): GpxDocument {
  const points = stations.flatMap(({ id, directions }) =>
    directions.flatMap(({ lead, items }) =>
      items
        .filter(({ kind }) => kind !== 'handOut' && (lead || kind === 'sign' || kind === 'trash'))
        .flatMap(({ kind, at: [from, to] }): Recorded[] => {
          const ends =
            kind === 'trash'
              ? ([
                  ['from', from],
                  ['to', to],
                ] as const)
              : ([['', from]] as const);
          return ends.flatMap(([end, at]) =>
            at === null ? [] : [{ name: `${id} ${kind} ${end}`, at: shaken(at), hdop }],
          );
        }),
    ),
  );
  return placedDocument(points);
}

const added = (analysis: Analysis, points: GpxDocument): readonly Finding[] =>
  reviewBuilt(analysis, points).findings.filter(
    ({ built, code }) => built === true || code === 'placed-far' || code === 'placed-swapped',
  );
const told = (findings: readonly Finding[]): string[] =>
  findings.map(({ severity, code, where }) => `${severity} ${code} ${where.station}`);

it('is asked of plans with stations', () => {
  expect(plans.length).toBeGreaterThan(10);
  expect(plans.flatMap((name) => analysisOf(name).stations).length).toBeGreaterThan(30);
});

it.each(plans)('%s stands as planned', (name) => {
  const analysis = analysisOf(name);
  expect(
    told(
      added(
        analysis,
        recorded(analysis, 0.2, (at) => at),
      ),
    ),
  ).toEqual([]);
  for (const seed of [1, 2, 3, 4, 5, 6]) {
    const normal = gaussian(seed);
    const noisy = recorded(analysis, 0.6, (at) => disturbed(at, 3, normal));
    expect(told(added(analysis, noisy).filter(({ severity }) => severity !== 'note'))).toEqual([]);
  }
});
