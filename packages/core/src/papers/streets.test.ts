/** Streets on papers: the captain's words for an emergency call, and the driver's run. */
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../analyse.ts';
import { at, groundTown, townPlan, townReview } from '../testing/planted/groundTown.ts';
import { captainSheet } from './captain.ts';
import { papersOf } from './papers.ts';

const DAY = {
  vehicles: [{ id: 'v', name: 'Van', from: '04:00' }],
  clock: [{ course: 'c', measure: 0, accessOpens: '03:00', closes: '06:30', reopens: '12:00' }],
};

/** The town's plan with a day; `own`: the plan's own words for the street of its first station. */
function analysisOf(own?: string, there: boolean = true): Analysis {
  const plan = townPlan();
  at(600, own === undefined ? {} : { street: own })(plan);
  const [race] = plan.races;
  Object.assign(race!, { waves: [{ time: '08:00', entrants: 200 }], finish: { median: '0:50:00', spread: 0.2 } });
  Object.assign(plan, DAY);
  return townReview(plan, groundTown(), there).analysis;
}

const options = (language: string) => ({ paper: 'a4', printedAt: '2027-09-01 18:30', language }) as const;
const words = (html: string): string =>
  html
    .replace(/<\/t[hd]>/gu, ' ')
    .replace(/<[^>]*>/gu, '')
    .replace(/\s+/gu, ' ');
const sheetOf = (analysis: Analysis, language: string): string =>
  words(captainSheet(analysis, analysis.stations[0]!, options(language)));
const runOf = (analysis: Analysis, language: string): string =>
  words(papersOf(analysis, options(language)).find(({ name }) => name.startsWith('run'))!.html);

describe('a captain’s words for an emergency call', () => {
  it('name the street and its cross-streets, and say that they are from the map', () => {
    const analysis = analysisOf();
    const english = sheetOf(analysis, 'en');
    expect(english).toContain('Place: Harbour Road, between Quay Street and Mill Lane. Access by');
    expect(english).toContain('; from the map of 2026-10-02)');
    const spanish = sheetOf(analysis, 'es');
    expect(spanish).toContain('Lugar: Harbour Road, entre Quay Street y Mill Lane. Acceso por');
    expect(spanish).toContain('; según el mapa del 2026-10-02)');
  });

  it('are the plan’s own where it has them, and then are of no map', () => {
    const sheet = sheetOf(analysisOf('Strand Road, by the pump'), 'en');
    expect(sheet).toContain('Place: Strand Road, by the pump. Access by');
    expect(sheet).not.toContain('from the map');
  });

  it('name no street where nobody knows one', () => {
    expect(sheetOf(analysisOf(undefined, false), 'en')).not.toContain('Place:');
  });
});

describe('a driver’s run', () => {
  it('names the street of the tables', () => {
    const analysis = analysisOf();
    expect(runOf(analysis, 'en')).toContain('Street of the tables Harbour Road, between Quay Street and Mill Lane');
    expect(runOf(analysis, 'es')).toContain('Calle de las mesas Harbour Road, entre Quay Street y Mill Lane');
    expect(runOf(analysisOf(undefined, false), 'en')).not.toContain('Street of the tables');
  });
});
