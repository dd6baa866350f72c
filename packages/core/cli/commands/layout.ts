/** `halfcup layout`: passes, directions, items and spacing of a plan. */
import { layoutDocument } from '../../src/export/documents.ts';
import { good } from '../../src/finding.ts';
import { type Run, has } from '../call.ts';
import { planView } from '../findings.ts';
import { analysePlan } from '../plans.ts';
import { json, unitsOf } from '../printing.ts';
import { layoutText } from '../text/layout.ts';

export const run: Run = async (call, io) => {
  const read = await analysePlan(io, call.positionals[0]!, call.values.get('variant'));
  if (!read.ok) return read;
  const { analysis } = read.value;
  const units = unitsOf(call, analysis.plan.units);
  return good({
    text: has(call, 'json')
      ? json(layoutDocument(analysis, analysis.findings))
      : (screen) => layoutText(analysis, planView(screen, units, analysis.plan)),
  });
};
