/** The captain's sheet where the demo does not reach: unclear sides, folds, races of wheels alone, no resupply, odd points. */
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../analyse.ts';
import type { LonLat } from '../finding.ts';
import type { Plan, PlanStation } from '../plan/plan.ts';
import type { StationDay } from '../raceday/day.ts';
import { AT_1500, OUT_AND_BACK, STRAIGHT, analysisOf, runners } from '../testing/analyses.ts';
import { ORIGIN, from, turtlePoints } from '../testing/courses.ts';
import { en } from '../text/en.ts';
import { captainSheet } from './captain.ts';
import { clockBlock, crewBlock, prePourBlock, suppliesBlock } from './captainFacts.ts';

const H = 3600;
const plain = (html: string): string =>
  html
    .replaceAll(/<\/?(?:b|bdi|span)\b[^>]*>/gu, '')
    .replaceAll(/<[^>]*>/gu, '|')
    .replaceAll(/[\s|]*\|[\s|]*/gu, '|');
const sheetOf = (analysis: Analysis): string =>
  captainSheet(analysis, analysis.stations[0]!, { paper: 'a4', printedAt: '2027-08-30 18:00' });
const withDay = (station: Partial<PlanStation> = {}, keys: Partial<Plan> = {}): Analysis =>
  analysisOf(STRAIGHT, [{ ...AT_1500, ...station }], { races: [runners(500)], ...keys });
/** The day of the only station with other values. */
const changed = (analysis: Analysis, change: (day: StationDay) => Partial<StationDay>): Analysis => ({
  ...analysis,
  day: { ...analysis.day!, stations: analysis.day!.stations.map((own) => ({ ...own, ...change(own) })) },
});

describe('the clock', () => {
  const clockOf = (analysis: Analysis): string => plain(clockBlock(analysis, analysis.stations[0]!, en).html);
  const quantiles = { first: 8 * H + 59, p10: 9 * H, p50: 9 * H, p90: 9 * H, last: 9.5 * H + 1 };

  it('rounds down what must be ready and who comes first, and up who comes last', () => {
    const analysis = changed(withDay(), () => ({
      crewAt: 6 * H + 59,
      openFrom: 7 * H + 59,
      openUntil: 9.5 * H + 1,
      quantiles,
      races: [{ race: 'm', arrivals: 5, ...quantiles }],
      peak: { count: 1234, at: 9 * H },
    }));
    const says = clockOf(analysis);
    for (const fact of [
      `${en.captain.clock.beHere}|06:00|`,
      `${en.captain.clock.ready}|07:00|`,
      `${en.captain.clock.firstRunner}|08:00|`,
      `${en.captain.clock.busiestCount('1,234')}|09:00|`,
      `${en.captain.clock.last}|09:31|`,
    ])
      expect(says).toContain(fact);
    // Nothing says when a sweep would come: the station closes with the last arrival.
    expect(says).toContain(`${en.captain.clock.sweep}|${en.frame.toFill}`);
  });

  it('has the sweep where it comes after the last runner', () => {
    expect(clockOf(changed(withDay(), () => ({ quantiles, openUntil: 10 * H })))).toContain(
      `${en.captain.clock.sweep}|10:00|`,
    );
  });

  it('says when the first wheels come, and the first runner on foot by themselves', () => {
    const wheels = runners(20, { id: 'w', name: 'Wheels', division: 'wheels', waves: [{ time: 7 * H, entrants: 20 }] });
    const says = clockOf(withDay({}, { races: [runners(500), wheels] }));
    expect(says).toMatch(new RegExp(`${en.captain.clock.firstWheels}\\|07:\\d\\d\\|`, 'u'));
    expect(says).toMatch(new RegExp(`${en.captain.clock.firstRunner}\\|08:\\d\\d\\|`, 'u'));
  });

  it('calls the first to come the first also where wheels alone come', () => {
    const says = clockOf(
      withDay({}, { races: [runners(20, { division: 'wheels', waves: [{ time: 7 * H, entrants: 20 }] })] }),
    );
    const [, first] = /First runner\|(\d\d:\d\d)/u.exec(says)!;
    expect(says).toContain(`${en.captain.clock.firstWheels}|${first!}|`);
  });

  it('leaves a line to write on for wheels whose race has no waves', () => {
    expect(
      clockOf(withDay({}, { races: [runners(500), runners(0, { id: 'w', division: 'wheels', waves: [] })] })),
    ).toContain(`${en.captain.clock.firstWheels}|${en.frame.toFill}`);
    expect(
      clockOf(analysisOf(STRAIGHT, [AT_1500], { races: [runners(0, { waves: [], division: 'wheels' })] })),
    ).toContain(`${en.captain.clock.firstWheels}|${en.frame.toFill}`);
  });

  it('leaves the busiest minute to be written where there is none', () => {
    expect(clockOf(changed(withDay(), () => ({ peak: null })))).toContain(
      `${en.captain.clock.busiest}|${en.frame.toFill}`,
    );
  });
});

describe('what is poured, sent and needed', () => {
  const of = (block: typeof suppliesBlock, analysis: Analysis): string =>
    plain(block(analysis, analysis.stations[0]!, en).html);

  it('has no pre-pour at a station that serves no drink', () => {
    expect(of(prePourBlock, withDay({ serves: ['gel'] }))).toBe('');
    expect(of(prePourBlock, withDay())).toContain('Sports drink');
  });

  it('says at how many jugs to call for more, or leaves it to be written where the plan has no second delivery', () => {
    const supplies = withDay().plan.supplies;
    expect(of(suppliesBlock, withDay())).toContain(`${en.captain.supplies.more} ${en.frame.toFill}`);
    const jugs = withDay()
      .day!.stations[0]!.packs.filter(({ kind }) => kind.endsWith('Jug'))
      .map(({ count }) => Math.ceil(count * 0.25));
    const says = of(suppliesBlock, withDay({}, { supplies: { ...supplies, resupply: { at: 0.25, takes: 2400 } } }));
    for (const count of jugs) expect(says).toContain(String(count));
    expect(says).toContain('it takes 40 min');
  });

  it('calls for no jugs where there are none', () => {
    const supplies = { ...withDay().plan.supplies, resupply: { at: 0.25, takes: 2400 } };
    expect(of(suppliesBlock, withDay({ serves: ['gel'] }, { supplies }))).not.toContain('40 min');
  });

  it('names a sign without its words, which stand in the drawing, in the singular or the plural', () => {
    const says = of(
      suppliesBlock,
      changed(withDay(), () => ({
        packs: [
          { kind: 'sign', wording: 'Gel ahead', need: 2, pack: 1, count: 2 },
          { kind: 'sign', wording: 'Water ahead', need: 1, pack: 1, count: 1 },
        ],
      })),
    );
    expect(says).toContain('|signs2|');
    expect(says).toContain('|sign1|');
  });

  it('says how many shifts a long day takes', () => {
    expect(
      of(
        crewBlock,
        changed(withDay(), (day) => ({ crew: { ...day.crew, shifts: 2 } })),
      ),
    ).toContain(`, ${en.captain.crew.shifts(2)}|`);
    expect(of(crewBlock, withDay())).not.toContain(en.captain.crew.shifts(2));
  });
});

describe('the sheet', () => {
  it('says that the side is unclear, in words and on the road of the drawing', () => {
    const page = sheetOf(analysisOf(STRAIGHT, [{ at: from(ORIGIN, 90, 1500) }]));
    expect(plain(page)).toContain(`Runners come from the west. ${en.frame.sideUnclear}|`);
    expect(page).toContain(`${en.captain.drawing.runners} (${en.frame.sideUnclear})`);
  });

  it('says where the kerb folds', () => {
    const page = sheetOf(
      analysisOf(
        turtlePoints(
          ORIGIN,
          [
            [90, 1520],
            [255, 1500],
          ],
          20,
        ),
        [AT_1500],
      ),
    );
    expect(page).toContain(`<p class="small">${en.captain.drawing.folds}</p>`);
    expect(sheetOf(withDay())).not.toContain(en.captain.drawing.folds);
  });

  it('has a drawing for each direction that is served', () => {
    expect(sheetOf(analysisOf(OUT_AND_BACK, [{ ...AT_1500, passes: 'all' }])).match(/class="layout"/gu)).toHaveLength(
      2,
    );
  });

  it('has no drawing of a direction in which nothing is laid out', () => {
    // The tables lie 50 m off the way back, beyond where it would meet them.
    const analysis = analysisOf(OUT_AND_BACK, [{ ...AT_1500, passes: 'all' }]);
    const [station] = analysis.stations;
    const bare = {
      ...station!,
      directions: station!.directions.map((direction) => (direction.lead ? direction : { ...direction, items: [] })),
    };
    expect(sheetOf({ ...analysis, stations: [bare] }).match(/class="layout"/gu)).toHaveLength(1);
  });

  it('gives a position with the letters of its half of the world, and no grid reference where the grid does not reach', () => {
    expect(plain(sheetOf(withDay()))).toMatch(/\(33\.2000\d° S, 17\.38\d{3}° W\)/u);
    const north = turtlePoints([20, 86], [[90, 4000]], 100);
    const page = plain(sheetOf(analysisOf(north, [AT_1500])));
    expect(page).toMatch(/\(8[56]\.\d{5}° N, 20\.\d{5}° E\)/u);
    expect(page).not.toContain(en.captain.emergency.grid);
  });

  it('lists points at the kerb with where they stand, and others with their facts alone; a station on no course has none at the kerb', () => {
    const points = [
      { kind: 'other', at: from(from(ORIGIN, 90, 1530), 180, 6), name: 'Life-ring' },
      { kind: 'medical', at: from(from(ORIGIN, 90, 1530), 180, 90), street: 'Pier Lane' },
    ] as const;
    const says = plain(sheetOf(withDay({ points })));
    expect(says).toContain('|Life-ring: ≈ 30 m past|');
    expect(says).toContain('|First aid: Pier Lane|');
    const far: LonLat = [-10, -30];
    expect(
      plain(sheetOf(analysisOf(STRAIGHT, [{ at: far, points: [{ kind: 'medical', at: far, street: 'Pier Lane' }] }]))),
    ).toContain('|First aid: Pier Lane|');
  });
});
