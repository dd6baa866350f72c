/** `halfcup raceday`: arrivals, cups, pre-pour, crew, runs; the leftover form; or the take rates that a counted day teaches. */
import { leftoversCsv } from '../../src/export/leftoversCsv.ts';
import { raceDayDocument } from '../../src/export/raceDayDocument.ts';
import { type Finding, type Result, bad, good } from '../../src/finding.ts';
import type { RaceDay } from '../../src/raceday/day.ts';
import { editPlan } from '../../src/plan/edit.ts';
import { learnRates, learntSupplies } from '../../src/raceday/learn.ts';
import { readLeftovers } from '../../src/raceday/leftoversTable.ts';
import { type Call, type Output, type Run, has } from '../call.ts';
import { type View, planView } from '../findings.ts';
import { readPlan } from '../../src/plan/read.ts';
import { readRoster } from '../../src/raceday/roster.ts';
import { rosterRows } from '../../src/raceday/rostered.ts';
import { readText } from '../files.ts';
import type { Io } from '../io.ts';
import { REFUSAL } from '../messages.ts';
import { type AnalysedPlan, analysePlan } from '../plans.ts';
import { json, unitsOf } from '../printing.ts';
import type { Screen } from '../screen.ts';
import { learntText } from '../text/learnt.ts';
import { rosterText } from '../text/roster.ts';
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
  if (has(call, 'left-form')) return good({ text: leftoversCsv(analysis.plan, day.stations, call.values.get('lang')) });
  const left = call.values.get('left');
  if (left !== undefined) return learnFrom(read.value, left, call, io, view);
  const roster = call.values.get('roster');
  if (roster !== undefined) return rosterFrom(read.value, roster, call, io, view);
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

/** What was used, by the leftover forms of a file, and what that teaches; `--out` writes the plan with it. */
async function learnFrom(
  { document, analysis }: AnalysedPlan,
  file: string,
  call: Call,
  io: Io,
  view: (screen: Screen) => View,
): Promise<Result<Output>> {
  const text = await readText(io, file, 'leftovers');
  if (!text.ok) return text;
  const days = analysis.day!.stations;
  const used = readLeftovers(text.value, file, analysis.plan, days);
  if (!used.ok) return used;
  const { plan } = analysis;
  const counted = new Map(used.value.map(({ station, used: own }) => [station, own]));
  const stations = plan.stations.map((one) => ({ ...one, used: { ...one.used, ...counted.get(one.id) } }));
  const learnt = learnRates({ ...plan, stations }, days);
  return good({
    text: has(call, 'json')
      ? json(learnt)
      : (screen) => learntText(learnt, learntSupplies(analysis.plan, learnt), view(screen)),
    written: stations.reduce(
      (all, one, k) => (counted.has(one.id) ? editPlan(all, `/stations/${k}/used`, one.used) : all),
      document.text,
    ),
    notes: used.findings,
    exit: used.findings.some(({ severity }) => severity === 'error') ? 1 : 0,
  });
}

/** The crew of each station by the roster of a file beside what the day needs; `--out` writes the plan with it. */
async function rosterFrom(
  { document, analysis }: AnalysedPlan,
  file: string,
  call: Call,
  io: Io,
  view: (screen: Screen) => View,
): Promise<Result<Output>> {
  const text = await readText(io, file, 'roster');
  if (!text.ok) return text;
  const roster = readRoster(text.value, file, analysis.plan);
  if (!roster.ok) return roster;
  const written = editPlan(document.text, '/people/crew', roster.value);
  const changed = readPlan(written, document.file);
  if (!changed.ok) return changed;
  const rows = rosterRows(changed.value.plan, analysis.day!.stations);
  return good({
    text: has(call, 'json') ? json({ stations: rows }) : (screen) => rosterText(rows, view(screen)),
    written,
    notes: roster.findings,
    exit: roster.findings.some(({ severity }) => severity === 'error') ? 1 : 0,
  });
}

function learn({ analysis }: AnalysedPlan, asJson: boolean, view: (screen: Screen) => View): Result<Output> {
  const learnt = learnRates(analysis.plan, analysis.day!.stations);
  return good({
    text: asJson ? json(learnt) : (screen) => learntText(learnt, learntSupplies(analysis.plan, learnt), view(screen)),
  });
}
