/** `halfcup export`: the layout, or the crew times, for other tools. */
import { type Result, bad, good } from '../../src/finding.ts';
import type { Layout } from '../../src/layout/layout.ts';
import type { Plan } from '../../src/plan/plan.ts';
import type { RaceDay } from '../../src/raceday/day.ts';
import { placeFindings } from '../../src/plan/placeFindings.ts';
import { type Call, type Output, type Run, refuse } from '../call.ts';
import type { Io } from '../io.ts';
import { REFUSAL } from '../messages.ts';
import { type AnalysedPlan, analysePlan, unreadResults } from '../plans.ts';
import { json, unitsOf } from '../printing.ts';

export const run: Run = async (call, io) => {
  const to = call.values.get('to');
  if (to === undefined) return refuse(REFUSAL.noFormat());
  const read = await analysePlan(io, call.positionals[0]!, call.values.get('variant'));
  return read.ok ? FORMATS[to as Format](read.value, call, io) : read;
};

type Format = 'geojson' | 'gpx' | 'csv' | 'ics' | 'order' | 'crew';

/** Each loads its own writer only: Turf takes longer to load than most layouts take to compute. */
const FORMATS: { readonly [format in Format]: (plan: AnalysedPlan, call: Call, io: Io) => Promise<Result<Output>> } = {
  geojson: async ({ analysis }) => {
    const { toGeoJson } = await import('../../src/export/geojson.ts');
    return good({ text: json(toGeoJson(analysis)) });
  },
  gpx: async (plan, call) => {
    const { toGpx } = await import('../../src/export/waypoints.ts');
    const made = placed(toGpx(named(plan, call), unitsOf(call, plan.analysis.plan.units)), plan);
    return made.ok ? good({ ...made.value, gpx: true }) : made;
  },
  csv: async ({ analysis }) => {
    const { toCsv } = await import('../../src/export/csv.ts');
    return good({ text: toCsv(analysis) });
  },
  order: async (plan) => {
    const { orderCsv } = await import('../../src/export/yearCsv.ts');
    return ofDay(plan, orderCsv);
  },
  crew: async (plan) => {
    const { crewCsv } = await import('../../src/export/yearCsv.ts');
    return ofDay(plan, crewCsv);
  },
  ics: async (plan, _, io) => {
    const { toCalendar } = await import('../../src/export/calendar.ts');
    return placed(toCalendar(plan.analysis, io.now().getTime()), plan);
  },
};

/** A table of race day; refused where nobody knows who runs, or a race would be missing because its results cannot be read. */
function ofDay({ analysis, document }: AnalysedPlan, write: (plan: Plan, day: RaceDay) => string): Result<Output> {
  const { plan, day } = analysis;
  const unread = unreadResults(analysis);
  if (unread.length > 0) return bad(unread);
  return day === null
    ? bad([{ code: 'race-day-empty', severity: 'error', message: REFUSAL.noWaves(), where: { file: document.file } }])
    : good({ text: write(plan, day) });
}

/** The layout under a name that says which variant it is. */
function named({ analysis }: AnalysedPlan, call: Call): Layout {
  const variant = call.values.get('variant');
  return variant === undefined
    ? analysis
    : { ...analysis, plan: { ...analysis.plan, name: `${analysis.plan.name} (${variant})` } };
}

/** A text, with the findings on it at their places in the plan. */
function placed(made: Result<string>, { document }: AnalysedPlan): Result<Output> {
  const findings = placeFindings(made.findings, document);
  return made.ok ? good({ text: made.value, notes: findings }) : bad(findings);
}
