/** The report's facts: what was reviewed, courses, stations with their sides, the practice in force and what departs from it. */
import type { Analysis } from '../analyse.ts';
import { courseLength, rawLength, startMeasure } from '../course/course.ts';
import type { StationLayout } from '../layout/layout.ts';
import { DEFAULT_PRACTICE } from '../plan/defaults.ts';
import { courseById } from '../plan/lookups.ts';
import type { PlanCourse, Practice } from '../plan/plan.ts';
import { leadPass } from '../station/directions.ts';
import { en } from '../text/en.ts';
import type { PracticeRule, ReportText } from '../text/reportText.ts';
import { formatLength, formatMeasure } from '../format.ts';
import type { UnitSystem } from '../units.ts';
import type { ReviewDocument } from '../export/reviewDocument.ts';
import { type Html, html, said, table } from './html.ts';
import type { Spoken } from './spoken.ts';

/** The plan and every file by its SHA-256: what the report is of, and of nothing else. */
export const fileSection = (
  { plan, inputs }: ReviewDocument,
  { files: words }: ReportText,
): Html => html`<h2>${words.title}</h2>
<p>${words.about} <b>${words.void}</b></p>
${table([words.file, words.sha256], [[words.plan, plan.sha256], ...inputs.map(({ file, sha256 }) => [said(file), sha256])], 'files')}`;

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

/** Declared against computed side, and who walked it. */
export function sideSection({ stations }: Analysis, spoken: Spoken): Html {
  const { sides: words } = spoken.text.report;
  const rows = stations.map((station) => {
    const { walked } = station.station;
    return [
      said(station.name),
      ...sideCells(station, spoken),
      walked === undefined
        ? html`<b>${words.nobody}</b>`
        : html`${said(walked.by)}${walked.date === undefined ? '' : `, ${walked.date}`}`,
    ];
  });
  return html`<h2>${words.title}</h2>
<p>${words.about}</p>
${table([words.station, ` ${words.at}`, words.declared, words.computed, ` ${words.sure}`, ` ${words.fromLine}`, words.walkedBy], rows, 'sides')}`;
}

function sideCells(station: StationLayout, { text: { report, frame }, voice: { units } }: Spoken): string[] {
  const { sides: words } = report;
  const declared = station.declared === null ? words.notDeclared : frame[station.declared];
  const pass = station.passes[leadPass(station.station, station.passes)];
  if (pass === undefined) return [words.offCourse, declared, '–', '–', '–'];
  return [
    formatMeasure(pass.measure, units),
    declared,
    pass.side === 'unclear' ? words.unclear : frame[pass.side],
    `${Math.floor(pass.confidence * 1000) / 10} %`,
    formatLength(Math.abs(pass.offset), units, 'table', 1),
  ];
}

/** In the order of the report; the compiler asks for each rule's name in every language. */
const RULES = Object.keys(en.report.practice.rules) as PracticeRule[];

const SHARES = new Set<PracticeRule>(['sideConfidence', 'maxGrade']);
/** Laid out at the tables: in feet where the plan is in yards. */
const SMALL = new Set<PracticeRule>(['gelAhead', 'tableLength', 'tableGap', 'kerb', 'setback', 'clearWidth']);

function practiceText(key: PracticeRule, value: number, units: UnitSystem): string {
  if (SHARES.has(key)) return `${Number((value * 100).toFixed(2))} %`;
  return formatLength(value, units, value >= 1000 ? 'long' : SMALL.has(key) ? 'table' : 'wheel');
}

/** The practice in force, what of it the plan sets, and each station that departs from it, with its reason. */
export function practiceSection({ plan, stations }: Analysis, spoken: Spoken): Html {
  const { practice: words } = spoken.text.report;
  const { units } = spoken.voice;
  const rows = RULES.map((key) => [
    words.rules[key],
    practiceText(key, plan.practice[key], units),
    plan.practice[key] === DEFAULT_PRACTICE[key]
      ? words.usual
      : words.ofPlan(practiceText(key, DEFAULT_PRACTICE[key], units)),
  ]);
  const overrides = stations.flatMap((station) =>
    departures(station, plan.practice, spoken).map((what) => [
      said(station.name),
      what,
      station.station.why === undefined ? html`<b>${words.noReason}</b>` : said(station.station.why),
    ]),
  );
  return html`<h2>${words.title}</h2>
<p>${words.about}</p>
${table([words.rule, words.value, words.whose], rows, 'practice')}
<h3>${words.departTitle}</h3>
${overrides.length === 0 ? html`<p>${words.none}</p>` : table([words.station, words.what, words.why], overrides, 'departures')}`;
}

function departures({ station, practice }: StationLayout, plans: Practice, { text, voice }: Spoken): string[] {
  const { practice: words } = text.report;
  const shown = (key: PracticeRule, value: number): string => practiceText(key, value, voice.units);
  const keys = RULES.filter((key) => Object.hasOwn(station.practice, key) && practice[key] !== plans[key]);
  const placed = Object.keys(station.items) as (keyof typeof station.items)[];
  return [
    ...keys.map((key) => words.differs(words.rules[key], shown(key, practice[key]), shown(key, plans[key]))),
    ...placed.map((kind) => words.byHand(text.frame.items[kind])),
    ...(station.fixed ? [words.fixed] : []),
  ];
}
