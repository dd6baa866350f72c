import { describe, expect, it } from 'vitest';
import { crewCsv, orderCsv } from '../export/yearCsv.ts';
import { papersOf } from '../papers/papers.ts';
import type { Plan } from '../plan/plan.ts';
import { AT_1500, STRAIGHT, analysisOf, runners } from '../testing/analyses.ts';
import { readDelimited } from '../delimited.ts';
import { supplyOrder } from './supplyOrder.ts';

const prices: NonNullable<Plan['prices']> = {
  currency: 'EUR',
  items: [
    { kind: 'cups', price: 2.35, sold: 10, leadDays: 21 },
    { kind: 'waterJug', price: 1.1, sold: 1, leadDays: 3 },
    { kind: 'table', price: 4, sold: 1 },
  ],
};
const of = (keys: Partial<Plan>): ReturnType<typeof analysisOf> =>
  analysisOf(STRAIGHT, [AT_1500], { races: [runners(500)], ...keys });
const dated = of({ date: '2027-03-02', prices });
const rows = (csv: string): string[][] => readDelimited(csv).records.map((row) => row.map(({ text }) => text));

describe('the supply order', () => {
  it('rounds up to what is sold together, costs that, and counts days back from the day before the race', () => {
    const { lines, total, unpriced, deliverBy } = supplyOrder(dated.plan, dated.day!);
    const line = (kind: string): (typeof lines)[0] => lines.find(({ pack }) => pack.kind === kind)!;
    const need = (kind: string): number => dated.day!.totals.packs.find((pack) => pack.kind === kind)!.count;
    const cups = Math.ceil(need('cups') / 10) * 10;
    // 1 March less 21 days, in a year without a leap day.
    expect(line('cups')).toMatchObject({ ordered: cups, cost: Math.round(cups * 235) / 100, orderBy: '2027-02-08' });
    expect(line('waterJug')).toMatchObject({ ordered: need('waterJug'), orderBy: '2027-02-26' });
    expect(line('table')).toMatchObject({ orderBy: null, price: 4 });
    expect(line('gloves')).toMatchObject({ price: null, cost: null, ordered: need('gloves') });
    expect(deliverBy).toBe('2027-03-01');
    expect(total).toBeCloseTo(
      lines.reduce((sum, { cost }) => sum + (cost ?? 0), 0),
      9,
    );
    expect(unpriced).toBe(lines.length - 3);
    expect(lines.slice(0, 2).map(({ pack }) => pack.kind)).toEqual(['cups', 'waterJug']);
    expect(lines.some(({ pack }) => pack.kind === 'instructions')).toBe(false);
  });

  it('orders exactly a case where exactly that is needed, and one more case for one more pack', () => {
    const need = dated.day!.totals.packs.find(({ kind }) => kind === 'cups')!.count;
    const orderedBy = (sold: number): number =>
      supplyOrder(
        { ...dated.plan, prices: { currency: '', items: [{ kind: 'cups', price: 1, sold }] } },
        dated.day!,
      ).lines.find(({ pack }) => pack.kind === 'cups')!.ordered;
    expect(orderedBy(need)).toBe(need);
    expect(orderedBy(need - 1)).toBe(2 * (need - 1));
  });

  it('has no days to order by without a date', () => {
    const undated = of({ prices });
    const { lines, deliverBy } = supplyOrder(undated.plan, undated.day!);
    expect(deliverBy).toBeNull();
    expect(lines.every(({ orderBy }) => orderBy === null)).toBe(true);
  });

  it('is a table with the same figures, its heads in the language asked for', () => {
    const [head, first] = rows(orderCsv(dated.plan, dated.day!));
    const [line] = supplyOrder(dated.plan, dated.day!).lines;
    expect(head![0]).toBe('item');
    expect(first!.slice(1)).toEqual(
      [line!.pack.count, line!.ordered, 100, 2.35, line!.cost, 'EUR', 21, '2027-02-08'].map(String),
    );
    expect(rows(orderCsv(dated.plan, dated.day!, 'es'))[0]![0]).toBe('artículo');
  });

  it('is a paper with the days in words where the plan has prices, and none where it has not', () => {
    const paper = (plan: typeof dated, language: string): string | undefined =>
      papersOf(plan, { paper: 'a4', printedAt: '2027-01-01 12:00', language }).find(({ name }) => name === 'order.html')
        ?.html;
    expect(paper(dated, 'en')).toContain('Monday 8 February 2027');
    expect(paper(dated, 'es')).toMatch(/lunes,? 8 de febrero de 2027/u);
    expect(paper(of({ date: '2027-03-02' }), 'en')).toBeUndefined();
  });
});

describe('the table of crew by the hour', () => {
  it('has every arrival once, and the crew of the day in each hour from its coming to the end', () => {
    const [head, ...hours] = rows(crewCsv(dated.plan, dated.day!));
    const [own] = dated.day!.stations as [(typeof dated.day & {})['stations'][0]];
    const column = (name: string): number[] => hours.map((row) => Number(row[head!.indexOf(name)]));
    expect(column('arrivals').reduce((sum, one) => sum + one, 0)).toBe(own.arrivals);
    expect(new Set(column('people'))).toEqual(new Set([own.crew.total]));
    expect(hours).toHaveLength(Math.ceil(own.packedAt! / 3600) - Math.floor(own.crewAt! / 3600));
    expect(hours.slice(1).map((row) => row[2])).toEqual(hours.slice(0, -1).map((row) => row[3]));
  });
});
