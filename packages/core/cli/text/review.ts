/** A review for people: findings by severity, what is waived, what passed, what could not run. */
import type { Analysis } from '../../src/analyse.ts';
import type { ReviewDocument } from '../../src/export/reviewDocument.ts';
import { foundText } from '../../src/papers/reportFindings.ts';
import type { CheckRun } from '../../src/review/review.ts';
import type { UnitSystem } from '../../src/units.ts';
import { type View, countsText, groupText, groupsText, planView } from '../findings.ts';
import { oneLine } from '../breaks.ts';
import { paragraph } from '../lineBreaks.ts';
import { counted } from '../messages.ts';
import { dayText } from '../printing.ts';
import type { Screen } from '../screen.ts';
import { table } from '../tables.ts';
import { heading, page, section } from './blocks.ts';
import { builtText, placedText } from './placed.ts';

export interface Shown {
  readonly screen: Screen;
  readonly units: UnitSystem;
  /** Every check, what was measured, and the digests of the files. */
  readonly all: boolean;
}

export function reviewText(
  { plan, findings, checks }: Analysis,
  review: ReviewDocument,
  { screen, units, all }: Shown,
): string {
  const view: View = { ...planView(screen, units, plan), details: all ? 'all' : 'rule' };
  const standing = findings.filter(({ waived }) => waived === undefined);
  const waived = findings.filter((finding) => finding.waived !== undefined);
  const revision = plan.revision === undefined ? '' : `revision ${plan.revision}`;
  return page(
    [
      heading([plan.name, revision, plan.date === undefined ? '' : dayText(plan.date)], screen),
      [countsText(standing), waived.length === 0 ? '' : `${waived.length} waived`]
        .filter((part) => part !== '')
        .join('; '),
      ...groupsText(standing, view),
      waived.length === 0 ? '' : groupText(screen.paint('heading', 'Waived'), waived, view),
      review.built === undefined ? '' : builtText(review.built, findings, view),
      review.placed === undefined ? '' : placedText(review.placed, view),
      ...(all
        ? [passedLine(checks), checkTable(checks, screen), fileTable(review, screen)]
        : [checksText(checks, screen)]),
    ],
    screen,
  );
}

const passed = (checks: readonly CheckRun[]): number => checks.filter(({ ran, found }) => ran && found === 0).length;

const passedLine = (checks: readonly CheckRun[]): string =>
  `${passed(checks)} of ${counted(checks.length, 'check')} passed.`;

/** How many passed, and why the others could not run. What could not run has not passed. */
function checksText(checks: readonly CheckRun[], { width }: Screen): string {
  const reasons = new Map<string, number>();
  for (const { ran, reason = 'no reason known' } of checks)
    if (!ran) reasons.set(reason, (reasons.get(reason) ?? 0) + 1);
  const unrun = checks.filter(({ ran }) => !ran).length;
  const lines = Array.from(
    reasons,
    ([reason, count]) => `  ${paragraph(`${oneLine(reason)}${count === 1 ? '' : ` (${count})`}`, width, '  ')}`,
  );
  const open = unrun === 0 ? [] : [`${counted(unrun, 'check')} could not run:`, ...lines];
  return [passedLine(checks), ...open, 'List every check with --all.'].join('\n');
}

function checkTable(checks: readonly CheckRun[], screen: Screen): string {
  const rows = checks.map(({ code, ran, found, cannotTell, title, reason }) => [
    code,
    !ran ? `not run: ${reason ?? ''}` : found === 0 ? 'passed' : foundText(found, cannotTell),
    title,
  ]);
  return section('Checks', table(['Check', 'Result', 'How it should be'], rows, screen), screen);
}

function fileTable({ plan, inputs }: ReviewDocument, screen: Screen): string {
  const rows = [['plan', plan.sha256], ...inputs.map(({ file, sha256 }) => [file, sha256])];
  return section('Files', table(['File', 'SHA-256'], rows, screen), screen);
}
