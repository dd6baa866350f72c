/**
 * Files with an odd structure, thousands for each reader by a fixed seed: each is read or refused in words, with finite numbers and
 * without a word of the program's inside; what is held is no more than the file's length allows. `FULL=1` tries 5,000 of each.
 */
import { describe, expect, it } from 'vitest';
import { analyse } from './analyse.ts';
import { reviewBuilt } from './asBuilt.ts';
import { readGpx } from './gpx/read.ts';
import { readPlan } from './plan/read.ts';
import { readStationList } from './plan/list/read.ts';
import { readLeftovers } from './raceday/leftoversTable.ts';
import { readResults } from './raceday/results.ts';
import { readRoster } from './raceday/roster.ts';
import { oddGpx, oddRecording } from './testing/fuzz/gpx.ts';
import { oddPlan } from './testing/fuzz/plan.ts';
import { randomOf } from './testing/fuzz/random.ts';
import { CASES, expectSound, fuzzed, valuesIn } from './testing/fuzz/sound.ts';
import { CREW, LEFT, RESULTS, STATIONS, oddTable } from './testing/fuzz/table.ts';

const PLAN = {
  format: 'halfcup-plan',
  version: 1,
  name: 'Quay run',
  date: '2027-09-12',
  timeZone: 'Etc/UTC',
  courses: [
    {
      id: 'c',
      line: [
        [-17.4, -33.2],
        [-17.38, -33.2],
        [-17.355, -33.2],
      ],
      drawn: 'centre',
      marks: [{ at: [-17.38, -33.2], measure: '1.9 km' }],
    },
    { id: 'd', parts: [{ of: 'c', from: '1 km' }] },
  ],
  races: [
    { id: 'r', course: 'c', waves: [{ time: '08:00', entrants: 300 }], finish: { median: '25 min', spread: 0.2 } },
    { id: 'q', course: 'd' },
  ],
  stations: [
    {
      id: 's1',
      name: 'Pier',
      on: { course: 'c', measure: '2 km', side: 'right' },
      serves: ['water', 'gel'],
      tables: { water: 2, gel: 1 },
    },
    { id: 's2', at: [-17.37, -33.2], side: 'left', practice: { signAhead: '80 m' }, passes: 'all' },
  ],
  zones: [{ rule: 'keep-clear', polygon: [[-17.39, -33.2001], [-17.389, -33.2001], [-17.389, -33.2]] }], // prettier-ignore
  vehicles: [{ id: 'v', from: '05:00' }],
  variants: [{ name: 'Moved', stations: { s1: { side: 'left' } } }],
  waivers: [{ code: 'no-contacts', by: 'A', reason: 'B' }],
  people: { crew: [{ name: 'Ada', station: 's1' }] },
};

const read = readPlan(JSON.stringify(PLAN), 'p.json');
if (!read.ok) throw new Error(read.findings[0]!.message);
const { plan } = read.value;
const made = analyse(plan, { gpx: new Map() });
if (!made.ok) throw new Error(made.findings[0]!.message);
const analysis = made.value;

/** Against hanging, in milliseconds, with all cases on a busy machine. */
const PATIENCE = 1_200_000;

/** Were all refused, or none, only half of a reader would be tried. */
function expectBoth({ read: fine, refused }: { readonly read: number; readonly refused: number }): void {
  expect(fine).toBeGreaterThan(CASES / 100);
  expect(refused).toBeGreaterThan(CASES / 100);
}

describe('an odd structure is read or refused in words', () => {
  it(
    'of GPX files',
    () => {
      const random = randomOf(20_261_201);
      expectBoth(
        fuzzed(() => {
          const text = oddGpx(random);
          const result = readGpx(text, 'c.gpx');
          // At most 21 findings of each of six codes.
          expectSound(result, 130);
          if (result.ok)
            expect(
              valuesIn({ ...result.value, tracks: finite(result.value.tracks), routes: finite(result.value.routes) }),
            ).toBeLessThan(40 + text.length);
          return result.ok;
        }),
      );
    },
    PATIENCE,
  );

  it(
    'of plans',
    () => {
      const random = randomOf(20_261_202);
      expectBoth(
        fuzzed(() => {
          const text = oddPlan(PLAN, random);
          const result = readPlan(text, 'p.json');
          expectSound(result, 201);
          return result.ok;
        }),
      );
    },
    PATIENCE,
  );

  it.each([
    ['results', RESULTS, (text: string) => readResults(text, 'net', 'r.csv')],
    [
      'station lists',
      STATIONS,
      (text: string) =>
        readStationList(text, { file: 'l.csv', units: 'metric', courses: [{ id: 'c', name: 'Full', length: 4190 }] }),
    ],
    ['rosters', CREW, (text: string) => readRoster(text, 'c.csv', plan)],
    ['forms for what was left', LEFT, (text: string) => readLeftovers(text, 'f.csv', plan, analysis.day!.stations)],
  ] as const)(
    'of %s',
    (_title, words, reading) => {
      const random = randomOf(20_261_203);
      expectBoth(
        fuzzed(() => {
          const text = oddTable(words, random);
          const result = reading(text);
          // A list of stations tells of each cell of a row.
          expectSound(result, 10 + 12 * text.split(/\r\n|\n|\r/u).length);
          if (result.ok) expect(valuesIn(result.value)).toBeLessThan(20 + 20 * text.length);
          return result.ok;
        }),
      );
    },
    PATIENCE,
  );

  it(
    'of points recorded on the ground, held against a plan',
    () => {
      const random = randomOf(20_261_204);
      expectBoth(
        fuzzed(() => {
          const recorded = readGpx(oddRecording(random), 'placed.gpx');
          expectSound(recorded, 130);
          if (!recorded.ok) return false;
          const review = reviewBuilt(analysis, recorded.value);
          expectSound({ ok: true, findings: review.findings }, 300);
          valuesIn(review.verdicts);
          valuesIn(review.stations);
          return true;
        }),
      );
    },
    PATIENCE,
  );
});

/** Lines less their elevations, of which NaN stands for none. */
const finite = (
  lines: readonly { readonly segments: readonly { readonly lon: Float64Array; readonly lat: Float64Array }[] }[],
): unknown => lines.map(({ segments }) => segments.map(({ lon, lat }) => ({ lon: [...lon], lat: [...lat] })));
