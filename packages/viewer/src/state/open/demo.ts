/** The demo plan: files of the fixtures that the build lays beside the page and that are fetched from there. */
import contextUrl from '../../../../../fixtures/demo/context.geojson?url';
import groundUrl from '../../../../../fixtures/demo/ground.geojson?url';
import fullUrl from '../../../../../fixtures/demo/full.gpx?url';
import halfUrl from '../../../../../fixtures/demo/half.gpx?url';
import planUrl from '../../../../../fixtures/demo/plan.json?url';
import { plainError } from '../../trouble.ts';
import type { NamedFile } from './open.ts';

const FILES: readonly (readonly [name: string, url: string])[] = [
  ['plan.json', planUrl],
  ['full.gpx', fullUrl],
  ['half.gpx', halfUrl],
  ['context.geojson', contextUrl],
  ['ground.geojson', groundUrl],
];

export function fetchDemo(): Promise<NamedFile[]> {
  return Promise.all(
    FILES.map(async ([name, url]) => {
      const answer = await fetch(url);
      if (!answer.ok) throw plainError(`${name} is not where this page was loaded from`);
      return { name, bytes: new Uint8Array(await answer.arrayBuffer()) };
    }),
  );
}
