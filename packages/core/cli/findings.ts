/** Findings for people: the gravest first, each with what it is about in front and its place in the file under it. */
import { type Finding, type Severity, findingLine } from '../src/finding.ts';
import { namesOf } from '../src/plan/voice.ts';
import type { Plan } from '../src/plan/plan.ts';
import { limitText, measuredText, waiverText } from '../src/papers/words.ts';
import { sourceText } from '../src/text/checkTexts.ts';
import { inEnglish } from '../src/text/inEnglish.ts';
import { findingSubject } from '../src/text/subject.ts';
import { NO_NAMES, type Names } from '../src/text/voice.ts';
import type { UnitSystem } from '../src/units.ts';
import { oneLine } from './breaks.ts';
import { paragraph } from './lineBreaks.ts';
import { counted } from './messages.ts';
import type { Screen } from './screen.ts';

/** How findings are shown. */
export interface View {
  readonly screen: Screen;
  readonly units: UnitSystem;
  readonly names: Names;
  /** Under each: its code and source; `all`: what was measured as well. */
  readonly details?: 'rule' | 'all';
}

/** Findings of a course by itself. */
export const plainView = (screen: Screen, units: UnitSystem): View => ({ screen, units, names: NO_NAMES });

/** Findings of a plan, with its names. */
export const planView = (screen: Screen, units: UnitSystem, plan: Plan): View => ({
  screen,
  units,
  names: namesOf(plan),
});

const SEVERITIES: readonly (readonly [Severity, string])[] = [
  ['error', 'Errors'],
  ['warning', 'Warnings'],
  ['note', 'Notes'],
];

/** "1 error, 2 notes"; without any: "No problems found." */
export function countsText(findings: readonly Finding[]): string {
  const counts = SEVERITIES.map(
    ([severity]) => [severity, findings.filter((finding) => finding.severity === severity).length] as const,
  ).filter(([, count]) => count > 0);
  return counts.length === 0
    ? 'No problems found.'
    : counts.map(([severity, count]) => counted(count, severity)).join(', ');
}

/** All findings by severity; those on one thing stand together. */
export function groupsText(findings: readonly Finding[], view: View): readonly string[] {
  return SEVERITIES.flatMap(([severity, title]) => {
    const own = findings.filter((finding) => finding.severity === severity);
    return own.length === 0 ? [] : [groupText(view.screen.paint(severity, title), own, view)];
  });
}

/** One group under its heading. */
export function groupText(title: string, findings: readonly Finding[], view: View): string {
  const spoken = inEnglish(findings, view);
  const subjects = [...new Set(spoken.map((finding) => findingSubject(finding, view.names)))];
  const ordered = subjects.flatMap((subject) =>
    spoken.filter((finding) => findingSubject(finding, view.names) === subject),
  );
  return [title, ...ordered.map((finding) => entry(finding, view))].join('\n');
}

/** The counts, and under them the groups. */
export const findingsText = (findings: readonly Finding[], view: View): string =>
  [countsText(findings), ...groupsText(findings, view)].join('\n\n');

/** What is the matter, then where it stands and what it rests on, then who accepts it. */
function entry(finding: Finding, view: View): string {
  const { screen, names } = view;
  const text = [findingSubject(finding, names), finding.message].filter((part) => part !== '').map(oneLine);
  const under = [detailsOf(finding, view), waiverOf(finding)].filter((line) => line !== '');
  return [
    `  ${paragraph(text.join(': '), screen.width, '  ')}`,
    ...under.map((line) => `    ${paragraph(oneLine(line), screen.width, '    ')}`),
  ].join('\n');
}

function detailsOf(finding: Finding, { units, details }: View): string {
  const { where, code, source, cannotTell, built } = finding;
  const place = where.file === undefined || where.line === undefined ? '' : placeOf(finding);
  const rule = details === undefined ? [] : [code, source === undefined ? '' : sourceText(source, 'en')];
  const figures =
    details === 'all'
      ? [labelled('measured', measuredText(finding, units)), labelled('limit', limitText(finding, units))]
      : [];
  const ground = built === true ? 'as built' : '';
  return [place, ground, cannotTell === true ? 'unclear' : '', ...rule, ...figures]
    .filter((part) => part !== '')
    .join(' · ');
}

/** `plan.json:12:7` */
const placeOf = (finding: Finding): string => findingLine({ ...finding, message: '' }).replace(/: $/u, '');

const labelled = (label: string, text: string): string => (text === '' ? '' : `${label} ${text}`);

const waiverOf = ({ waived }: Finding): string => (waived === undefined ? '' : `waived by ${waiverText(waived)}`);
