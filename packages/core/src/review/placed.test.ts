import { expect, it } from 'vitest';
import type { Finding, LonLat } from '../finding.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, turtle } from '../testing/courses.ts';
import { type Recorded, eastward, placedDocument } from '../testing/placed.ts';
import { layoutOf } from '../testing/plans.ts';
import { reviewLayout } from './review.ts';
import { type PlacedReview, reviewPlaced } from './placed.ts';

// 100 yd, 10 yd, 50 yd and 10 ft: the house's rules, common practice, no source.
const AHEAD = 91.44;
const LAST = 2 * 1.8288 + 3.048;

const course = turtle(ORIGIN, [[90, 6000]], 100);
const station = (keys: Partial<PlanStation> = {}): Partial<PlanStation> => ({
  name: 'Gannet Point',
  at: eastward(1500),
  side: 'right',
  ...keys,
});
const review = (points: readonly Recorded[], stations: readonly Partial<PlanStation>[] = [station()]): PlacedReview =>
  reviewPlaced(layoutOf([course], stations), placedDocument(points));

const SIGN: Recorded = { name: 's1 sign', at: eastward(1500 - AHEAD), hdop: 0.2 };
const TABLE: Recorded = { name: 's1 sports drink', at: eastward(1500), hdop: 0.2 };
const WATER: Recorded = { name: 's1 water', at: eastward(1500 + 1.8288 + 3.048), hdop: 0.2 };
const FROM: Recorded = { name: 's1 trash from', at: eastward(1500 + LAST + 45.72), hdop: 0.2 };
const TO: Recorded = { name: 's1 trash to', at: eastward(1500 + LAST + 91.44), hdop: 0.2 };
const ALL = [SIGN, TABLE, WATER, FROM, TO];

const codes = ({ findings }: PlacedReview): string[] =>
  findings.filter(({ code }) => code !== 'placed-assumptions').map(({ code, where }) => `${code} ${where.item ?? '-'}`);
const found = ({ findings }: PlacedReview, code: string): Finding[] =>
  findings.filter((finding) => finding.code === code);
const moved = (point: Recorded, measure: number, right?: number): Recorded => ({
  ...point,
  at: eastward(measure, right),
});

it('exact positions hold, each with its distance and limits, and nothing else is said', () => {
  const made = review(ALL);
  expect(made.verdicts).toEqual([
    expect.objectContaining({
      station: 's1',
      item: 'sign',
      verdict: 'holds',
      measured: expect.closeTo(91.44, 2),
      limit: [expect.closeTo(82.296, 9), expect.closeTo(100.584, 9)],
      move: 0,
      at: SIGN.at,
      by: 'position',
      reference: 'placed',
      side: 'right',
    }),
    expect.objectContaining({
      station: 's1',
      item: 'trash',
      end: 'from',
      verdict: 'holds',
      measured: expect.closeTo(45.72, 2),
      limit: [expect.closeTo(36.576, 9), expect.closeTo(54.864, 9)],
      move: 0,
    }),
    expect.objectContaining({
      station: 's1',
      item: 'trash',
      end: 'to',
      verdict: 'holds',
      measured: expect.closeTo(91.44, 2),
      move: 0,
    }),
  ]);
  expect(codes(made)).toEqual([]);
});

it('a sign 20 m too near fails, and is to be moved 20 m upstream', () => {
  const made = review([moved(SIGN, 1500 - AHEAD + 20), TABLE, WATER, FROM, TO]);
  expect(made.verdicts[0]).toMatchObject({
    verdict: 'fails',
    measured: expect.closeTo(71.44, 2),
    move: expect.closeTo(-20, 2),
  });
  expect(found(made, 'placed-distance')).toEqual([
    expect.objectContaining({
      severity: 'error',
      where: expect.objectContaining({ file: 'placed.gpx', line: 2, column: 3, station: 's1', item: 'sign' }),
      message: expect.stringContaining('Move it back 20 m.'),
    }),
  ]);
  expect(review([moved(SIGN, 1500 - AHEAD - 20), TABLE]).verdicts[0]).toMatchObject({
    verdict: 'fails',
    move: expect.closeTo(20, 2),
  });
});

it('the sign is measured to the table where it stands, else to where the plan has it', () => {
  const shifted = [moved(SIGN, 1520 - AHEAD), moved(TABLE, 1520)];
  expect(review(shifted).verdicts[0]).toMatchObject({
    verdict: 'holds',
    measured: expect.closeTo(AHEAD, 2),
    reference: 'placed',
  });
  expect(review([shifted[0]!]).verdicts[0]).toMatchObject({
    verdict: 'fails',
    measured: expect.closeTo(AHEAD - 20, 2),
    reference: 'planned',
  });
});

it('the first table is the gel where gel is served', () => {
  const gel: Recorded = { name: 's1 gel', at: eastward(1500 - 7.62 - 1.8288), hdop: 0.2 };
  const serves = [station({ serves: ['gel', 'sportsDrink', 'water'] })];
  expect(review([moved(SIGN, 1500 - 9.4488 - AHEAD), gel, TABLE], serves).verdicts[0]).toMatchObject({
    verdict: 'holds',
    measured: expect.closeTo(AHEAD, 2),
  });
});

it('hdop is read as a 95 % radius of 5 m each, and both ends count', () => {
  // k·σ with σ² = (r95a² + r95b²) ÷ 2.4477²; −2·ln 0.05 = 2.4477².
  const margin = (a: number, b: number): number => (1.645 * Math.hypot(a, b)) / Math.sqrt(-2 * Math.log(0.05));
  const at = (sign: number | null, table: number | null): number =>
    review([
      { ...SIGN, hdop: sign },
      { ...TABLE, hdop: table },
    ]).verdicts[0]!.margin;
  expect(at(0.2, 0.2)).toBeCloseTo(margin(1, 1), 3);
  expect(at(0.8, 1.2)).toBeCloseTo(margin(4, 6), 3);
  expect(at(null, 0.6)).toBeCloseTo(margin(5, 3), 3);
  expect(review([{ ...SIGN, hdop: 0.6 }]).verdicts[0]!.margin).toBeCloseTo(margin(3, 5), 3);
  const nought = review([{ ...SIGN, hdop: 0 }, TABLE]);
  expect(nought.verdicts[0]!.margin).toBeCloseTo(margin(5, 1), 3);
  expect(found(nought, 'placed-hdop')).toHaveLength(1);
});

it('says what it assumes', () => {
  const [note] = found(review(ALL), 'placed-assumptions');
  for (const words of [
    '5 m × hdop',
    '5 m without hdop and for planned places',
    '0.1 % plus 0.5 m',
    'the sign’s is used',
  ])
    expect(note!.message).toContain(words);
});

it('several spellings of one name are one thing', () => {
  for (const name of [
    'S1: Sign',
    's-01 SIGN',
    'gannet point — water ahead',
    'Gannet Point sign',
    'station 1 sign',
    'sign 1',
    'sign',
  ]) {
    expect([name, review([{ ...SIGN, name }]).verdicts.map(({ item }) => item)]).toEqual([name, ['sign']]);
  }
});

it('a point without a name is the nearest thing that nothing else is, and none where two are as near', () => {
  expect(review([{ ...SIGN, name: null, hdop: 1 }, TABLE, WATER, FROM, TO]).verdicts.map(({ item }) => item)).toEqual([
    'sign',
    'trash',
    'trash',
  ]);
  const between = review([SIGN, { ...TABLE, name: '017', hdop: 1 }]);
  expect(codes(between)).toContain('placed-ambiguous -');
  expect(between.verdicts[0]).toMatchObject({ reference: 'planned' });
});

it('a point that names nothing of the plan, or stands far from all of it, is unknown and not used', () => {
  for (const point of [
    { name: 's1 gel', at: eastward(1490) },
    { name: 's1 medical tent', at: eastward(1500) },
    { name: 'sign', at: eastward(3000) },
    { name: null, at: eastward(3000) },
  ]) {
    const made = review([...ALL, point]);
    expect([point.name, ...codes(made)]).toEqual([point.name, 'placed-unknown -']);
    expect(made.verdicts).toHaveLength(3);
    expect(found(made, 'placed-unknown')[0]!.where).toMatchObject({ file: 'placed.gpx', line: 7, column: 3 });
  }
});

it('two points for one sign are a finding, and neither is used', () => {
  const made = review([SIGN, { ...SIGN, at: eastward(1400) }, TABLE]);
  expect(made.verdicts).toEqual([]);
  expect(codes(made)).toEqual(['placed-ambiguous sign', 'placed-missing water', 'placed-missing trash']);
});

it('what was not recorded is told item by item, and a station without any point once', () => {
  const made = review([SIGN, TABLE], [station(), { at: eastward(3500), side: 'right' }]);
  expect(codes(made)).toEqual(['placed-missing water', 'placed-missing trash', 'placed-missing -']);
  expect(codes(review([TABLE]))).toContain('placed-missing sign');
});

it('a sign far from the course has no distance, and says so', () => {
  const made = review([{ ...SIGN, at: eastward(1410, 90) }, TABLE]);
  expect(made.verdicts).toEqual([]);
  expect(codes(made)).toContain('placed-off-course sign');
});

it('the other side of the road is told where the errors allow it, on either side', () => {
  expect(codes(review([moved(SIGN, 1500 - AHEAD, -5), TABLE, WATER, FROM, TO]))).toEqual(['placed-side sign']);
  const left = [station({ at: eastward(1500, -5), side: 'left' })];
  expect(
    codes(
      review(
        ALL.map((point, k) => moved(point, [1500 - AHEAD, 1500, 1504.9, 1552.4, 1598.1][k]!, -5)),
        left,
      ),
    ),
  ).toEqual([]);
  expect(found(review([SIGN], left), 'placed-side')).toEqual([
    expect.objectContaining({ severity: 'warning', message: expect.stringContaining('on the right') }),
  ]);
  expect(found(review([{ ...SIGN, hdop: 2 }]), 'placed-side')).toEqual([
    expect.objectContaining({ severity: 'note', cannotTell: true }),
  ]);
});

it('the order along the course is told where it is surely wrong, and not within the errors', () => {
  const swapped = review([SIGN, moved(TABLE, 1510), moved(WATER, 1500), FROM, TO]);
  expect(found(swapped, 'placed-order')).toEqual([
    expect.objectContaining({
      measured: expect.closeTo(10, 2),
      message: expect.stringContaining('the water before the sports drink'),
    }),
  ]);
  // The sign is then measured to the water, which runners meet first.
  expect(swapped.verdicts[0]!.measured).toBeCloseTo(AHEAD, 2);
  const unsure = ALL.map((point) => ({ ...point, hdop: 2 }));
  expect(found(review([unsure[0]!, moved(unsure[1]!, 1505), moved(unsure[2]!, 1500)]), 'placed-order')).toEqual([]);
  expect(codes(review([moved(SIGN, 1700), TABLE, WATER, FROM, TO]))).toContain('placed-order sportsDrink');
});

it('where the errors alone are larger than the tolerance a wheel is asked for, and its reading then decides', () => {
  const unsure = { hdop: 2 };
  const alone = review([
    { ...SIGN, ...unsure },
    { ...TABLE, ...unsure },
  ]);
  expect(alone.verdicts[0]).toMatchObject({ verdict: 'cannot tell', by: 'position' });
  expect(found(alone, 'placed-wheel-needed')).toEqual([
    expect.objectContaining({
      limit: expect.closeTo(9.144, 9),
      message: expect.stringContaining('Wheel from the sign to the first table'),
    }),
  ]);
  const wheeled = review([
    { ...SIGN, ...unsure, comment: 'wheel 98 yd' },
    { ...TABLE, ...unsure },
  ]);
  // On a straight course wheel and course distance are the same; 0.1 % of 98 yd and 0.5 m.
  expect(wheeled.verdicts[0]).toMatchObject({
    verdict: 'holds',
    by: 'wheel',
    measured: expect.closeTo(89.6112, 6),
    margin: expect.closeTo(0.5896112, 6),
    move: 0,
  });
  expect(found(wheeled, 'placed-wheel-needed')).toEqual([]);
  expect(review([{ ...SIGN, ...unsure, comment: 'wheel 111 yd' }, TABLE]).verdicts[0]).toMatchObject({
    verdict: 'fails',
    by: 'wheel',
    move: expect.closeTo(11 * 0.9144, 6),
  });
});

it('a wheel that cannot be read, or does not agree with the positions, is a finding', () => {
  expect(codes(review([{ ...SIGN, comment: 'wheel 98' }, TABLE, WATER, FROM, TO]))).toEqual([
    'placed-wheel-unread sign',
  ]);
  expect(codes(review([{ ...SIGN, comment: 'wheel 94 yd' }, TABLE, WATER, FROM, TO]))).toEqual([
    'placed-wheel-differs sign',
  ]);
});

it('a wheel along the inside of a corner reads less, and is held as the plan’s own difference has it', () => {
  // A square corner at an offset o takes o·(2 − 0) = 2·o off the inside where it is trimmed: 12 m at 6 m (plane geometry).
  const cornered = layoutOf(
    [
      {
        ...turtle(
          ORIGIN,
          [
            [90, 1450],
            [180, 2000],
          ],
          50,
        ),
        drawn: 'centre',
      },
    ],
    [{ on: { course: 'c', measure: 1495, side: 'right', offset: 6 }, serves: ['water'] }],
  );
  const corner: LonLat = eastward(1495 - AHEAD, 6);
  const inside = reviewPlaced(
    cornered,
    placedDocument([{ name: 's1 sign', at: corner, hdop: 2, comment: `wheel ${(AHEAD - 12).toFixed(2)} m` }]),
  );
  expect(inside.verdicts[0]).toMatchObject({ by: 'wheel', measured: expect.closeTo(AHEAD, 0) });
});

it('one point for trash may stand anywhere in the stretch; boxes are taken from first to last', () => {
  const one = (measure: number): PlacedReview['verdicts'][number] =>
    review([TABLE, WATER, { name: 's1 trash', at: eastward(1500 + LAST + measure), hdop: 0.2 }]).verdicts[0]!;
  expect(one(70)).toMatchObject({
    item: 'trash',
    verdict: 'holds',
    limit: [expect.closeTo(36.576, 9), expect.closeTo(100.584, 9)],
  });
  expect(one(120)).toMatchObject({ verdict: 'fails', move: expect.closeTo(68.58 - 120, 2) });
  const boxes = review([
    TABLE,
    WATER,
    ...[3, 1, 2].map((k) => ({ name: `s1 box ${k}`, at: eastward(1500 + LAST + 23 + 23 * k), hdop: 0.2 })),
  ]);
  expect(boxes.verdicts.map(({ end, measured, verdict }) => [end, Math.round(measured), verdict])).toEqual([
    ['from', 46, 'holds'],
    ['to', 92, 'holds'],
  ]);
});

it('runners who come the other way have a sign of their own, measured to the end that they meet first', () => {
  const there = layoutOf(
    [
      turtle(
        ORIGIN,
        [
          [90, 3000],
          [0, 1],
          [270, 3000],
        ],
        50,
      ),
    ],
    [{ at: eastward(1500), side: 'right', passes: 'all', serves: ['water'] }],
  );
  const table = 1.8288;
  const own = { name: 's1 sign', at: eastward(1500 - AHEAD), hdop: 0.2 };
  const other = { name: 's1 sign', at: eastward(1500 + table + AHEAD), hdop: 0.2 };
  const made = reviewPlaced(there, placedDocument([own, other, { name: 's1 water', at: eastward(1500), hdop: 0.2 }]));
  expect(made.verdicts.map(({ verdict, measured, side }) => [verdict, measured.toFixed(1), side])).toEqual([
    ['holds', '91.4', 'right'],
    ['holds', '91.4', 'left'],
  ]);
});

it('a distance that cannot be told is a note of its own, and counted by its check', () => {
  const made = review([
    { ...moved(SIGN, 1500 - AHEAD + 8), hdop: 1 },
    { ...TABLE, hdop: 1 },
  ]);
  expect(made.verdicts[0]).toMatchObject({ verdict: 'cannot tell', move: expect.closeTo(-8, 2) });
  expect(found(made, 'placed-distance')).toEqual([
    expect.objectContaining({ severity: 'note', cannotTell: true, measured: expect.closeTo(AHEAD - 8, 2) }),
  ]);
  expect(made.checks.find(({ code }) => code === 'placed-distance')).toMatchObject({
    ran: true,
    found: 1,
    cannotTell: 1,
  });
});

it('every code that is found is a check’s', () => {
  const made = review([
    moved(SIGN, 1440, -5),
    { ...TABLE, hdop: 0 },
    { name: 's1 trash', at: eastward(1510), comment: 'wheel 98' },
    { name: 's1 gel', at: eastward(1490) },
  ]);
  const listed = new Set(made.checks.map(({ code }) => code));
  expect(
    codes(made)
      .map((code) => code.split(' ')[0]!)
      .filter((code) => !listed.has(code)),
  ).toEqual([]);
  expect(codes(made).length).toBeGreaterThan(4);
});

it('a waiver of what is found on recorded points counts when there are some, and is not missed when there are none', () => {
  const layout = layoutOf([course], [station()]);
  const given = { by: 'R. Reviewer', reason: 'lamp post', date: '2027-08-01' };
  const waiver = { code: 'placed-distance', station: 's1', ...given };
  const waiving = { ...layout, plan: { ...layout.plan, waivers: [waiver, { ...waiver, code: 'placed-order' }] } };
  const made = reviewPlaced(waiving, placedDocument([moved(SIGN, 1440), TABLE]));
  expect(found(made, 'placed-distance')).toEqual([expect.objectContaining({ waived: given })]);
  expect(found(made, 'waiver-unmatched')).toEqual([
    expect.objectContaining({ where: { path: '/waivers/1', station: 's1' } }),
  ]);
  expect(reviewLayout(waiving).findings.filter(({ code }) => code === 'waiver-unmatched')).toEqual([]);
});
