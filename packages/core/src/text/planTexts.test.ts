/** Sentences on plans and race day in every language and unit: each problem at least once. */
import { describe, expect, it } from 'vitest';
import { findings as english } from './en/findings.ts';
import { words as englishWords } from './en/words.ts';
import { findings as spanish } from './es/findings.ts';
import { words as spanishWords } from './es/words.ts';
import type { Accepted, JsonExpected, PlainKind, PlanParams } from './params/plan.ts';
import type { Unknown } from './params/unknown.ts';
import type { RacedayParams } from './params/raceday.ts';
import { type Say, sayIn } from './say.ts';
import { type Sentence, joined } from './sentence.ts';
import type { Names } from './voice.ts';

const names: Names = { station: (id) => `Station ${id}`, race: (id) => `Race ${id}`, course: (id) => `Course ${id}` };

const near: Unknown = { word: 'sings', near: 'signs', known: ['signs'], more: 0 };
const far: Unknown = { word: 'zebra', known: ['a', 'b', 'c'], more: 4 };
const alone: Unknown = { word: 'zebra', known: [], more: 0 };
const sign = { keys: 'practice.signAhead', numbers: [] };
const wave = { keys: 'races[].waves[].time', numbers: [1, 2] };

const PLAIN: { readonly [K in PlainKind]: true } = {
  text: true,
  number: true,
  whole: true,
  boolean: true,
  list: true,
  object: true,
  other: true,
  filledText: true,
  id: true,
  file: true,
  date: true,
  timeZone: true,
  language: true,
  clock: true,
  position: true,
  positionWithElevation: true,
  track: true,
  finish: true,
  passes: true,
};
const ACCEPTED: readonly Accepted[] = [
  ...(Object.keys(PLAIN) as PlainKind[]).map((kind) => ({ kind })),
  ...(['length', 'duration', 'volume', 'mass'] as const).flatMap((kind): Accepted[] => [
    { kind },
    { kind, positive: true, units: ['a', 'b', 'c'] },
    { kind, colons: true },
  ]),
  { kind: 'oneOf', values: ['left', 'right'], near: 'right' },
  ...(['over', 'atLeast', 'under', 'atMost'] as const).map((kind) => ({ kind, bound: 0.5 })),
  ...(['fewest', 'most'] as const).flatMap((kind) => [
    { kind, count: 1, of: 'entries' } as const,
    { kind, count: 2, of: 'characters' } as const,
  ]),
];
const JSON_EXPECTED: { readonly [K in JsonExpected]: true } = {
  value: true,
  number: true,
  key: true,
  colon: true,
  comma: true,
  brace: true,
  bracket: true,
  end: true,
  noComment: true,
  quote: true,
  digits: true,
  unicode: true,
  escape: true,
  noControl: true,
  noComma: true,
};

const PLAN: { readonly [C in keyof PlanParams]: readonly PlanParams[C][] } = {
  'plan-value': [
    ...ACCEPTED.flatMap((accepted) =>
      (['fast', -7, { kind: 'nothing' }, { kind: 'list', count: 3 }] as const).map(
        (found): PlanParams['plan-value'] => ({ problem: 'value', found, accepted, ...sign }),
      ),
    ),
    { problem: 'noSuchDay', found: '2027-02-30', keys: 'date', numbers: [] },
    { problem: 'latitude', found: 95, swapped: true, keys: 'stations[].at', numbers: [1] },
    { problem: 'longitude', found: -210, keys: 'stations[].at', numbers: [1] },
    { problem: 'markUnplaced', keys: 'courses[].marks[]', numbers: [1, 2] },
    { problem: 'markUnmeasured', keys: 'courses[].marks[]', numbers: [1, 2] },
    { problem: 'firstShare', found: 0.1, ...wave },
    { problem: 'lastShare', found: 0.9, ...wave },
    { problem: 'shareFalls', found: 0.5, before: 0.6, ...wave },
    { problem: 'timeFalls', ...wave },
    {
      problem: 'rangeUpsideDown',
      low: 'practice.trashFrom',
      from: 45.72,
      to: 36.6,
      keys: 'practice.trashTo',
      numbers: [],
    },
    { problem: 'tooManyBoxes', boxes: 4573, most: 1000, ...sign },
    { problem: 'partBackwards', from: 20_000, to: 10_000, ...sign },
    { problem: 'timesBackwards', from: 36_000, to: 30_000, ...sign },
    { problem: 'heatStepsFall', steps: [25, 20], ...sign },
    { problem: 'noneOf', choices: ['gpx', 'line', 'parts'], keys: 'courses[]', numbers: [1] },
    { problem: 'together', found: ['at', 'on'], choices: ['at', 'on'], keys: 'stations[].on', numbers: [1] },
  ],
  'plan-key': [{ problem: 'fixedId' }, ...[near, far, alone].map((key) => ({ problem: 'unknown', key }) as const)],
  'plan-reference': [
    { problem: 'twice', found: 's1', number: 1, keys: 'stations[].id', numbers: [3] },
    ...(['course', 'race', 'station'] as const).flatMap((of) =>
      [near, far, alone].map(
        (name) => ({ problem: 'missing', of, name, keys: 'races[].course', numbers: [1] }) as const,
      ),
    ),
    ...[near, far, alone].map(
      (name) => ({ problem: 'notServed', name, keys: 'stations[].lead.race', numbers: [1] }) as const,
    ),
    { problem: 'sameNumber', number: 3, stations: ['s1', 's2'], keys: 'numbers.*', numbers: [] },
    { problem: 'circle', way: ['a', 'b', 'a'], keys: 'courses[].parts', numbers: [1] },
  ],
  'plan-version': [
    { problem: 'noPlan', found: { kind: 'list', count: 0 }, version: 1 },
    { problem: 'format', found: { kind: 'nothing' } },
    { problem: 'format', found: 'some-plan' },
    { problem: 'version', found: '1', current: 1 },
    { problem: 'version', found: { kind: 'nothing' }, current: 2 },
    { problem: 'later', found: 2, current: 1 },
  ],
  'plan-not-json': [
    { problem: 'empty' },
    { problem: 'markup' },
    { problem: 'deep', most: 64 },
    { problem: 'half', found: String.raw`\ud83c` },
    ...(Object.keys(JSON_EXPECTED) as JsonExpected[]).flatMap((expected): PlanParams['plan-not-json'][] => [
      { problem: 'cutOff', expected },
      { problem: 'found', found: '}', expected },
    ]),
  ],
  'plan-duplicate-key': [
    { problem: 'twice', key: 'id' },
    { problem: 'hidden', key: '__proto__' },
  ],
  'plan-variant': [near, far, alone].map((variant) => ({ variant })),
  'text-encoding': [
    { problem: 'wide', encoding: 'UTF-16' },
    { problem: 'invalid', byte: 'E9', at: 34 },
    { problem: 'binary', byte: 'FF', at: 1 },
  ],
  'gpx-missing': [{ gpx: 'full.gpx' }],
  'mark-unknown': [
    { problem: 'unmeasured' },
    { problem: 'unmeasured', name: 'post', waypoint: near },
    { problem: 'unplaced', name: '12 km' },
    { problem: 'unplaced', gpx: { file: 'c.gpx', waypoints: 0 }, waypoint: far },
    { problem: 'unplaced', name: '12 km', gpx: { file: 'c.gpx', waypoints: 2 } },
  ],
  'start-places': [
    { problem: 'everyAndAt' },
    { problem: 'noWaypoints' },
    { problem: 'noStations' },
    { problem: 'every', every: 90_000, length: 42_195, most: 500 },
    { problem: 'every', every: { kind: 'notNumber' }, length: 42_195, most: 500 },
    { problem: 'repeated', measure: 1234.5 },
    { problem: 'unusedMarks', names: ['mark 1'], more: 0 },
    { problem: 'unusedMarks', names: ['mark 1', 'mark 2'], more: 3 },
  ],
  'start-waypoint': [
    { problem: 'mark', name: 'Well' },
    { problem: 'end', name: 'Start', end: 'start' },
    { problem: 'end', name: 'Finish', end: 'finish' },
    { problem: 'offCourse', name: 'Well' },
    { problem: 'unordered', name: 'Well' },
  ],
  'setup-race': [
    { problem: 'twoShapes' },
    { problem: 'turnPast', measure: 5000, length: 4200 },
    ...(['turnAt', 'laps', 'start', 'entrants', 'finish', 'cutoff', 'cutoffAt'] as const).map(
      (field) => ({ problem: 'value', field, found: 'soon' }) as const,
    ),
    ...(['noName', 'noEntrants', 'twoCutoffs'] as const).map((problem) => ({ problem })),
    { problem: 'noStart', of: 'entrants' },
    { problem: 'noStart', of: 'cutoff' },
    { problem: 'cutoffFirst', start: 28_800, cutoff: 27_000 },
    { problem: 'pace', field: 'finish', found: '28:30', time: 102_600, length: 5000 },
    { problem: 'pace', field: 'cutoff', found: '5 min', time: 300, length: 5000 },
  ],
  'setup-file': [
    { problem: 'course', gpx: 'a.gpx' },
    { problem: 'race', gpx: 'a.gpx' },
  ],
  'setup-every': [
    { every: 90_000, most: 500 },
    { every: 0, most: 500 },
  ],
  'list-unread': (['empty', 'noRows', 'openQuote', 'afterQuote'] as const).map((problem) => ({ problem })),
  'list-heads': [
    { problem: 'none' },
    { problem: 'noPlace' },
    { problem: 'twice', column: 'km' },
    { problem: 'unused', columns: ['Sponsor'], more: 2 },
  ],
  'list-row': [
    ...(['distance', 'width', 'lon', 'lat', 'count', 'side', 'serves'] as const).map(
      (kind) => ({ problem: 'value', row: 3, column: 'Distance', found: 'far', kind }) as const,
    ),
    { problem: 'comma', row: 3, column: 'Distance', found: '1,200' },
    ...(['noPlace', 'twoPlaces', 'halfPlace'] as const).map((problem) => ({ problem, row: 3 })),
    ...[near, far, alone].map((name) => ({ problem: 'course', row: 3, name }) as const),
    { problem: 'past', row: 3, measure: 21_100, length: 21_097 },
    { problem: 'before', row: 3, measure: 10, start: 12 },
    { problem: 'fields', row: 3, fields: 9, header: 8 },
  ],
  'list-assumed': (['side', 'tables'] as const).flatMap((problem) => [
    { problem, rows: 1 },
    { problem, rows: 4 },
  ]),
};

const RACEDAY: { readonly [C in keyof RacedayParams]: readonly RacedayParams[C][] } = {
  'race-without-waves': [{}],
  'race-without-starters': [{ show: 0.9 }],
  'race-too-large': [{ starters: 2_000_000, most: 1_000_000 }],
  'race-without-times': [{ wave: 2 }],
  'race-endless': [
    { after: null, most: 604_800 },
    { after: 700_000, most: 604_800 },
  ],
  'waves-overlap': [{ wave: 28_800, until: 29_100, next: 28_900, flow: 600 }],
  'results-missing': [{ csv: 'past.csv', column: 'net' }],
  'results-empty': [
    { problem: 'noLine', column: 'net' },
    { problem: 'noTimes', column: 'net', rows: 0 },
    { problem: 'noTimes', column: 'net', rows: 1 },
  ],
  'results-unread': [
    { problem: 'openQuote' },
    { problem: 'afterQuote' },
    { problem: 'tooMany', fields: 3, header: 2 },
    { problem: 'tooFew', fields: 1, header: 2 },
    { problem: 'noTime', found: 'fast' },
    { problem: 'more', rows: 10 },
  ],
  'results-column': [
    { problem: 'several', column: 'net', count: 2 },
    { problem: 'none', column: 'net', header: ['place', 'gun'], more: 0 },
    { problem: 'none', column: 'net', header: ['place', 'gun'], more: 188 },
  ],
  'results-left-out': [
    { leftOut: 1, rows: 2, column: 'net' },
    { leftOut: 2, rows: 1200, column: 'net' },
  ],
  'splits-left-out': [
    { problem: 'twice', columns: ['10 km', '10K'] },
    { problem: 'unread', column: '10K', rows: 1, found: 'fast', used: true },
    { problem: 'unread', column: '10K', rows: 1200, found: '6:30/mi', used: false },
    { problem: 'beyond', columns: ['30 km', '40 km'], length: 21_097.5 },
    { problem: 'runners', runners: 3, of: 812 },
    { problem: 'all', runners: 800, of: 812 },
  ],
  'gradient-unknown': [{ course: 'a' }],
  'gradient-too-steep': [{ course: 'a', grade: -0.4501, most: 0.45 }],
  'cutoff-early': [{ cutoff: 28_800, start: 29_400 }],
  'sweep-impossible': [
    { problem: 'early', leaves: 28_000, wave: 28_800 },
    { problem: 'backwards', from: { measure: 4000, time: 30_000 }, to: { measure: 5000, time: 29_000 }, course: 'a' },
    {
      problem: 'backwards',
      from: { measure: 4000, time: 30_000 },
      to: { measure: 5000, time: 29_000, is: 'cutoff' },
      course: 'a',
    },
    {
      problem: 'backwards',
      from: { measure: 0, time: 30_000, is: 'start' },
      to: { measure: 5000, time: 29_000 },
      course: 'a',
    },
  ],
  'heat-steps': [{ steps: [25, 20] }],
  'heat-assumed': [{ assumed: 'warm' }, { assumed: 'warm', wbgtC: 25.5 }],
  'weather-level': [
    { level: 'white', at: 28_800, celsius: 6, by: 'air' },
    { level: 'green', at: 28_800, celsius: 16, by: 'wbgt' },
    { level: 'yellow', at: 28_800, celsius: 21.25, by: 'humidity' },
    { level: 'red', at: 39_600, celsius: 24, by: 'wbgt' },
    { level: 'black', at: 39_600, celsius: 30, by: 'wbgt' },
  ],
  'weather-wind': [{ at: 39_600, kmh: 45 }],
  'gels-short': [{ ordered: 600, taken: 651, each: 0.8 }],
  'pre-pour-room': [
    { drink: 'water', tables: 1, hold: 600, wanted: 1151, more: 1 },
    { drink: 'sportsDrink', tables: 3, hold: 1800, wanted: 3151, more: 3, pourers: 5 },
    ...[2, 3].map((count) => ({
      drink: 'water' as const,
      tables: 3,
      hold: 1800,
      wanted: 3151,
      more: 3,
      all: Array.from({ length: count }, () => ({ station: 's1', drink: 'water' as const, hold: 1800, wanted: 3151 })),
    })),
  ],
  'cups-run-out': [{ drink: 'sportsDrink', at: 46_860, short: 12, hold: 1800, pourers: 4 }],
  'station-no-arrivals': [{ problem: 'unpassed' }, { problem: 'nobody' }],
  'drop-closed': [
    { kg: 85.4, vehicle: 'Van', late: 720 },
    { kg: 885.4, vehicle: 'Van', late: 27_660, stations: ['s1', 's2'] },
    { kg: 885.4, vehicle: 'Van', late: 7200, stations: ['s1', 's2', 's3', 's4', 's5'] },
  ],
  'drop-late': [
    { vehicle: 'Van', done: 25_620, due: 24_000 },
    { vehicle: 'Van', done: 25_620, due: 24_000, stations: ['s1', 's2'] },
    { vehicle: 'Van', done: 25_620, due: 24_000, stations: ['s1', 's2', 's3'] },
  ],
  'tables-room': [
    { wanted: 60, tables: 31, length: 112.8, room: 60, pourers: 22 },
    { wanted: 60, tables: 31, length: 112.8, room: 60, pourers: null },
    { wanted: 40, tables: 40, length: 76.2, room: 60, pourers: 1 },
    { wanted: 40, tables: 31, length: 76.2, room: 60, pourers: 1, stations: ['s1', 's2'] },
    { wanted: 40, tables: 31, length: 76.2, room: 60, pourers: 1, stations: ['s1', 's2', 's3'] },
  ],
  'crew-many': [{ crew: 30, arrivals: 200, most: 8 }],
  'pour-late': [
    { cups: 2000, people: 2, takes: 4000, most: 3600 },
    { cups: 1000, people: 1, takes: 4000, most: 3600 },
  ],
  'drinks-few': [
    { stations: ['s1'], ordered: 1.24, least: 3, apart: 5000 },
    { stations: ['s1', 's2'], ordered: 2, least: 3, apart: 5000 },
  ],
  'rule-unused': [
    { rules: ['practice.boxEvery'], because: 'cups' },
    { rules: ['supplies.cup', 'crew.handRate'], because: 'bottles' },
  ],
  'vehicle-doubtful': [
    { problem: 'light', vehicle: 'Van', kg: 20, trips: 12, used: false, count: 1 },
    { problem: 'light', vehicle: 'Van', kg: 20, trips: 12, used: true, count: 3 },
    { problem: 'fast', vehicle: 'Van', kmh: 300, most: 90, count: 1 },
    { problem: 'fast', vehicle: 'Van', kmh: 300, most: 90, count: 2 },
  ],
  'load-too-heavy': [
    { supply: { kind: 'waterJug', empty: true }, kg: 50.04, most: 50 },
    { supply: { kind: 'sign', wording: 'Water ahead' }, kg: 60, most: 50 },
  ],
  'clock-missing': [
    { course: 'a', times: ['closes'] },
    { course: 'a', times: ['accessOpens', 'closes', 'reopens'] },
  ],
  'vehicles-missing': [
    { stations: 1, kg: 120 },
    { stations: 10, kg: 9120.4 },
  ],
  'drop-nowhere': [{}],
};

type Texts = Readonly<Record<string, (params: unknown, say: Say) => Sentence>>;
const SAMPLES = Object.entries({ ...PLAN, ...RACEDAY }) as [string, readonly unknown[]][];
const VOICES = (['metric', 'imperial'] as const).flatMap((units) => [
  { language: 'en', units, texts: english as unknown as Texts, say: sayIn({ units, names }, englishWords) },
  { language: 'es', units, texts: spanish as unknown as Texts, say: sayIn({ units, names }, spanishWords) },
]);
const [{ texts: ENGLISH, say: SAY }] = VOICES as [(typeof VOICES)[0]];

/** A length, a mass or a volume as an example has both systems. */
const EXAMPLES =
  /100 yd (?:or|o) 90 m|7 fl oz (?:or|o) 200 ml|8\.3 lb (?:or|o) 3\.9 kg|“\d+ km”|«\d+ km»|«?mile \d»?/gu;

describe.each(VOICES)('sentences on plans and race day in $language, $units', ({ language, units, texts, say }) => {
  const all = SAMPLES.flatMap(([code, samples]) =>
    samples.map((params) => ({ code, params, parts: texts[code]!(params, say) })),
  );

  it('are short, whole and hold nothing that only a program knows', () => {
    for (const { code, parts } of all) {
      for (const part of parts.filter((one) => one !== null && one !== undefined)) {
        expect(part, code).toMatch(/^[\p{Lu}\d“«¿].*[.?]$/u);
        expect(part.split(/\s+/u).length, `${code}: ${part}`).toBeLessThanOrEqual(30);
      }
      const whole = joined(parts);
      expect(whole, code).not.toMatch(/undefined|null|NaN|–|-0\b|\[object|\.\.|\s{2}/u);
      // No key of a plan: a word with a capital inside. IANA, JSON, GPX and the like are all capitals.
      expect(whole, code).not.toMatch(/\p{Ll}\p{Lu}/u);
    }
  });

  it('have the plan’s units alone, but for the examples of what may be written', () => {
    const foreign = units === 'metric' ? /\d (?:yd|ft|mi|lb)(?!\p{L})/u : /\d (?:m|km|kg)(?!\p{L})/u;
    for (const { code, parts } of all) expect(joined(parts).replaceAll(EXAMPLES, ''), code).not.toMatch(foreign);
  });

  it('differ from one problem to the next', () => {
    for (const [code, samples] of SAMPLES) {
      const texted = samples.map((params) => joined(texts[code]!(params, say)));
      if (code !== 'plan-value') expect(new Set(texted).size, code).toBe(samples.length);
    }
  });

  if (language === 'es')
    it('are not the English ones', () => {
      for (const { code, params, parts } of all)
        expect(joined(parts), code).not.toBe(joined(ENGLISH[code]!(params, sayIn({ units, names }, englishWords))));
    });
});

it('says of a value what it is, what it should be and what helps, as a race director would', () => {
  const said = (params: PlanParams['plan-value']): string => joined(ENGLISH['plan-value']!(params, SAY));
  expect(said({ problem: 'value', found: 'fast', accepted: { kind: 'length' }, ...sign })).toBe(
    'The sign distance is “fast”. It should be a length such as 100 yd or 90 m.',
  );
  expect(said({ problem: 'value', found: { kind: 'nothing' }, accepted: { kind: 'clock' }, ...wave })).toBe(
    'The start time of wave no. 2 is missing. It should be a clock time such as “08:00” or “08:00:30”; hours may pass 24.',
  );
  expect(joined(ENGLISH['plan-key']!({ problem: 'unknown', key: near }, SAY))).toBe(
    'Unknown entry “sings”. Did you mean “signs”?',
  );
});

it('shows by how much a load is too heavy where rounding would hide it', () => {
  const [heavy] = RACEDAY['load-too-heavy'];
  expect(joined(ENGLISH['load-too-heavy']!(heavy, SAY))).toMatch(
    /^One empty jug of water weighs 50\.04 kg, .* 50 kg\./u,
  );
});
