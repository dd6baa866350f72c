/** The reviewer's report of what is shown, with the SHA-256 of every file that it rests on. */
import { filesNamedBy, type Analysis } from '@halfcup/core';
import { reviewDocument, type FileDigest } from '@halfcup/core/schemas';
import { type Paper, contextOf, reportHtml } from '@halfcup/core/papers';
import type { OpenPlan, Placed } from '../state/store/store.ts';
import { plainError } from '../trouble.ts';
import { today } from '../state/edits/waivers.ts';
import { placedView, reviewChecks } from '../state/view/placed.ts';

const hex = (bytes: ArrayBuffer): string =>
  Array.from(new Uint8Array(bytes), (byte) => byte.toString(16).padStart(2, '0')).join('');

async function sha256Of(bytes: BufferSource): Promise<string> {
  if (!isSecureContext)
    throw plainError(
      'it lists each file’s SHA-256, which browsers compute only for pages opened by https or from this device',
    );
  return hex(await crypto.subtle.digest('SHA-256', bytes));
}

/** The files that the plan's courses name, as the plan names them, then the one of the points. */
async function digests({ document, files }: OpenPlan, placed: Placed | null): Promise<FileDigest[]> {
  const { gpx, ground } = filesNamedBy(document.plan);
  const maps = ground.filter((name) => files.originals.has(name));
  const blobs = [...gpx, ...maps].map((name) => [name, files.originals.get(name)] as const);
  const all = [...blobs, ...(placed === null ? [] : [[placed.file, placed.bytes] as const])];
  return Promise.all(
    all.map(async ([file, blob]) => {
      if (blob === undefined) throw plainError(`${file} is missing; open the plan again with its files`);
      return { file, sha256: await sha256Of(await blob.arrayBuffer()) };
    }),
  );
}

/** As shown: a variant is named in its title. */
function shownAnalysis(open: OpenPlan, placed: Placed | null): Analysis {
  const { analysis, findings, variant } = open;
  const view = placed === null ? null : placedView(open, placed);
  const { plan } = analysis;
  return {
    ...analysis,
    plan: variant === null ? plan : { ...plan, name: `${plan.name} (variant: ${variant})` },
    checks: reviewChecks(open, placed),
    findings: [...findings, ...(view?.findings ?? [])],
  };
}

/** The whole page as HTML. Throws, in a person's words, where it cannot be made. */
export async function reportOf(
  open: OpenPlan,
  placed: Placed | null,
  choice: { readonly paper?: Paper; readonly language?: string } = {},
): Promise<string> {
  const analysis = shownAnalysis(open, placed);
  const sha256 = await sha256Of(new TextEncoder().encode(open.document.text));
  const inputs = await digests(open, placed);
  const view = placed === null ? null : placedView(open, placed);
  const ground = view === null ? {} : { placed: view.verdicts, built: view.stations };
  const review = reviewDocument(analysis, { sha256, inputs, ...ground });
  const context = contextOf(open.files.context);
  return reportHtml({ ...choice, analysis, review, made: today(), ...(context === null ? {} : { context }) });
}
