/** After the race: the form for what is left at each station, and, once stations have counted, what that teaches. */
import type { Analysis } from '../analyse.ts';
import { findById, nameById } from '../plan/lookups.ts';
import type { Plan } from '../plan/plan.ts';
import { heatOf } from '../raceday/take.ts';
import type { RaceDay, StationDay } from '../raceday/day.ts';
import { type Learnt, type Spread, learnRates } from '../raceday/learn.ts';
import { type LeftField, leftFields } from '../raceday/leftovers.ts';
import type { SheetText } from '../text/sheetText.ts';
import { type Html, NONE, html, table } from './html.ts';
import { type Sheet, listHead, stationTitle, volumeText } from './sheet.ts';

const capital = (word: string): string => `${word.charAt(0).toUpperCase()}${word.slice(1)}`;

/** The body of the paper; of a plan that has a race day. */
export function leftoversBody(analysis: Analysis, day: RaceDay, sheet: Sheet): Html {
  const { text } = sheet;
  const words = text.year.learning;
  return html`${listHead(words.form, analysis.plan, sheet)}
<p>${words.formAbout}</p>
<div class="two">${day.stations.map((own) => formBlock(analysis, own, text))}</div>
${learningSection(analysis.plan, day, text)}`;
}

const LINE: Html = html`<span class="blank"></span>`;

function formBlock({ stations, plan }: Analysis, own: StationDay, text: SheetText): Html {
  const station = findById(stations, own.id);
  const fields = leftFields(own);
  if (station === undefined || fields.length === 0) return NONE;
  const sentOf = ({ key, sent, pack }: LeftField): string => {
    if (key.endsWith('Loose') || key.endsWith('Empty')) return '';
    const size = key.endsWith('Full') ? volumeText(pack, plan.units, text) : text.frame.count(pack);
    return `${text.frame.count(sent)} × ${size}`;
  };
  const rows = fields.map((field) => [capital(text.year.left[field.key]), sentOf(field), LINE]);
  return html`<section class="block" data-station="${station.id}"><h3>${stationTitle(station, text)}</h3>
${table(['', ` ${text.year.sent}`, ''], rows)}</section>`;
}

const rate = (value: number): string => value.toFixed(2);

const rangeText = (times: number, spread: Spread | null, text: SheetText): string =>
  spread === null
    ? text.year.learning.oneStation
    : `${rate(times * spread.low)} ${text.year.to} ${rate(times * spread.high)}`;

/** What counted stations teach; nothing where none has counted. */
function learningSection(plan: Plan, day: RaceDay, text: SheetText): Html {
  const learnt = learnRates(plan, day.stations);
  if (learnt.basis.length === 0) return NONE;
  const words = text.year.learning;
  const { count } = text.frame;
  return html`<section class="new-page learning"><h2>${words.title}</h2>
<p>${words.about}</p>
<h3>${words.kindsTitle}</h3>
${table(
  [...words.kinds],
  learnt.basis.map(({ kind, used, reckoned, factor, spread, stations }) => [
    capital(text.frame.served[kind]),
    count(used),
    count(Math.round(reckoned)),
    plusMinus(factor, 1, spread),
    rangeText(1, spread, text),
    stations.map((id) => nameById(plan.stations, id)).join(', '),
  ]),
  'kinds',
)}
<h3>${words.ratesTitle}</h3>
${table([...words.rates], ratesRows(learnt, text), 'rates')}
<p>${words.how} ${words.heat(words.heats[heatOf(plan.supplies).heat])}</p>
<h3>${words.stationsTitle}</h3>
${table([...words.stations], stationRows(plan, learnt, text), 'stations')}</section>`;
}

const plusMinus = (value: number, times: number, spread: Spread | null): string =>
  spread === null ? rate(value) : `${rate(value)} ± ${rate(times * spread.error)}`;

function ratesRows({ basis, take }: Learnt, text: SheetText): string[][] {
  const { divisions } = text.year.learning;
  return (['run', 'walk', 'wheels'] as const).flatMap((division) =>
    basis.flatMap(({ kind, factor, spread }) => {
      const next = take[division]?.[kind];
      if (next === undefined) return [];
      const now = factor === 0 ? 0 : next / factor;
      return [
        [
          divisions[division],
          capital(text.frame.served[kind]),
          factor === 0 ? '' : rate(now),
          plusMinus(next, now, spread),
          rangeText(now, spread, text),
        ],
      ];
    }),
  );
}

const stationRows = (plan: Plan, { basis }: Learnt, text: SheetText): string[][] =>
  basis.flatMap(({ kind, each }) =>
    each.map(({ station, used, reckoned }) => [
      nameById(plan.stations, station),
      capital(text.frame.served[kind]),
      text.frame.count(used),
      text.frame.count(Math.round(reckoned)),
      rate(used / reckoned),
    ]),
  );

/** Two columns of forms, none of them broken. */
export const LEFTOVERS_STYLE = `
.two { columns: 2; column-gap: 8mm; }
.two h3 { margin-top: 0; }
.two .block { padding-bottom: 3mm; }
.two table { font-size: 10pt; }
.two td { padding-top: 1.6mm; vertical-align: bottom; }
.two th:nth-child(2) { width: 26mm; }
.two th:last-child { width: 20mm; }
.two .blank { min-width: 18mm; }
.learning .number { padding-left: 2mm; }
`;
