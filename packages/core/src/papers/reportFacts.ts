/** The report's facts: what was reviewed, courses, stations with their sides, the practice in force and what departs from it. */
import type { Analysis } from '../analyse.ts';
import { type Drawn, courseLength, rawLength, startMeasure } from '../course/course.ts';
import type { StationLayout } from '../layout/layout.ts';
import { DEFAULT_PRACTICE } from '../plan/defaults.ts';
import { courseById } from '../plan/lookups.ts';
import type { PlanCourse, Practice } from '../plan/plan.ts';
import { leadPass } from '../station/directions.ts';
import { itemWord } from '../station/wording.ts';
import { formatLength, formatMeasure } from '../format.ts';
import type { UnitSystem } from '../units.ts';
import type { ReviewDocument } from '../export/reviewDocument.ts';
import { type Html, html, said, table } from './html.ts';

/** The plan and every file by its SHA-256: what the report is of, and of nothing else. */
export const fileSection = ({ plan, inputs }: ReviewDocument): Html => html`<h2>What was reviewed</h2>
<p>This report is of these very bytes. It is <b>void once any of these files changes</b>: review again.</p>
${table(['File', 'SHA-256'], [['The plan', plan.sha256], ...inputs.map(({ file, sha256 }) => [said(file), sha256])], 'files')}`;

const DRAWN: Readonly<Record<Drawn, string>> = {
  centre: 'along the centre of the road',
  shortest: 'along the shortest route a runner can take',
  recorded: 'a recorded track',
};

/** Each course: its line, its lengths and its certificate. */
export function courseSection({ plan, courses }: Analysis, units: UnitSystem): Html {
  const rows = plan.courses.map((course) => {
    const { course: built } = courseById(courses, course.id);
    const measured = courseLength(built) - startMeasure(built);
    return [
      html`${said(course.name)} (${said(course.id)})`,
      html`${sourceOf(course)}${DRAWN[course.drawn]}`,
      exact(rawLength(built), units),
      course.length === undefined ? 'not stated' : exact(course.length, units),
      exact(measured, units),
      course.certificate === undefined ? 'none given' : said(course.certificate),
    ];
  });
  return html`<h2>Courses</h2>
<p>Distances run along the line, on the ellipsoid WGS 84, slope ignored, stretched to the stated length and marks. A line in a file certifies no course: only a measurement on the road does.</p>
${table(['Course', 'How it is drawn', ' Line', ' Stated', ' In use', 'Certificate'], rows, 'courses')}`;
}

/** To a decimetre: a half marathon is 21.0975 km. */
const exact = (metres: number, units: UnitSystem): string => formatLength(metres, units, 'long', 4);

const sourceOf = ({ gpx, parts }: PlanCourse): Html | string =>
  gpx !== undefined ? html`${said(gpx)}, ` : parts !== undefined ? 'parts of other courses; ' : 'in the plan; ';

/** Declared against computed side, and who walked it. */
export function sideSection({ stations }: Analysis, units: UnitSystem): Html {
  const rows = stations.map((station) => {
    const { walked } = station.station;
    return [
      html`${said(station.name)} (${said(station.id)})`,
      ...sideCells(station, units),
      walked === undefined
        ? html`<b>nobody yet</b>`
        : html`${said(walked.by)}${walked.date === undefined ? '' : `, ${walked.date}`}`,
    ];
  });
  return html`<h2>Sides, declared and computed</h2>
<p>As the runners of the lead direction see it. The declared side rules; the computed one comes from the pin and the course line, with how sure it is.</p>
${table(['Station', ' At', 'Declared', 'Computed', ' Sure', ' From the line', 'Walked by'], rows, 'sides')}`;
}

function sideCells(station: StationLayout, units: UnitSystem): string[] {
  const declared = station.declared ?? 'not declared';
  const pass = station.passes[leadPass(station.station, station.passes)];
  if (pass === undefined) return ['off the course', declared, '–', '–', '–'];
  return [
    formatMeasure(pass.measure, units),
    declared,
    pass.side,
    `${Math.floor(pass.confidence * 1000) / 10} %`,
    formatLength(Math.abs(pass.offset), units, 'table', 1),
  ];
}

const PRACTICE: readonly (readonly [key: keyof Practice, label: string])[] = [
  ['signAhead', 'Sign before the first table'],
  ['signTolerance', 'Tolerance of that distance'],
  ['gelAhead', 'End of the gel tables before the drink tables'],
  ['tableLength', 'Length of a table'],
  ['tableGap', 'Gap between sports drink and water'],
  ['trashFrom', 'Trash drop after the last table, from'],
  ['trashTo', 'Trash drop after the last table, to'],
  ['boxEvery', 'A box at least every'],
  ['kerb', 'Offset of items where the plan gives no width'],
  ['setback', 'Setback from the edge of the road'],
  ['clearWidth', 'Clear width for runners'],
  ['snapRadius', 'Farthest pin from the course'],
  ['pinR95', 'Position error of pins, 95 % radius'],
  ['courseR95', 'Position error of lines, 95 % radius'],
  ['sideConfidence', 'A side is clear from'],
  ['maxSpacing', 'Longest leg without a station'],
  ['minSpacing', 'Shortest leg between stations'],
  ['maxGrade', 'Steepest grade at tables'],
  ['bendClear', 'Clear of bends by'],
];

const SHARES = new Set<keyof Practice>(['sideConfidence', 'maxGrade']);
/** Laid out at the tables: in feet where the plan is in yards. */
const SMALL = new Set<keyof Practice>(['gelAhead', 'tableLength', 'tableGap', 'kerb', 'setback', 'clearWidth']);

function practiceText(key: keyof Practice, value: number, units: UnitSystem): string {
  if (SHARES.has(key)) return `${Number((value * 100).toFixed(2))} %`;
  return formatLength(value, units, value >= 1000 ? 'long' : SMALL.has(key) ? 'table' : 'wheel');
}

const labelOf = (key: string): string => PRACTICE.find(([one]) => one === key)?.[1] ?? key;

/** The practice in force, what of it the plan sets, and each station that departs from it, with its reason. */
export function practiceSection({ plan, stations }: Analysis, units: UnitSystem): Html {
  const rows = PRACTICE.map(([key, label]) => [
    label,
    practiceText(key, plan.practice[key], units),
    plan.practice[key] === DEFAULT_PRACTICE[key]
      ? 'usual'
      : `this plan (usual: ${practiceText(key, DEFAULT_PRACTICE[key], units)})`,
  ]);
  const overrides = stations.flatMap((station) =>
    departures(station, plan.practice, units).map((what) => [
      html`${said(station.name)} (${said(station.id)})`,
      what,
      station.station.why === undefined ? html`<b>no reason given</b>` : said(station.station.why),
    ]),
  );
  return html`<h2>The practice in force</h2>
<p>Common practice without a source, save the legs between stations (IMMDA guidance, quoted). The plan rules.</p>
${table(['Rule', 'Value', 'Whose'], rows, 'practice')}
<h3>Stations that depart from it</h3>
${overrides.length === 0 ? html`<p>None.</p>` : table(['Station', 'What differs', 'Why'], overrides, 'departures')}`;
}

function departures({ station, practice }: StationLayout, plans: Practice, units: UnitSystem): string[] {
  const keys = (Object.keys(station.practice) as (keyof Practice)[]).filter((key) => practice[key] !== plans[key]);
  const placed = Object.keys(station.items) as (keyof typeof station.items)[];
  return [
    ...keys.map(
      (key) =>
        `${labelOf(key)}: ${practiceText(key, practice[key], units)} (the plan: ${practiceText(key, plans[key], units)})`,
    ),
    ...placed.map((kind) => `${itemWord(kind)} placed by hand`),
    ...(station.fixed ? ['its place is fixed'] : []),
  ];
}
