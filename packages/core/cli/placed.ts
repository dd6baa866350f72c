/** Points recorded on the ground, from a GPX file, compared with a plan's layout. */
import { type Result, bad, good } from '../src/finding.ts';
import { placeFindings } from '../src/plan/placeFindings.ts';
import { type PlacedVerdict, reviewPlaced } from '../src/review/placed.ts';
import { readGpxFile } from './files.ts';
import type { Io } from './io.ts';
import { REFUSAL } from './messages.ts';
import type { AnalysedPlan } from './plans.ts';

export interface PlacedPlan extends AnalysedPlan {
  readonly placed: readonly PlacedVerdict[];
}

/**
 * A plan with the verdicts on a file's waypoints, and with their checks and findings behind its own. A file that
 * has none is refused.
 */
export async function withPlaced(
  io: Io,
  file: string,
  { document, analysis }: AnalysedPlan,
): Promise<Result<PlacedPlan>> {
  const read = await readGpxFile(io, file);
  if (!read.ok) return read;
  if (read.value.waypoints.length === 0) {
    return bad([
      {
        code: 'placed-empty',
        severity: 'error',
        message: REFUSAL.noPlacedPoints(),
        where: { file, line: 1, column: 1 },
      },
    ]);
  }
  const { verdicts, findings, checks } = reviewPlaced(analysis, read.value);
  const all = [...analysis.findings, ...read.findings, ...placeFindings(findings, document)];
  return good({
    document,
    analysis: { ...analysis, checks: [...analysis.checks, ...checks], findings: all },
    placed: verdicts,
  });
}
