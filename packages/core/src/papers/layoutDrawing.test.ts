import { describe, expect, it } from 'vitest';
import { pointAt } from '../course/locate.ts';
import type { Layout } from '../layout/layout.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { layoutDocument } from '../export/documents.ts';
import { en } from '../text/en.ts';
import { es } from '../text/es.ts';
import { type KerbPoint, layoutDrawing, tableCount } from './layoutDrawing.ts';
import { type Box, POINT, overlap, textWidth } from './textBox.ts';

const COURSES = {
  straight: turtle(ORIGIN, [[90, 4000]], 100),
  corner: turtle(
    ORIGIN,
    [
      [90, 2030],
      [0, 2000],
    ],
    10,
  ),
  bends: turtle(
    ORIGIN,
    [
      [90, 1990],
      [60, 20],
      [20, 20],
      [70, 40],
      [120, 40],
      [90, 2000],
    ],
    5,
  ),
};

const layoutWith = (course: keyof typeof COURSES, keys: Partial<PlanStation>): Layout =>
  layoutOf(
    [COURSES[course]],
    [
      {
        on: { course: 'c', measure: 2000, side: 'right', offset: 5 },
        serves: ['gel', 'sportsDrink', 'water'],
        ...keys,
      },
    ],
  );

const draw = (
  { stations: [station] }: Layout,
  text = en,
  width = 186,
  points: readonly KerbPoint[] = [],
): ReturnType<typeof layoutDrawing> =>
  layoutDrawing({
    direction: station!.directions[0]!,
    tableLength: station!.practice.tableLength,
    points,
    units: 'metric',
    text,
    width,
  });

interface Written extends Box {
  readonly says: string;
}

/** Every text of a drawing with the room it takes. */
function written(svg: string): Written[] {
  const texts = [
    ...svg.matchAll(
      /<text x="([-\d.]+)" y="([-\d.]+)" font-size="([\d.]+)"( font-weight="bold")?(?: text-anchor="(\w+)")?[^>]*>([^<]*)<\/text>/gu,
    ),
  ];
  expect(texts).toHaveLength(svg.split('<text').length - 1);
  return texts.map(([, x, y, size, bold, anchor, says]) => {
    const width = textWidth(says!.replaceAll('&quot;', '"'), Number(size) / POINT, bold !== undefined);
    const left = Number(x) - (anchor === 'end' ? width : anchor === 'middle' ? width / 2 : 0);
    return { says: says!, x: left, y: Number(y) - Number(size) * 0.75, width, height: Number(size) * 0.95 };
  });
}

function expectClean(svg: string, width: number, height: number): void {
  const all = written(svg);
  all.forEach((one, k) => {
    expect(one.x, one.says).toBeGreaterThan(-0.02);
    expect(one.x + one.width, one.says).toBeLessThan(width + 0.02);
    expect(one.y, one.says).toBeGreaterThan(-0.5);
    expect(one.y + one.height, one.says).toBeLessThan(height + 0.5);
    for (const other of all.slice(k + 1)) expect(overlap(one, other), `${one.says} | ${other.says}`).toBe(false);
  });
}

const TABLES = Array.from({ length: 12 }, (_, k) => k + 1);

describe('the drawing of a layout', () => {
  it.each(TABLES)(
    'has no text on another, none cut and all tables, with %i tables of each kind, on straight roads and bends, either side, both papers and languages',
    (count) => {
      for (const course of ['straight', 'corner', 'bends'] as const) {
        for (const side of ['left', 'right'] as const) {
          const layout = layoutWith(course, {
            on: { course: 'c', measure: 2000, side, offset: 5 },
            tables: { gel: count, sportsDrink: count, water: count },
          });
          for (const [text, width] of [
            [en, 186],
            [es, 191.9],
            [es, 186],
          ] as const) {
            const { svg, height } = draw(layout, text, width, [
              { kind: 'drop', word: text.frame.points.drop, along: -5 },
              { kind: 'other', word: 'Life-ring', along: -6 },
              { kind: 'medical', word: text.frame.points.medical, along: 30 },
            ]);
            expectClean(svg.html, width, height);
            expect(svg.html).toContain(text.captain.drawing.tables(text.frame.items.water, count));
          }
        }
      }
    },
  );

  it.each([1, 12])('has no text on another with %i table of one drink only, or of two', (count) => {
    for (const serves of [['water'], ['sportsDrink'], ['gel', 'water'], ['gel']] as const) {
      const { svg, height } = draw(
        layoutWith('straight', { serves, tables: { gel: count, sportsDrink: count, water: count } }),
      );
      expectClean(svg.html, 186, height);
    }
  });

  it('prints the distances of the layout document, to the rounding shown', () => {
    for (const course of ['straight', 'corner', 'bends'] as const) {
      const layout = layoutWith(course, { tables: { gel: 2, sportsDrink: 3, water: 4 } });
      const document = layoutDocument(layout, []).stations[0]!.directions[0]!.items;
      const { svg } = draw(layout);
      const figures = [...svg.html.matchAll(/data-item="(\w+)" data-(wheel|along)="([^"]*)"[^>]*>([^<]*)</gu)];
      expect(figures.map(([, kind]) => kind)).toEqual(document.map(({ kind }) => kind));
      figures.forEach(([, , by, exact, says], k) => {
        const item = document[k]!;
        const [from, to] = item.wheel ?? item.along;
        expect(by).toBe(item.wheel === null ? 'along' : 'wheel');
        expect(exact).toBe(`${from} ${to}`);
        const printed = says!
          .replace(/±.*/u, '')
          .match(/[\d.]+/gu)!
          .map(Number);
        const wanted = from === to ? [from] : [from, to];
        expect(printed).toHaveLength(wanted.length);
        printed.forEach((one, j) =>
          expect(Math.abs(one - Math.abs(wanted[j]!)), says).toBeLessThanOrEqual(0.05 + 1e-9),
        );
      });
    }
  });

  it('says that a distance runs along the course where the kerb’s line folds', () => {
    const layout = layoutWith('bends', {
      on: { course: 'c', measure: 2000, side: 'left', offset: 40 },
      tables: { water: 2 },
    });
    const folded = layout.stations[0]!.directions[0]!.items.filter(({ wheel }) => wheel === null);
    expect(folded.length).toBeGreaterThan(0);
    const { svg, folds } = draw(layout);
    expect(folds).toBe(true);
    expect(svg.html.split('data-along=').length - 1).toBe(folded.length);
    expect(svg.html).toContain(en.captain.drawing.along);
    expect(draw(layoutWith('straight', {})).folds).toBe(false);
  });

  it('puts the verge above the road for tables on the left, below for tables on the right, runners from left to right', () => {
    const road = (side: 'left' | 'right'): number => {
      const { svg, height } = draw(layoutWith('straight', { on: { course: 'c', measure: 2000, side, offset: 5 } }));
      return Number(/<rect x="0" y="([\d.]+)"/u.exec(svg.html)![1]) / height;
    };
    expect(road('right')).toBe(0);
    expect(road('left')).toBeGreaterThan(0.6);
  });

  it('draws sign, tables and boxes in running order, tables at the drawing’s one scale', () => {
    const layout = layoutWith('straight', { serves: ['water'], tables: { water: 5 }, boxes: 4 });
    const { svg } = draw(layout);
    const sign = Number(/<rect x="([\d.]+)"[^>]*fill="#000"\/>/u.exec(svg.html)![1]);
    const rects = [
      ...svg.html.matchAll(/<rect x="([\d.]+)" y="[\d.]+" width="([\d.]+)" height="[\d.]+" fill="#fff" stroke/gu),
    ].map(([, x, width]) => [Number(x), Number(width)] as const);
    expect(rects).toHaveLength(9);
    expect(sign).toBeLessThan(rects[0]![0]);
    rects.slice(1).forEach(([x], k) => expect(x).toBeGreaterThan(rects[k]![0]));
    for (const [, width] of rects.slice(1, 5)) expect(width).toBeCloseTo(rects[0]![1], 1);
  });

  it('counts tables by their length', () => {
    expect(tableCount({ along: [0, 1.8288 * 7] }, 1.8288)).toBe(7);
  });

  it('says one box and one table, also in Spanish', () => {
    expect(
      [1, 2].map((count) => [
        en.captain.drawing.boxes('Trash', count),
        es.captain.drawing.boxes('Basura', count),
        en.captain.drawing.tables('Water', count),
        es.captain.drawing.tables('Agua', count),
      ]),
    ).toEqual([
      [
        expect.stringMatching(/\b1 box$/u),
        expect.stringMatching(/\b1 caja$/u),
        expect.stringMatching(/\b1 table$/u),
        expect.stringMatching(/\b1 mesa$/u),
      ],
      [
        expect.stringMatching(/\b2 boxes$/u),
        expect.stringMatching(/\b2 cajas$/u),
        expect.stringMatching(/\b2 tables$/u),
        expect.stringMatching(/\b2 mesas$/u),
      ],
    ]);
  });

  it('has its scale bar in metres, or in feet under 30 yards, a nice length of at most 26 mm', () => {
    const bar = (units: 'metric' | 'imperial'): string[] => {
      const {
        stations: [station],
      } = layoutWith('straight', {});
      const { svg } = layoutDrawing({
        direction: station!.directions[0]!,
        tableLength: station!.practice.tableLength,
        points: [],
        units,
        text: en,
        width: 186,
      });
      return [...svg.html.matchAll(/text-anchor="end"[^>]*>([^<]*)</gu)].map(([, says]) => says!);
    };
    expect(bar('metric')).toEqual([expect.stringMatching(/^[125]0* m$/u)]);
    expect(bar('imperial')).toEqual([expect.stringMatching(/^[125]0* ft$/u)]);
  });

  it('says that the side is not clear on the road itself', () => {
    const layout = layoutOf([COURSES.straight], [{ at: pointAt(COURSES.straight, 2000)!.at }]);
    expect(draw(layout).svg.html).toContain(`(${en.frame.sideUnclear})`);
  });

  it('numbers all where words would take many rows, with every word in the legend, in the order of the numbers', () => {
    const points = Array.from({ length: 14 }, (_, k): KerbPoint => ({
      kind: 'other',
      word: `A point with a long name ${k}`,
      along: k / 10,
    }));
    const { svg, height } = draw(layoutWith('straight', {}), en, 186, points);
    for (const { word } of points) expect(svg.html.split(`${word}:`)).toHaveLength(2);
    const keys = [...svg.html.matchAll(/data-key="(\d+)"/gu)].map(([, key]) => Number(key));
    expect(keys).toEqual(Array.from({ length: 19 }, (_, k) => k + 1));
    expect(svg.html.match(/data-item="/gu)!.length).toBe(5);
    expectClean(svg.html, 186, height);
  });

  it('takes neighbours under one number range where not even numbers have room, and still names each', () => {
    const points = Array.from({ length: 40 }, (_, k): KerbPoint => ({ kind: 'other', word: `P${k}`, along: k / 10 }));
    const { svg, height } = draw(layoutWith('straight', {}), en, 84, points);
    expect(svg.html).toMatch(/>\d+–\d+</u);
    expect(svg.html.match(/data-point="/gu)).toHaveLength(40);
    expectClean(svg.html, 84, height);
  });

  it('throws where the paper is too narrow for words', () => {
    expect(() => draw(layoutWith('straight', {}), en, 20)).toThrow(RangeError);
  });

  it('draws all boxes at one place where the trash drop has no length', () => {
    const { svg } = draw(
      layoutWith('straight', { serves: ['water'], boxes: 2, practice: { trashFrom: 50, trashTo: 50 } }),
    );
    expect(svg.html).toContain(en.captain.drawing.boxes(en.frame.items.trash, 2));
  });
});
