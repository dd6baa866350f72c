/** `halfcup improve`: better places for stations, with what is proven of them; `--out` writes the changed plan. */
import { improveDocument } from '../../src/export/improveDocument.ts';
import { type Result, bad, good } from '../../src/finding.ts';
import { movedText } from '../../src/improve/change.ts';
import { type ImproveOptions, improve } from '../../src/improve/improve.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { type Call, type Printed, type Run, has, lengthOf } from '../call.ts';
import { planView } from '../findings.ts';
import { oneLine } from '../breaks.ts';
import { REFUSAL } from '../messages.ts';
import { analysePlan } from '../plans.ts';
import { json, unitsOf } from '../printing.ts';
import { progressOf } from '../progress.ts';
import { improveText } from '../text/improve.ts';

/** Milliseconds after which the best that is known so far is given. */
const LONGEST = 10 * 60_000;

export const run: Run = async (call, io) => {
  const read = await analysePlan(io, call.positionals[0]!, undefined);
  if (!read.ok) return read;
  const { document, analysis } = read.value;
  const only = stationsOf(call, document.file, analysis.plan);
  if (!only.ok) return only;
  const progress = progressOf('Trying places', io.stderr);
  const from = io.now().getTime();
  const improvement = improve(analysis, {
    ...only.value,
    ...withinOf(call),
    onProgress: progress.show,
    stop: () => io.now().getTime() - from > LONGEST,
  });
  progress.clear();
  const { plan } = analysis;
  const asked = { plan, within: lengthOf(call, 'within'), out: call.values.get('out') };
  const text: Printed = has(call, 'json')
    ? json(improveDocument(improvement))
    : (screen) => improveText(improvement, asked, planView(screen, unitsOf(call, plan.units), plan));
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
  const asked = text.split(',').map((name) => name.trim());
  const found = asked.map((name) => [name, idOf(stations, name)] as const);
  const unknown = found.flatMap(([name, id]) => (id === undefined ? [name] : []));
  if (unknown.length === 0) return good({ only: found.flatMap(([, id]) => id ?? []) });
  const known = stations.map(({ id, name }) => (name === id ? id : `${id} (${oneLine(name)})`));
  return bad([{ code: 'call', severity: 'error', message: REFUSAL.noSuchStations(unknown, known), where: { file } }]);
}

/** The id of a station by its id, or by its name where no other has it. */
function idOf(stations: Plan['stations'], word: string): string | undefined {
  if (stations.some(({ id }) => id === word)) return word;
  const named = stations.filter(({ name }) => name === word);
  return named.length === 1 ? named[0]!.id : undefined;
}
