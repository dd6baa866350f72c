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

describe('what the document says only where there is something', () => {
  const plain = documentOf(analysisOf(STRAIGHT, [AT_1500], { races: [runners()] }));

  it('is the weather, an hour after the other with the level of its heat', () => {
    const weather = [
      { at: 10 * 3600, windKmh: 35 },
      { at: 8 * 3600, wbgtC: 17 },
      { at: 9 * 3600, airC: 24, humidity: 0.5 },
    ];
    // Levels of the position stand of the American College of Sports Medicine of 1996 (see `plan/weather.ts`): 17 °C is green; 24 °C of
    // air at 50 % stands for 0.567 × 24 + 0.393 × 14.9 + 3.94 = 23.4 °C (Australian Bureau of Meteorology), which is red.
    expect(documentOf(analysisOf(STRAIGHT, [AT_1500], { races: [runners()], weather })).weather).toEqual([
      { at: '08:00:00', wbgtC: 17, level: 'green' },
      { at: '09:00:00', airC: 24, humidity: 0.5, level: 'red' },
      { at: '10:00:00', windKmh: 35, level: null },
    ]);
    expect(plain).not.toHaveProperty('weather');
  });

  it('is what arrivals take, of which a day may not tell', () => {
    expect(plain.stations[0]!.races[0]).toHaveProperty('take');
    const { take, sinceDrink, ...told } = analysis.day!.stations[0]!.races[0]!;
    expect([take, sinceDrink]).not.toContain(undefined);
    const day = { ...analysis.day!, stations: [{ ...analysis.day!.stations[0]!, races: [told] }] };
    const [race] = raceDayDocument(analysis, day, []).stations[0]!.races;
    expect(race).toMatchObject({ race: 'm', arrivals: 1000 });
    for (const key of ['take', 'sinceDrink']) expect(race).not.toHaveProperty(key);
  });

  it('is second deliveries and fitted splits', () => {
    const { resupply: _, fitted: __, ...day } = analysis.day!;
    const bare = raceDayDocument(analysis, day, []);
    for (const key of ['resupply', 'fitted']) expect(bare).not.toHaveProperty(key);
    const fitted = [{ race: 'm', csv: 'past.csv', splits: ['5 km'], runners: 812 }];
    expect(raceDayDocument(analysis, { ...day, resupply: [], fitted }, [])).toMatchObject({ resupply: [], fitted });
  });
});
