/** The demo's files, and what core makes of a plan's text over them. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Analysis, type Sources, analyse, readPlan } from '@halfcup/core';
import { readGpx } from '@halfcup/core/gpx';
import { readGround } from '@halfcup/core/ground';
import { ROOT } from './build.ts';
import { must } from './exported.ts';

export const demoText = (name: string): string => readFileSync(join(ROOT, 'fixtures/demo', name), 'utf8');

/** All but the drawing of the island, by name. */
export const DEMO_FILES: Readonly<Record<string, string>> = Object.fromEntries(
  ['plan.json', 'full.gpx', 'half.gpx', 'ground.geojson'].map((name) => [name, demoText(name)]),
);

export const DEMO_SOURCES = {
  gpx: new Map(['full.gpx', 'half.gpx'].map((name) => [name, must(readGpx(demoText(name), name))])),
  ground: new Map([['ground.geojson', must(readGround(demoText('ground.geojson'), 'ground.geojson'))]]),
} satisfies Sources;

/** A plan's text over the demo's courses and map, worked out from nothing. */
export const analysedDemo = (text: string): Analysis =>
  must(analyse(must(readPlan(text, 'plan.json')).plan, DEMO_SOURCES));
