/** What a strict TypeScript project writes against the types, with libraries checked too. */
import { type Analysis, type Finding, type Plan, type Result, analyse, readPlan } from '@halfcup/core';
import { toGeoJson } from '@halfcup/core/geojson';
import { type Course, type Pass, buildCourse, courseLength, indexCourse, passesOf } from '@halfcup/core/geometry';
import { type GpxDocument, readGpx } from '@halfcup/core/gpx';
import { type RaceDay, learnRates } from '@halfcup/core/raceday';
import { type PrintedPaper, papersOf } from '@halfcup/core/papers';

export const read = (bytes: Uint8Array): Result<GpxDocument> => readGpx(bytes, 'c.gpx');
export const length = (course: Course): number => courseLength(course);
export function run(text: string, gpx: ReadonlyMap<string, GpxDocument>): Analysis | readonly Finding[] {
  const plan = readPlan(text, 'plan.json');
  if (!plan.ok) return plan.findings;
  const given: Plan = plan.value.plan;
  const result = analyse(given, { gpx });
  return result.ok ? result.value : result.findings;
}
export const crew = ({ totals }: RaceDay): number => totals.crew;
export const rates: typeof learnRates = learnRates;
export const snap = (document: GpxDocument): readonly Pass[] => {
  const course = buildCourse({ id: 'c', name: 'C', segments: document.tracks[0]?.segments ?? [] });
  return course.ok ? passesOf(indexCourse(course.value), [-17.4, -33.2]) : [];
};
export const features = (analysis: Analysis): number => toGeoJson(analysis).features.length;
export const papers = (analysis: Analysis): readonly PrintedPaper[] =>
  papersOf(analysis, { paper: 'a4', printedAt: '2027-09-01 12:00' });
// @ts-expect-error A length is a number: this file does not compile where types are missing.
export const wrong: string = courseLength({} as Course);
export const wrongPaper = (analysis: Analysis): readonly PrintedPaper[] =>
  // @ts-expect-error A sheet of paper is A4 or Letter.
  papersOf(analysis, { paper: 'a3', printedAt: '' });
