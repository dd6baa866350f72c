/** The review of a plan's file, and what the program ends with after it. */
import { type ReviewDocument, reviewDocument } from '../src/export/reviewDocument.ts';
import { type Result, good } from '../src/finding.ts';
import { reviewedFiles, sha256Of } from './digests.ts';
import type { Io } from './io.ts';
import { withPlaced } from './placed.ts';
import { type AnalysedPlan, analysePlan } from './plans.ts';

export interface Reviewed extends AnalysedPlan {
  readonly review: ReviewDocument;
}

/** A plan's review; with the points of a file, that file is one of its inputs. */
export async function reviewPlan(io: Io, file: string, placed?: string): Promise<Result<Reviewed>> {
  const read = await analysePlan(io, file, undefined);
  if (!read.ok) return read;
  const files = await reviewedFiles(io, read.value.document);
  if (placed === undefined) return good({ ...read.value, review: reviewDocument(read.value.analysis, files) });
  const held = await withPlaced(io, placed, read.value);
  if (!held.ok) return held;
  const inputs = [...files.inputs, { file: placed, sha256: await sha256Of(io, placed) }];
  return good({
    ...held.value,
    review: reviewDocument(held.value.analysis, {
      ...files,
      inputs,
      placed: held.value.placed,
      built: held.value.built,
    }),
  });
}

/** 1 where an error stands that nobody has waived, if strict also a warning. */
export const exitOf = ({ counts }: ReviewDocument, strict: boolean): 0 | 1 =>
  counts.error > 0 || (strict && counts.warning > 0) ? 1 : 0;
