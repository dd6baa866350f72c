/** The overview: the map of all courses, each course drawn straight, and the stations by number, on one page. */
import type { FeatureCollection } from 'geojson';
import type { Analysis } from '../analyse.ts';
import type { Units } from '../plan/plan.ts';
import { findById } from '../plan/lookups.ts';
import { formatLength, formatMeasure, formatMinute } from '../format.ts';
import { pageBox } from './frameStyle.ts';
import { type Html, NONE, html, said } from './html.ts';
import { dashOf, overviewMap } from './overviewMap.ts';
import { courseStrip } from './overviewStrip.ts';
import { type Sheet, listHead, sideWord } from './sheet.ts';
import { byNumber, numberOf } from '../layout/layout.ts';
import { mm } from './svg.ts';

/** Millimetres: head of three lines and caution; a strip's heading; a row of the list of stations. */
const HEAD = 40;
const HEADING = 9;
const ROW = 5.1;
const LEAST_MAP = 70;
const COLUMNS = 2;

/** The body of the overview. With many courses or stations the strips and the list go on to further pages; the map stays whole. */
export function overviewBody(analysis: Analysis, sheet: Sheet, context?: FeatureCollection): Html {
  const { plan, courses, stations } = analysis;
  const { text, paper } = sheet;
  const words = text.lists.overview;
  const box = pageBox(paper);
  const run = courses.filter(({ course }) => plan.races.some((race) => race.course === course.id));
  const strips = run.map(({ course }) => ({ course, ...courseStrip(analysis, course, box.width, text) }));
  const list = Math.ceil(stations.length / COLUMNS) * ROW + 3;
  const rest = box.height - HEAD - list - strips.reduce((sum, { height }) => sum + height + HEADING, 0) - 8;
  const shown = run.length > 0 ? run : courses;
  const map = overviewMap({
    layout: { ...analysis, courses: shown },
    units: plan.units,
    text,
    width: box.width,
    height: Math.max(rest, LEAST_MAP),
    ...(context === undefined ? {} : { context }),
  });
  return html`${listHead(words.title, plan, sheet)}
<p class="starts">${starts(analysis, sheet)}</p>
<section class="block map-block">${map}
<p class="key">${shown.map(({ course }, k) => html`<span><svg width="14mm" height="2mm" viewBox="0 0 14 2"><path d="M0 1H14" stroke="#000" stroke-width="0.8"${{ html: dashOf(k) }}/></svg> ${said(course.name)}</span> `)}</p></section>
<ol class="stations">${byNumber(stations).map((station) => stationLine(analysis, station, plan.units, sheet))}</ol>
<p class="sides">${words.sides}</p>
${strips.map(
  ({
    course,
    svg,
    ground,
  }) => html`<section class="block"><h3>${said(words.strip(course.name))}${ground === null ? NONE : html` <span class="ground">${words.elevation(formatLength(ground[0], plan.units, 'table', 0), formatLength(ground[1], plan.units, 'table', 0))}</span>`}</h3>
${svg}</section>\n`,
)}`;
}

/** When each race starts, and what the review found, by severity. */
function starts({ plan, findings }: Analysis, { text }: Sheet): Html {
  const words = text.lists.overview;
  const races = plan.races.map(({ name, waves }) => {
    const times = waves.map(({ time }) => time).sort((a, b) => a - b);
    const [first, last] = [times[0], times.at(-1)];
    if (first === undefined) return said(name);
    return html`<b>${said(name)}</b> ${words.starts(formatMinute(first), last === first ? null : formatMinute(last!))}`;
  });
  const count = (severity: 'error' | 'warning' | 'note'): number =>
    findings.filter((finding) => finding.waived === undefined && finding.severity === severity).length;
  return html`${races.map((race, k) => html`${k === 0 ? '' : ' · '}${race}`)} · ${words.found(count('error'), count('warning'), count('note'))}`;
}

function stationLine({ day }: Analysis, station: Analysis['stations'][number], units: Units, { text }: Sheet): Html {
  const own = findById(day?.stations ?? [], station.id);
  const open =
    own?.quantiles === null || own === undefined
      ? NONE
      : html` <span>${formatMinute(own.quantiles.first)}–${formatMinute(own.openUntil!)}</span>`;
  const lead = station.directions[0];
  const where = lead === undefined ? '–' : `${formatMeasure(lead.measure, units)}, ${sideWord(lead.side, text)}`;
  return html`<li><b>${numberOf(station)}</b> <span class="name">${said(station.name)}</span> <span>${where}</span>${open}</li>\n`;
}

export const OVERVIEW_STYLE: string = `
.starts { margin: 1.5mm 0 0; font-size: 10pt; }
.map-block { margin-top: 2mm; }
.map-block .key { margin: 1mm 0 0; font-size: 9.5pt; }
.key span { margin-right: 4mm; }
.key svg { display: inline-block; vertical-align: middle; }
.stations { columns: ${COLUMNS}; column-gap: 6mm; list-style: none; margin: 1mm 0 0; padding: 0; font-size: 9.5pt; }
.stations li { display: flex; gap: 2mm; height: ${mm(ROW)}mm; line-height: ${mm(ROW)}mm; border-bottom: 0.3pt solid #000; white-space: nowrap; break-inside: avoid; }
.stations .name { flex: 1; overflow: hidden; text-overflow: ellipsis; }
.sides { font-size: 9.5pt; margin: 1mm 0 0; }
.ground { font-weight: normal; font-size: 9.5pt; }
.block > h3 { margin-top: 1.5mm; }
`;
