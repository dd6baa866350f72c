/** The checks of times and closures, each just inside its limit and just beyond. */
import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import type { Layout } from '../layout/layout.ts';
import type { PlanClock, PlanRace, PlanStation } from '../plan/plan.ts';
import { passingAt } from '../raceday/passing.ts';
import { ORIGIN, turtle } from '../testing/courses.ts';
import { factsOf, layoutOf, planRace, planned } from '../testing/plans.ts';
import type { Check } from './check.ts';
import { clockOrder } from './clockOrder.ts';
import { closesLate } from './closesLate.ts';
import { crewLate } from './crewLate.ts';
import { cutoffStopsMany } from './cutoffStopsMany.ts';
import { reopensEarly } from './reopensEarly.ts';
import { reviewLayout } from './review.ts';

const H = 3600;
const MIN = 60;
const road = turtle(ORIGIN, [[90, 12_000]], 200);
const on = (measure: number, keys: Partial<PlanStation> = {}): Partial<PlanStation> => ({
  on: { course: 'c', measure, side: 'right', offset: 5 },
  ...keys,
});
/** 100 starters at 08:00, between 40 and 80 minutes for 12 km. */
const race = (keys: Partial<PlanRace> = {}): PlanRace => ({
  ...planRace('run', 'c'),
  waves: [{ time: 8 * H, entrants: 100 }],
  finish: {
    quantiles: [
      [0, 40 * MIN],
      [1, 80 * MIN],
    ],
  },
  show: 1,
  slow: [0, 0],
  ...keys,
});
const entry = (measure: number, keys: Partial<PlanClock>): PlanClock => ({ course: 'c', measure, ...keys });
const layout = (
  clock: readonly PlanClock[],
  races: readonly PlanRace[] = [race()],
  stations: readonly Partial<PlanStation>[] = [on(3000), on(9000)],
): Layout => planned(layoutOf([road], stations, { races }), { clock });
const found = (check: Check, of: Layout): readonly Finding[] => check.find(of, factsOf(of));

/** When the first is at a measure, and when the last. */
const passing = (of: Layout, measure: number, id: string = 'run'): { first: number; last: number } =>
  passingAt(
    factsOf(of).races.find(({ field }) => field.race.id === id)!,
    measure,
  )!;

describe('closes-late', () => {
  const { first } = passing(layout([]), 3000);

  it('is an error where the road at a station closes after the first runner is there', () => {
    const [finding, ...more] = found(closesLate, layout([entry(3000, { closes: first + 1 })]));
    expect(finding).toMatchObject({
      code: 'closes-late',
      severity: 'error',
      measured: expect.closeTo(1, 6) as number,
      limit: 0,
      where: { course: 'c', path: '/clock' },
    });
    expect(finding!.message).toMatch(
      /^The road at s1 \(3\.00 km\) closes at 08:\d\d, 1 min after the first of run at 08:\d\d\./u,
    );
    expect(more).toEqual([]);
    expect(found(closesLate, layout([entry(3000, { closes: first })]))).toEqual([]);
  });

  it('takes the time between two entries of the clock, and tells of all places in one finding', () => {
    const at9 = passing(layout([]), 9000).first;
    const rising = [entry(0, { closes: 7 * H }), entry(12_000, { closes: 7 * H + ((at9 - 7 * H) * 12) / 9 })];
    expect(
      found(closesLate, layout(rising)).map(({ params }) => (params as { places: unknown[] }).places.length),
    ).toEqual([1]);
    const late = found(closesLate, layout([entry(0, { closes: 9 * H })]));
    expect(late).toHaveLength(1);
    expect(late[0]!.message).toContain('here and at 2 more places');
  });

  it('counts racers on wheels, who start before the runners', () => {
    const wheels = race({ id: 'wheels', name: 'wheels', division: 'wheels', waves: [{ time: 7.5 * H, entrants: 5 }] });
    const of = (closes: number): Layout => layout([entry(3000, { closes })], [race(), wheels]);
    const before = passing(of(0), 3000, 'wheels').first;
    expect(before).toBeLessThan(first);
    expect(found(closesLate, of(before + 1)).map(({ message }) => message)).toEqual([
      expect.stringContaining('after the first of wheels'),
    ]);
    expect(found(closesLate, of(before))).toEqual([]);
  });

  it('cannot run without closing times, and finds nothing without a field', () => {
    expect(closesLate.missing!(layout([]))).toBe('no-closing');
    expect(closesLate.find(layout([entry(3000, { closes: 9 * H })]), null)).toEqual([]);
    expect(closesLate.missing!(layout([], [planRace('run', 'c')]))).toBe('no-waves');
  });

  it('holds each time of the clock against whoever runs on that road', () => {
    const back = turtle(ORIGIN, [
      [90, 6000],
      [270, 6000],
    ]);
    const of = (clock: readonly PlanClock[]): Layout =>
      planned(layoutOf([back], [on(1000)], { races: [race()] }), { clock });
    // Out at 1 km and back at 11 km is one place: whoever reads the second line drives against the runners.
    expect(found(closesLate, of([entry(1000, { closes: 7 * H }), entry(11_000, { closes: 8.5 * H })]))).toHaveLength(1);
    expect(found(closesLate, of([entry(1000, { closes: 7 * H }), entry(11_000, { closes: 8 * H })]))).toEqual([]);
    const end = passing(of([]), 11_000).last;
    const reopens = (out: number): Layout => of([entry(1000, { reopens: out }), entry(11_000, { reopens: end + 600 })]);
    expect(found(reopensEarly, reopens(end - 600))).toHaveLength(1);
    expect(found(reopensEarly, reopens(end + 600))).toEqual([]);
  });
});

describe('reopens-early', () => {
  const { last } = passing(layout([]), 3000);

  it('is an error where the road at a station reopens before the last are through and the crew has cleared for 10 min', () => {
    // Common practice, no source; the ten minutes are an assumption.
    const [finding] = found(reopensEarly, layout([entry(3000, { reopens: last + 599 })], [race()], [on(3000)]));
    expect(finding).toMatchObject({
      severity: 'error',
      measured: expect.closeTo(1, 6) as number,
      limit: 0,
    });
    expect(finding!.message).toContain('the crew has had 10 min to clear');
    expect(found(reopensEarly, layout([entry(3000, { reopens: last + 600 })], [race()], [on(3000)]))).toEqual([]);
  });

  it('waits for the sweep behind the last runner, at places without a station too', () => {
    const swept = race({ cutoff: 10 * H });
    const of = (reopens: number): Layout => layout([entry(6000, { reopens })], [swept], []);
    const through = passing(of(0), 6000).last;
    expect(through).toBeGreaterThan(passing(layout([]), 6000).last);
    expect(found(reopensEarly, of(through - 1))).toHaveLength(1);
    expect(found(reopensEarly, of(through))).toEqual([]);
  });

  it('leaves a course whose clock is out of order to clock-order', () => {
    const clock = [entry(3000, { sweep: 10 * H, reopens: 8 * H })];
    expect(found(reopensEarly, layout(clock))).toEqual([]);
    expect(found(clockOrder, layout(clock))).toHaveLength(1);
  });
});

describe('clock-order', () => {
  it('is an error where a place reopens before its sweep, or closes before access opens', () => {
    const wrong = [
      entry(0, { accessOpens: 7 * H, closes: 6 * H, sweep: 9 * H }),
      entry(3000, { sweep: 10 * H, reopens: 9 * H }),
    ];
    const [finding, ...more] = clockOrder.find(layout(wrong));
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ code: 'clock-order', severity: 'error', where: { course: 'c', measure: 0 } });
    expect(finding!.message).toContain('the road closes at 06:00, before access opens at 07:00');
    expect(finding!.message).toContain('one more case');
  });

  it('is an error where the reopening falls along the course', () => {
    const falls = [entry(6000, { reopens: 10 * H - 1 }), entry(3000, { reopens: 10 * H })];
    expect(clockOrder.find(layout(falls)).map(({ message }) => message)).toEqual([
      expect.stringContaining('the road reopens at 09:59 at 6.00 km, before 10:00 at 3.00 km'),
    ]);
  });

  it('is silent where all is in order, reopens everywhere at once, or closes earlier farther on', () => {
    const fine = [
      entry(0, { accessOpens: 5 * H, closes: 7 * H, sweep: 8 * H, reopens: 10 * H }),
      entry(6000, { accessOpens: 4 * H, closes: 6 * H, sweep: 9 * H, reopens: 10 * H }),
      entry(9000, { closes: 6.5 * H, sweep: 9.5 * H }),
    ];
    expect(clockOrder.find(layout(fine))).toEqual([]);
    expect(clockOrder.missing!(layout([]))).toBe('no-clock');
  });

  it('leaves a sweep that falls to the day where a race has a field, and tells it where none has', () => {
    const falls = [entry(3000, { sweep: 10 * H }), entry(6000, { sweep: 9 * H })];
    expect(clockOrder.find(layout(falls))).toEqual([]);
    expect(factsOf(layout(falls)).day.findings).toEqual([
      expect.objectContaining({ code: 'sweep-impossible', severity: 'error' }),
      expect.anything(),
      expect.anything(),
    ]);
    expect(clockOrder.find(layout(falls, [planRace('run', 'c')]))).toHaveLength(1);
  });
});

describe('crew-late', () => {
  const crewAt = factsOf(layout([])).day.stations.map((station) => station.crewAt!);

  it('is an error where the crew is due after the road has closed, once for all stations', () => {
    const closing = (closes: number): Layout => layout([entry(0, { closes })]);
    const [finding, ...more] = found(crewLate, closing(crewAt[1]! - 1));
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ severity: 'error', where: { station: 's2' }, measured: expect.closeTo(1, 6) });
    expect(finding!.message).toContain('after the road closes there');
    expect(found(crewLate, closing(crewAt[1]!))).toEqual([]);
    expect(found(crewLate, closing(crewAt[0]! - 1)).map(({ message }) => message)).toEqual([
      expect.stringContaining('the crew of one more station'),
    ]);
  });

  it('is an error where another race is there before the crew', () => {
    const early = (time: number): Layout =>
      layout(
        [],
        [race(), race({ id: 'walk', name: 'walk', waves: [{ time, entrants: 10 }] })],
        [on(3000, { races: ['run'] })],
      );
    const first = passing(early(0), 3000, 'walk').first;
    expect(found(crewLate, early(crewAt[0]! - first - 1)).map(({ message }) => message)).toEqual([
      expect.stringContaining('after the first of walk'),
    ]);
    expect(found(crewLate, early(crewAt[0]! - first))).toEqual([]);
  });
});

describe('cutoff-early', () => {
  it('is an error of the day where the cutoff is not after the last start, and the only one of that cause', () => {
    const cut = (cutoff: number): string[] =>
      factsOf(layout([], [race({ cutoff, startFlow: 99 })])).day.findings.map(
        ({ code, severity }) => `${code} ${severity}`,
      );
    expect(cut(8 * H + MIN)).toContain('cutoff-early error');
    expect(cut(8 * H + MIN).join()).not.toContain('sweep-impossible');
    expect(cut(8 * H + MIN + 1)).not.toContain('cutoff-early error');
  });

  it('cannot run without a cutoff', () => {
    const runs = (races: readonly PlanRace[]): boolean =>
      reviewLayout(layout([], races)).checks.find(({ code }) => code === 'cutoff-early')!.ran;
    expect([runs([race()]), runs([race({ cutoff: 10 * H })])]).toEqual([false, true]);
  });
});

describe('cutoff-stops-many', () => {
  /** Finish times: 40 to 80 minutes, a starter every 0.4 minutes; all cross the line at once, more or less. */
  const cut = (cutoff: number, keys: Partial<PlanRace> = {}): readonly Finding[] =>
    found(cutoffStopsMany, layout([], [race({ cutoff, startFlow: 1e6, ...keys })]));

  it('is a warning where more than a tenth cannot meet the cutoff', () => {
    expect(cut(8 * H + 75.7 * MIN)).toEqual([
      expect.objectContaining({
        code: 'cutoff-stops-many',
        severity: 'warning',
        measured: 0.11,
        limit: 0.1,
        message: expect.stringContaining('About 11 of 100 in run would be stopped by the sweep.') as string,
        where: { path: '/races/0', race: 'run' },
      }),
    ]);
    expect(cut(8 * H + 75.9 * MIN)).toEqual([]);
  });

  it('counts who comes after a cutoff that is before the sweep of the clock', () => {
    const keys = { cutoff: 8 * H + 60 * MIN, startFlow: 1e6 };
    const swept = layout([entry(12_001, { sweep: 10 * H })], [race(keys)]);
    expect(found(cutoffStopsMany, swept).map(({ measured }) => measured)).toEqual([0.5]);
  });

  it('is silent where late runners are still served, or there is no cutoff', () => {
    expect(cut(8 * H + 60 * MIN, { late: 'served' })).toEqual([]);
    expect(cutoffStopsMany.missing!(layout([]))).toBe('no-cutoff');
    expect(cutoffStopsMany.missing!(layout([entry(3000, { sweep: 10 * H })]))).toBeNull();
  });
});
