/** What is said of side and order of recorded points, word by word, and which points it rests on. */
import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, turtle } from '../testing/courses.ts';
import { type Recorded, eastward, placedDocument } from '../testing/placed.ts';
import { layoutOf } from '../testing/plans.ts';
import { reviewPlaced } from './placed.ts';

const straight = turtle(ORIGIN, [[90, 6000]], 100);
/** Out and back on one line. */
const there = turtle(
  ORIGIN,
  [
    [90, 3000],
    [270, 3000],
  ],
  100,
);
const station = (keys: Partial<PlanStation> = {}): Partial<PlanStation> => ({
  at: eastward(1500),
  side: 'right',
  ...keys,
});
const point = (name: string, measure: number, right: number = 5, keys: Partial<Recorded> = {}): Recorded => ({
  name,
  at: eastward(measure, right),
  hdop: 0.2,
  ...keys,
});
const found = (
  code: string,
  points: readonly Recorded[],
  course = straight,
  keys: Partial<PlanStation> = {},
): Finding[] =>
  reviewPlaced(layoutOf([course], [station(keys)]), placedDocument(points)).findings.filter((one) => one.code === code);

describe('the side of a recorded point', () => {
  it('is told with where it stands and what the plan has, and with how sure that is where it is in doubt', () => {
    const [side] = found('placed-side', [point('s1 sign', 1408.56, -5)]);
    expect(side!.message).toBe(
      'The sign is on the left as its runners see it. It should be on the right. Move it across, or correct the side in the plan.',
    );
    expect(side).toMatchObject({
      severity: 'warning',
      where: { file: 'placed.gpx', station: 's1', course: 'c', item: 'sign', measure: expect.closeTo(1408.56, 1) },
    });
    const [doubtful] = found('placed-side', [point('s1 sign', 1408.56, -3, { hdop: 0.8 })], straight, {
      practice: { sideConfidence: 0.9, courseR95: 3 },
    });
    expect(doubtful!.message).toMatch(/\(93 % sure\)/u);
  });

  it('is one note for all points of a direction that do not tell it, each kind once', () => {
    const unsure = { hdop: 2 };
    const notes = found('placed-side', [
      point('s1 sign', 1408.56, 5, unsure),
      point('s1 water from', 1504.9, 5, unsure),
      point('s1 water to', 1506.7, 5, unsure),
    ]);
    expect(notes).toHaveLength(1);
    expect(notes[0]).toMatchObject({ severity: 'note', cannotTell: true, where: { line: 2 } });
    expect(notes[0]!.message).toBe(
      'It is unclear on which side of the road the sign and the water stand. They were recorded too near the course line for their error. Check on the ground.',
    );
  });

  it('is not asked where the plan itself does not know it', () => {
    const made = reviewPlaced(
      layoutOf([straight], [{ at: eastward(1500, 0.2) }]),
      placedDocument([point('s1 sign', 1408.56, -5)]),
    );
    expect(made.verdicts).toHaveLength(1);
    expect(made.findings.filter(({ code }) => code === 'placed-side')).toEqual([]);
  });

  it('of tables is told for the lead only, of signs for the direction whose they are', () => {
    const both = { passes: 'all' as const, serves: ['water' as const], lead: { race: 'c', pass: 0 } };
    const water = found('placed-side', [point('s1 water', 1500, -5)], there, both);
    expect(water.map(({ where }) => [where.item, where.measure])).toEqual([['water', expect.closeTo(1500, 0)]]);
    const sign = found('placed-side', [point('s1 sign', 1501.8288 + 91.44, -5), point('s1 water', 1500)], there, both);
    expect(
      sign.map(({ where, message }) => [where.item, message.includes('on the right as its runners see it')]),
    ).toEqual([['sign', true]]);
  });
});

describe('the order of recorded points', () => {
  it('is told by what runners meet before what, by how much, and what the plan has', () => {
    const [order, ...more] = found('placed-order', [
      point('s1 sign', 1408.56),
      point('s1 sports drink', 1512),
      point('s1 water', 1500),
      point('s1 trash', 1490),
    ]);
    expect(more).toEqual([]);
    expect(order).toMatchObject({
      severity: 'warning',
      unit: 'm',
      measured: expect.closeTo(12, 1),
      where: { station: 's1', course: 'c', item: 'water', measure: expect.closeTo(1500, 1) },
    });
    expect(order!.message).toBe(
      'Runners meet the water before the sports drink, the trash before the sports drink, the trash before the water (by 12 m). The order should be sign, sports drink, water, trash. Move them, or correct the names of the points.',
    );
  });

  it('is not wrong within the errors of both points, and just beyond them it is', () => {
    // k·σ with σ² = (1² + 1²) ÷ 2.4477², k = 1.645: 0.95 m.
    const by = (metres: number): number =>
      found('placed-order', [point('s1 sports drink', 1500 + metres), point('s1 water', 1500)]).length;
    expect([by(0.9), by(1.0), by(-2)]).toEqual([0, 1, 0]);
  });

  it('is not asked of one item’s own points, nor of tables by those who come the other way', () => {
    const both = { passes: 'all' as const, lead: { race: 'c', pass: 0 } };
    expect(found('placed-order', [point('s1 trash', 1600), point('s1 trash', 1560)])).toEqual([]);
    const swapped = [point('s1 sports drink', 1510), point('s1 water', 1500)];
    expect(found('placed-order', swapped, there, both).map(({ where }) => where.measure)).toEqual([
      expect.closeTo(1500, 0),
    ]);
  });
});

describe('two points for one thing', () => {
  it('are refused where both name the same end, and taken where they name both ends or neither', () => {
    const twice = (...names: string[]): string[] =>
      found(
        'placed-ambiguous',
        names.map((name, k) => point(name, 1560 + 10 * k)),
      ).map(({ message }) => message);
    expect(twice('s1 trash from', 's1 trash from')).toEqual([
      expect.stringMatching(
        /^Point “s1 trash from” and point “s1 trash from” both stand for the trash of s1\. Only one should; none is used\./u,
      ),
    ]);
    expect(twice('s1 trash to', 's1 trash from', 's1 trash to')).toHaveLength(1);
    expect(twice('s1 trash from', 's1 trash to')).toEqual([]);
    expect(twice('s1 trash', 's1 trash', 's1 trash')).toEqual([]);
    expect(twice('s1 sign', 's1 sign')).toHaveLength(1);
  });
});

describe('a point that names no station', () => {
  it('is the nearest thing by more than its error, and else could be either', () => {
    // At 1,503.38 m: water begins 1.5 m on, sports drink ends 1.55 m before.
    expect(
      found('placed-ambiguous', [point('table', 1503.3768, 5, { hdop: 1 })]).map(({ message }) => message),
    ).toEqual([
      expect.stringContaining(
        'could be the water of s1 or the sports drink of s1. Its error of 5 m leaves that open, so it is not used.',
      ),
    ]);
    const [far] = found('placed-unknown', [point('sign', 3000)]);
    expect(far!.message).toContain('is more than 60 m from everything in the plan that it could be. It is not used.');
    expect(found('placed-unknown', [point('sign', 1408.56 - 59.9)])).toEqual([]);
    expect(found('placed-unknown', [point('sign', 1408.56 - 60.1)])).toHaveLength(1);
  });

  it('or no name at all is called what it is', () => {
    const [nameless] = found('placed-unknown', [{ name: null, at: eastward(3000), hdop: 1 }]);
    expect(nameless!.message).toMatch(/^A point without a name is more than 60 m/u);
    const [nought] = found('placed-hdop', [point('s1 sign', 1408.56, 5, { hdop: 0 })]);
    expect(nought!.message).toBe(
      'Point “s1 sign” has an hdop of 0, which no receiver gives. It should be more than 0. Its error is taken as 5 m, as if it had none.',
    );
    expect(
      found('placed-hdop', [point('s1 sign', 1408.56, 5, { hdop: 0.1 }), { ...point('s1 water', 1505), hdop: null }]),
    ).toEqual([]);
  });
});

describe('what else is said of recorded points', () => {
  it('is where they may be wrong: two points for one trash drop of a station that is passed both ways, with the way', () => {
    const both = { passes: 'all' as const, serves: ['water' as const], lead: { race: 'c', pass: 0 } };
    const [twice] = found(
      'placed-ambiguous',
      [point('s1 trash from', 1547.5488), point('s1 trash from', 1550)],
      there,
      both,
    );
    expect(twice!.message).toContain('both stand for the trash of s1 for runners at 1.50 km. Only one should;');
    const [water] = found(
      'placed-ambiguous',
      [point('s1 water from', 1500), point('s1 water from', 1501)],
      there,
      both,
    );
    expect(water!.message).toContain('both stand for the water of s1. Only one should;');
  });

  it('is that a wheel and the positions differ, from just beyond what both may be off', () => {
    // Positions: 1.96·√(1² + 1²) ÷ 2.4477 = 1.1325 m (two-sided 95 %); the wheel: 0.5 m and 0.1 % of its reading.
    const differs = (more: number): number =>
      found('placed-wheel-differs', [
        point('s1 sign', 1408.56, 5, { comment: `wheel ${(91.44 + more).toFixed(3)} m` }),
        point('s1 sports drink', 1500),
      ]).length;
    expect([differs(1.7), differs(1.75), differs(-1.7), differs(-1.75)]).toEqual([0, 1, 0, 1]);
  });

  it('is on what all of it rests, of the file that was read', () => {
    const [note] = found('placed-assumptions', [point('s1 sign', 1408.56)]);
    expect(note).toMatchObject({ severity: 'note', source: 'assumption', where: { file: 'placed.gpx' } });
    // 1.645·√(5² + 5²) ÷ 2.4477 = 4.75 m.
    expect(note!.message).toContain('5 m without hdop and for planned places; ± 4.8 m between two');
  });
});

describe('of two stations, courses and ways', () => {
  const two = [station(), { at: eastward(1650), side: 'right' as const, name: 'Fort' }];
  const verdicts = (points: readonly Recorded[]): string[] =>
    reviewPlaced(layoutOf([straight], two), placedDocument(points)).verdicts.map(
      ({ station: id, item, measured }) => `${id} ${item} ${measured.toFixed(0)}`,
    );

  it('a point is that of the station that it names, though another’s stands nearer', () => {
    // Planned: the signs at 1,408.56 m and 1,558.56 m.
    expect(verdicts([point('s2 sign', 1412)])).toEqual(['s2 sign 238']);
    expect(verdicts([point('Fort sign', 1412), point('s1 sign', 1550)])).toEqual(['s1 sign -50', 's2 sign 238']);
  });

  it('is read from its own course, whatever other course the plan lists first', () => {
    const decoy = turtle(eastward(9000, 9000), [[45, 3000]], 100, 'decoy');
    const points = [
      point('s1 sign', 1420, -5),
      point('s1 sports drink', 1512),
      point('s1 water', 1500),
      point('s1 trash from', 1560),
    ];
    const made = (courses: readonly (typeof decoy)[]): unknown => {
      const { verdicts: told, findings } = reviewPlaced(
        layoutOf(courses, [station({ races: ['c'] })]),
        placedDocument(points),
      );
      return [told, findings];
    };
    expect(made([decoy, straight])).toEqual(made([straight]));
  });

  it('a table of which the far end alone was recorded is where that end says', () => {
    const measured = (name: string, measure: number): number =>
      reviewPlaced(
        layoutOf([straight], [station({ serves: ['water'], tables: { water: 5 } })]),
        placedDocument([point('s1 sign', 1408.56), point(name, measure)]),
      ).verdicts[0]!.measured;
    // Five tables: 9.144 m from 1,500 m.
    expect(measured('s1 water to', 1509.144)).toBeCloseTo(91.44, 2);
    expect(measured('s1 water to', 1511.144)).toBeCloseTo(93.44, 2);
    expect(measured('s1 water from', 1502)).toBeCloseTo(93.44, 2);
    expect(measured('s1 water', 1502)).toBeCloseTo(93.44, 2);
  });

  it('those who come the other way are told of their own sign and trash drop: side, and order against the tables', () => {
    const both = {
      passes: 'all' as const,
      serves: ['water' as const],
      lead: { race: 'c', pass: 0 },
      tables: { water: 5 },
    };
    // Their trash drop stands from 45.72 m to 91.44 m past the table’s upstream end, west of it.
    const trash = found(
      'placed-side',
      [point('s1 water', 1500), point('s1 trash from', 1500 - 45.72, -5)],
      there,
      both,
    );
    expect(trash.map(({ where }) => [where.item, Math.round(where.measure!)])).toEqual([['trash', 4546]]);
    // Their sign, planned at 1,600.6 m, stands beside the table: they meet the table’s end at 1,509.1 m first.
    const sign = found('placed-order', [point('s1 sign', 1506), point('s1 water to', 1509.144)], there, both);
    expect(
      sign.map(({ where, message }) => [Math.round(where.measure!), message.includes('the water before the sign')]),
    ).toEqual([[4491, true]]);
  });

  it('a wheel round a corner within the trash drop is held by the end that it was wheeled to', () => {
    const cornered = layoutOf(
      [
        {
          ...turtle(
            ORIGIN,
            [
              [90, 1575],
              [120, 2000],
            ],
            25,
          ),
          drawn: 'centre',
        },
      ],
      [station({ on: { course: 'c', measure: 1500, side: 'right', offset: 6 } })],
    );
    const trash = cornered.stations[0]!.directions[0]!.items.find(({ kind }) => kind === 'trash')!;
    const water = cornered.stations[0]!.directions[0]!.items.find(({ kind }) => kind === 'water')!;
    const wheeled = (name: string, k: 0 | 1): number =>
      reviewPlaced(
        cornered,
        placedDocument([
          { name, at: trash.at[k]!, hdop: 2, comment: `wheel ${(trash.wheel![k] - water.wheel![1]).toFixed(3)} m` },
        ]),
      ).verdicts[0]!.measured;
    expect(trash.along[1] - trash.wheel![1]).toBeGreaterThan(2.5);
    expect(wheeled('s1 trash from', 0)).toBeCloseTo(45.72, 2);
    expect(wheeled('s1 trash to', 1)).toBeCloseTo(91.44, 2);
  });
});

describe('what is missing, doubtful or taken', () => {
  it('a table that was not recorded is a note, a sign a warning, each without a way where there is one only', () => {
    const missing = found('placed-missing', [point('s1 sports drink', 1500)]);
    expect(missing.map(({ severity, message }) => [severity, message])).toEqual([
      ['warning', 'The sign was not recorded: its distance to the first table is not checked.'],
      ['note', 'The water was not recorded: distances to it are taken from where the plan has it.'],
      ['note', 'The trash was not recorded: its distance to the last table is not checked.'],
    ]);
  });

  it('a point without a name is none of what others name', () => {
    expect(
      found('placed-unknown', [point('s1 sign', 1408.56), { name: null, at: eastward(1409), hdop: 0.2 }]),
    ).toHaveLength(1);
    expect(
      found('placed-ambiguous', [point('s1 sign', 1408.56), { name: null, at: eastward(1409), hdop: 0.2 }]),
    ).toEqual([]);
  });

  it('a point that names its station, but nothing of it, is what it stands near, and nothing far off', () => {
    expect(found('placed-unknown', [point('s1 hello', 3000)])).toHaveLength(1);
    expect(found('placed-unknown', [point('s1 hello', 1409)])).toEqual([]);
  });

  it('of several tables those are named that its error does not tell apart; they are then not missed where the point says table', () => {
    const serves = { serves: ['gel', 'sportsDrink', 'water'] as const };
    const doubtful = (name: string | null): readonly Finding[] =>
      reviewPlaced(
        layoutOf([straight], [station({ serves: [...serves.serves] })]),
        placedDocument([{ name, at: eastward(1503.3768), hdop: 1 }, point('s1 sign', 1399.1)]),
      ).findings;
    const said = (name: string | null): [string[], unknown[]] => [
      doubtful(name)
        .filter(({ code }) => code === 'placed-ambiguous')
        .map(({ message }) => message),
      doubtful(name)
        .filter(({ code }) => code === 'placed-missing')
        .map(({ where }) => where.item),
    ];
    const [messages, missed] = said('table');
    expect(messages).toEqual([
      expect.stringContaining('could be the water of s1 or the sports drink of s1. Its error'),
    ]);
    expect(missed).toEqual(['gel', 'trash']);
    expect(said(null)[1]).toEqual(['gel', 'sportsDrink', 'water', 'trash']);
  });

  it('a loose number is that of a station whose thing is nearest, however far that is', () => {
    const two = [station(), { at: eastward(1650), side: 'right' as const }];
    const made = reviewPlaced(layoutOf([straight], two), placedDocument([point('sign 2', 1640)]));
    expect(made.verdicts.map(({ station: id, item }) => [id, item])).toEqual([['s2', 'sign']]);
    expect(reviewPlaced(layoutOf([straight], two), placedDocument([point('sign 1', 1640)])).verdicts).toEqual([]);
  });

  it('a sign has no end, and one that was wheeled refers to the table where it stands', () => {
    const [sign] = reviewPlaced(
      layoutOf([straight], [station()]),
      placedDocument([point('s1 sign', 1408.56, 5, { comment: 'wheel 100 yd' })]),
    ).verdicts;
    expect(sign).toMatchObject({ by: 'wheel', reference: 'placed' });
    expect(sign).not.toHaveProperty('end');
    const [plain] = reviewPlaced(
      layoutOf([straight], [station()]),
      placedDocument([point('s1 sign', 1408.56)]),
    ).verdicts;
    expect(plain).toMatchObject({ by: 'position', reference: 'planned' });
  });
});

it('a distance is told from what it is taken: a sign’s before the first table, a trash drop’s after the last', () => {
  const said = (one: Recorded): string =>
    found('placed-distance', [one, point('s1 sports drink', 1500), point('s1 water', 1504.8768)])[0]!.message;
  expect(said(point('s1 sign', 1430))).toContain(
    'The sign is 70 m before the first table. It should be 82 to 101 m. Move it back 21 m.',
  );
  expect(said(point('s1 trash from', 1577))).toContain(
    'm after the last table. It should be 37 to 55 m. Move it back 25 m.',
  );
});
