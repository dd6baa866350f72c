/** Nought where a number may be nought: no document holds a negative one, and papers print where every distance is 0. */
import { type Analysis, analyse, compareAnalyses, improve, readPlan } from '@halfcup/core';
import {
  compareDocument,
  courseDocument,
  improveDocument,
  layoutDocument,
  raceDayDocument,
  reviewDocument,
  snapDocument,
} from '@halfcup/core/schemas';
import { toGeoJson } from '@halfcup/core/geojson';
import { nearestOn, passesOf } from '@halfcup/core/geometry';
import { papersOf } from '@halfcup/core/sheets';
import { describe, expect, it } from 'vitest';
import { analysisOf, must } from './support/exported.ts';
import { CASES, sourceOf } from './support/fixtures.ts';

/** Where a negative zero stands. */
function negativeZeros(value: unknown, path: string): string[] {
  if (Object.is(value, -0)) return [path];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, one]) => negativeZeros(one, `${path}.${key}`));
}

const documentsOf = (analysis: Analysis): unknown => ({
  layout: layoutDocument(analysis, analysis.findings),
  day: analysis.day === null ? null : raceDayDocument(analysis, analysis.day, analysis.day.findings),
  review: reviewDocument(analysis, { sha256: '', inputs: [] }),
  compare: compareDocument(compareAnalyses(['a', 'b'], analysis, analysis)),
  courses: analysis.courses.map(({ course }) => courseDocument(course, [])),
  snap: snapDocument(
    analysis.courses.map((indexed) => {
      const at = [indexed.course.lon[0]!, indexed.course.lat[0]!] as const;
      return { at, name: null, passes: passesOf(indexed, at), nearest: nearestOn(indexed, at) };
    }),
  ),
  geojson: toGeoJson(analysis),
});

it.each(CASES)('no document of %s holds a negative zero, nor do the passes themselves', (name) => {
  const analysis = analysisOf(sourceOf(name));
  expect(negativeZeros(documentsOf(analysis), 'documents')).toEqual([]);
  expect(negativeZeros(analysis.stations, 'stations')).toEqual([]);
});

describe('a plan all of whose distances are 0', () => {
  const ZERO = [
    'signAhead',
    'signTolerance',
    'gelAhead',
    'tableGap',
    'trashFrom',
    'trashTo',
    'kerb',
    'setback',
    'clearWidth',
    'minSpacing',
    'maxGrade',
    'bendClear',
    'firstAfter',
    'lastBefore',
    'placedWithin',
  ];
  const text = JSON.stringify({
    format: 'halfcup-plan',
    version: 1,
    courses: [
      {
        id: 'c',
        line: [
          [-17.4, -33.2],
          [-17.36, -33.2],
        ],
      },
    ],
    races: [
      { id: 'r', course: 'c', waves: [{ time: '08:00', entrants: 200 }], finish: { median: '0:24:00', spread: 0.2 } },
    ],
    practice: Object.fromEntries(ZERO.map((key) => [key, 0])),
    stations: [
      { id: 's1', on: { course: 'c', measure: '2 km', side: 'right' }, serves: ['gel', 'sportsDrink', 'water'] },
      { id: 's2', on: { course: 'c', measure: '3 km', side: 'left' }, serves: ['gel'] },
    ],
  });
  const analysis = must(analyse(must(readPlan(text, 'plan.json')).plan, { gpx: new Map() }));

  it.each(['a4', 'letter'] as const)('prints on %s', (paper) => {
    const papers = papersOf(analysis, { paper, printedAt: '2027-09-01 18:30' });
    expect(papers).toHaveLength(9);
    for (const { html } of papers) expect(html).not.toMatch(/NaN|Infinity|undefined/u);
    // Every item has its words on the drawing.
    const captains = papers.find(({ name }) => name === 'captains.html')!.html;
    expect(captains.match(/Water and gel ahead|Gel ahead/gu)!.length).toBeGreaterThanOrEqual(2);
  });

  it('has no negative zero in its documents', () => {
    expect(negativeZeros(documentsOf(analysis), 'documents')).toEqual([]);
    expect(negativeZeros(improveDocument(improve(analysis, { within: 50 })), 'improve')).toEqual([]);
  });
});
