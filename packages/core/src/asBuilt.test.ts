import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Analysis } from './analyse.ts';
import { type BuiltReview, reviewBuilt } from './asBuilt.ts';
import type { Finding, LonLat } from './finding.ts';
import { itemOf, leadOf } from './plan/lookups.ts';
import type { PlanStation, PlanWaiver, PlanZone } from './plan/plan.ts';
import { seenOf } from './review/seen.ts';
import { analysisOf } from './testing/analyses.ts';
import { ORIGIN, from, turtlePoints } from './testing/courses.ts';
import { type Recorded, disturbed, eastward, gaussian, placedDocument } from './testing/placed.ts';
import { tries } from './testing/tries.ts';

interface Keys {
  readonly zones?: readonly PlanZone[];
  readonly waivers?: readonly PlanWaiver[];
  readonly line?: readonly LonLat[];
}

const STRAIGHT = turtlePoints(ORIGIN, [[90, 9000]], 100);

const analysed = (stations: readonly Partial<PlanStation>[], { line = STRAIGHT, ...keys }: Keys = {}): Analysis =>
  analysisOf(line, stations, keys);

/** Three stations of a straight road, 5 m to the right of its line. */
const AT = [1500, 4500, 7000] as const;
const ROAD = AT.map((measure): Partial<PlanStation> => ({ at: eastward(measure), side: 'right' }));

/** Everything of the stations, recorded where the plan has it, then moved. */
function recordedOf(
  { stations }: Analysis,
  move: (at: LonLat, station: string, item: string) => LonLat,
  hdop: number = 0.2,
): Recorded[] {
  return stations.flatMap((station) => {
    const lead = leadOf(station)!;
    const at = (kind: 'sign' | 'sportsDrink' | 'water' | 'trash', end: 0 | 1, name: string): Recorded => ({
      name: `${station.id} ${name}`,
      at: move(itemOf(lead, kind)!.at[end]!, station.id, kind),
      hdop,
    });
    return [
      at('sign', 0, 'sign'),
      at('sportsDrink', 0, 'sports drink'),
      at('water', 0, 'water'),
      at('trash', 0, 'trash from'),
      at('trash', 1, 'trash to'),
    ];
  });
}

const built = (analysis: Analysis, points: readonly Recorded[]): BuiltReview =>
  reviewBuilt(analysis, placedDocument(points));

const of = ({ findings }: Pick<BuiltReview, 'findings'>, code: string): Finding[] =>
  findings.filter((finding) => finding.code === code);

/** What is new: all but what the points themselves are asked. */
const added = ({ findings }: BuiltReview): string[] =>
  findings
    .filter(({ built: new_ }) => new_ === true)
    .map(({ code, severity, where, cannotTell }) =>
      [severity, code, where.station, where.item, cannotTell === true ? 'open' : undefined]
        .filter((part) => part !== undefined)
        .join(' '),
    );

const east = (at: LonLat, metres: number): LonLat => from(at, metres < 0 ? 270 : 90, Math.abs(metres));
const moving =
  (which: string, metres: number) =>
  (at: LonLat, station: string): LonLat =>
    station === which ? east(at, metres) : at;

describe('a station far from its plan', () => {
  const plan = analysed(ROAD);

  it('is an error where it was recorded 120 m down the road, with the distance and which way', () => {
    const made = built(plan, recordedOf(plan, moving('s2', 120)));
    expect(of(made, 'placed-far')).toEqual([
      expect.objectContaining({
        severity: 'error',
        where: expect.objectContaining({ file: 'placed.gpx', station: 's2', item: 'sportsDrink' }),
        measured: expect.closeTo(120, 2),
        limit: 20,
        unit: 'm',
        message: expect.stringContaining('120 m from their planned place, too far forward'),
      }),
    ]);
    expect(made.stations.map(({ station, along, verdict }) => [station, Math.round(along!), verdict])).toEqual([
      ['s1', 0, 'holds'],
      ['s2', 120, 'fails'],
      ['s3', 0, 'holds'],
    ]);
    expect(made.verdicts.every(({ verdict }) => verdict === 'holds')).toBe(true);
  });

  it('is found beyond the limit by the margin only, and left open between', () => {
    // k·σ of 1 m and 5 m: 1.645 · √(1² + 5²) ÷ 2.4477 = 3.43 m.
    const at = (metres: number): string[] =>
      of(built(plan, recordedOf(plan, moving('s2', metres))), 'placed-far').map(
        ({ severity, cannotTell }) => `${severity} ${cannotTell === true}`,
      );
    expect(at(19.9)).toEqual([]);
    expect(at(20.1)).toEqual(['note true']);
    expect(at(23.3)).toEqual(['note true']);
    expect(at(23.6)).toEqual(['error false']);
    expect(at(-23.6)).toEqual(['error false']);
  });

  it('follows the limit of the practice, at one station too', () => {
    const wide = analysed(ROAD.map((station) => ({ ...station, practice: { placedWithin: 130 } })));
    expect(of(built(wide, recordedOf(wide, moving('s2', 120))), 'placed-far')).toEqual([]);
  });

  it('is moved by a plain point at its pin, and by the water where the first table was not recorded', () => {
    const plain = built(plan, [{ name: 's2', at: eastward(4600), hdop: 0.2 }]);
    expect(plain.stations).toEqual([
      expect.objectContaining({ station: 's2', item: 'sportsDrink', along: expect.closeTo(100, 2) }),
    ]);
    const [, , water] = recordedOf(plan, moving('s1', 50));
    expect(built(plan, [water!]).stations).toEqual([
      expect.objectContaining({ station: 's1', item: 'water', along: expect.closeTo(50, 2), verdict: 'fails' }),
    ]);
  });

  it('makes legs too long where it leaves them so', () => {
    const legs = analysed([
      { at: eastward(2000), side: 'right' },
      { at: eastward(6900), side: 'right' },
    ]);
    expect(added(built(legs, recordedOf(legs, moving('s2', 150))))).toContain('warning leg-long s2');
    expect(added(built(legs, recordedOf(legs, moving('s2', 90))))).toEqual([]);
    // 5,002 m with 1 m of error: nobody can tell; 5,000 m is the practice's longest.
    expect(added(built(legs, recordedOf(legs, moving('s2', 100.5), 1)))).toEqual(['note leg-long s2 open']);
  });

  it('off every course is an error, by its distance', () => {
    const far = built(plan, [{ name: 's2', at: eastward(4500, 400), hdop: 0.2 }]);
    expect(added(far)).toContain('error station-off-course s2');
    expect(of(far, 'placed-off-course')).toHaveLength(1);
    expect(of(far, 'placed-far')[0]!.message).not.toContain('too far');
  });
});

describe('what stands in a keep-clear zone', () => {
  /** From 40 m west to 60 m east of the second pin, from 8 m to 40 m right of the road. */
  const zone: PlanZone = {
    name: 'Boat yard',
    rule: 'keep-clear',
    polygon: [eastward(4440, 8), eastward(4560, 8), eastward(4560, 40), eastward(4440, 40)],
  };
  const plan = analysed(ROAD, { zones: [zone] });
  const deeper = (metres: number) => (at: LonLat, station: string, item: string) =>
    station === 's2' && (item === 'sportsDrink' || item === 'water') ? from(at, 180, metres) : at;

  it('is an error at the tables that were recorded there, with their place in the file', () => {
    const made = built(plan, recordedOf(plan, deeper(9)));
    expect(added(made)).toEqual(['error item-in-zone s2 water']);
    expect(of(made, 'item-in-zone')[0]).toMatchObject({
      where: { file: 'placed.gpx', line: 9, column: 3, station: 's2', item: 'water' },
      measured: expect.closeTo(6, 1),
      message: expect.stringContaining('Boat yard'),
    });
    expect(of(made, 'item-in-zone')[0]!.where.path).toBeUndefined();
    const check = made.checks.find(({ code }) => code === 'item-in-zone');
    expect(check).toMatchObject({ found: plan.findings.filter(({ code }) => code === 'item-in-zone').length + 1 });
  });

  it('is left open where the recorded error is larger than the depth', () => {
    const open = built(plan, recordedOf(plan, deeper(5), 1.2));
    expect(added(open)).toEqual(['note item-in-zone s2 water open']);
    expect(open.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  });

  it('is not said again where the plan’s own review says it, unless it got worse', () => {
    const inside = analysed([ROAD[0]!, { ...ROAD[1]!, at: eastward(4500, 14) }, ROAD[2]!], { zones: [zone] });
    const planned = inside.findings.filter(({ code }) => code === 'item-in-zone');
    expect(planned).toHaveLength(1);
    expect(
      added(
        built(
          inside,
          recordedOf(inside, (at) => at),
        ),
      ),
    ).toEqual([]);
    expect(added(built(inside, recordedOf(inside, deeper(8)))).join()).toContain('error item-in-zone s2');
  });

  it('is accepted by a waiver for what was seen there, which a review of the plan alone leaves be', () => {
    const points = recordedOf(plan, deeper(9));
    const given = of(built(plan, points), 'item-in-zone').map((finding): PlanWaiver => ({
      code: finding.code,
      station: 's2',
      by: 'A. Gull',
      reason: 'the yard is shut',
      date: '2027-09-01',
      seen: seenOf(finding),
    }));
    const waived = analysed(ROAD, { zones: [zone], waivers: given });
    expect(waived.findings.filter(({ code }) => code.startsWith('waiver'))).toEqual([]);
    const made = built(waived, points);
    expect(of(made, 'item-in-zone').map((finding) => finding.waived?.by)).toEqual(['A. Gull']);
    expect(made.findings.filter(({ code }) => code.startsWith('waiver'))).toEqual([]);
    const good = built(
      waived,
      recordedOf(waived, (at) => at),
    );
    expect(of(good, 'waiver-unmatched')).toHaveLength(1);
  });
});

describe('a station moved into a corner', () => {
  /** A right-angled corner at 4,400 m, 100 m before the planned tables of the second station. */
  const line = turtlePoints(
    ORIGIN,
    [
      [90, 4400],
      [180, 4600],
    ],
    100,
  );
  const plan = analysed(
    AT.map((measure) => ({ on: { course: 'c', measure, side: 'right' as const, offset: 5 } })),
    { line },
  );
  const back = (metres: number) => (at: LonLat, station: string) => (station === 's2' ? from(at, 0, metres) : at);
  const tables = (metres: number, hdop?: number): Recorded[] =>
    recordedOf(plan, back(metres), hdop).filter(({ name }) => /sports|water/u.test(name!));

  it('has a bend at its tables', () => {
    expect(plan.findings.filter(({ code }) => code === 'bend-near-tables')).toEqual([]);
    const made = built(plan, tables(90));
    expect(added(made)).toContain('warning bend-near-tables s2');
    expect(of(made, 'bend-near-tables')[0]).toMatchObject({ measured: expect.closeTo(90, 1), limit: 45, unit: '°' });
    expect(of(made, 'placed-far')).toHaveLength(1);
  });

  it('has it for sure only where the error cannot have put it there', () => {
    // The tables stand clear of the bend from 30 m on.
    expect(added(built(plan, tables(66, 1))).filter((line_) => line_.includes('bend'))).toEqual([]);
    expect(added(built(plan, tables(72, 1))).filter((line_) => line_.includes('bend'))).toEqual([
      'note bend-near-tables s2 open',
    ]);
    expect(added(built(plan, tables(76, 1))).filter((line_) => line_.includes('bend'))).toEqual([
      'warning bend-near-tables s2',
    ]);
  });
});

describe('names that look swapped', () => {
  const plan = analysed(ROAD);
  const swapped = (one: string, other: string): Recorded[] =>
    recordedOf(plan, (at) => at).map((point) => {
      const [station, ...rest] = point.name!.split(' ');
      const name = station === one ? other : station === other ? one : station;
      return { ...point, name: [name, ...rest].join(' ') };
    });

  it('are one warning that names both, in place of all that would follow', () => {
    const made = built(plan, swapped('s1', 's3'));
    expect(made.findings.filter(({ severity }) => severity !== 'note')).toEqual([
      expect.objectContaining({
        code: 'placed-swapped',
        severity: 'warning',
        params: { station: 's1', other: 's3' },
        message: expect.stringMatching(/points of s1 are where s3 is planned/u),
      }),
    ]);
    expect(added(made)).toEqual([]);
    expect(made.verdicts.map(({ verdict }) => verdict)).toEqual(Array.from({ length: 9 }, () => 'holds'));
  });

  it('are none where only one of the two lies by the other, nor where both are a little off', () => {
    const one = swapped('s1', 's3').filter(({ name }) => name!.startsWith('s1'));
    const made = built(plan, one);
    expect(of(made, 'placed-swapped')).toEqual([]);
    expect(of(made, 'placed-far')).toHaveLength(1);
    expect(of(built(plan, recordedOf(plan, moving('s1', 30))), 'placed-swapped')).toEqual([]);
  });

  it('are not read from signs alone', () => {
    const signs = swapped('s1', 's2').filter(({ name }) => name!.endsWith('sign'));
    expect(of(built(plan, signs), 'placed-swapped')).toEqual([]);
  });
});

describe('what the points themselves are asked', () => {
  it('is not said again as built: distances, order and sides of signs and trash', () => {
    const plan = analysed(ROAD);
    const points = recordedOf(plan, (at) => at).map((point) => {
      if (point.name === 's1 sign') return { ...point, at: eastward(1500 - 60, -5) };
      if (point.name === 's2 trash from') return { ...point, at: eastward(4500 + 15) };
      return point.name === 's2 trash to' ? { ...point, at: eastward(4500 + 50) } : point;
    });
    const made = built(plan, points);
    expect(of(made, 'placed-distance').map(({ where }) => `${where.station} ${where.item}`)).toEqual([
      's1 sign',
      's2 trash',
      's2 trash',
    ]);
    expect(of(made, 'placed-side')).toHaveLength(1);
    expect(added(made)).toEqual([]);
  });

  it('is no new note where only its figure differs', () => {
    // Runners also pass on the way back, 50 m off: that the plan says already, with the distance.
    const line = turtlePoints(
      ORIGIN,
      [
        [90, 4500],
        [180, 50],
        [270, 4500],
      ],
      100,
    );
    const plan = analysed([{ at: eastward(1500), side: 'right' }], { line });
    const seen = (findings: readonly Finding[]): Finding[] => findings.filter(({ code }) => code === 'seen-not-served');
    expect(seen(plan.findings)).toHaveLength(1);
    const nearer = (at: LonLat): LonLat => from(at, 180, 8);
    expect(seen(built(plan, recordedOf(plan, nearer)).findings)).toEqual([]);
  });
});

describe('points near the plan', () => {
  it('give nothing new, whatever the noise within their error', () => {
    const plan = analysed(ROAD.map((station, k) => ({ ...station, at: eastward(AT[k]!, 9) })));
    let moved = 0;
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2 ** 31 - 1 }), (seed) => {
        const normal = gaussian(seed);
        const near = (at: LonLat): LonLat => {
          const shaken = disturbed(at, 3, normal);
          return Math.hypot(...apart(at, shaken)) <= 3 ? shaken : at;
        };
        const made = built(plan, recordedOf(plan, near, 0.6));
        moved += made.stations.filter(({ distance }) => distance > 0.5).length;
        expect(added(made)).toEqual([]);
        expect([...of(made, 'placed-far'), ...of(made, 'placed-swapped')]).toEqual([]);
      }),
      { numRuns: tries(60) },
    );
    expect(moved).toBeGreaterThan(tries(60));
  });

  it('leave a station that nobody recorded as the plan has it', () => {
    const plan = analysed(ROAD);
    const made = built(
      plan,
      recordedOf(plan, moving('s2', 120)).filter(({ name }) => name!.startsWith('s1')),
    );
    expect(added(made)).toEqual([]);
    expect(made.stations.map(({ station }) => station)).toEqual(['s1']);
  });
});

/** East and north of one place from another, metres, by small angles: enough for 3 m. */
function apart([lon, lat]: LonLat, [lon2, lat2]: LonLat): [number, number] {
  const metres = (degrees: number): number => (degrees * Math.PI * 6_371_000) / 180;
  return [metres(lon2 - lon) * Math.cos((lat * Math.PI) / 180), metres(lat2 - lat)];
}
