/** For tests: the demo plan, opened from its files. */
import { readFileSync } from 'node:fs';
import { openFiles, type NamedFile, type Opening } from './state/open/open.ts';
import type { OpenPlan } from './state/store/store.ts';

const FOLDER = new URL('../../../fixtures/demo/', import.meta.url);

export const demoFile = (name: string): NamedFile => ({
  name,
  bytes: new Uint8Array(readFileSync(new URL(name, FOLDER))),
});

export const textFile = (name: string, text: string): NamedFile => ({ name, bytes: new TextEncoder().encode(text) });

export const DEMO_NAMES = ['plan.json', 'full.gpx', 'half.gpx', 'context.geojson', 'ground.geojson'] as const;

export function openedFrom(opening: Opening): OpenPlan {
  if (opening.kind !== 'opened')
    throw new Error(`expected an opened plan, found ${JSON.stringify(opening).slice(0, 400)}`);
  return opening.plan;
}

export const openDemo = (): OpenPlan => openedFrom(openFiles(DEMO_NAMES.map(demoFile), null));

/** A plan over one straight line on the equator, 0.1 degrees east, with what a test adds to it. */
export const straightPlan = (extra: object): NamedFile =>
  textFile(
    'straight.json',
    JSON.stringify({
      format: 'halfcup-plan',
      version: 1,
      name: 'Straight',
      courses: [
        {
          id: 'c',
          name: 'Straight',
          line: [
            [0, 0],
            [0.1, 0],
          ],
          drawn: 'centre',
        },
      ],
      races: [{ id: 'r', name: 'Race', course: 'c' }],
      stations: [],
      ...extra,
    }),
  );

/** As many cases of a property as are wanted, or as there is time for: `testing/tries.ts` of core says the same. */
export const tries = (wanted: number): number => Math.min(wanted, process.env['CI'] ? 1000 : 200);
