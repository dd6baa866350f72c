/** When a thirsty field runs a station dry, and whether a second delivery comes before, against sums by hand. */
import { describe, expect, it } from 'vitest';
import { analyse } from '../analyse.ts';
import { planFrom } from '../testing/plans.ts';
import type { RaceDay } from './day.ts';

const dayOf = (keys: Readonly<Record<string, unknown>>): RaceDay => {
  const analysed = analyse(
    planFrom({
      courses: [
        {
          id: 'c',
          line: [
            [-30.2, 12.2],
            [-30.006, 12.2],
          ],
          drawn: 'centre',
        },
      ],
      races: [
        {
          id: 'r',
          course: 'c',
          waves: [{ time: '08:00', entrants: 1000 }],
          finish: { median: '2:05:00', spread: 0.2 },
        },
      ],
      stations: [{ id: 's1', on: { course: 'c', measure: '15 km', side: 'right' }, serves: ['water'] }],
      ...keys,
    }),
    { gpx: new Map() },
  );
  if (!analysed.ok) throw new Error(analysed.findings[0]!.message);
  return analysed.value.day!;
};

describe('A thirsty field', () => {
  it('runs out when one and a half times the planned cups are more than were ordered', () => {
    const [own] = dayOf({}).stations;
    const ordered = own!.packs.find(({ kind }) => kind === 'waterJug')!;
    let cups = 0;
    // By clock minutes, from the counts that race day prints; the model counts minutes from the first arrival.
    const minute = own!.perMinute.find(([, counts]) => {
      cups += counts['r']! * own!.races[0]!.take!.water * 1.15 * 1.5;
      return cups * 0.10350735 > ordered.count * ordered.pack;
    })![0];
    expect(own!.shortage!.drink).toBe('water');
    expect(Math.abs(own!.shortage!.at - minute)).toBeLessThanOrEqual(60);
    // It is seen at a half hour before.
    expect(own!.shortage!.seen! % 1800).toBe(0);
    expect(own!.shortage!.seen!).toBeLessThan(own!.shortage!.at);
  });

  it('finds enough where the reserve is half', () => {
    expect(dayOf({ supplies: { reserve: 0.51 } }).stations[0]!.shortage).toBeNull();
  });
});

describe('A second delivery', () => {
  it('takes as long as the plan says, and is in time where it comes before the drink runs out', () => {
    const { resupply, stations } = dayOf({ supplies: { resupply: { at: 0.25, takes: '10 min' } } });
    const { seen, at } = stations[0]!.shortage!;
    expect(resupply).toEqual([
      {
        station: 's1',
        drink: 'water',
        takes: 600,
        called: seen,
        arrives: seen! + 600,
        runsOut: at,
        inTime: seen! + 600 <= at,
      },
    ]);
    const [late] = dayOf({ supplies: { resupply: { at: 0.25, takes: '3 h' } } }).resupply!;
    expect(late!.inTime).toBe(false);
  });

  it('comes with the stand-by vehicle along the course where the plan says no time, and no run is planned with it', () => {
    const vehicles = [
      { id: 'v1', kmh: 30, stop: '5 min' },
      { id: 'v2', kmh: 30, stop: '5 min', standBy: true },
    ];
    const { resupply, runs } = dayOf({ vehicles });
    // 15 km at 30 km/h and five minutes.
    expect(resupply![0]).toMatchObject({ vehicle: 'v2', takes: expect.closeTo(2100, 0) });
    expect(new Set(runs.map(({ vehicle }) => vehicle))).toEqual(new Set(['v1']));
    expect(dayOf({}).resupply).toBeUndefined();
  });
});
