/** The papers that are lists, where the demo does not reach: other directions, folds, no race day, both languages. */
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../analyse.ts';
import type { PlanStation } from '../plan/plan.ts';
import { DEFAULTS_TABLE } from '../raceday/defaultsTable.ts';
import { reviewLayout } from '../review/review.ts';
import { ORIGIN, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { en } from '../text/en.ts';
import { LANGUAGES, SHEET_TEXTS } from '../text/languages.ts';
import { contextOf } from './context.ts';
import { defaultsInUse } from './defaultsInUse.ts';
import { fileNames, papersOf } from './papers.ts';
import { pegsOf } from '../layout/pegs.ts';
import { wheeledText } from '../export/wheeled.ts';
import { placementListBody } from './placementList.ts';
import type { Sheet } from './sheet.ts';
import { supplyListBody } from './supplyList.ts';

const sheet: Sheet = { text: en, paper: 'a4', printedAt: '2027-08-30 18:00' };
/** Out 3 km and back along the same road. */
const outAndBack = turtle(
  ORIGIN,
  [
    [90, 3000],
    [270, 3000],
  ],
  100,
);

function analysisOf(keys: Partial<PlanStation>, course = outAndBack): Analysis {
  const layout = layoutOf([course], [{ on: { course: 'c', measure: 1500, side: 'right', offset: 5 }, ...keys }]);
  return { ...layout, day: null, ...reviewLayout(layout) };
}

describe('the placement list', () => {
  it('lists the other direction of an out-and-back where it is served, after the lead, in course order', () => {
    const both = placementListBody(analysisOf({ passes: 'all' }), sheet).html;
    expect(both.match(/<section class="block" data-station="s1">/gu)).toHaveLength(2);
    expect(both.indexOf('other direction')).toBeGreaterThan(both.indexOf('come from the west'));
    expect(both).toContain('come from the east');
    expect(both).toContain(en.lists.placement.sameTables);
    expect(placementListBody(analysisOf({ passes: 'lead' }), sheet).html).not.toContain('other direction');
  });

  it('stands on straight ground with steps equal to the rule: 100 yd to the first table, and no margin', () => {
    const { stations, courses } = analysisOf({});
    const station = stations[0]!;
    const [sign, mark] = pegsOf(station, station.directions[0]!, courses[0]!);
    expect(sign!.item?.kind).toBe('sign');
    expect(mark!.item).toBeNull();
    // 100 yd × 0.9144 m, NIST Handbook 44, appendix C.
    expect(mark!.before!.length).toBeCloseTo(91.44, 6);
    expect(mark!.before!.margin).toBeCloseTo(0, 6);
  });

  it('says along the course, never a wheel distance, where the line folds', () => {
    // A hairpin just after the tables, whose inside is the station's side.
    const hairpin = turtle(
      ORIGIN,
      [
        [90, 1520],
        [255, 1500],
      ],
      20,
    );
    const page = placementListBody(analysisOf({ passes: 'lead' }, hairpin), sheet).html;
    expect(page).toContain(en.captain.drawing.along);
    expect(page).toContain('doubles back');
  });

  it('names the stations that no race passes, for which there is nothing to list', () => {
    const layout = layoutOf([outAndBack], [{ at: [ORIGIN[0], ORIGIN[1] + 0.1], name: 'Far Skerry' }]);
    expect(placementListBody({ ...layout, day: null, ...reviewLayout(layout) }, sheet).html).toMatch(
      /No race passes these stations.*Far Skerry/u,
    );
  });

  it('rounds a margin up, and prints none where none was reckoned', () => {
    expect(wheeledText({ length: 12.34, margin: 0.21 }, 'metric')).toBe('12.3 ± 0.3 m');
    expect(wheeledText({ length: 91.44, margin: 0.01 }, 'imperial')).toBe('100 ± 0.1 yd');
    expect(wheeledText({ length: 12.34, margin: 0 }, 'metric')).toBe('12.3 m');
    // What the sums of a straight road round to is no margin: never "± 0 m".
    expect(wheeledText({ length: 12.34, margin: 3e-9 }, 'metric')).toBe('12.3 m');
    expect(wheeledText({ length: -12.34, margin: 0 }, 'metric')).toBe('−12.3 m');
    expect(wheeledText({ length: -0.01, margin: 0 }, 'metric')).toBe('0 m');
    expect(wheeledText({ length: -12.34, margin: 0.21 }, 'metric')).toBe('−12.3 ± 0.3 m');
    expect(wheeledText({ length: -0.01, margin: 0.21 }, 'metric')).toBe('0 ± 0.3 m');
    expect(wheeledText({ length: 12.34, margin: null }, 'metric')).toBe('12.3 m');
    expect(wheeledText({ length: null, margin: 1 }, 'metric')).toBe('–');
  });
});

describe('the supply list', () => {
  it('says that nothing can be ordered where nobody knows who runs', () => {
    expect(supplyListBody(analysisOf({}), sheet).html).toContain(en.lists.supplies.none);
  });

  it('holds a value of the plan against the usual one, and counts equal ones as usual', () => {
    const { plan } = analysisOf({});
    const own = (key: string, supplies: object): readonly unknown[] =>
      defaultsInUse({ ...plan, supplies: { ...plan.supplies, ...supplies } }).find(({ row }) => row.key === key)!.own;
    expect(own('supplies.waste', {})).toEqual([]);
    expect(own('supplies.waste', { waste: 0.15 })).toEqual([]);
    expect(own('supplies.waste', { waste: 0.2 })).toEqual([0.2]);
    expect(own('supplies.packs.cups', { packs: { ...plan.supplies.packs, cups: 50 } })).toEqual([50]);
    expect(own('supplies.take.run.water', { take: { run: { water: 2 } } })).toEqual([2]);
  });

  it('has a phrase in every language for each default, its unit and the kind of its source', () => {
    for (const { language, lists } of SHEET_TEXTS) {
      const phrases = DEFAULTS_TABLE.flatMap(({ what, source, unit }) => [
        what,
        source,
        ...(/^[a-z ]{4,}$/u.test(unit) ? [unit] : []),
      ]);
      expect(
        phrases.filter((phrase) => lists.supplies.phrase(phrase) === null),
        language,
      ).toEqual([]);
    }
  });
});

describe('all papers', () => {
  it('are the same for the same input, in every language, without a race day as well', () => {
    for (const { language } of LANGUAGES) {
      const make = (): string =>
        JSON.stringify(papersOf(analysisOf({}), { paper: 'letter', printedAt: '2027-08-30 18:00', language }));
      expect(make()).toBe(make());
      expect(make()).not.toMatch(/undefined|NaN|\[object/u);
    }
  });

  it('have file names without two alike, also where capitals do not count', () => {
    expect(fileNames(['v1', 'V1', '../x', '', '💧'])).toEqual(['v1', 'V1-2', 'x', 'vehicle', 'vehicle-2']);
  });
});

describe('a background drawing', () => {
  it('keeps the features that can be drawn and leaves out the rest', () => {
    const line = {
      type: 'Feature',
      properties: { kind: 'road' },
      geometry: {
        type: 'LineString',
        coordinates: [
          [0, 1],
          [2, 3],
        ],
      },
    };
    const unusable = [
      null,
      1,
      {},
      { type: 'Feature', geometry: null },
      { type: 'Feature', geometry: { type: 'LineString', coordinates: [[0]] } },
      { type: 'Feature', geometry: { type: 'Polygon', coordinates: [[0, 1]] } },
      { type: 'Feature', geometry: { type: 'Point', coordinates: [200, 0] } },
      { type: 'Feature', geometry: { type: 'toString', coordinates: [] } },
    ];
    expect(contextOf({ type: 'FeatureCollection', features: [...unusable, line] })?.features).toEqual([line]);
    // Properties that are none are nothing said.
    expect(contextOf({ type: 'FeatureCollection', features: [{ ...line, properties: null }] })?.features).toEqual([
      { ...line, properties: {} },
    ]);
    expect([null, [], {}, { type: 'FeatureCollection' }].map(contextOf)).toEqual([null, null, null, null]);
  });
});
