/** The report's findings, waivers, checks and as-placed verdicts. */
import type { Finding, Severity } from '../finding.ts';
import type { PlacedVerdict } from '../review/placed.ts';
import type { CheckRun } from '../review/review.ts';
import { itemWord } from '../station/wording.ts';
import { formatLength } from '../format.ts';
import type { UnitSystem } from '../units.ts';
import { type Html, NONE, html, said, table } from './html.ts';
import { limitText, measuredText, subjectOf, waiverText } from './words.ts';

const HEADINGS: readonly (readonly [Severity, string])[] = [
  ['error', 'Errors'],
  ['warning', 'Warnings'],
  ['note', 'Notes'],
];

/** Findings that stand, by severity; those that cannot be decided are marked. */
export function findingSection(findings: readonly Finding[], units: UnitSystem): Html {
  const standing = findings.filter(({ waived }) => waived === undefined);
  const groups = HEADINGS.map(([severity, heading]) => {
    const own = standing.filter((finding) => finding.severity === severity);
    return own.length === 0
      ? html`<p>${heading}: none.</p>`
      : html`<h3>${heading} (${own.length})</h3>\n${findingTable(own, units)}`;
  });
  return html`<h2>Findings</h2>\n${groups}`;
}

const findingTable = (findings: readonly Finding[], units: UnitSystem): Html =>
  table(
    ['Check', 'At', 'What was found, what was expected', ' Measured', ' Limit'],
    findings.map((finding) => [
      html`${finding.code}${finding.cannotTell === true ? html`<br><b>cannot tell</b>` : NONE}`,
      said(subjectOf(finding)),
      html`${said(finding.message)}${finding.source === undefined ? NONE : html` <span class="quiet">(${said(finding.source)})</span>`}`,
      measuredText(finding, units),
      limitText(finding, units),
    ]),
    'findings',
  );

/** Findings that somebody has accepted, with who and why. */
export function waivedSection(findings: readonly Finding[], units: UnitSystem): Html {
  const rows = findings.flatMap((finding) =>
    finding.waived === undefined
      ? []
      : [
          [
            html`${finding.code}<br>${finding.severity}`,
            said(subjectOf(finding)),
            html`${said(finding.message)}<br><b>Waived by ${said(waiverText(finding.waived))}</b>`,
            measuredText(finding, units),
            limitText(finding, units),
          ],
        ],
  );
  if (rows.length === 0) return html`<h2>Waived findings</h2>\n<p>None.</p>`;
  return html`<h2>Waived findings (${rows.length})</h2>\n<p>Found, and accepted by the person named. A waiver mends nothing on the road.</p>\n${table(['Check', 'At', 'What was found, and who accepts it', ' Measured', ' Limit'], rows, 'findings')}`;
}

/** Each check as it went. What could not run or be decided is never counted as passed. */
export function checkSection(checks: readonly CheckRun[]): Html {
  const ran = checks.filter(({ ran }) => ran);
  const silent = ran.filter(({ found }) => found === 0).length;
  const undecided = ran.filter(({ cannotTell }) => cannotTell > 0).length;
  const row = ({ code, title, source, ran, reason, found, cannotTell }: CheckRun): (string | Html)[] => [
    code,
    title,
    source,
    ran ? foundText(found, cannotTell) : html`<b>not run</b>: ${reason ?? ''}`,
  ];
  return html`<h2>Checks</h2>
<p>${checks.length} checks: ${ran.length} ran, of which ${silent} found nothing; ${checks.length - ran.length} could not run; ${undecided} could not decide at some place. What could not run or decide has not passed.</p>
${table(['Check', 'How it should be', 'Source', 'Result'], checks.map(row), 'checks')}`;
}

/** What a check that ran has to show, in a few words. */
export function foundText(found: number, cannotTell: number): string {
  const sure = found - cannotTell;
  const parts = [...(sure > 0 ? [`${sure} found`] : []), ...(cannotTell > 0 ? [`${cannotTell} cannot tell`] : [])];
  return parts.length === 0 ? 'found nothing' : parts.join(', ');
}

/** Verdicts on what was recorded on the ground; nothing where nothing was. */
export function placedSection(placed: readonly PlacedVerdict[] | undefined, units: UnitSystem): Html {
  if (placed === undefined) return NONE;
  const short = (metres: number): string => formatLength(metres, units, 'wheel');
  const rows = placed.map(({ station, item, end, verdict, measured, limit, margin, move }) => [
    said(station),
    `${itemWord(item)}${end === undefined ? '' : end === 'from' ? ', first end' : ', last end'}`,
    html`<b>${verdict}</b>`,
    `${short(measured)} ± ${short(margin)}`,
    `${short(limit[0])} to ${short(limit[1])}`,
    verdict === 'holds' || move === 0 ? '' : `${short(Math.abs(move))} ${move > 0 ? 'downstream' : 'upstream'}`,
  ]);
  return html`<h2>As placed</h2>
<p>Recorded on the ground and held against the plan. A distance holds, or fails, only where its margin leaves no doubt.</p>
${table(['At', 'Item', 'Verdict', ' Distance', ' Limits', 'Move'], rows)}`;
}
