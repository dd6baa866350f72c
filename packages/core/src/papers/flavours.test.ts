/** Names of what is handed out: on cards, captain's sheet, supply list and order, and refused where they are no names. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Analysis, analyse } from '../analyse.ts';
import { readGpx } from '../gpx/read.ts';
import { suppliesOf } from '../plan/practice.ts';
import { readPlan } from '../plan/read.ts';
import { valueOf } from '../testing/courses.ts';
import { papersOf } from './papers.ts';

const demoFile = (name: string): string =>
  readFileSync(new URL(`../../../../fixtures/demo/${name}`, import.meta.url), 'utf8');

interface Keys {
  readonly supplies: object;
  readonly stations: readonly { readonly id: string; readonly [key: string]: unknown }[];
}

const planWith = (flavours: unknown, third: object = {}): string => {
  const plan = JSON.parse(demoFile('plan.json')) as Keys;
  const stations = plan.stations.map((one) => (one.id === 's3' ? { ...one, ...third } : one));
  return JSON.stringify({ ...plan, supplies: { ...plan.supplies, flavours }, stations });
};

function analysisOf(text: string): Analysis {
  const gpx = new Map(['full.gpx', 'half.gpx'].map((name) => [name, valueOf(readGpx(demoFile(name), name))]));
  return valueOf(analyse(valueOf(readPlan(text, 'plan.json')).plan, { gpx }));
}

/** A paper's words, by its name. */
function wordsOf(analysis: Analysis, name: string, language: string = 'en'): string {
  const papers = papersOf(analysis, { paper: 'a4', printedAt: '2027-09-01 18:30', language });
  return papers
    .find((paper) => paper.name === name)!
    .html.replace(/<style>.*?<\/style>/su, '')
    .replaceAll(/<\/?(?:b|bdi|span)\b[^>]*>/gu, '')
    .replaceAll(/<[^>]*>/gu, ' ')
    .replaceAll('&amp;', '&')
    .replaceAll(/\s+/gu, ' ');
}

describe('flavours', () => {
  const names = { sportsDrink: ['Tide Lime'], gel: ['Kelp Berry', 'Dune Honey'] };
  const named = analysisOf(planWith(names));

  it('are called out, printed on the captain’s sheet and in the supply list', () => {
    expect(wordsOf(named, 'cards.html')).toContain('“Sports drink, Tide Lime!” “Water!”');
    expect(wordsOf(named, 'cards.html')).toContain('Call out: “Gel, Kelp Berry!” “Gel, Dune Honey!”');
    expect(wordsOf(named, 'cards.html', 'es')).toContain('«¡Gel, Kelp Berry!»');
    expect(wordsOf(named, 'captains.html')).toContain('Gel (Kelp Berry, Dune Honey)');
    expect(wordsOf(named, 'captains.html')).toContain('Sports drink (Tide Lime): Pour ');
    const list = wordsOf(named, 'supplies.html');
    expect(list).toContain('Jugs of sports drink (Tide Lime)');
    expect(list).toContain('Boxes of gels (Kelp Berry, Dune Honey)');
    expect(list).not.toContain('Jugs of water (');
  });

  it('of a station go before those of the plan, kind by kind', () => {
    const own = analysisOf(planWith(names, { supplies: { flavours: { gel: ['Plain & Salt'] } } }));
    expect(suppliesOf(own.plan, own.stations[2]!.station).flavours).toEqual({
      sportsDrink: ['Tide Lime'],
      gel: ['Plain & Salt'],
    });
    expect(wordsOf(own, 'cards.html')).toContain('“Gel, Plain & Salt!”');
    // Over the whole plan each name stands once.
    expect(wordsOf(own, 'supplies.html')).toContain('Boxes of gels (Plain & Salt, Kelp Berry, Dune Honey)');
  });

  it('change no number', () => {
    expect(named.day).toEqual(analysisOf(planWith(undefined)).day);
  });

  it('are printed with the supply order, where the plan has prices', () => {
    const plan = JSON.parse(planWith(names)) as object;
    const priced = JSON.stringify({ ...plan, prices: { currency: 'crowns', items: [{ kind: 'gels', price: 20 }] } });
    expect(wordsOf(analysisOf(priced), 'order.html')).toContain('Boxes of gels (Kelp Berry, Dune Honey)');
  });

  it.each([
    [{ water: ['Still'] }, 'water'],
    [{ gel: [] }, 'gel'],
    [{ gel: [' '] }, 'gel'],
    [{ gel: [7] }, 'gel'],
    [{ gel: 'Kelp Berry' }, 'gel'],
  ])('that are none are refused where they stand: %j', (flavours, key) => {
    const read = readPlan(planWith(flavours), 'plan.json');
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.findings[0]!.where.path).toContain(`/supplies/flavours/${key}`);
    expect(read.findings[0]!.where.line).toBeGreaterThan(0);
  });
});
