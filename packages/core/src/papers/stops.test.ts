/** A stop on a driver's paper: where to unload, what to carry, in what light, and what the plan does not say. */
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../analyse.ts';
import type { Plan, PlanPoint, PlanStation } from '../plan/plan.ts';
import type { Run, Stop } from '../raceday/day.ts';
import { AT_1500, STRAIGHT, analysisOf, runners } from '../testing/analyses.ts';
import { ORIGIN, from } from '../testing/courses.ts';
import { en } from '../text/en.ts';
import { collectionRunBody } from './collectionRun.ts';
import { driverRunBody, driving } from './driverRun.ts';
import { suppliesText } from '../text/supplyWords.ts';
import type { Sheet } from './sheet.ts';
import { stopBlock } from './stops.ts';

const H = 3600;
const sheet: Sheet = { text: en, paper: 'a4', printedAt: '2027-08-30 18:00' };
const van = { id: 'v1', name: 'Van', kg: 1500, places: 6, kmh: 25, stop: 900, from: 4 * H };
const pin = from(from(ORIGIN, 90, 1500), 180, 5);
const point = (kind: PlanPoint['kind'], far: number, more: Partial<PlanPoint> = {}): PlanPoint => ({
  kind,
  at: from(pin, 180, far),
  ...more,
});

const withDay = (station: Partial<PlanStation> = {}, keys: Partial<Plan> = {}): Analysis =>
  analysisOf(STRAIGHT, [{ ...AT_1500, ...station }], { races: [runners(500)], vehicles: [van], ...keys });
/** Tags taken away, so that words can be read. */
const plain = (html: string): string =>
  html
    .replaceAll(/<\/?(?:b|bdi|span)\b[^>]*>/gu, '')
    .replaceAll(/<[^>]*>/gu, '|')
    .replaceAll('&#39;', "'")
    .replaceAll(/[\s|]*\|[\s|]*/gu, '|');

const STOP: Stop = {
  station: 's1',
  arrive: 6 * H,
  leave: 6.25 * H,
  measure: 1500,
  side: 'right',
  load: [
    { kind: 'waterJug', count: 1200, kg: 468 },
    { kind: 'sign', wording: 'Water ahead', count: 1, kg: 0 },
  ],
};
const block = (analysis: Analysis, keys: Partial<Stop> = {}, kind: Run['kind'] = 'drop'): string =>
  plain(stopBlock(analysis, { ...STOP, ...keys }, kind, 1, en).html);

describe('a stop', () => {
  it('says when, on which hand, what to unload and what it weighs; nothing is weighed that weighs nothing', () => {
    const says = block(withDay());
    expect(says).toContain('|1. Station 1 · s1 · 1.500 km|');
    expect(says).toContain('|Arrive 06:00 · Leave by 06:15 · RIGHT-hand side|');
    expect(says).toContain('|Load: 468 kg|');
    expect(says).toContain('1,200 × Jugs of water (468 kg)');
    expect(says).toMatch(/1 × Sign “Water ahead”\|/u);
  });

  it('says that a side is unclear where it is, and the other hand', () => {
    expect(block(withDay(), { side: 'left' })).toContain('· LEFT-hand side|');
    expect(block(withDay(), { side: 'unclear' })).toContain(`· ${en.frame.sideUnclear}|`);
  });

  it('without a drop point goes to the tables and carries nothing', () => {
    const says = block(withDay());
    expect(says).toContain(`|Unload at|${en.lists.runs.atPin}|`);
    expect(says).toContain('|Carry|beside the tables|');
  });

  it('goes to the drop point, else to the way in for trucks, and says how far it is to carry from 10 m on, in whole metres rounded up', () => {
    expect(block(withDay({ points: [point('drop', 9, { name: 'Shed' })] }))).toContain('|Carry|beside the tables|');
    const far = block(
      withDay({
        points: [
          point('access', 20, { street: 'Pier Lane' }),
          point('drop', 40.2, { name: 'Shed', street: 'Kelp Road' }),
        ],
      }),
    );
    expect(far).toContain('|Unload at|Shed, Kelp Road|');
    expect(far).toContain('|Truck access|Pier Lane|');
    expect(far).toContain('|Carry|41 m to the tables in a straight line');
    const access = block(withDay({ points: [point('access', 20, { street: 'Pier Lane' })] }));
    expect(access).toContain('|Unload at|Pier Lane|');
    expect(access).not.toContain('Truck access');
  });

  it('calls a point without a name or a street by its kind', () => {
    expect(block(withDay({ points: [point('drop', 20, { name: ' ', street: '' })] }))).toContain(
      `|Unload at|${en.frame.points.drop}|`,
    );
  });

  it('says the hand as that of the tables, where they stand more than 60 m away; a side that is unclear is said as it is', () => {
    const far = withDay({ points: [point('drop', 70)] });
    expect(block(far)).toContain('· tables on the RIGHT-hand side|');
    expect(block(far, { side: 'unclear' })).toContain(`· ${en.frame.sideUnclear}|`);
    expect(block(withDay({ points: [point('drop', 50)] }))).toContain('· RIGHT-hand side|');
  });

  it('has the notes of point and station, the captain, and lines to write on where the plan has none', () => {
    const people = { captain: 'Ada Kelp', phone: '555 0100' };
    const says = block(withDay({ points: [point('drop', 20, { note: 'low gate' })], note: 'by the well', people }));
    expect(says).toContain('|Landmark, note|low gate by the well|');
    expect(says).toContain('|Captain|Ada Kelp, 555 0100|');
    const bare = stopBlock(withDay({ note: ' ' }), STOP, 'drop', 1, en).html;
    expect(bare.match(/class="to-fill"/gu)).toHaveLength(2);
  });

  it('has a reference to the grid where the grid reaches, and none at a pole', () => {
    expect(block(withDay())).toMatch(/\|Latitude, longitude\|-33\.20\d{4}, -17\.38\d{4} · \d\d[A-Z] /u);
    const polar = withDay({ points: [{ kind: 'drop', at: [0, 86] }] });
    expect(block(polar)).toContain('|Latitude, longitude|86.000000, 0.000000|');
  });

  it('on the way out says when the crew is there; on the way back that race control must have released it first', () => {
    const analysis = withDay();
    const clock = (seconds: number): string => new Date(seconds * 1000).toISOString().slice(11, 16);
    const own = analysis.day!.stations[0]!;
    expect(block(analysis)).toContain(`|Crew there from|${clock(own.crewAt!)}|`);
    const back = block(analysis, {}, 'collect');
    expect(back).not.toContain('Crew there from');
    expect(back).toContain(`not before ${clock(Math.ceil(own.packedAt! / 60) * 60)}.`);
    expect(back).toContain('|Load at|');
    const unknown = { ...analysis, day: { ...analysis.day!, stations: [] } };
    expect(block(unknown)).not.toContain('Crew there from');
    expect(block(unknown, {}, 'collect')).not.toContain('not before');
  });

  it('of a station that is not there is nothing', () => {
    expect(stopBlock(withDay(), { ...STOP, station: 'gone' }, 'drop', 1, en).html).toBe('');
  });
});

describe('the light at a stop', () => {
  // By hand: noon at 17.4° W is at 12:00 + 70 min − 4 min (equation of time) = 13:06 UTC; at 33° S ten days before the
  // equinox the day is 11 h 45 min long (refraction with it), so the Sun rises about 07:13 and sets about 18:58.
  const day = withDay({}, { date: '2027-09-12', timeZone: 'Etc/UTC' });

  it('is told where the vehicle comes before sunrise, leaves after sunset, or stays over midnight', () => {
    expect(block(day, { arrive: 6 * H, leave: 8 * H })).toMatch(/It is dark: the sun rises at 07:1\d\./u);
    expect(block(day, { arrive: 18 * H, leave: 20 * H })).toMatch(/It is dark: the sun sets at 1(?:8:5\d|9:0\d)\./u);
    expect(block(day, { arrive: 12 * H, leave: 24.5 * H })).toContain('It is dark: the sun sets at');
    expect(block(day, { arrive: 30 * H, leave: 31 * H })).toContain('It is dark: the sun rises at');
  });

  it('is not told by day', () => {
    expect(block(day, { arrive: 9 * H, leave: 10 * H })).not.toMatch(/dark|amp/u);
  });

  it('may be dark where the plan has no date or no time zone, and a lamp is advised where the Sun does not rise or set', () => {
    expect(block(withDay())).toContain(en.lists.runs.mayBeDark);
    expect(block(withDay({}, { date: '2027-09-12' }))).toContain(en.lists.runs.mayBeDark);
    const polar = {
      ...day,
      stations: day.stations.map((station) => ({ ...station, at: [0, 80] as const })),
      plan: { ...day.plan, date: '2027-12-21' },
    };
    const says = block(polar);
    expect(says).toContain(`|${en.lists.runs.lamp}|`);
    expect(says).not.toContain('It is dark');
  });
});

describe('the papers of drivers', () => {
  it('are for the vehicles that drive out, with each run and its weight', () => {
    const analysis = withDay({}, { vehicles: [van, { ...van, id: 'v2', name: 'Spare' }] });
    expect(driving(analysis).map(({ id }) => id)).toEqual(['v1']);
    const page = plain(driverRunBody(analysis, van, sheet).html);
    expect(page).toContain(
      'Carries up to 1,500 kg, for at most 6 stations. Load at the start of the course from 04:00.',
    );
    const run = analysis.day!.runs.find(({ kind }) => kind === 'drop')!;
    expect(page).toContain(`|Run 1: ${run.kg >= 100 ? String(Math.round(run.kg)) : run.kg.toFixed(1)} kg in all|`);
    expect(page).not.toContain(en.lists.runs.none);
  });

  it('say that there is no run where there is none: no vehicle goes, or there is no race day', () => {
    const idle = analysisOf(STRAIGHT, [AT_1500], { vehicles: [van] });
    expect(driving(idle)).toEqual([]);
    expect(driverRunBody(idle, van, sheet).html).toContain(en.lists.runs.none);
    expect(collectionRunBody(idle, sheet).html).toContain(en.lists.runs.none);
  });

  it('name the vehicle before each run that collects', () => {
    const page = plain(collectionRunBody(withDay(), sheet).html);
    expect(page).toMatch(/\|Van · Run 1: [\d,.]+ kg in all\|/u);
    expect(page).toContain(en.lists.runs.piles);
  });
});

it('what is carried has words: signs, bags, empty jugs, packs', () => {
  expect(
    (
      [
        { kind: 'sign', wording: 'Gel ahead' },
        { kind: 'trashBags' },
        { kind: 'waterJug', empty: true },
        { kind: 'waterJug' },
      ] as const
    ).map((supply) => suppliesText(supply, en.frame.supplies)),
  ).toEqual(['Sign “Gel ahead”', 'Bags of trash', 'Empty jugs of water', 'Jugs of water']);
});

describe('the runs of one vehicle', () => {
  it('are printed to the fiftieth; the rest, which nobody drives in a day, are counted and weighed', () => {
    const analysis = withDay();
    const day = analysis.day!;
    const [drop] = day.runs;
    const of = (kind: Run['kind'], count: number): Analysis => ({
      ...analysis,
      day: { ...day, runs: Array.from({ length: count }, () => ({ ...drop!, kind, kg: 100 })) },
    });
    const bodies = [
      (count: number) => driverRunBody(of('drop', count), van, sheet).html,
      (count: number) => collectionRunBody(of('collect', count), sheet).html,
    ];
    for (const body of bodies) {
      expect(body(50).split('data-stop=')).toHaveLength(51);
      expect(body(50)).not.toContain('not printed');
      expect(body(51)).toContain('1 more run of this vehicle, 100 kg in all, is not printed.');
      expect(body(60).split('data-stop=')).toHaveLength(51);
      expect(body(60)).toContain('10 more runs of this vehicle, 1,000 kg in all, are not printed.');
    }
  });
});
