/** Which recorded point is which item, where a name leaves it open: several stations, shared numbers, pins, both directions. */
import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, turtle } from '../testing/courses.ts';
import { type Recorded, eastward, placedDocument } from '../testing/placed.ts';
import { layoutOf } from '../testing/plans.ts';
import { type PlacedReview, reviewPlaced } from './placed.ts';

const straight = turtle(ORIGIN, [[90, 6000]], 100);
/** Out 3 km and back along the same road. */
const there = turtle(
  ORIGIN,
  [
    [90, 3000],
    [270, 3000],
  ],
  100,
);
const at = (measure: number, keys: Partial<PlanStation> = {}): Partial<PlanStation> => ({
  at: eastward(measure),
  side: 'right',
  ...keys,
});
const review = (
  points: readonly Recorded[],
  stations: readonly Partial<PlanStation>[] = [at(1500)],
  course = straight,
): PlacedReview => reviewPlaced(layoutOf([course], stations), placedDocument(points));
const found = ({ findings }: PlacedReview, code: string): Finding[] =>
  findings.filter((finding) => finding.code === code);
const point = (name: string | null, measure: number, keys: Partial<Recorded> = {}): Recorded => ({
  name,
  at: eastward(measure),
  hdop: 0.2,
  ...keys,
});

describe('a point', () => {
  it('that names two stations equally is not used, and both are named', () => {
    const made = review([point('Kelp sign', 1408)], [at(1500, { name: 'Kelp' }), at(3500, { name: 'Kelp' })]);
    expect(made.verdicts).toEqual([]);
    expect(found(made, 'placed-ambiguous')).toEqual([
      expect.objectContaining({
        severity: 'warning',
        message: expect.stringContaining('fits 2 stations called Kelp. It is not used.'),
      }),
    ]);
  });

  it('that names its station alone is the pin: the upstream end of the first table that has a drink, else of the gel', () => {
    const serves = [['sportsDrink', 'water'], ['water'], ['gel']] as const;
    const wordOf = (one: readonly ('gel' | 'sportsDrink' | 'water')[]): unknown[] => {
      const made = review([point('s1', 1500), point('s1 sign', 1400)], [at(1500, { serves: one })]);
      return [
        found(made, 'placed-unknown').length,
        found(made, 'placed-missing').map(({ where }) => where.item),
        made.verdicts.map(({ reference }) => reference),
      ];
    };
    expect(serves.map(wordOf)).toEqual([
      [0, ['water', 'trash'], ['placed']],
      [0, ['trash'], ['placed']],
      [0, ['trash'], ['placed']],
    ]);
  });

  it('that says "drink" alone is not used where it may be either, and is the one that is served where one is', () => {
    const both = review([point('s1 drink', 1502.5, { hdop: 1 })]);
    expect([found(both, 'placed-ambiguous').length, both.verdicts]).toEqual([1, []]);
    const one = review([point('s1 drink', 1500), point('s1 sign', 1408.56)], [at(1500, { serves: ['water'] })]);
    expect(found(one, 'placed-ambiguous')).toEqual([]);
    expect(one.verdicts).toEqual([expect.objectContaining({ item: 'sign', verdict: 'holds', reference: 'placed' })]);
  });

  it('without a station’s name is the nearest that its word allows, and not used where two are as near', () => {
    // The signs stand at 1,408.56 and 1,488.56 m: 40 m from a point between them.
    const two = [at(1500), at(1580)];
    expect(review([point('sign', 1410, { hdop: 1 })], two).verdicts).toEqual([
      expect.objectContaining({ station: 's1', item: 'sign' }),
    ]);
    expect(review([point('sign', 1487, { hdop: 1 })], two).verdicts).toEqual([
      expect.objectContaining({ station: 's2', item: 'sign' }),
    ]);
    // A loose number counts only where no other station's sign is nearer: it may count something else.
    expect(review([point('sign 2', 1410, { hdop: 1 })], two).verdicts).toEqual([
      expect.objectContaining({ station: 's1', item: 'sign' }),
    ]);
    expect(review([point('sign 2', 1480, { hdop: 1 })], two).verdicts).toEqual([
      expect.objectContaining({ station: 's2', item: 'sign' }),
    ]);
    const between = review([point('sign', 1448.56, { hdop: 2 })], two);
    expect(between.verdicts).toEqual([]);
    expect(found(between, 'placed-ambiguous')).toHaveLength(1);
  });
});

it('a station whose name has neither letters nor numbers is named by its id alone', () => {
  const made = review([point('sign', 3000)], [at(1500, { name: '💧' })]);
  expect(found(made, 'placed-unknown')).toHaveLength(1);
  expect(review([point('s1 sign', 1408.56)], [at(1500, { name: '💧' })]).verdicts).toHaveLength(1);
});

describe('a station that runners pass both ways', () => {
  const both = at(1500, { passes: 'all', serves: ['water'] });
  /** Planned: sign 91.44 m before the pin; for the way back 91.44 m past the table's end (1.83 m), which is before it as they run. */
  const [out, back] = [1500 - 91.44, 1501.8288 + 91.44];

  it('has a sign for each way, each taken for the nearer', () => {
    const made = review([point('s1 sign', out), point('s1 sign', back), point('s1 water', 1500)], [both], there);
    expect(made.verdicts.map(({ item, verdict, measured }) => [item, verdict, Math.round(measured)])).toEqual([
      ['sign', 'holds', 91],
      ['sign', 'holds', 91],
    ]);
  });

  it('says which way a sign or trash drop is missing for', () => {
    const made = review([point('s1 sign', out), point('s1 water', 1500)], [both], there);
    const missing = found(made, 'placed-missing').map(({ message }) => message);
    expect(missing).toHaveLength(3);
    expect(
      missing.some((message) => message.startsWith('The sign for runners who pass at 4.50 km was not recorded')),
    ).toBe(true);
    expect(
      missing.filter((message) => /^The trash for runners who pass at (?:1|4)\.50 km/u.test(message)),
    ).toHaveLength(2);
  });

  it('says for which way two points stand for one sign', () => {
    const made = review([point('s1 sign', back), point('s1 sign', back + 5), point('s1 water', 1500)], [both], there);
    expect(found(made, 'placed-ambiguous')).toEqual([
      expect.objectContaining({
        message: expect.stringMatching(/both stand for the sign of s1 for runners at 4\.50 km\. Only one should/u),
      }),
    ]);
  });

  it('meets a table recorded with both ends from behind: the sign of the way back is measured to the end that those runners meet first', () => {
    const made = review(
      [point('s1 sign', back + 3), point('s1 water from', 1500), point('s1 water to', 1504.8288)],
      [both],
      there,
    );
    const [sign] = made.verdicts;
    // From 1,596.27 back to 1,504.83.
    expect(sign).toMatchObject({ item: 'sign', measured: expect.closeTo(91.44, 1), reference: 'placed' });
  });

  it('takes two points at one table without words for its ends as the outer ones', () => {
    const made = review(
      [point('s1 sign', out), point('s1 sign', back + 3), point('s1 water', 1500), point('s1 water', 1504.8288)],
      [both],
      there,
    );
    expect(made.verdicts.map(({ measured }) => Math.round(measured * 10) / 10)).toEqual([91.4, 91.4]);
  });
});

describe('the hand-out line', () => {
  it('is never recorded: it moves with the drink table that was, and else stays where the plan has it', () => {
    const crew = layoutOf([straight], [at(1500, { serves: ['water'] })]);
    const [station] = crew.stations;
    const line = {
      ...station!.directions[0]!.items[1]!,
      kind: 'handOut' as const,
      from: 1480,
      to: 1520,
      along: [-20, 20] as const,
    };
    const laid = {
      ...crew,
      stations: [
        { ...station!, directions: [{ ...station!.directions[0]!, items: [...station!.directions[0]!.items, line] }] },
      ],
    };
    const measured = (points: readonly Recorded[]): number =>
      reviewPlaced(laid, placedDocument(points)).verdicts[0]!.measured;
    // The sign at 1,388.56 is 91.44 m before the line's planned beginning.
    expect(measured([point('s1 sign', 1388.56)])).toBeCloseTo(91.44, 1);
    expect(measured([point('s1 sign', 1388.56), point('s1 water', 1510)])).toBeCloseTo(101.44, 1);
  });
});

describe('what is said of a verdict', () => {
  const trash = (name: string, measure: number, keys: Partial<Recorded> = {}): Finding[] =>
    review([point(name, measure, keys), point('s1 water', 1504.8768), point('s1 sports drink', 1500)]).findings.filter(
      ({ where, code }) => where.item === 'trash' && code !== 'placed-missing',
    );
  const last = 1500 + 2 * 1.8288 + 3.048;

  it('names the end of a trash drop that stands wrong', () => {
    expect(trash('s1 trash from', last + 75)).toEqual([
      expect.objectContaining({
        code: 'placed-distance',
        message: expect.stringMatching(/^The beginning of the trash is 75 m/u),
      }),
    ]);
    expect(trash('s1 trash to', last + 60)).toEqual([
      expect.objectContaining({
        code: 'placed-distance',
        message: expect.stringMatching(/^The end of the trash is 60 m .* Move it forward/u),
      }),
    ]);
  });

  it('reads a wheel from the end of the last table to each end of the trash drop', () => {
    const wheeled = (name: string, comment: string): unknown =>
      review([point(name, last + 70, { comment, hdop: 4 })]).verdicts.map(({ by, measured, verdict }) => [
        by,
        measured,
        verdict,
      ]);
    // 50 yd and 100 yd; on straight ground wheel and course distance are the same.
    expect(wheeled('s1 trash from', 'wheel 50 yd')).toEqual([['wheel', expect.closeTo(45.72, 6), 'holds']]);
    expect(wheeled('s1 trash to', 'wheel 100 yd')).toEqual([['wheel', expect.closeTo(91.44, 6), 'holds']]);
  });

  it('asks for a wheel from the last table where errors are larger than the tolerance', () => {
    expect(
      trash('s1 trash from', last + 45.72, { hdop: 4 }).find(({ code }) => code === 'placed-wheel-needed')!.message,
    ).toContain('Wheel from the end of the last table to it and note it');
  });

  it('says so where the wheel’s own error is too large, and then asks for a tape', () => {
    const layout = layoutOf([straight], [at(1500)]);
    const [station] = layout.stations;
    const unsure = {
      ...layout,
      stations: [
        {
          ...station!,
          directions: [
            {
              ...station!.directions[0]!,
              items: station!.directions[0]!.items.map((item) => ({ ...item, wheelMargin: 12 })),
            },
          ],
        },
      ],
    };
    const { findings } = reviewPlaced(
      unsure,
      placedDocument([point('s1 sign', 1408.56, { comment: 'wheel 100 yd' }), point('s1 sports drink', 1500)]),
    );
    expect(findings.find(({ code }) => code === 'placed-wheel-needed')!.message).toMatch(
      /The wheel error of the sign \(± \d+(?:\.\d)? m\) is larger than the tolerance of 9\.1 m.*check with a tape/u,
    );
  });

  it('takes the position where the plan’s line along the kerb folds, and says so', () => {
    const layout = layoutOf([straight], [at(1500)]);
    const [station] = layout.stations;
    const folded = {
      ...layout,
      stations: [
        {
          ...station!,
          directions: [
            {
              ...station!.directions[0]!,
              items: station!.directions[0]!.items.map((item) => ({ ...item, wheel: null })),
            },
          ],
        },
      ],
    };
    const made = reviewPlaced(
      folded,
      placedDocument([point('s1 sign', 1408.56, { comment: 'wheel 100 yd' }), point('s1 sports drink', 1500)]),
    );
    expect(made.verdicts[0]).toMatchObject({ by: 'position', verdict: 'holds' });
    expect(found(made, 'placed-wheel-unused')).toEqual([
      expect.objectContaining({
        severity: 'warning',
        message: expect.stringContaining('the line along the kerb folds back on itself'),
      }),
    ]);
  });
});

it('a station that no course runs by has nothing to be recorded, and nothing is missed there', () => {
  const made = review([point('s1 sign', 1408.56), point('s1 sports drink', 1500)], [at(1500), { at: [-10, -30] }]);
  expect(found(made, 'placed-missing').filter(({ where }) => where.station === 's2')).toEqual([]);
});
