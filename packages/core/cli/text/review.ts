/** A review on the screen: findings by severity, what is waived, every check as it went. */
import type { Analysis } from '../../src/analyse.ts';
import type { ReviewDocument } from '../../src/export/reviewDocument.ts';
import { resultText } from '../../src/papers/report.ts';
import { foundText } from '../../src/papers/reportFindings.ts';
import { limitText, measuredText, subjectOf, waiverText } from '../../src/papers/words.ts';
import type { Finding, Severity } from '../../src/finding.ts';
import type { CheckRun } from '../../src/review/review.ts';
import type { UnitSystem } from '../../src/units.ts';
import { CAUTION } from '../caution.ts';
import { oneLine, table } from '../printing.ts';
import { placedText } from './placed.ts';

const HEADINGS: readonly (readonly [Severity, string])[] = [
  ['error', 'Errors'],
  ['warning', 'Warnings'],
  ['note', 'Notes'],
];

/** The whole review for people. */
export function reviewText({ plan, findings, checks }: Analysis, review: ReviewDocument, units: UnitSystem): string {
  const heading = [plan.name, ...(plan.revision === undefined ? [] : [`revision ${plan.revision}`]), plan.date ?? '']
    .map(oneLine)
    .filter((part) => part !== '')
    .join(' · ');
  const files = [['plan', review.plan.sha256], ...review.inputs.map(({ file, sha256 }) => [file, sha256])];
  const standing = findings.filter(({ waived }) => waived === undefined);
  const groups = HEADINGS.flatMap(([severity, title]) =>
    group(
      title,
      standing.filter((finding) => finding.severity === severity),
      units,
    ),
  );
  const waived = group(
    'Waived',
    findings.filter((finding) => finding.waived !== undefined),
    units,
  );
  const parts = [
    heading,
    table(['File', 'SHA-256'], files),
    resultText(review.counts),
    ...groups,
    ...waived,
    ...(review.placed === undefined ? [] : [placedText(review.placed, units)]),
    checkText(checks),
    CAUTION,
  ];
  return `${parts.filter((part) => part !== '').join('\n\n')}\n`;
}

function group(title: string, findings: readonly Finding[], units: UnitSystem): string[] {
  return findings.length === 0 ? [] : [[title, ...findings.map((finding) => entry(finding, units))].join('\n')];
}

/** What and where, then the numbers and who accepts it. */
function entry(finding: Finding, units: UnitSystem): string {
  const { code, message, where, source, waived, cannotTell } = finding;
  const place =
    where.file === undefined || where.line === undefined ? '' : ` (${where.file}:${where.line}:${where.column ?? 1})`;
  const numbers = [
    ...(cannotTell === true ? ['cannot tell'] : []),
    ...(finding.measured === undefined ? [] : [`measured ${measuredText(finding, units)}`]),
    ...(finding.limit === undefined ? [] : [`limit ${limitText(finding, units)}`]),
    ...(source === undefined ? [] : [source]),
  ].join(' · ');
  const lines = [
    `  ${[code, subjectOf(finding)]
      .filter((part) => part !== '')
      .map(oneLine)
      .join(' ')}: ${oneLine(message)}${place}`,
    ...(numbers === '' ? [] : [`    ${oneLine(numbers)}`]),
  ];
  return [...lines, ...(waived === undefined ? [] : [`    waived by ${oneLine(waiverText(waived))}`])].join('\n');
}

/** Every check. What could not run or decide is counted apart: it has not passed. */
function checkText(checks: readonly CheckRun[]): string {
  const ran = checks.filter((check) => check.ran);
  const undecided = ran.filter(({ cannotTell }) => cannotTell > 0).length;
  const silent = ran.filter(({ found }) => found === 0).length;
  const rows = checks.map(({ code, ran: did, found, cannotTell, title, reason }) => [
    code,
    did ? foundText(found, cannotTell) : `not run: ${reason ?? ''}`,
    title,
  ]);
  const head = `${checks.length} checks: ${ran.length} ran, of which ${silent} found nothing; ${checks.length - ran.length} could not run; ${undecided} could not decide at some place.`;
  return `${head}\n${table(['Check', 'Result', 'How it should be'], rows)}`;
}
