/** Points recorded on the ground, from a GPX file, held against a plan's layout. */
import type { Layout } from '../src/layout/layout.ts';
import { type Result, bad, good } from '../src/finding.ts';
import type { PlacedReview } from '../src/review/placed.ts';
import { readGpxFile } from './files.ts';

/** The review of a file's waypoints; what reading them found comes first. A file without any is refused. */
export async function placedIn(file: string, layout: Layout): Promise<Result<PlacedReview>> {
  const read = await readGpxFile(file);
  if (!read.ok) return read;
  if (read.value.waypoints.length === 0) {
    const message = 'found no waypoints; expected one for each sign, table and trash drop that was recorded, named such as "s1 sign"';
    return bad([{ code: 'placed-empty', severity: 'error', message, where: { file, line: 1, column: 1 } }]);
  }
  const { reviewPlaced } = await import('../src/review/placed.ts');
  const review = reviewPlaced(layout, read.value);
  return good({ ...review, findings: [...read.findings, ...review.findings] });
}
