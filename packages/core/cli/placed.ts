/** Points recorded on the ground, from a GPX file, compared with a plan, and the plan reviewed as built. */
import { type Result, bad, good } from '../src/finding.ts';
import { placeFindings } from '../src/plan/placeFindings.ts';
import { reviewBuilt } from '../src/asBuilt.ts';
import type { PlacedVerdict } from '../src/review/placed.ts';
import type { PlacedStation } from '../src/review/placedStation.ts';
import { readGpxFile } from './files.ts';
import type { Io } from './io.ts';
import { REFUSAL } from './messages.ts';
import type { AnalysedPlan } from './plans.ts';

export interface PlacedPlan extends AnalysedPlan {
  readonly placed: readonly PlacedVerdict[];
  readonly built: readonly PlacedStation[];
}

/**
 * A plan with the verdicts on a file's waypoints and its stations as built, and with their checks and findings behind its own. A
 * file that has none is refused.
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
  const { verdicts, stations, findings, checks } = reviewBuilt(analysis, read.value);
  const all = [...analysis.findings, ...read.findings, ...placeFindings(findings, document)];
  return good({ document, analysis: { ...analysis, checks, findings: all }, placed: verdicts, built: stations });
}
