/** `halfcup improve`: better places for stations, with what is proven of them; `--out` writes the changed plan. */
import { improveDocument } from '../../src/export/improveDocument.ts';
import { type Result, bad, good } from '../../src/finding.ts';
import { movedText } from '../../src/improve/change.ts';
import { type ImproveOptions, improve } from '../../src/improve/improve.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { type Call, type Run, has, lengthOf } from '../call.ts';
import { analysePlan } from '../plans.ts';
import { json, unitsOf } from '../printing.ts';
import { progressOf } from '../progress.ts';
import { improveText } from '../text/improve.ts';

export const run: Run = async (call, io) => {
  const read = await analysePlan(io, call.positionals[0]!, undefined);
  if (!read.ok) return read;
  const { document, analysis } = read.value;
  const only = stationsOf(call, document.file, analysis.plan);
  if (!only.ok) return only;
  const progress = progressOf('Trying places', io.stderr);
  const improvement = improve(analysis, { ...only.value, ...withinOf(call), onProgress: progress.show });
  progress.clear();
  const text = has(call, 'json')
    ? json(improveDocument(improvement))
    : improveText(improvement, {
        plan: analysis.plan,
        within: lengthOf(call, 'within'),
        out: call.values.get('out'),
        units: unitsOf(call, analysis.plan.units),
      });
  return good({ text, written: movedText(document, improvement.plan.stations, improvement.moves) });
};

const withinOf = (call: Call): Pick<ImproveOptions, 'within'> => {
  const within = lengthOf(call, 'within');
  return within === undefined ? {} : { within };
};

/** The stations named, each of which the plan must have. */
function stationsOf(call: Call, file: string, { stations }: Plan): Result<Pick<ImproveOptions, 'only'>> {
  const text = call.values.get('only');
  if (text === undefined) return good({});
  const only = text.split(',').map((id) => id.trim());
  const known = stations.map(({ id }) => id);
  const unknown = only.filter((id) => !known.includes(id));
  if (unknown.length === 0) return good({ only });
  const list = known.length === 0 ? 'this plan has no stations' : `stations of this plan: ${known.join(', ')}`;
  const message = `found no station ${unknown.map((id) => `"${id}"`).join(', ')} for --only; ${list}`;
  return bad([{ code: 'call', severity: 'error', message, where: { file } }]);
}
