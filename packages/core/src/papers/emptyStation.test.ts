/** A station for which nothing is laid out: it serves nothing, or the plan gives it no table. */
import { describe, expect, it } from 'vitest';
import type { PlanStation } from '../plan/plan.ts';
import { AT_1500, OUT_AND_BACK, STRAIGHT, analysisOf, runners } from '../testing/analyses.ts';
import { valueOf } from '../testing/courses.ts';
import { toCsv } from '../export/csv.ts';
import { toGeoJson } from '../export/geojson.ts';
import { LANGUAGES } from '../text/languages.ts';
import { toGpx } from '../export/waypoints.ts';
import { papersOf } from './papers.ts';

const NOTHING: readonly Partial<PlanStation>[] = [
  { serves: [] },
  { serves: ['water'], tables: { water: 0 } },
  { serves: ['gel', 'water'], tables: { gel: 0, water: 0 }, passes: 'all' },
];

describe.each(NOTHING)('a station with %j', (keys) => {
  for (const line of [STRAIGHT, OUT_AND_BACK]) {
    const analysis = analysisOf(
      line,
      [{ ...AT_1500, name: 'Kelp Bay', points: [{ kind: 'drop', at: [-17.38, -33.2] }], ...keys }],
      { races: [runners(50)], vehicles: [{ id: 'v', name: 'Van', kg: 1500, places: 6, kmh: 25, stop: 900, from: 0 }] },
    );

    it(`is on every paper and in every export, without tables, on a course of ${line.length} points`, () => {
      expect(analysis.stations[0]!.directions.every(({ items }) => items.length === 0)).toBe(true);
      for (const { language } of LANGUAGES) {
        for (const { name, html } of papersOf(analysis, { paper: 'a4', printedAt: '2027-08-30', language }))
          expect([name, /NaN|undefined|Infinity/u.exec(html)]).toEqual([name, null]);
      }
      expect(valueOf(toGpx(analysis))).toContain('<name>01A STATION</name>');
      expect(
        toCsv(analysis)
          .split('\r\n')
          .filter((row) => row.includes('Kelp Bay'))
          .map((row) => row.split(',')[6]),
      ).toEqual(['station', 'drop']);
      expect(toGeoJson(analysis).features.map(({ properties }) => (properties as { kind: string }).kind)).toEqual(
        expect.arrayContaining(['course', 'station', 'direction', 'drop']),
      );
    });
  }
});
