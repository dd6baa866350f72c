/** The checks of slips of the pen, each just inside its limit and just beyond. */
import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import type { Layout } from '../layout/layout.ts';
import { DEFAULT_CREW, DEFAULT_PRACTICE, DEFAULT_SUPPLIES } from '../plan/defaults.ts';
import type { Plan, PlanClock, PlanRace, PlanStation, Supplies } from '../plan/plan.ts';
import { ORIGIN, turtle } from '../testing/courses.ts';
import { factsOf, layoutOf, planRace, planned } from '../testing/plans.ts';
import { boxesTight } from './boxesTight.ts';
import type { Check } from './check.ts';
import { clockBeyond } from './clockBeyond.ts';
import { clockOrder } from './clockOrder.ts';
import { clockShort } from './clockShort.ts';
import { heatDoubtful } from './heatDoubtful.ts';
import { noDate } from './noDate.ts';
import { reopensEarly } from './reopensEarly.ts';
import { ruleLoose } from './ruleLoose.ts';
import { showLow } from './showLow.ts';
import { speedImpossible } from './speedImpossible.ts';
import { tablesMany } from './tablesMany.ts';
import { walkedDate } from './walkedDate.ts';

const H = 3600;
const MIN = 60;
const road = turtle(ORIGIN, [[90, 12_000]], 200);
const on = (measure: number, keys: Partial<PlanStation> = {}): Partial<PlanStation> => ({
  on: { course: 'c', measure, side: 'right', offset: 5 },
  ...keys,
});
/** 500 starters at 08:00, between 40 and 80 minutes for 12 km. */
const race = (keys: Partial<PlanRace> = {}): PlanRace => ({
  ...planRace('run', 'c'),
  waves: [{ time: 8 * H, entrants: 500 }],
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
const layout = (
  keys: Partial<Plan>,
  stations: readonly Partial<PlanStation>[] = [on(3000), on(9000)],
  races: readonly PlanRace[] = [race()],
): Layout => planned(layoutOf([road], stations, { races }), keys);
const found = (check: Check, of: Layout): readonly Finding[] => check.find(of, factsOf(of));
const entry = (measure: number, keys: Partial<PlanClock>): PlanClock => ({ course: 'c', measure, ...keys });

describe('clock-order at the finish', () => {
  const order = (cutoff: number, ...clock: PlanClock[]): string[] =>
    found(clockOrder, layout({ clock }, undefined, [race({ cutoff })])).map(
      ({ severity, message }) => `${severity}: ${message}`,
    );

  it('is an error where the road reopens before the cutoff', () => {
    expect(order(10 * H, entry(11_950, { reopens: 10 * H }))).toEqual([]);
    expect(order(10 * H + MIN, entry(11_950, { reopens: 10 * H }))).toEqual([
      'error: The cutoff of run is 10:01, but at the finish the road reopens at 10:00. The road should stay closed until the cutoff, and somewhat longer. Correct the cutoff or the road times.',
    ]);
    expect(order(10 * H + MIN, entry(11_800, { reopens: 10 * H }))).toEqual([]);
  });

  it('is a warning where the sweep is there more than half an hour before the cutoff', () => {
    expect(order(10.5 * H, entry(12_000, { sweep: 10 * H }))).toEqual([]);
    expect(order(10.5 * H + 1, entry(12_000, { sweep: 10 * H }))).toEqual([expect.stringContaining('warning: ')]);
    // A sweep that falls, or entries beyond the course, are the matter then.
    expect(order(11 * H, entry(12_000, { sweep: 9.5 * H }), entry(9000, { sweep: 10 * H }))).toEqual([]);
    expect(order(11 * H, entry(12_000, { sweep: 9.5 * H }), entry(15_000, { sweep: 10 * H }))).toEqual([]);
  });
});

describe('clock-beyond', () => {
  it('is an error where road times are given where there is no course, once for all of them', () => {
    const beyond = (...measures: number[]): readonly Finding[] =>
      found(clockBeyond, layout({ clock: measures.map((measure) => entry(measure, { closes: 7 * H })) }));
    // A recorded line may be 3 % short.
    expect(beyond(12_350)).toEqual([]);
    expect(beyond(0, 12_370)).toMatchObject([
      { severity: 'error', where: { path: '/clock/1/measure', course: 'c' }, measured: 12_370, params: { count: 1 } },
    ]);
    expect(beyond(12_900, 25_000)).toMatchObject([{ measured: 25_000, params: { count: 2 } }]);
    expect(beyond(-90)).toEqual([]);
    expect(beyond(-361)).toHaveLength(1);
    expect(clockBeyond.missing!(layout({ clock: [] }))).toBe('no-clock');
  });
});

describe('clock-short', () => {
  const short = (...measures: number[]): Layout =>
    layout({ clock: measures.map((measure) => entry(measure, { closes: 7 * H, reopens: 9 * H + measure })) });

  it('is a warning where road times end more than 3 km before the finish, or begin so late', () => {
    expect(found(clockShort, short(0, 9100))).toEqual([]);
    expect(found(clockShort, short(0, 8900))).toMatchObject([
      { severity: 'warning', params: { end: 'finish', keys: ['closes', 'reopens'], measure: 8900 } },
    ]);
    expect(found(clockShort, short(2900, 12_000))).toEqual([]);
    expect(found(clockShort, short(3100, 12_000))).toMatchObject([{ params: { end: 'start', measure: 3100 } }]);
  });

  it('takes a single time for the whole course', () => expect(found(clockShort, short(0))).toEqual([]));

  it('leaves unknown what others would find there', () => {
    // The last is at 9 km at 09:00; by the time at 5 km the road there would be open since 08:30.
    const until = (measure: number): Layout =>
      layout({ clock: [entry(0, { reopens: 8.4 * H }), entry(measure, { reopens: 8.5 * H })] }, [on(11_000)]);
    expect(found(reopensEarly, until(8500)).flatMap(({ params }) => params!['places'])).toContainEqual(
      expect.objectContaining({ station: 's1' }),
    );
    expect(found(reopensEarly, until(7500)).flatMap(({ params }) => params!['places'])).not.toContainEqual(
      expect.objectContaining({ station: 's1' }),
    );
  });
});

it('speed-impossible says a time as it stands in the plan', () => {
  const quick = race({
    finish: {
      quantiles: [
        [0, 8 * MIN],
        [1, 80 * MIN],
      ],
    },
  });
  expect(found(speedImpossible, layout({}, undefined, [quick])).map(({ message }) => message)).toEqual([
    expect.stringMatching(/^The fastest of run is given 8 min for 12\.00 km/u),
  ]);
});

describe('show-low', () => {
  const shown = (show: number, waves = race().waves): readonly Finding[] =>
    showLow.find(layout({}, undefined, [race({ show, waves })]));

  it('is a warning under a half of the entrants', () => {
    expect(shown(0.5)).toEqual([]);
    expect(shown(0.49)).toMatchObject([{ severity: 'warning', where: { path: '/races/0/show', race: 'run' } }]);
    // Nobody starts: `race-without-starters`.
    expect(shown(0)).toEqual([]);
    expect(shown(0.09, [])).toEqual([]);
  });
});

describe('heat-doubtful', () => {
  const heated = (supplies: Partial<Supplies>, stations?: readonly Partial<PlanStation>[]): readonly Finding[] =>
    found(heatDoubtful, layout({ supplies: { ...DEFAULT_SUPPLIES, ...supplies } }, stations));

  it('is a warning where the level is cooler than the temperature', () => {
    expect(heated({ heat: 'cool', wbgtC: 22.9 })).toEqual([]);
    expect(heated({ heat: 'cool', wbgtC: 23 })).toMatchObject([{ severity: 'warning', params: { asks: 'warm' } }]);
    expect(heated({ heat: 'warm', wbgtC: 27.9 })).toEqual([]);
    expect(heated({ heat: 'warm', wbgtC: 28 })).toMatchObject([{ params: { asks: 'hot' } }]);
    expect(heated({ heat: 'hot', wbgtC: 10 })).toEqual([]);
    expect(heated({ heat: 'cool', wbgtC: 23, heatSteps: [24, 30] })).toEqual([]);
    expect(heated({ heat: 'cool', wbgtC: 24, heatSteps: [24, 30] })).toHaveLength(1);
    expect(heated({ wbgtC: 30 })).toEqual([]);
  });

  it('is a warning where the temperature is in other degrees, also at one station', () => {
    expect(heated({ wbgtC: 45 })).toEqual([]);
    expect(heated({ wbgtC: 58 })).toMatchObject([{ params: { is: 'beyond' }, where: { path: '/supplies' } }]);
    expect(heated({}, [on(3000, { supplies: { wbgtC: 58 } }), on(9000)])).toMatchObject([
      { where: { station: 's1', path: '/stations/0/supplies' } },
    ]);
  });
});

describe('dates', () => {
  it('no-date is a note', () => {
    expect(found(noDate, layout({ date: '2027-10-03' }))).toEqual([]);
    expect(found(noDate, layout({}))).toMatchObject([{ severity: 'note', params: { waivers: 0 } }]);
  });

  it('walked-date is a warning after the race, a note more than three years before it', () => {
    const walked = (...dates: string[]): readonly Finding[] =>
      found(
        walkedDate,
        layout(
          { date: '2027-10-03' },
          dates.map((date, k) => on(3000 + 1000 * k, { walked: { by: 'R. Gull', date } })),
        ),
      );
    expect(walked('2027-10-03', '2024-10-03')).toEqual([]);
    expect(walked('2027-10-04')).toMatchObject([{ severity: 'warning', where: { station: 's1' } }]);
    expect(walked('2024-10-02')).toMatchObject([{ severity: 'note', params: { is: 'before' } }]);
    expect(walked('2027-11-04', '2027-10-04').map(({ params }) => params!['stations'])).toEqual([
      [
        { station: 's2', date: '2027-10-04' },
        { station: 's1', date: '2027-11-04' },
      ],
    ]);
    expect(walkedDate.missing!(layout({}))).toBe('no-date');
  });
});

it('tables-many is a note from more than four times the tables that are needed', () => {
  const many = (water: number): readonly Finding[] => found(tablesMany, layout({}, [on(3000, { tables: { water } })]));
  const { needed } = (many(200)[0]!.params!['stations'] as readonly { readonly needed: number }[])[0]!;
  expect(needed).toBeGreaterThan(2);
  expect(many(4 * needed)).toEqual([]);
  expect(many(4 * needed + 1)).toMatchObject([{ severity: 'note', where: { station: 's1', item: 'water' } }]);
});

it('boxes-tight is a warning where boxes are nearer than one is wide, once for all stations', () => {
  const tight = (...boxes: number[]): readonly Finding[] =>
    boxesTight.find(
      layout(
        {},
        boxes.map((count, k) => on(3000 + 1500 * k, { boxes: count })),
      ),
    );
  // 45.72 m of boxes.
  expect(tight(51)).toEqual([]);
  expect(tight(52)).toMatchObject([{ severity: 'warning', where: { station: 's1' }, unit: 'm' }]);
  expect(tight(60, 80)).toMatchObject([{ params: { boxes: 80, stations: ['s2', 's1'] } }]);
});

describe('rule-loose', () => {
  const loose = (keys: Partial<Plan>, stations?: readonly Partial<PlanStation>[]): unknown[] =>
    found(ruleLoose, layout(keys, stations)).map(({ severity, params }) => [
      severity,
      (params!['rules'] as readonly { readonly rule: string }[]).map(({ rule }) => rule),
    ]);
  const trash = (trashFrom: number, trashTo: number): Partial<Plan> => ({
    practice: { ...DEFAULT_PRACTICE, trashFrom, trashTo },
  });

  it('is a warning where boxes begin among the tables, a note where they begin a little early', () => {
    expect(loose(trash(44, 91))).toEqual([]);
    expect(loose(trash(30, 91))).toEqual([['note', ['trashFrom']]]);
    expect(loose(trash(5, 10))).toEqual([['warning', ['trashFrom', 'trashTo']]]);
  });

  it('is a warning where nobody pours, or nobody need be there', () => {
    expect(loose({ crew: { ...DEFAULT_CREW, minimum: 0, pourers: 0 } })).toEqual([['warning', ['pourers', 'minimum']]]);
    expect(loose({ crew: { ...DEFAULT_CREW, minimum: 1, pourers: 1 } })).toEqual([]);
    expect(loose({}, [on(3000, { crew: { pourers: 0 } })])).toEqual([['warning', ['pourers']]]);
  });
});
