/** `halfcup raceday`: arrivals, cups, pre-pour, crew, runs; or the take rates that a counted day teaches. */
import { raceDayDocument } from '../../src/export/raceDayDocument.ts';
import { type Finding, type Result, bad, good } from '../../src/finding.ts';
import type { RaceDay } from '../../src/raceday/day.ts';
import { learnRates } from '../../src/raceday/learn.ts';
import { type Output, type Run, has } from '../call.ts';
import { type AnalysedPlan, analysePlan } from '../plans.ts';
import { json, unitsOf } from '../printing.ts';
import { learntText, raceDayText } from '../text/raceday.ts';

export const run: Run = async (call, io) => {
  const [file] = call.positionals;
  const read = await analysePlan(io, file!, call.values.get('variant'));
  if (!read.ok) return read;
  const { analysis } = read.value;
  if (analysis.day === null) {
    const message =
      'no race of the plan has waves, so nobody knows who arrives when; give a race "waves", each with "time" and "entrants", and "finish" times';
    return bad([{ code: 'race-day-empty', severity: 'error', message, where: { file: file! } }]);
  }
  const units = unitsOf(call, analysis.plan.units);
  if (has(call, 'learn')) return learn(read.value, has(call, 'json'));
  const document = raceDayDocument(analysis, analysis.day, dayFindings(analysis, analysis.day));
  return good({
    text: has(call, 'json') ? json(document) : raceDayText(analysis, analysis.day, document.findings, units),
  });
};

/** Of all findings those that race day has made, with their places and waivers. */
function dayFindings({ findings }: AnalysedPlan['analysis'], day: RaceDay): readonly Finding[] {
  const codes = new Set(day.findings.map(({ code }) => code));
  return findings.filter(({ code }) => codes.has(code));
}

function learn({ analysis }: AnalysedPlan, asJson: boolean): Result<Output> {
  const learnt = learnRates(analysis.plan, analysis.day!.stations);
  return good({ text: asJson ? json(learnt) : learntText(learnt) });
}
