/**
 * One number everywhere: what stands poured, is ordered and stands on the tables, on 500 random plans, against a
 * simulation by minutes of its own, and read again from the captain's sheets, the terminal and the JSON document.
 */
import { type Analysis, type StationDay, analyse, readPlan } from '@halfcup/core';
import { raceDayDocument } from '@halfcup/core/schemas';
import { captainSheet } from '@halfcup/core/papers';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { pourWordsIn } from './support/pourWords.ts';

const PLANS = 500;

const station = fc.record({
  km: fc.integer({ min: 6, max: 190 }).map((tenths) => tenths / 10),
  serves: fc.constantFrom(['water'], ['sportsDrink'], ['sportsDrink', 'water'], ['gel', 'sportsDrink', 'water']),
  tables: fc.option(fc.record({ water: fc.integer({ min: 1, max: 9 }), sportsDrink: fc.integer({ min: 1, max: 9 }) })),
  pourers: fc.option(fc.integer({ min: 1, max: 6 })),
});
const cases = fc.record({
  heat: fc.constantFrom('cool', 'warm', 'hot'),
  entrants: fc.array(fc.integer({ min: 10, max: 3000 }), { minLength: 1, maxLength: 4 }),
  minutes: fc.integer({ min: 85, max: 260 }),
  spread: fc.constantFrom(0.08, 0.15, 0.25),
  stations: fc.array(station, { minLength: 1, maxLength: 3 }),
});
type Case = typeof cases extends fc.Arbitrary<infer T> ? T : never;

function planOf({ heat, entrants, minutes, spread, stations }: Case): object {
  return {
    format: 'halfcup-plan',
    version: 1,
    name: 'Quay run',
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
        id: 'h',
        course: 'c',
        waves: entrants.map((count, k) => ({ time: `0${8 + Math.floor(k / 3)}:${(k % 3) * 2}0`, entrants: count })),
        finish: { median: `${minutes} min`, spread },
      },
    ],
    supplies: { heat },
    stations: stations.map(({ km, serves, tables, pourers }, k) => ({
      id: `s${k}`,
      on: { course: 'c', measure: `${km} km`, side: 'right' },
      serves,
      ...(tables === null
        ? {}
        : {
            tables: Object.fromEntries(
              serves.flatMap((kind) => (kind === 'gel' ? [] : [[kind, tables[kind as 'water']]])),
            ),
          }),
      ...(pourers === null ? {} : { crew: { pourers } }),
    })),
  };
}

function analysisOf(one: Case): Analysis {
  const read = readPlan(JSON.stringify(planOf(one)), 'plan.json');
  if (!read.ok) throw new Error(read.findings[0]!.message);
  const analysed = analyse(read.value.plan, { gpx: new Map() });
  if (!analysed.ok) throw new Error(analysed.findings[0]!.message);
  return analysed.value;
}

const DRINKS = ['water', 'sportsDrink'] as const;
type Drink = (typeof DRINKS)[number];

/** Cups that runners want in each clock minute, spilt ones too. */
const wantedBy = (day: StationDay, drink: Drink): number[] =>
  day.perMinute.map(([, counts]) =>
    day.races.reduce((sum, { race, take }) => sum + (counts[race] ?? 0) * take![drink] * 1.15, 0),
  );

/** The first minute in which somebody finds no cup, or null: tables begin as poured, and pourers refill as fast as they pour, never beyond the tables. */
function firstWait(day: StationDay, drink: Drink): number | null {
  const { cups, tables, pourers, cupsPerLayer } = day.prePour[drink]!;
  const all = day.cups.water + day.cups.sportsDrink;
  const perMinute = (pourers * 15 * day.cups[drink]) / all;
  let standing = cups;
  for (const [minute, wanted] of wantedBy(day, drink).entries()) {
    standing -= wanted;
    if (standing < -0.5) return minute;
    standing = Math.min(tables * 3 * cupsPerLayer!, standing + perMinute);
  }
  return null;
}

test('what is poured is ordered, fills from the jugs, stands on the tables, is poured in time, and lasts', () => {
  let waited = 0;
  fc.assert(
    fc.property(cases, (one) => {
      const { day, findings } = analysisOf(one);
      for (const own of day!.stations) {
        if (own.quantiles === null) continue;
        const said = findings.filter(({ where }) => where.station === own.id).map(({ code }) => code);
        const dry = [...said, ...findings.filter(({ where }) => where.station === undefined).map(({ code }) => code)];
        let poured = 0;
        for (const drink of DRINKS) {
          const stock = own.prePour[drink];
          if (stock === undefined) continue;
          poured += stock.cups;
          const sleeves = own.packs.find(({ kind }) => kind === 'cups')!;
          const jugs = own.packs.find(({ kind }) => kind === (drink === 'water' ? 'waterJug' : 'sportsDrinkJug'))!;
          expect(stock.cups).toBeLessThanOrEqual(own.cups[drink]);
          expect(own.cups[drink]).toBeLessThanOrEqual(own.ordered![drink]);
          expect(own.ordered!.water + own.ordered!.sportsDrink).toBeLessThanOrEqual(sleeves.count * sleeves.pack);
          // A cup of 7 US fluid ounces, half full, is 0.1035 l.
          expect(own.ordered![drink] * 0.10350735).toBeLessThanOrEqual(jugs.count * jugs.pack + 1e-6);
          expect(stock.cups).toBeLessThanOrEqual(stock.tables * 3 * 200);
          const wait = firstWait(own, drink);
          if (wait !== null) {
            waited++;
            expect(dry.some((code) => code === 'cups-run-out' || code === 'pre-pour-room')).toBe(true);
          }
        }
        // All but the captain pour, fifteen cups a minute each, between set-up and ready.
        const seconds = (poured / ((own.crew.total - own.crew.captain) * 15)) * 60;
        expect(own.crewAt! + 3600 + seconds).toBeLessThanOrEqual(own.openFrom! + 1);
        expect(own.packedAt!).toBeGreaterThan(own.openUntil!);
      }
    }),
    { seed: 71, numRuns: PLANS },
  );
  // Plans that fix too few tables or pourers are among them.
  expect(waited).toBeGreaterThan(0);
});

test('captain’s sheet and JSON say the same figures as race day', () => {
  fc.assert(
    fc.property(cases, (one) => {
      const analysis = analysisOf(one);
      const document = raceDayDocument(analysis, analysis.day!, analysis.findings);
      analysis.day!.stations.forEach((own, k) => {
        if (own.quantiles === null) return;
        const page = captainSheet(analysis, analysis.stations[k]!, { paper: 'a4', printedAt: '2027-09-01 18:30' });
        for (const drink of DRINKS) {
          const stock = own.prePour[drink];
          expect(document.stations[k]!.prePour[drink]?.cups).toBe(stock?.cups);
          if (stock === undefined) continue;
          const told = pourWordsIn(new RegExp(`data-pour="${drink}">([^<]*)<`, 'u').exec(page)![1]!);
          expect(told.cups).toBe(stock.cups);
          expect(told.tables).toBe(stock.tables);
          expect(Math.abs(told.each * stock.tables - stock.cups)).toBeLessThan(stock.tables);
          // Layers told make up what stands on each table, and no more layers than race day counts.
          expect(told.layers).toBe(Math.max(1, stock.layers));
          const jugs = new RegExp(`data-jugs="${drink}">.*?</tr>`, 'su').exec(page)?.[0] ?? '';
          const cells = [...jugs.matchAll(/<td>([\d,]+)<\/td>/gu)].map(([, cell]) => Number(cell!.replaceAll(',', '')));
          const left = own.jugsLeft!.map((row) => row[drink]!);
          const step = Math.ceil(left.length / 10);
          expect(cells).toEqual(left.filter((_, at) => at % step === 0));
          expect(document.stations[k]!.jugsLeft.map((row) => row[drink])).toEqual(left);
          expect(left.every((count, at) => at === 0 || count <= left[at - 1]!)).toBe(true);
        }
        expect(page).toContain(`<b>${own.crew.total}</b> in all`);
        expect(document.stations[k]!.crew.total).toBe(own.crew.total);
      });
    }),
    { seed: 72, numRuns: PLANS / 5 },
  );
});
