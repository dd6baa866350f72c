/** The report's findings, waivers, checks and as-placed verdicts. */
import type { Finding, Severity } from '../finding.ts';
import type { PlacedVerdict } from '../review/placed.ts';
import type { CheckRun } from '../review/review.ts';
import { formatLength } from '../format.ts';
import { checkTitle, reasonText, sourceText } from '../text/checkTexts.ts';
import { en } from '../text/en.ts';
import type { ReportText } from '../text/reportText.ts';
import { findingSubject } from '../text/subject.ts';
import { type Html, NONE, html, said, table } from './html.ts';
import type { Spoken } from './spoken.ts';
import { limitText, measuredText, waiverText } from './words.ts';

const SEVERITIES: readonly Severity[] = ['error', 'warning', 'note'];

/** Findings that stand, by severity; those that cannot be decided are marked. */
export function findingSection(findings: readonly Finding[], spoken: Spoken): Html {
  const { findings: words } = spoken.text.report;
  const standing = findings.filter(({ waived }) => waived === undefined);
  const groups = SEVERITIES.map((severity) => {
    const heading = words.groups[severity];
    const own = standing.filter((finding) => finding.severity === severity);
    return own.length === 0
      ? html`<p>${heading}: ${words.none}.</p>`
      : html`<h3>${heading} (${own.length})</h3>\n${findingTable(own, spoken)}`;
  });
  return html`<h2>${words.title}</h2>\n${groups}`;
}

const findingTable = (findings: readonly Finding[], { text, voice }: Spoken): Html =>
  table(
    headsOf(text.report.findings, text.report.findings.found),
    findings.map((finding) => [
      html`${finding.code}${finding.cannotTell === true ? html`<br><b>${text.report.findings.cannotTell}</b>` : NONE}`,
      said(findingSubject(finding, voice.names)),
      html`${said(finding.message)}${finding.source === undefined ? NONE : html` <span class="quiet">(${said(sourceText(finding.source, text.language))})</span>`}`,
      measuredText(finding, voice.units),
      limitText(finding, voice.units, voice.language),
    ]),
    'findings',
  );

/** Findings that somebody has accepted, with who and why. */
export function waivedSection(findings: readonly Finding[], { text, voice }: Spoken): Html {
  const { findings: words } = text.report;
  const rows = findings.flatMap((finding) =>
    finding.waived === undefined
      ? []
      : [
          [
            html`${finding.code}<br>${words.severity[finding.severity]}`,
            said(findingSubject(finding, voice.names)),
            html`${said(finding.message)}<br><b>${words.waivedBy} ${said(waiverText(finding.waived))}</b>`,
            measuredText(finding, voice.units),
            limitText(finding, voice.units, voice.language),
          ],
        ],
  );
  if (rows.length === 0)
    return html`<h2>${words.waivedTitle}</h2>
<p>${capital(words.none)}.</p>`;
  return html`<h2>${words.waivedTitle} (${rows.length})</h2>
<p>${words.waivedAbout}</p>
${table(headsOf(words, words.foundAndAccepted), rows, 'findings')}`;
}

const headsOf = (words: ReportText['findings'], found: string): string[] => [
  words.check,
  words.at,
  found,
  ` ${words.measured}`,
  ` ${words.limit}`,
];

const capital = (text: string): string => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;

/** Each check as it went. What could not run or be decided is never counted as passed. */
export function checkSection(checks: readonly CheckRun[], { text }: Spoken): Html {
  const { checks: words } = text.report;
  const ran = checks.filter((one) => one.ran);
  const silent = ran.filter(({ found }) => found === 0).length;
  const undecided = ran.filter(({ cannotTell }) => cannotTell > 0).length;
  const row = ({ code, source, ran: did, reason, reasonCode, found, cannotTell }: CheckRun): (string | Html)[] => [
    code,
    checkTitle(code, text.language),
    sourceText(source, text.language),
    did
      ? ranText(found, cannotTell, words)
      : html`<b>${words.notRun}</b>: ${reasonCode === undefined ? (reason ?? '') : reasonText(reasonCode, text.language)}`,
  ];
  return html`<h2>${words.title}</h2>
<p>${words.counts(checks.length, ran.length, silent, checks.length - ran.length, undecided)}</p>
${table([words.check, words.shouldBe, words.source, words.result], checks.map(row), 'checks')}`;
}

function ranText(found: number, cannotTell: number, words: ReportText['checks']): string {
  const sure = found - cannotTell;
  const parts = [...(sure > 0 ? [words.found(sure)] : []), ...(cannotTell > 0 ? [words.undecided(cannotTell)] : [])];
  return parts.length === 0 ? words.foundNothing : parts.join(', ');
}

/** What a check that ran has to show, in a few English words. */
export const foundText = (found: number, cannotTell: number): string => ranText(found, cannotTell, en.report.checks);

/** Verdicts on what was recorded on the ground; nothing where nothing was. */
export function placedSection(placed: readonly PlacedVerdict[] | undefined, { text, voice }: Spoken): Html {
  if (placed === undefined) return NONE;
  const { placed: words } = text.report;
  const short = (metres: number): string => formatLength(metres, voice.units, 'wheel');
  const rows = placed.map(({ station, item, end, verdict, measured, limit, margin, move }) => [
    said(voice.names.station(station)),
    `${text.frame.items[item]}${end === undefined ? '' : end === 'from' ? `, ${words.firstEnd}` : `, ${words.lastEnd}`}`,
    html`<b>${words.verdict[verdict]}</b>`,
    `${short(measured)} ± ${short(margin)}`,
    `${short(limit[0])} – ${short(limit[1])}`,
    verdict === 'holds' || move === 0
      ? ''
      : move > 0
        ? words.downstream(short(move))
        : words.upstream(short(Math.abs(move))),
  ]);
  return html`<h2>${words.title}</h2>
<p>${words.about}</p>
${table([words.at, words.item, words.verdictHead, ` ${words.distance}`, ` ${words.limits}`, words.move], rows)}`;
}
