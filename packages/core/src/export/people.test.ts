/** Names of the roster stay in the plan: no export for others has them; the sign-in sheet, which is asked for them, does. */
import { describe, expect, it } from 'vitest';
import { papersOf } from '../papers/papers.ts';
import { AT_1500, STRAIGHT, analysisOf, runners } from '../testing/analyses.ts';
import { toCalendar } from './calendar.ts';
import { toCsv } from './csv.ts';
import { layoutDocument } from './documents.ts';
import { toGeoJson } from './geojson.ts';
import { leftoversCsv } from './leftoversCsv.ts';
import { raceDayDocument } from './raceDayDocument.ts';
import { reviewDocument } from './reviewDocument.ts';
import { toGpx } from './waypoints.ts';

const NAMES = ['Ada Ternquist', 'Ivo Skuaborn', '555 0199', 'Pourmaster'];
const analysis = analysisOf(STRAIGHT, [AT_1500], {
  date: '2027-09-12',
  timeZone: 'Atlantic/Azores',
  races: [runners(300)],
  people: {
    crew: [
      { name: NAMES[0]!, station: 's1', from: 7 * 3600, until: 10 * 3600, phone: NAMES[2]!, role: NAMES[3]! },
      { name: NAMES[1]!, station: 's1' },
    ],
  },
});
const day = analysis.day!;
const review = reviewDocument(analysis, { sha256: '0'.repeat(64), inputs: [] });
const papers = papersOf(analysis, { paper: 'a4', printedAt: '2027-09-01 18:30', review });

describe('names of the roster', () => {
  it.each<readonly [string, string]>([
    ['GeoJSON', JSON.stringify(toGeoJson(analysis))],
    ['GPX', JSON.stringify(toGpx(analysis))],
    ['CSV', toCsv(analysis)],
    ['the calendar', JSON.stringify(toCalendar(analysis, 0))],
    ['the layout as JSON', JSON.stringify(layoutDocument(analysis, analysis.findings))],
    ['race day as JSON', JSON.stringify(raceDayDocument(analysis, day, analysis.findings))],
    ['the review as JSON', JSON.stringify(review)],
    ['the leftover form', leftoversCsv(analysis.plan, day.stations)],
    ...papers.filter(({ name }) => name !== 'signin.html').map(({ name, html }) => [name, html] as const),
  ])('are not in %s', (_, text) => {
    expect(text.length).toBeGreaterThan(20);
    for (const name of NAMES) expect(text).not.toContain(name);
  });

  it('are on the sign-in sheet with their hours, and lines for those who are missing; telephones are not', () => {
    const { html } = papers.find(({ name }) => name === 'signin.html')!;
    expect(html).toContain('Ada Ternquist');
    expect(html).toContain('07:00–10:00');
    expect(html).not.toContain('555 0199');
    expect(html.match(/<tr><td>/gu)).toHaveLength(day.stations[0]!.crew.total + 2);
    expect(html).toContain('still to be found');
  });
});
