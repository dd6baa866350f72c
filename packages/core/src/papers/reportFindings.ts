/** The report's findings, as lists; verdicts on points recorded on the ground. */
import type { Finding, Severity } from '../finding.ts';
import { formatLength, formatMeasure } from '../format.ts';
import type { ReviewDocument } from '../export/reviewDocument.ts';
import type { PlacedStation } from '../review/placedStation.ts';
import { sourceText } from '../text/checkTexts.ts';
import { en } from '../text/en.ts';
import { findingSubject } from '../text/subject.ts';
import { type Html, NONE, html, said, table } from './html.ts';
import type { Spoken } from './spoken.ts';
import { limitText, measuredText, waiverText } from './words.ts';

const SEVERITIES: readonly Severity[] = ['error', 'warning', 'note'];

/** Findings by severity, waived ones last: sentence, then in small the figures, the check and its source, and who waived it. */
export function findingList(findings: readonly Finding[], spoken: Spoken, named: boolean = false): Html {
  const rank = ({ waived, severity }: Finding): number =>
    (waived === undefined ? 0 : SEVERITIES.length) + SEVERITIES.indexOf(severity);
  const sorted = findings.map((one) => one).sort((a, b) => rank(a) - rank(b));
  return html`<ul class="findings">${sorted.map((finding) => findingItem(finding, spoken, named))}</ul>`;
}

function findingItem(finding: Finding, { text, voice }: Spoken, named: boolean): Html {
  const { findings: words } = text.report;
  const [measured, limit] = [measuredText(finding, voice.units), limitText(finding, voice.units, voice.language)];
  const subject = named ? findingSubject(finding, voice.names) : '';
  const details = [
    ...(measured === '' ? [] : [`${words.measured} ${measured}`]),
    ...(limit === '' ? [] : [`${words.limit} ${limit}`]),
    ...(finding.source === undefined ? [] : [sourceText(finding.source, text.language)]),
    finding.code,
  ];
  const ground = finding.built === true ? html`, ${words.built}` : NONE;
  const unclear = finding.cannotTell === true ? html`, ${words.cannotTell}` : NONE;
  return html`<li class="${finding.severity}${finding.waived === undefined ? '' : ' waived'}"><b>${words.severity[finding.severity]}${ground}${unclear}</b> ${subject === '' ? NONE : html`${said(subject)}: `}${said(finding.message)} <span class="detail">${said(details.join(' · '))}</span>${
    finding.waived === undefined ? NONE : html`<br><b>${words.waivedBy} ${said(waiverText(finding.waived))}</b>`
  }</li>\n`;
}

/** What is about no station that the plan has. */
export function planFindings(findings: readonly Finding[], spoken: Spoken): Html {
  const { findings: words } = spoken.text.report;
  return html`<h2>${words.title}</h2>
${findings.length === 0 ? html`<p>${words.none}</p>` : findingList(findings, spoken, true)}`;
}

/** What a check that ran has to show, in a few English words. */
export function foundText(found: number, cannotTell: number): string {
  const words = en.report.checks;
  const sure = found - cannotTell;
  const parts = [...(sure > 0 ? [words.found(sure)] : []), ...(cannotTell > 0 ? [words.undecided(cannotTell)] : [])];
  return parts.length === 0 ? words.foundNothing : parts.join(', ');
}

/** Each recorded station beside its place in the plan, with what the review finds of it there. */
function builtTable(built: readonly PlacedStation[], findings: readonly Finding[], { text, voice }: Spoken): Html {
  const { placed: words } = text.report;
  if (built.length === 0) return NONE;
  const far = (metres: number | null): string =>
    metres === null ? words.offCourse : formatMeasure(metres, voice.units);
  const rows = built.map(({ station, measures, distance, margin, verdict }) => {
    const found = findings.filter((one) => one.built === true && one.where.station === station).length;
    return [
      said(voice.names.station(station)),
      far(measures[0]),
      far(measures[1]),
      `${formatLength(distance, voice.units, 'wheel')} ± ${formatLength(margin, voice.units, 'wheel')}`,
      html`<b>${words.verdict[verdict]}</b>`,
      found === 0 ? words.nothingNew : text.report.checks.found(found),
    ];
  });
  return html`<p>${words.builtAbout}</p>
${table([words.at, ` ${words.planned}`, ` ${words.recorded}`, ` ${words.apart}`, words.verdictHead, words.changes], rows)}`;
}

/** Stations as built and verdicts on what was recorded on the ground; nothing where nothing was. */
export function placedSection(
  { placed, built = [] }: Pick<ReviewDocument, 'placed' | 'built'>,
  findings: readonly Finding[],
  spoken: Spoken,
): Html {
  const { text, voice } = spoken;
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
  const head = [words.at, words.item, words.verdictHead, ` ${words.distance}`, ` ${words.limits}`, words.move];
  return html`<h2>${words.title}</h2>
${builtTable(built, findings, spoken)}
${
  rows.length === 0 && built.length > 0
    ? NONE
    : html`<p>${words.about}</p>
${table(head, rows)}`
}`;
}
