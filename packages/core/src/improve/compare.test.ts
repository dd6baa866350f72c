import { describe, expect, it } from 'vitest';
import { type Analysis, analyse } from '../analyse.ts';
import { inverseLength } from '../geodesy/karney.ts';
import type { Finding } from '../finding.ts';
import type { Plan, PlanStation } from '../plan/plan.ts';
import { ORIGIN, turtlePoints, valueOf } from '../testing/courses.ts';
import { planCourse, planOf, planRace, planStation } from '../testing/plans.ts';
import { compareAnalyses } from './compare.ts';

const on = (measure: number): Partial<PlanStation> => ({
  on: { course: 'c', measure, side: 'right', offset: 5 },
  side: 'right',
});
const line = turtlePoints(ORIGIN, [[90, 12_000]], 100);

const planned = (...stations: readonly Partial<PlanStation>[]): Plan =>
  planOf({
    courses: [planCourse('c', { line })],
    races: [planRace('m', 'c')],
    stations: stations.map((station, k) => planStation({ id: `s${k + 1}`, name: `s${k + 1}`, ...station })),
  });
const analysed = (...stations: readonly Partial<PlanStation>[]): Analysis =>
  valueOf(analyse(planned(...stations), { gpx: new Map() }));
const codes = (findings: readonly Finding[]): string[] =>
  findings.map(({ code, where }) => `${code} ${where.station ?? ''}`);

describe('compareAnalyses', () => {
  it('finds nothing between a plan and itself', () => {
    const same = analysed(on(3000), on(8500));
    const { stations, items, findings, spacing } = compareAnalyses(['a', 'b'], same, same);
    expect({ stations, items, findings }).toEqual({ stations: [], items: [], findings: { gained: [], lost: [] } });
    expect(spacing[0]).toMatchObject({
      race: 'm',
      legs: [],
      longest: [expect.closeTo(5500, 3), expect.closeTo(5500, 3)],
    });
  });

  it('tells how far on the ground a station moved, which legs changed, and which findings came and went', () => {
    const before = analysed(on(3000), on(8500));
    const after = analysed(on(3600), on(8500));
    const { stations, spacing, findings } = compareAnalyses(['a', 'b'], before, after);
    const [from, to] = [before.stations[0]!.at, after.stations[0]!.at];
    expect(stations).toEqual([
      { id: 's1', name: 's1', moved: inverseLength(from[0], from[1], to[0], to[1]), from, to },
    ]);
    expect(stations[0]!.moved).toBeCloseTo(600, 0);
    expect(spacing[0]!.legs).toEqual([
      { from: 'start', to: 's1', length: [expect.closeTo(3000, 3), expect.closeTo(3600, 3)] },
      { from: 's1', to: 's2', length: [expect.closeTo(5500, 3), expect.closeTo(4900, 3)] },
    ]);
    expect(codes(findings.lost)).toEqual(['leg-long s2']);
    expect(findings.gained).toEqual([]);
    expect(codes(compareAnalyses(['b', 'a'], after, before).findings.gained)).toEqual(['leg-long s2']);
  });

  it('tells findings apart by what they are about, not by their words', () => {
    // The leg stays too long: its message changes, the finding does not.
    const { findings } = compareAnalyses(['a', 'b'], analysed(on(3000), on(8500)), analysed(on(2990), on(8500)));
    expect(findings).toEqual({ gained: [], lost: [] });
  });

  it('counts findings of one kind, so that one more of them is gained', () => {
    const one = analysed(on(3000), on(8500));
    const long = one.findings.find(({ code }) => code === 'leg-long')!;
    const { findings } = compareAnalyses(['a', 'b'], one, {
      ...one,
      findings: [...one.findings, { ...long, message: 'once more' }],
    });
    expect(findings.gained.map(({ message }) => message)).toEqual(['once more']);
    expect(findings.lost).toEqual([]);
  });

  it('lists items whose distances or side changed, and those that only one version has', () => {
    const before = analysed({ ...on(3000), serves: ['water'] });
    const after = analysed({ ...on(3000), side: 'left', serves: ['gel', 'water'], practice: { signAhead: 80 } });
    const { items } = compareAnalyses(['a', 'b'], before, after);
    const of = (kind: string): (typeof items)[number] => items.find(({ item }) => item === kind)!;
    // 25 ft before the mark and a table of 6 ft, by the usual practice: 7.62 m and 1.8288 m, exact.
    expect(of('gel')).toMatchObject({
      station: 's1',
      lead: true,
      along: [null, expect.closeTo(-7.62 - 1.8288, 6)],
      alongEnd: [null, expect.closeTo(-7.62, 6)],
      side: [null, 'left'],
    });
    expect(of('sign').along).toEqual([expect.closeTo(-91.44, 6), expect.closeTo(-7.62 - 1.8288 - 80, 6)]);
    expect(of('water')).toMatchObject({ along: [0, 0], side: ['right', 'left'] });
    expect(compareAnalyses(['a', 'b'], before, before).items).toEqual([]);
  });

  it('lists the items of a direction that only one version serves, and legs that only one has', () => {
    const there = turtlePoints(
      ORIGIN,
      [
        [90, 3000],
        [270, 3000],
      ],
      100,
    );
    const both = (passes: 'lead' | 'all'): Analysis =>
      valueOf(
        analyse(
          { ...planned({ ...on(1500), serves: ['water'], passes }), courses: [planCourse('c', { line: there })] },
          { gpx: new Map() },
        ),
      );
    const { items, spacing } = compareAnalyses(['lead', 'all'], both('lead'), both('all'));
    expect(items.map(({ item, lead, side }) => [item, lead, side])).toEqual([
      ['sign', false, [null, 'left']],
      ['water', false, [null, 'left']],
      ['trash', false, [null, 'left']],
    ]);
    // The way back passes at 4,500 m: the leg to the finish becomes two, and the second time at the station is a leg of its own.
    expect(spacing[0]!.legs).toEqual([
      { from: 's1', to: 'finish', length: [expect.closeTo(4500, 2), expect.closeTo(1500, 2)] },
      { from: 's1', to: 's1', length: [null, expect.closeTo(3000, 2)] },
    ]);
    const back = compareAnalyses(['all', 'lead'], both('all'), both('lead'));
    expect(back.items.map(({ side }) => side)).toEqual([
      ['left', null],
      ['left', null],
      ['left', null],
    ]);
    expect(back.spacing[0]!.legs.map(({ length: [, after] }) => after)).toEqual([null, expect.closeTo(4500, 2)]);
  });

  it('compares the stations that both have, and leaves out one that only one has', () => {
    const { stations, items } = compareAnalyses(['a', 'b'], analysed(on(3000), on(8500)), analysed(on(3000)));
    expect([stations, items]).toEqual([[], []]);
  });

  it('tells of an item whose line folds in one version that its wheel distance is gone', () => {
    const before = analysed({ ...on(3000), serves: ['water'] });
    const [station] = before.stations;
    const [lead] = station!.directions;
    const folded = {
      ...before,
      stations: [
        {
          ...station!,
          directions: [
            { ...lead!, items: lead!.items.map((item) => (item.kind === 'sign' ? { ...item, wheel: null } : item)) },
          ],
        },
      ],
    };
    expect(compareAnalyses(['a', 'b'], before, folded).items).toEqual([
      expect.objectContaining({
        item: 'sign',
        wheel: [expect.closeTo(-91.44, 6), null],
        along: [expect.closeTo(-91.44, 6), expect.closeTo(-91.44, 6)],
      }),
    ]);
  });
});
