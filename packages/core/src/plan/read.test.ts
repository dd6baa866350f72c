import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Finding } from '../finding.ts';
import { placer, readJson } from './json.ts';
import type { Plan } from './plan.ts';
import { crewOf, practiceOf, suppliesOf } from './practice.ts';
import { MINIMAL_PLAN as minimal } from '../testing/plans.ts';
import { readPlan } from './read.ts';
import { planSchema } from './schema.ts';

const contract = readFileSync(new URL('contract.plan.json', import.meta.url), 'utf8');

const planOf = (text: string): Plan => {
  const read = readPlan(text, 'plan.json');
  if (!read.ok) throw new Error(read.findings.map((one) => one.message).join('\n'));
  return read.value.plan;
};
const findingsOf = (text: string): readonly Finding[] => {
  const read = readPlan(text, 'plan.json');
  if (read.ok) throw new Error('the plan was accepted');
  return read.findings;
};

const messages = (over: object): readonly (readonly [string | undefined, string])[] =>
  findingsOf(JSON.stringify({ ...minimal, ...over })).map((one) => [one.where.path, one.message]);

/** Replaces one snippet of the contract's plan; `|` in the replacement marks where the finding must point. */
function broken(
  from: string,
  to: string,
): { readonly findings: readonly Finding[]; readonly line: number; readonly column: number } {
  expect(contract.split(from).length, `${from} stands once in the plan`).toBe(2);
  const marked = contract.replace(from, () => to);
  const place = placer(marked)(marked.indexOf('|'));
  return { findings: findingsOf(marked.replace('|', '')), ...place };
}

describe('a good plan', () => {
  test("the contract's example reads, in SI units", () => {
    const plan = planOf(contract);
    expect(plan.courses[0]).toMatchObject({
      length: 42_195,
      marks: [{ measure: 10_000 }],
      drawn: 'centre',
      gaps: 'join',
    });
    expect(plan.courses[1]).toMatchObject({
      name: 'half',
      parts: [{ of: 'full', from: 21_097.5, to: 42_195 }],
      drawn: 'recorded',
      gaps: 'refuse',
      reverse: false,
    });
    expect(plan.races[0]).toMatchObject({
      cutoff: 54_000,
      startWidth: 8,
      waves: [{ time: 28_800 }, { time: 29_130, finish: { times: [14_350, 15_000] } }],
      finish: { median: 16_200 },
    });
    expect(plan.races[1]?.finish).toEqual({
      quantiles: [
        [0, 9000],
        [0.5, 15_600],
        [1, 25_200],
      ],
    });
    expect(plan.stations[1]?.on).toEqual({ course: 'full', measure: 5000, side: 'right', offset: 5 });
    expect(plan.crew).toMatchObject({ ready: 1800, setUp: 3600, longest: 21_600 });
    expect(plan.supplies.resupply).toEqual({ at: 0.25, takes: 2400 });
    expect(plan.supplies.weights).toMatchObject({ waterJug: 3.764816671, box: 1, table: 9 });
    expect(plan.vehicles[0]).toMatchObject({ from: 14_400, stop: 900 });
    expect(plan.clock[0]).toEqual({
      course: 'full',
      measure: 0,
      accessOpens: 14_400,
      closes: 23_400,
      sweep: 30_000,
      reopens: 34_200,
    });
  });

  test('everything but format, version, courses, races and stations has a default', () => {
    const plan = planOf(JSON.stringify(minimal));
    expect(plan).toMatchObject({
      name: '',
      units: 'metric',
      language: 'en',
      zones: [],
      vehicles: [],
      clock: [],
      contacts: {},
      waivers: [],
      variants: [],
    });
    expect(plan.practice).toEqual({
      signAhead: 91.44,
      signTolerance: 9.144,
      gelAhead: 7.62,
      tableGap: 3.048,
      tableLength: 1.8288,
      tablesRoom: 60,
      trashFrom: 45.72,
      trashTo: 91.44,
      boxEvery: 20,
      kerb: 4,
      setback: 0.5,
      clearWidth: 3,
      snapRadius: 60,
      pinR95: 5,
      courseR95: 3,
      sideConfidence: 0.95,
      maxSpacing: 5000,
      minSpacing: 1600,
      maxGrade: 0.04,
      bendClear: 30,
      firstAfter: 1200,
      lastBefore: 800,
      placedWithin: 20,
    });
    expect(plan.stations[0]).toMatchObject({
      name: 's1',
      serves: ['sportsDrink', 'water'],
      passes: 'lead',
      tables: {},
      fixed: false,
      practice: {},
      points: [],
    });
    expect(plan.races[0]).toMatchObject({
      name: 'm',
      division: 'run',
      show: 0.9,
      late: 'out',
      gradient: false,
      waves: [],
    });
    expect(plan.supplies.cup).toBe(0.2070147069375);
  });

  test('units are for display only and change no default', () => {
    expect(planOf(JSON.stringify({ ...minimal, units: 'imperial' })).practice).toEqual(
      planOf(JSON.stringify(minimal)).practice,
    );
  });

  test("the schema's output is the plan that the rest of the code sees", () => {
    expect(planSchema.parse(minimal)).toEqual(planOf(JSON.stringify(minimal)));
  });

  test('reading loses no key of the file', () => {
    const lost = (from: unknown, to: unknown, path: string): string[] => {
      if (typeof from !== 'object' || from === null) return to === undefined ? [path] : [];
      if (typeof to !== 'object' || to === null) return [path];
      return Object.entries(from).flatMap(([key, value]) =>
        lost(value, (to as { readonly [key: string]: unknown })[key], `${path}/${key}`),
      );
    };
    expect(lost(JSON.parse(contract), planOf(contract), '')).toEqual([]);
  });

  test('a byte order mark is let pass and shifts no column', () => {
    const read = readPlan(`\uFEFF${JSON.stringify(minimal)}`, 'plan.json');
    expect(read.ok && read.value.placeOf('/format')).toEqual({
      line: 1,
      column: JSON.stringify(minimal).indexOf('"halfcup-plan"') + 1,
    });
    expect(read.ok && read.value.text.startsWith('\uFEFF')).toBe(true);
  });

  test('the place of a pointer is that of its value, or of the nearest parent', () => {
    const read = readPlan(contract, 'plan.json');
    if (!read.ok) throw new Error('refused');
    expect(read.value.placeOf('/version')).toEqual({ line: 3, column: 14 });
    expect(read.value.placeOf('/stations/0/nothing/here')).toEqual(read.value.placeOf('/stations/0'));
    expect(read.value.placeOf('/nowhere')).toEqual({ line: 1, column: 1 });
  });

  test("a station's rules are the plan's with its own laid over, key by key", () => {
    const plan = planOf(contract);
    const [s1, , s3] = plan.stations;
    expect(practiceOf(plan, s1!)).toEqual({ ...plan.practice, signAhead: 109.728 });
    expect(suppliesOf(plan, s1!).packs).toEqual({ ...plan.supplies.packs, gels: 12 });
    expect(suppliesOf(plan, s1!).take).toEqual({
      ...plan.supplies.take,
      run: { water: 1.2, sportsDrink: 0.6, gel: 0.7 },
    });
    expect(crewOf(plan, s1!)).toEqual({ ...plan.crew, pourers: 3 });
    expect(s3?.on?.offset).toBe(2.7432);
  });
});

describe('a bad value is reported with its place', () => {
  test.each<[title: string, from: string, to: string, path: string, said: string]>([
    [
      'unknown unit',
      '"120 yd"',
      '|"120 yards"',
      '/stations/0/practice/signAhead',
      'Its unit can be m, km, cm, in, ft, yd or mi.',
    ],
    [
      'negative length',
      '"7 m"',
      '|-7',
      '/stations/0/width',
      'The road width is -7. It should be from 3.94 in to 3,280 ft.',
    ],
    ['unknown key', '"boxes": 6', '|"boxs": 6', '/stations/0/boxs', 'Unknown entry “boxs”. Did you mean “boxes”?'],
    ['unknown key far from any', '"boxes": 6', '|"zzzzzzzz": 6', '/stations/0/zzzzzzzz', 'Known here: “id”, “name”'],
    ['unknown key at the top', '"revision": "3"', '|"revison": "3"', '/revison', 'Did you mean “revision”?'],
    [
      'unknown practice key',
      '"tableGap": "10 ft"',
      '|"tableGapp": "10 ft"',
      '/practice/tableGapp',
      'Did you mean “tableGap”?',
    ],
    ['unknown weight', '"box": 1', '|"boxx": 1', '/supplies/weights/boxx', 'Did you mean “box”?'],
    [
      'swapped coordinates',
      '"at": [-150.05, -48.02],\n      "side"',
      '"at": |[-48.02, -150.05],\n      "side"',
      '/stations/0/at',
      'swapped',
    ],
    [
      'longitude over 180',
      '"at": [-150.05, -48.02],\n      "side"',
      '"at": |[210.05, -48.02],\n      "side"',
      '/stations/0/at',
      'The place of the station has the longitude 210.05. It should be from -180 to 180.',
    ],
    [
      'one coordinate',
      '"at": [-150.051, -48.02]',
      '"at": |[-150.051]',
      '/stations/0/items/sign/at',
      'The place of the sign is a list of 1. It should be a longitude and a latitude',
    ],
    ['wrong word', '"side": "right",\n', '"side": |"rigth",\n', '/stations/0/side', 'Did you mean “right”?'],
    ['wrong kind', '"fixed": false', '"fixed": |"no"', '/stations/0/fixed', 'true or false'],
    ['text where a list is', '"races": ["m", "h"]', '"races": |"m"', '/stations/0/races', 'a list'],
    ['fraction of a box', '"boxes": 6', '"boxes": |6.5', '/stations/0/boxes', 'a whole number'],
    ['too large a number', '"boxes": 6', '"boxes": |1e999', '/stations/0/boxes', 'too large'],
    ['impossible date', '"date": "2027-09-12"', '"date": |"2027-02-30"', '/date', 'calendar'],
    ['a year of one digit', '"date": "2027-09-12"', '"date": |"0001-01-01"', '/date', 'from 1900 to 2999'],
    ['a year with no calendar', '"date": "2027-09-12"', '"date": |"9999-12-31"', '/date', 'from 1900 to 2999'],
    ['another date form', '"date": "2027-09-12"', '"date": |"12.9.2027"', '/date', '2027-09-12'],
    ['unknown time zone', '"UTC"', '|"Ember/Island"', '/timeZone', 'IANA'],
    ['offset as time zone', '"UTC"', '|"+02:00"', '/timeZone', 'IANA'],
    ['clock time', '"time": "08:00"', '"time": |"8 am"', '/races/0/waves/0/time', 'such as “08:00”'],
    ['duration without seconds', '"4:30:00"', '|"4:30"', '/races/0/finish/median', 'hours:minutes:seconds'],
    ['file above the folder', '"full.gpx"', '|"../full.gpx"', '/courses/0/gpx', 'own folder'],
    ['absolute file', '"full.gpx"', '|"/full.gpx"', '/courses/0/gpx', 'own folder'],
    ['backslash in a file', '"full.gpx"', '|"a\\\\full.gpx"', '/courses/0/gpx', 'own folder'],
    ['address as file', '"island.geojson"', '|"https://example.org/island.geojson"', '/context', 'own folder'],
    ['hidden way up', '"results.csv"', '|"a/../../results.csv"', '/races/2/finish/csv', 'own folder'],
    ['reserved id', '"id": "s3"', '"id": |"finish"', '/stations/2/id', 'reserved'],
    ['empty id', '"id": "s3"', '"id": |""', '/stations/2/id', 'not empty'],
    ['missing id', '{ "id": "s3", ', '|{ ', '/stations/2/id', 'The id of station no. 3 is missing.'],
    ['missing time', '{ "time": "08:00", ', '|{ ', '/races/0/waves/0/time', 'The start time of wave no. 1 is missing.'],
    ['two forms of finish times', '"spread": 0.2', '"spread": 0.2, |"times": []', '/races/0/finish/times', '“times”'],
    ['falling quantiles', '[0.5, "4:20:00"]', '|[0, "4:20:00"]', '/races/1/finish/quantiles/1', 'rise'],
    ['quantiles that do not end', '[1, "7:00:00"]', '|[0.9, "7:00:00"]', '/races/1/finish/quantiles/2', 'slowest'],
    [
      'passes of another word',
      '"passes": [{ "race": "m", "pass": 1 }]',
      '"passes": |"al"',
      '/stations/0/passes',
      '“lead”, “all” or a list of passes',
    ],
    [
      'a pass that is none',
      '"passes": [{ "race": "m", "pass": 1 }]',
      '"passes": [{ "race": "m", "pass": |-1 }]',
      '/stations/0/passes/0/pass',
      'from 0 to 10,000',
    ],
    ['a track by no name', '"track": 0', '"track": |true', '/courses/0/track', 'its number counted from 0'],
    ['share over 1', '"show": 0.9', '"show": |1.2', '/races/0/show', 'from 0 to 1.'],
    ['no boxes apart', '"boxEvery": "20 m"', '"boxEvery": |"0 m"', '/practice/boxEvery', 'from 0.394 in to 6.21 mi.'],
    [
      'boxes by the centimetre',
      '"boxEvery": "20 m"',
      '"boxEvery": |"1 cm"',
      '/practice/boxEvery',
      'There should be at most 1,000.',
    ],
    ['more boxes than anybody has', '"boxes": 6', '"boxes": |1001', '/stations/0/boxes', 'from 0 to 1,000.'],
    ['unit of another kind', '"7 fl oz"', '|"7 oz"', '/supplies/cup', 'l, ml, gal or fl oz'],
    [
      'trash upside down',
      '"trashTo": "100 yd"',
      '"trashTo": |"40 yd"',
      '/practice/trashTo',
      'The end of the trash boxes is 40 yd, less than the beginning of the trash boxes. It should be at least 50 yd.',
    ],
    [
      'a part that runs back',
      '"to": "42.195 km"',
      '"to": |"20 km"',
      '/courses/1/parts/0/to',
      'The part begins at 13.11 mi and ends at 12.43 mi. It should end after it begins.',
    ],
    ['a later version', '"version": 1', '"version": |2', '/version', 'Update Halfcup'],
    ['a version that is none', '"version": 1', '"version": |"1"', '/version', 'a whole number'],
    ['another format', '"halfcup-plan"', '|"some-plan"', '/format', '“halfcup-plan”'],
    [
      'unknown key in a variant',
      '"s2": { "at"',
      '"s2": { |"sid": "left", "at"',
      '/variants/0/stations/s2/sid',
      'Did you mean “side”?',
    ],
    ['bad value in a variant', '"110 yd"', '|"110 y"', '/variants/0/stations/s1/practice/signAhead', '“110 y”'],
    [
      'id in a variant',
      '"s2": { "at"',
      '"s2": { |"id": "s9", "at"',
      '/variants/0/stations/s2/id',
      'A variant cannot change the id of a station.',
    ],
  ])('%s', (_title, from, to, path, said) => {
    const { findings, line, column } = broken(from, to);
    const finding = findings.find((one) => one.where.path === path);
    expect(finding, JSON.stringify(findings)).toBeDefined();
    expect(finding?.message).toContain(said);
    expect(finding?.where).toMatchObject({ file: 'plan.json', line, column });
    expect(findings).toHaveLength(1);
  });
});

describe('a bad reference is reported with its place', () => {
  test('a race served that does not exist is said, and not what is not served', () => {
    const { findings } = broken('["m", "h"]', '[|"zzz"]');
    expect(findings[0]!.message).toContain('There is no race “zzz” in this plan.');
    expect(findings.map(({ message }) => message).join(' ')).not.toContain('does not serve');
  });

  test.each<[title: string, from: string, to: string, path: string, said: string]>([
    [
      'race to course',
      '"course": "half"',
      '"course": |"haf"',
      '/races/1/course',
      'There is no course “haf” in this plan. It is given as the course. Did you mean “half”?',
    ],
    ['part to course', '"of": "full"', '"of": |"fuil"', '/courses/1/parts/0/of', 'Did you mean “full”?'],
    ['station to race', '["m", "h"]', '["m", |"zzz"]', '/stations/0/races/1', 'Races of this plan: “m”, “h” and “w”.'],
    [
      'lead to race',
      '"lead": { "race": "m"',
      '"lead": { "race": |"zzz"',
      '/stations/0/lead/race',
      'There is no race “',
    ],
    [
      'lead of a race not served',
      '"lead": { "race": "m"',
      '"lead": { "race": |"w"',
      '/stations/0/lead/race',
      'does not serve',
    ],
    [
      'passes to race',
      '[{ "race": "m", "pass": 1 }]',
      '[{ "race": |"x1", "pass": 1 }]',
      '/stations/0/passes/0/race',
      'There is no race “',
    ],
    [
      'place on a course',
      '"course": "full", "measure": "5 km"',
      '"course": |"none", "measure": "5 km"',
      '/stations/1/on/course',
      'There is no course “none” in this plan.',
    ],
    [
      'clock to course',
      '"course": "full", "measure": "0 km"',
      '"course": |"none", "measure": "0 km"',
      '/clock/0/course',
      'There is no course “none” in this plan.',
    ],
    ['waiver to station', '"station": "s1"', '"station": |"s7"', '/waivers/0/station', 'There is no station “'],
    [
      'variant to station',
      '"s2": { "at": [-150.07, -48.03] }',
      '"x9": |{ "at": [-150.07, -48.03] }',
      '/variants/0/stations/x9',
      'There is no station “',
    ],
    [
      'the same course twice',
      '"id": "half"',
      '"id": |"full"',
      '/courses/1/id',
      'The id of course no. 2 is “full”, and so is the id of course no. 1.',
    ],
    [
      'the same station twice',
      '"id": "s3"',
      '"id": |"s1"',
      '/stations/2/id',
      'The id of station no. 3 is “s1”, and so is the id of station no. 1.',
    ],
    [
      'the same race twice',
      '"id": "w"',
      '"id": |"h"',
      '/races/2/id',
      'The id of race no. 3 is “h”, and so is the id of race no. 2.',
    ],
    [
      'the same variant twice',
      '"name": "far"',
      '"name": |"north"',
      '/variants/1/name',
      'and so is the name of variant no. 1.',
    ],
    [
      'a circle of one',
      '"parts": [{ "of": "full", "from"',
      '"parts": |[{ "of": "half", "from"',
      '/courses/1/parts',
      '“half” → “half”',
    ],
    [
      'reference in a variant',
      '"measure": "6 km"',
      '"measure": "6 km", |"x": 1',
      '/variants/1/stations/s1/on/x',
      'Known here: “course”',
    ],
  ])('%s', (_title, from, to, path, said) => {
    const { findings, line, column } = broken(from, to);
    const finding = findings.find((one) => one.where.path === path);
    expect(finding, JSON.stringify(findings)).toBeDefined();
    expect(finding?.message).toContain(said);
    expect(finding?.where).toMatchObject({ line, column });
  });

  test('a circle of parts is named', () => {
    const courses = [
      { id: 'a', parts: [{ of: 'b' }] },
      { id: 'b', parts: [{ of: 'full' }, { of: 'c' }] },
      { id: 'c', parts: [{ of: 'a' }] },
      ...minimal.courses,
    ];
    expect(messages({ courses })).toEqual([['/courses/0/parts', expect.stringContaining('“a” → “b” → “c” → “a”')]]);
  });

  test('a course has exactly one of gpx, line and parts', () => {
    expect(messages({ courses: [{ id: 'full' }] })).toEqual([
      [
        '/courses/0',
        expect.stringContaining(
          'The course no. 1 is incomplete. It should have a GPX file, a line of points or parts of other courses.',
        ),
      ],
    ]);
    expect(
      messages({
        courses: [
          {
            id: 'full',
            gpx: 'a.gpx',
            line: [
              [0, 0],
              [1, 1],
            ],
          },
        ],
      }),
    ).toEqual([['/courses/0/line', expect.stringContaining('There is both a GPX file and a line of points.')]]);
  });

  test('a station has exactly one of at and on', () => {
    expect(messages({ stations: [{ id: 's1' }] })).toEqual([
      [
        '/stations/0',
        expect.stringContaining('It should have a place by longitude and latitude or a place along a course.'),
      ],
    ]);
    const on = { course: 'full', measure: 5, side: 'left' };
    expect(messages({ stations: [{ id: 's1', at: [0, 0], on }] })).toEqual([
      [
        '/stations/0/on',
        expect.stringContaining(
          'There should be only one: a place by longitude and latitude or a place along a course.',
        ),
      ],
    ]);
  });

  test('what is no object is reported once', () => {
    expect(messages({ stations: [7] })).toEqual([
      ['/stations/0', 'The station no. 1 is 7. It should be an object in braces.'],
    ]);
  });

  test('a value that could be of several forms is answered with all of them', () => {
    const forms = 'a median with a spread, shares with times, a list of times, or a CSV file with a column';
    for (const finish of [
      {},
      5,
      [],
      {
        quantiles: [
          [0, 1],
          [1, 2],
        ],
        times: [5],
      },
    ])
      expect(messages({ races: [{ id: 'm', course: 'full', finish }] })).toEqual([
        ['/races/0/finish', expect.stringContaining(forms)],
      ]);
  });

  test('faults come in the order of the text', () => {
    const lines = findingsOf(
      contract
        .replace('"UTC"', '7')
        .replace('"half", "finish"', '"hlf", "finish"')
        .replace('"boxes"', '"boxs"')
        .replace('"1.6 km"', '-1'),
    ).map((one) => one.where.line ?? 0);
    expect(lines).toHaveLength(4);
    expect(lines).toEqual(lines.toSorted((a, b) => a - b));
  });

  test('every fault is reported, of values and of references together', () => {
    const findings = findingsOf(
      JSON.stringify({
        ...minimal,
        units: 'feet',
        races: [{ id: 'm', course: 'ful', show: 2 }],
        stations: [{ id: 's1', at: [0, 100], colour: 1 }, { id: 's1' }],
      }),
    );
    expect(findings.map((one) => one.where.path).toSorted((a, b) => String(a).localeCompare(String(b)))).toEqual([
      '/races/0/course',
      '/races/0/show',
      '/stations/0/at',
      '/stations/0/colour',
      '/stations/1',
      '/stations/1/id',
      '/units',
    ]);
    expect(findings.find((one) => one.where.path === '/stations/0/at')?.where.station).toBe('s1');
  });
});

describe('strict JSON', () => {
  test.each<[title: string, text: string, place: [line: number, column: number], said: string]>([
    ['empty', '', [1, 1], 'The file is empty.'],
    ['only blanks', ' \n\t', [1, 1], 'The file is empty.'],
    ['a course instead', '<?xml version="1.0"?>\n<gpx/>', [1, 1], 'GPX'],
    ['cut off', '{\n  "format": "halfcup-plan",\n  "courses": [', [3, 15], 'cut off'],
    ['cut off in a text', '{\n  "format": "half', [2, 13], 'double quote'],
    ['comment', '{\n  // here\n  "format": 1\n}', [2, 3], 'no comments'],
    ['trailing comma', '{\r\n  "a": 1,\r\n}', [3, 1], 'no comma after the last entry'],
    ['missing comma', '{\r  "a": 1\r  "b": 2 }', [3, 3], 'comma between'],
    ['single quotes', "{ 'a': 1 }", [1, 3], 'double quotes'],
    ['not a number', '{ "a": NaN }', [1, 8], 'There should be a value'],
    ['more after the end', '{} {}', [1, 4], 'after the end'],
    ['duplicate key', '{\n  "a": 1,\n  "b": { "c": 1, "c": 2 },\n  "a": 3\n}', [3, 18], 'appears here a second time'],
    ['hidden key', '{ "__proto__": {} }', [1, 3], '“__proto__”'],
    ['half of a character', '{"a": "\\\\ud83c \\ud83c\\udf4a \\udf4a"}', [1, 29], '“\\udf4a” is half of a character'],
    ['half of a character, as it is', '{"a": "\ud83c"}', [1, 8], '“\\ud83c” is half of a character'],
    ['deep nesting', '['.repeat(100_000), [1, 65], 'nested more than 64 deep'],
  ])('%s', (_title, text, [line, column], said) => {
    const [finding] = findingsOf(text);
    expect(finding?.where).toMatchObject({ file: 'plan.json', line, column });
    expect(finding?.message).toContain(said);
  });

  test('both of two duplicate keys are reported, each at its second place', () => {
    const findings = findingsOf('{\n  "a": 1,\n  "b": { "c": 1, "c": 2 },\n  "a": 3\n}');
    expect(findings.map(({ where }) => [where.path, where.line, where.column])).toEqual([
      ['/b/c', 3, 18],
      ['/a', 4, 3],
    ]);
  });

  test.each(['[]', '"plan"', 'null', '12', '{}', '{"format":"halfcup-plan"}'])('%s is JSON but no plan', (text) => {
    expect(findingsOf(text)[0]?.code).toBe('plan-version');
  });

  test("a value reads as the language's own parser reads it", () => {
    const read = readJson(contract);
    expect(read.ok && read.value.value).toEqual(JSON.parse(contract));
  });
});
