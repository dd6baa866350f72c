/** The background drawing that a plan names, for its papers. One that cannot be used is left out and reported: nothing depends on it. */
import { dirname, join } from 'node:path';
import type { FeatureCollection } from 'geojson';
import { contextOf, drawingJson } from '../src/papers/context.ts';
import type { Finding } from '../src/finding.ts';
import type { PlanDocument } from '../src/plan/plan.ts';
import { liesInside, readText } from './files.ts';
import type { Io } from './io.ts';
import { REFUSAL } from './messages.ts';

export interface ReadContext {
  readonly drawing: FeatureCollection | null;
  readonly findings: readonly Finding[];
}

export async function readContext(io: Io, document: PlanDocument): Promise<ReadContext> {
  const { file, plan } = document;
  if (plan.context === undefined) return { drawing: null, findings: [] };
  const path = join(dirname(file), plan.context);
  const left = (why: string): ReadContext => ({
    drawing: null,
    findings: [
      {
        code: 'context-left-out',
        severity: 'note',
        message: REFUSAL.drawingLeftOut(plan.context!, why),
        where: { file, ...document.placeOf('/context'), path: '/context' },
      },
    ],
  });
  if ((await liesInside(io, path, dirname(file))) === false) return left(REFUSAL.drawingOutside());
  const text = await readText(io, path, 'drawing');
  if (!text.ok) return left(text.findings.map(({ message }) => message).join('; '));
  const json = drawingJson(text.value, path);
  if (!json.ok) return left(json.findings.map(({ message }) => message).join('; '));
  const drawing = contextOf(json.value);
  return drawing === null ? left(REFUSAL.drawingUnread()) : { drawing, findings: [] };
}
