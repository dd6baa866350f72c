/** `halfcup raceday`: arrivals, cups, pre-pour, crew, runs; or the take rates that a counted day teaches. */
import { raceDayDocument } from '../../src/export/raceDayDocument.ts';
import { type Finding, type Result, bad, good } from '../../src/finding.ts';
import type { RaceDay } from '../../src/raceday/day.ts';
import { learnRates } from '../../src/raceday/learn.ts';
import { type Output, type Run, has } from '../call.ts';
import { type View, planView } from '../findings.ts';
import { REFUSAL } from '../messages.ts';
import { type AnalysedPlan, analysePlan } from '../plans.ts';
import { json, unitsOf } from '../printing.ts';
import type { Screen } from '../screen.ts';
import { learntText } from '../text/learnt.ts';
import { raceDayText } from '../text/raceday.ts';

export const run: Run = async (call, io) => {
  const [file] = call.positionals;
  const read = await analysePlan(io, file!, call.values.get('variant'));
  if (!read.ok) return read;
  const { analysis } = read.value;
  if (analysis.day === null) {
    return bad([{ code: 'race-day-empty', severity: 'error', message: REFUSAL.noWaves(), where: { file: file! } }]);
  }
  const { day } = analysis;
  const units = unitsOf(call, analysis.plan.units);
  const view = (screen: Screen): View => planView(screen, units, analysis.plan);
  if (has(call, 'learn')) return learn(read.value, has(call, 'json'), view);
  const document = raceDayDocument(analysis, day, dayFindings(analysis, day));
  return good({
    text: has(call, 'json') ? json(document) : (screen) => raceDayText(analysis, day, document.findings, view(screen)),
  });
};

/** Of all findings those that race day has made, with their places and waivers. */
function dayFindings({ findings }: AnalysedPlan['analysis'], day: RaceDay): readonly Finding[] {
  const codes = new Set(day.findings.map(({ code }) => code));
  return findings.filter(({ code }) => codes.has(code));
}

function learn({ analysis }: AnalysedPlan, asJson: boolean, view: (screen: Screen) => View): Result<Output> {
  const learnt = learnRates(analysis.plan, analysis.day!.stations);
  return good({ text: asJson ? json(learnt) : (screen) => learntText(learnt, view(screen)) });
}
