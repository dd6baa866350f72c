/** The report's tables of findings, waivers, checks and verdicts, and of facts: what each row says. */
import { en } from '../text/en.ts';
import { NO_NAMES } from '../text/voice.ts';
import type { UnitSystem } from '../units.ts';
import type { Spoken } from './spoken.ts';
import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import { DEFAULT_PRACTICE } from '../plan/defaults.ts';
import type { PlacedVerdict } from '../review/placed.ts';
import { AT_1500, STRAIGHT, analysisOf, runners } from '../testing/analyses.ts';
import { ORIGIN, from } from '../testing/courses.ts';
import { planCourse } from '../testing/plans.ts';
import { daySection } from './reportDay.ts';
import { courseSection, practiceSection, sideSection } from './reportFacts.ts';
import { checkSection, findingSection, foundText, placedSection, waivedSection } from './reportFindings.ts';

/** English, in those units, with ids for names. */
const speak = (units: UnitSystem): Spoken => ({ text: en, voice: { language: 'en', units, names: NO_NAMES } });

const cellsOf = (page: string): string[][] =>
  page
    .split('<tr>')
    .slice(2)
    .map((row) => [...row.matchAll(/<td[^>]*>(.*?)<\/td>/gu)].map(([, cell]) => cell!.replaceAll(/<\/?bdi>/gu, '')));
const finding = (keys: Partial<Finding>): Finding => ({
  code: 'sign-distance',
  severity: 'error',
  message: 'the sign',
  where: { station: 's1' },
  ...keys,
});

describe('findings', () => {
  const waived = finding({
    waived: { by: 'Ada Kelp', reason: 'a ditch', date: '2027-08-01' },
    measured: 71.2,
    limit: [82.296, 100.584],
    unit: 'm',
  });

  it('stand by severity, and a severity without any says so; waived ones stand apart', () => {
    const page = findingSection([finding({ source: 'common practice' }), waived], speak('metric')).html;
    expect(page).toContain('<h3>Errors (1)</h3>');
    expect(page).toContain('<p>Warnings: none.</p>');
    expect(page).toContain('(<bdi>common practice</bdi>)');
    expect(page).not.toContain('Ada Kelp');
  });

  it('that are waived say who waived them, when and why', () => {
    const page = waivedSection(
      [finding({}), waived, finding({ waived: { by: 'Bo', reason: 'no room' } })],
      speak('metric'),
    ).html;
    expect(page).toContain('<h2>Waived findings (2)</h2>');
    expect(cellsOf(page)).toEqual([
      [
        'sign-distance<br>error',
        's1',
        'the sign<br><b>Waived by Ada Kelp, 2027-08-01: a ditch</b>',
        '71.2 m',
        '82.3 to 100.6 m',
      ],
      ['sign-distance<br>error', 's1', 'the sign<br><b>Waived by Bo: no room</b>', '', ''],
    ]);
    expect(waivedSection([finding({})], speak('metric')).html).toContain('<p>None.</p>');
  });
});

it('checks say what they found, what they cannot tell, and why they could not run', () => {
  const check = {
    code: 'x',
    severity: 'note',
    title: 'T',
    theme: 'items',
    source: 'S',
    ran: true,
    found: 0,
    cannotTell: 0,
  } as const;
  const page = checkSection(
    [
      check,
      { ...check, found: 3, cannotTell: 2 },
      { ...check, found: 1, cannotTell: 1 },
      { ...check, ran: false },
      { ...check, ran: false, reason: 'no elevations' },
    ],
    speak('metric'),
  ).html;
  expect(page).toContain('5 checks: 3 ran, 1 of them found nothing; 2 could not run; 2 were unclear in places.');
  expect(cellsOf(page).map((cells) => cells[3])).toEqual([
    'found nothing',
    '1 found, 2 unclear',
    '1 unclear',
    '<b>not run</b>: ',
    '<b>not run</b>: no elevations',
  ]);
  expect(foundText(2, 0)).toBe('2 found');
});

it('verdicts name the end of an item and which way to move it; what holds is not to be moved', () => {
  const verdict: PlacedVerdict = {
    station: 's1',
    item: 'trash',
    course: 'c',
    verdict: 'fails',
    measured: 70,
    limit: [45, 55],
    margin: 0.5,
    move: 15,
    at: ORIGIN,
    by: 'position',
    reference: 'placed',
    side: 'right',
    confidence: 0.99,
  };
  const page = placedSection(
    [
      { ...verdict, end: 'from' },
      { ...verdict, end: 'to', move: -15 },
      { ...verdict, verdict: 'holds' },
      { ...verdict, verdict: 'cannot tell', move: 0 },
    ],
    speak('metric'),
  ).html;
  expect(cellsOf(page).map((cells) => [cells[1], cells[2], cells[5]])).toEqual([
    ['Trash, first end', '<b>out of place</b>', '15 m forward, the way runners go'],
    ['Trash, last end', '<b>out of place</b>', '15 m back, towards the runners'],
    ['Trash', '<b>OK</b>', ''],
    ['Trash', '<b>unclear</b>', ''],
  ]);
  expect(placedSection(undefined, speak('metric')).html).toBe('');
});

describe('facts', () => {
  it('of a course say where its line comes from, how it is drawn, its lengths and its certificate', () => {
    const courses = [
      planCourse('c', { name: 'Shore', line: STRAIGHT, drawn: 'shortest', length: 4010, certificate: 'XY 1' }),
      planCourse('d', { name: 'Half', parts: [{ of: 'c', from: 0, to: 2000 }] }),
    ];
    const page = courseSection(analysisOf(STRAIGHT, [], { courses }), speak('metric')).html;
    expect(cellsOf(page)).toEqual([
      [
        'Shore',
        'in the plan, along the shortest route a runner can take',
        '4.0000 km',
        '4.0100 km',
        '4.0100 km',
        'XY 1',
      ],
      [
        'Half',
        expect.stringMatching(/^parts of other courses, /u),
        expect.stringMatching(/^1\.99\d\d km$/u),
        'not stated',
        '2.0000 km',
        'none given',
      ],
    ]);
  });

  it('of the sides say who walked a station, and when if that is known', () => {
    const rows = cellsOf(
      sideSection(
        analysisOf(STRAIGHT, [
          { ...AT_1500, walked: { by: 'Ada Kelp', date: '2027-05-01' } },
          { ...AT_1500, walked: { by: 'Bo' } },
          { at: from(ORIGIN, 90, 1500) },
        ]),
        speak('metric'),
      ).html,
    );
    expect(rows.map((cells) => [cells[2], cells[3], cells[6]])).toEqual([
      ['right', expect.stringMatching(/right|unclear/u), 'Ada Kelp, 2027-05-01'],
      ['right', expect.stringMatching(/right|unclear/u), 'Bo'],
      ['not declared', 'unclear', '<b>nobody yet</b>'],
    ]);
  });

  it('of the practice say what the plan sets with the usual value beside it, and how each station departs', () => {
    const analysis = analysisOf(
      STRAIGHT,
      [
        {
          ...AT_1500,
          fixed: true,
          items: { sign: { at: from(ORIGIN, 90, 1400) } },
          practice: { maxGrade: 0.06, maxSpacing: 6000 },
          why: 'a ditch',
        },
      ],
      { practice: { ...DEFAULT_PRACTICE, trashTo: 80, maxGrade: 0.05 } },
    );
    const page = practiceSection(analysis, speak('metric')).html;
    const [rules, departures] = page.split('<h3>');
    expect(cellsOf(rules!).find(([label]) => label!.startsWith('Trash drop after the last table, to'))).toEqual([
      'Trash drop after the last table, to',
      '80 m',
      'this plan (usual: 91.4 m)',
    ]);
    expect(cellsOf(rules!).find(([label]) => label === 'Steepest grade at tables')).toEqual([
      'Steepest grade at tables',
      '5 %',
      'this plan (usual: 4 %)',
    ]);
    expect(cellsOf(rules!).find(([label]) => label === 'Length of a table')).toEqual([
      'Length of a table',
      '1.83 m',
      'usual',
    ]);
    expect(cellsOf(departures!).map(([, what]) => what)).toEqual([
      'Longest distance without a station: 6.00 km (the plan: 5.00 km)',
      'Steepest grade at tables: 6 % (the plan: 5 %)',
      'Sign placed by hand',
      'its place is fixed',
    ]);
  });

  it('of race day list every default, "none" where there is none, and nothing without a race day', () => {
    const rows = cellsOf(daySection(analysisOf(STRAIGHT, [AT_1500], { races: [runners(10)] }), en).html);
    expect(rows.find(([key]) => key === 'supplies.resupply')![2]).toBe('none');
    expect(rows.find(([key]) => key === 'supplies.waste')![2]).toBe('15 %');
    expect(daySection(analysisOf(STRAIGHT, [AT_1500]), en).html).toBe('');
  });
});
