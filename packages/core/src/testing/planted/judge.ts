/** Judges what a review says of a planted mistake. Not part of the package. */
import type { Finding } from '../../finding.ts';
import { reviewPlan } from '../../whole.ts';
import { type PlanName, goodPlan } from './goodPlans.ts';
import type { FileTexts, PlanText } from './planText.ts';
import type { Planted } from './planted.ts';

/** What was found of a mistake: an error or a warning of its own, a note, or nothing. */
export interface Judged {
  readonly planted: Planted;
  readonly verdict: 'caught' | 'noted' | 'nothing';
  /** Of its codes, but about something else. */
  readonly elsewhere: readonly Finding[];
  /** Findings that are neither its own nor those of the good plan. */
  readonly others: readonly Finding[];
}

const clean = new Map<PlanName, ReadonlySet<string>>();
const copy = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;

/** A finding without its figures: what tells it from another of its code. */
const keyOf = ({ code, where }: Finding): string =>
  [code, where.station, where.race, where.course, where.item].map((part) => part ?? '').join(' ');

const findingsOf = (text: PlanText, files: FileTexts): readonly Finding[] =>
  reviewPlan({ plan: JSON.stringify(text), files, file: 'plan.json' }).findings;

function cleanKeys(name: PlanName): ReadonlySet<string> {
  const known = clean.get(name);
  if (known !== undefined) return known;
  const { text, files } = goodPlan(name);
  const keys = new Set(findingsOf(text, files).map((finding) => keyOf(finding)));
  clean.set(name, keys);
  return keys;
}

/** Every text in a value, ids and names among them. */
function textsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap((one) => textsIn(one)) : [];
}

/** Whether a finding names one of the things: as an id or a name of its data, or a name in its sentence. */
function names({ where, params, message }: Finding, about: readonly string[], text: PlanText): boolean {
  if (about.length === 0) return true;
  const said = new Set([...textsIn(where), ...textsIn(params)]);
  const named = [...text.stations, ...text.races, ...text.courses].filter(({ id }) => about.includes(id));
  return (
    about.some((one) => said.has(one) || (one.length > 3 && message.includes(one))) ||
    named.some(({ name }) => message.includes(name))
  );
}

/** Plants a mistake in a copy of its plan, and judges the review of that. */
export function judge(planted: Planted): Judged {
  const good = goodPlan(planted.plan);
  const text = copy(good.text);
  const files = copy(good.files);
  planted.plant(text, good.ground, files);
  const before = cleanKeys(planted.plan);
  const fresh = findingsOf(text, files).filter((finding) => !before.has(keyOf(finding)));
  const coded = fresh.filter(({ code }) => planted.codes.includes(code));
  const own = coded.filter((finding) => names(finding, planted.about, text));
  const loud = own.some(({ severity }) => severity !== 'note');
  return {
    planted,
    verdict: loud ? 'caught' : own.length > 0 ? 'noted' : 'nothing',
    elsewhere: coded.filter((finding) => !own.includes(finding)),
    others: fresh.filter(({ code }) => !planted.codes.includes(code)),
  };
}

const brief = (findings: readonly Finding[]): string =>
  findings
    .map(({ code, severity, where }) => `${severity[0]} ${code} ${where.station ?? where.race ?? where.course ?? ''}`)
    .join(', ');

/** A line of the table of what failed. */
export const lineOf = ({ planted, verdict, elsewhere, others }: Judged): string =>
  `${verdict.padEnd(8)}${planted.plan.padEnd(8)} ${planted.name} | wants ${planted.codes.join('/')} of ${planted.about.join('/')}` +
  (elsewhere.length > 0 ? ` | about others: ${brief(elsewhere)}` : '') +
  (others.length > 0 ? ` | beside: ${brief(others)}` : '');
