/** Race day as JSON: clock times as texts, nothing where nobody arrives, and where a vehicle stops. */
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../analyse.ts';
import { AT_1500, STRAIGHT, analysisOf, runners } from '../testing/analyses.ts';
import { ORIGIN, from } from '../testing/courses.ts';
import { type RaceDayDocument, raceDayDocument } from './raceDayDocument.ts';

const documentOf = (analysis: Analysis): RaceDayDocument =>
  raceDayDocument(analysis, analysis.day!, analysis.day!.findings);

const drop = from(ORIGIN, 0, 40);
const analysis = analysisOf(
  STRAIGHT,
  [
    {
      ...AT_1500,
      serves: ['gel', 'water'],
      points: [
        { kind: 'access', at: ORIGIN },
        { kind: 'drop', at: drop },
      ],
    },
    { at: [-10, -30] },
    { ...AT_1500, on: { ...AT_1500.on!, measure: 3000 } },
  ],
  {
    races: [runners(1000)],
    vehicles: [{ id: 'v1', name: 'Van', kg: 1500, places: 6, kmh: 25, stop: 900, from: 4 * 3600 }],
  },
);

describe('the document of a race day', () => {
  const document = documentOf(analysis);
  const [first, idle, third] = document.stations;

  it('writes clock times as HH:MM:SS, and minutes of the day as HH:MM', () => {
    const own = analysis.day!.stations[0]!;
    const clock = (seconds: number): string => new Date(Math.round(seconds) * 1000).toISOString().slice(11, 19);
    expect([first!.first, first!.p10, first!.p50, first!.p90, first!.last]).toEqual(
      [own.quantiles!.first, own.quantiles!.p10, own.quantiles!.p50, own.quantiles!.p90, own.quantiles!.last].map(
        clock,
      ),
    );
    expect([first!.crewAt, first!.openFrom, first!.openUntil]).toEqual(
      [own.crewAt!, own.openFrom!, own.openUntil!].map(clock),
    );
    expect(first!.peak).toEqual({ count: own.peak!.count, at: clock(own.peak!.at) });
    expect(first!.perMinute[0]).toEqual([clock(own.quantiles!.first).slice(0, 5), { m: own.perMinute[0]![1]['m'] }]);
    expect(first!.perMinute.reduce((sum, [, counts]) => sum + counts['m']!, 0)).toBe(1000);
    expect(first!.races).toEqual([
      {
        race: 'm',
        arrivals: 1000,
        first: first!.first,
        p10: first!.p10,
        p50: first!.p50,
        p90: first!.p90,
        last: first!.last,
        sinceDrink: expect.closeTo(own.races[0]!.sinceDrink!, 5),
        take: expect.objectContaining({ water: expect.closeTo(own.races[0]!.take!.water, 5) }),
      },
    ]);
    expect(first!.packedAt).toBe(clock(own.packedAt!));
    expect(first!.jugsLeft.map(({ at }) => at)).toEqual(own.jugsLeft!.map(({ at }) => clock(at).slice(0, 5)));
  });

  it('has the pre-pour of the drinks that the station serves, and of no other', () => {
    expect(Object.keys(first!.prePour)).toEqual(['water']);
    expect(Object.keys(third!.prePour).toSorted()).toEqual(['sportsDrink', 'water']);
    expect(first!.prePour.water).toMatchObject({ cups: analysis.day!.stations[0]!.prePour.water!.cups });
  });

  it('has null for every time of a station where nobody arrives', () => {
    expect([
      idle!.arrivals,
      idle!.first,
      idle!.p10,
      idle!.p50,
      idle!.p90,
      idle!.last,
      idle!.peak,
      idle!.crewAt,
      idle!.openFrom,
      idle!.openUntil,
    ]).toEqual([0, null, null, null, null, null, null, null, null, null]);
    expect([idle!.races, idle!.perMinute, idle!.prePour]).toEqual([[], [], {}]);
  });

  it('rounds what was reckoned to a millionth', () => {
    const long = (value: unknown): boolean => typeof value === 'number' && /\.\d{7}/u.test(String(value));
    const numbers: unknown[] = [];
    JSON.stringify(document, (key, value: unknown) =>
      key === 'at' ? null : typeof value === 'number' ? numbers.push(value) : value,
    );
    expect(numbers.length).toBeGreaterThan(100);
    expect(numbers.filter(long)).toEqual([]);
  });

  it('says of each stop when it is, and where: the drop point, else the pin', () => {
    const stops = document.runs.find(({ kind }) => kind === 'drop')!.stops;
    expect(stops.map(({ station }) => station)).toEqual(['s1', 's3']);
    expect(stops[0]!.arrive).toMatch(/^0\d:\d\d:\d\d$/u);
    expect(stops[0]!.at).toEqual([expect.closeTo(drop[0], 9), expect.closeTo(drop[1], 9)]);
    const pin = analysis.stations[2]!.at;
    expect(stops[1]!.at).toEqual([expect.closeTo(pin[0], 9), expect.closeTo(pin[1], 9)]);
    expect(
      stops[0]!.load.reduce((sum, { kg }) => sum + kg, 0) + stops[1]!.load.reduce((sum, { kg }) => sum + kg, 0),
    ).toBeCloseTo(document.runs[0]!.kg, 3);
  });

  it('has no place for a stop of a station that is not there', () => {
    expect(documentOf({ ...analysis, stations: [] }).runs[0]!.stops.map(({ at }) => at)).toEqual([null, null]);
  });
});
