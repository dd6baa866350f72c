/** The report's annex: what could not be checked, the checks passed, courses, the practice in force, the files by their hashes. */
import type { Analysis } from '../analyse.ts';
import { courseLength, rawLength, startMeasure } from '../course/course.ts';
import type { ReviewDocument } from '../export/reviewDocument.ts';
import { formatLength } from '../format.ts';
import { DEFAULT_PRACTICE } from '../plan/defaults.ts';
import { courseById } from '../plan/lookups.ts';
import type { Plan, PlanCourse } from '../plan/plan.ts';
import { COMMON_PRACTICE } from '../review/check.ts';
import type { CheckRun } from '../review/review.ts';
import { THEMES } from '../review/themes.ts';
import { checkTitle, reasonText, sourceText, themeText } from '../text/checkTexts.ts';
import { en } from '../text/en.ts';
import type { PracticeRule, ReportText } from '../text/reportText.ts';
import type { UnitSystem } from '../units.ts';
import { type Html, NONE, html, said, table } from './html.ts';
import type { Spoken } from './spoken.ts';

/** The plan and every file by its SHA-256: what the report is of, and of nothing else. */
export const fileSection = (
  { plan, inputs }: ReviewDocument,
  { files: words }: ReportText,
): Html => html`<h2>${words.title}</h2>
<p>${words.about} <b>${words.void}</b></p>
${table([words.file, words.sha256], [[words.plan, plan.sha256], ...inputs.map(({ file, sha256 }) => [said(file), sha256])], 'files')}`;

/** Reasons for which a check has nothing to look at here: nothing is missing. */
const NOT_APPLICABLE: ReadonlySet<string> = new Set([
  'no-results',
  'no-gradients',
  'no-vehicles',
  'no-keep-clear-zone',
  'no-allowed-zone',
  'one-station',
  'no-wheels',
  'no-gel',
]);

/** Whether a check could not run for want of something that the plan should say. */
export const isLacking = ({ ran, reasonCode }: CheckRun): boolean =>
  !ran && (reasonCode === undefined || !NOT_APPLICABLE.has(reasonCode));

/** Checks that could not run, with why, or that stayed unclear in places: none of them has passed. Then those that do not apply. */
export function notRunSection(checks: readonly CheckRun[], { text }: Spoken): Html {
  const { checks: words } = text.report;
  const why = ({ reason, reasonCode }: CheckRun): string =>
    reasonCode === undefined ? (reason ?? '') : reasonText(reasonCode, text.language);
  const open = checks.flatMap((check) => {
    if (check.ran && check.cannotTell === 0) return [];
    if (!check.ran && !isLacking(check)) return [];
    return [{ why: check.ran ? words.unclearAt(check.cannotTell) : why(check), code: check.code }];
  });
  const aside = checks.filter((check) => !check.ran && !isLacking(check));
  // Many checks wait for one and the same thing: it is named once.
  const reasons = [...new Set(open.map((row) => row.why))];
  const titles = (codes: readonly string[]): string => codes.map((code) => checkTitle(code, text.language)).join('; ');
  return html`<h2>${words.notRunTitle}</h2>
${
  open.length === 0
    ? html`<p>${words.allRan}</p>`
    : html`<p>${words.notRunAbout}</p>
<ul>${reasons.map((reason) => html`<li><b>${capital(reason)}.</b> ${words.notChecked}: ${titles(open.filter((row) => row.why === reason).map(({ code }) => code))}.</li>\n`)}</ul>`
}${aside.length === 0 ? NONE : html`<p class="rest">${words.notApplicable}: ${titles(aside.map(({ code }) => code))}.</p>`}`;
}

const capital = (text: string): string => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;

/** Themes whose checks are of files and data: their number is enough here. */
const OF_DATA: ReadonlySet<string> = new Set(['line', 'left-out']);

/** What ran and found nothing, by theme, with the sources that have a name. */
export function passedSection(checks: readonly CheckRun[], { text }: Spoken): Html {
  const { checks: words } = text.report;
  const passed = checks.filter(({ ran, found }) => ran && found === 0);
  const titled = ({ code, source }: CheckRun): string =>
    source === COMMON_PRACTICE
      ? checkTitle(code, text.language)
      : `${checkTitle(code, text.language)} (${sourceText(source, text.language)})`;
  const themes = THEMES.flatMap((theme) => {
    const own = passed.filter((check) => check.theme === theme);
    return own.length === 0 || OF_DATA.has(theme) ? [] : [{ theme, own }];
  });
  const others = passed.filter(({ theme }) => OF_DATA.has(theme)).length;
  return html`<h2>${words.passedTitle(passed.length)}</h2>
<p>${words.passedAbout}</p>
<div class="passed">${themes.map(({ theme, own }) => html`<p class="rest"><b>${themeText(theme, text.language)}</b>: ${own.map(titled).join('; ')}.</p>\n`)}${others === 0 ? NONE : html`<p class="rest">${capital(words.alsoPassed(others))}</p>`}</div>`;
}

/** Each course: its line, its lengths and its certificate. */
export function courseSection({ plan, courses }: Analysis, { text, voice: { units } }: Spoken): Html {
  const { courses: words, notStated } = text.report;
  const rows = plan.courses.map((course) => {
    const { course: built } = courseById(courses, course.id);
    const measured = courseLength(built) - startMeasure(built);
    return [
      said(course.name),
      html`${sourceOf(course, words)}, ${words.drawn[course.drawn]}`,
      exact(rawLength(built), units),
      course.length === undefined ? notStated : exact(course.length, units),
      exact(measured, units),
      course.certificate === undefined ? words.noCertificate : said(course.certificate),
    ];
  });
  return html`<h2>${words.title}</h2>
<p>${words.about}</p>
${table([words.course, words.how, ` ${words.line}`, ` ${words.stated}`, ` ${words.inUse}`, words.certificate], rows, 'courses')}`;
}

/** To a decimetre: a half marathon is 21.0975 km. */
const exact = (metres: number, units: UnitSystem): string => formatLength(metres, units, 'long', 4);

const sourceOf = ({ gpx, parts }: PlanCourse, words: ReportText['courses']): Html | string =>
  gpx !== undefined ? said(gpx) : parts !== undefined ? words.parts : words.inPlan;

/** In the order of the report; the compiler asks for each rule's name in every language. */
export const PRACTICE_RULES = Object.keys(en.report.practice.rules) as readonly PracticeRule[];

const SHARES = new Set<PracticeRule>(['sideConfidence', 'maxGrade']);
/** Laid out at the tables: in feet where the plan is in yards. */
const SMALL = new Set<PracticeRule>(['gelAhead', 'tableLength', 'tableGap', 'kerb', 'setback', 'clearWidth']);

/** A rule's value in the plan's units. */
export function practiceText(key: PracticeRule, value: number, units: UnitSystem): string {
  if (SHARES.has(key)) return `${Number((value * 100).toFixed(2))} %`;
  return formatLength(value, units, value >= 1000 ? 'long' : SMALL.has(key) ? 'table' : 'wheel');
}

/** The practice in force, with the usual value beside what the plan sets. */
export function practiceSection({ practice }: Plan, { text, voice: { units } }: Spoken): Html {
  const { practice: words } = text.report;
  return html`<h2>${words.title}</h2>
<p>${words.about}</p>
<ul class="practice">${PRACTICE_RULES.map((key) => {
    const usual = practice[key] === DEFAULT_PRACTICE[key];
    const beside = usual
      ? NONE
      : html` <span class="detail">(${words.ofPlan(practiceText(key, DEFAULT_PRACTICE[key], units))})</span>`;
    return html`<li>${words.rules[key]}: <b>${practiceText(key, practice[key], units)}</b>${beside}</li>\n`;
  })}</ul>`;
}
