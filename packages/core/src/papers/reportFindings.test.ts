/** The report's tables of findings, waivers, checks and verdicts, and of facts: what each row says. */
import { en } from '../text/en.ts';
import { NO_NAMES } from '../text/voice.ts';
import type { UnitSystem } from '../units.ts';
import type { Spoken } from './spoken.ts';
import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import { DEFAULT_PRACTICE } from '../plan/defaults.ts';
import type { PlacedVerdict } from '../review/placed.ts';
import type { PlacedStation } from '../review/placedStation.ts';
import { AT_1500, STRAIGHT, analysisOf } from '../testing/analyses.ts';
import { ORIGIN, from } from '../testing/courses.ts';
import { planCourse } from '../testing/plans.ts';
import { courseSection, isLacking, notRunSection, passedSection, practiceSection } from './reportFacts.ts';
import { findingList, foundText, placedSection, planFindings } from './reportFindings.ts';
import { departures } from './reportStations.ts';

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
  const items = (page: string): string[] => [...page.matchAll(/<li class="(.*?)">/gu)].map(([, kind]) => kind!);

  it('stand by severity, waived ones last, each with its figures, check and source in small', () => {
    const page = findingList(
      [waived, finding({ severity: 'note' }), finding({ source: 'common practice' })],
      speak('metric'),
    ).html;
    expect(items(page)).toEqual(['error', 'note', 'error waived']);
    expect(page).toContain('measured 71.2 m · limit 82.3 to 100.6 m · sign-distance');
    expect(page).toContain('common practice · sign-distance');
  });

  it('that are waived say who waived them, when and why', () => {
    expect(findingList([waived], speak('metric')).html).toContain('Waived by <bdi>Ada Kelp, 2027-08-01: a ditch</bdi>');
    expect(findingList([finding({ waived: { by: 'Bo', reason: 'no room' } })], speak('metric')).html).toContain(
      'Waived by <bdi>Bo: no room</bdi>',
    );
  });

  it('on the plan as a whole name what they are about, or say that there are none', () => {
    expect(planFindings([finding({ where: { race: 'r' } })], speak('metric')).html).toContain('<bdi>r</bdi>: ');
    expect(planFindings([], speak('metric')).html).toContain('<p>None.</p>');
  });
});

describe('checks', () => {
  const check = {
    code: 'x',
    severity: 'note',
    title: 'T',
    theme: 'items',
    source: 'common practice, no source',
    ran: true,
    found: 0,
    cannotTell: 0,
  } as const;

  it('that could not run are gathered under what they wait for, with those that stayed unclear', () => {
    const page = notRunSection(
      [
        check,
        { ...check, code: 'y', ran: false, reason: 'no elevations' },
        { ...check, code: 'z', ran: false, reason: 'no elevations' },
        { ...check, code: 'u', found: 1, cannotTell: 1 },
      ],
      speak('metric'),
    ).html;
    expect(page).toContain('<b>No elevations.</b> Not checked: y; z.');
    expect(page).toContain('<b>Unclear in 1 place.</b> Not checked: u.');
    expect(page).not.toMatch(/[>;] ?x[;.]/u);
    expect(notRunSection([check], speak('metric')).html).toContain('Every check that applies could run.');
    const aside = { ...check, ran: false, reason: 'no race is on wheels', reasonCode: 'no-wheels' };
    expect(notRunSection([aside], speak('metric')).html).toContain('Do not apply here: x.');
    expect([isLacking(aside), isLacking({ ...aside, reasonCode: 'no-width' })]).toEqual([false, true]);
  });

  it('that passed are listed by theme, with a source that has a name', () => {
    const page = passedSection(
      [
        check,
        { ...check, code: 'y', theme: 'time', source: 'A handbook' },
        { ...check, code: 'z', found: 2 },
        { ...check, code: 'w', ran: false },
      ],
      speak('metric'),
    ).html;
    expect(page).toContain('Checks passed (2)');
    expect(page.indexOf('<b>Times and closures</b>: y (A handbook).')).toBeGreaterThan(0);
    expect(page.indexOf('<b>Signs, tables and boxes</b>: x.')).toBeGreaterThan(page.indexOf('Times and closures'));
    expect(page).not.toMatch(/[zw]\./u);
  });

  it('say on the terminal what they found and what they cannot tell', () => {
    expect([foundText(2, 0), foundText(3, 2), foundText(1, 1), foundText(0, 0)]).toEqual([
      '2 found',
      '1 found, 2 unclear',
      '1 unclear',
      'found nothing',
    ]);
  });
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
  const placed: readonly PlacedVerdict[] = [
    { ...verdict, end: 'from' },
    { ...verdict, end: 'to', move: -15 },
    { ...verdict, verdict: 'holds' },
    { ...verdict, verdict: 'cannot tell', move: 0 },
  ];
  const page = placedSection({ placed }, [], speak('metric')).html;
  expect(cellsOf(page).map((cells) => [cells[1], cells[2], cells[5]])).toEqual([
    ['Trash, first end', '<b>out of place</b>', '15 m forward, the way runners go'],
    ['Trash, last end', '<b>out of place</b>', '15 m back, towards the runners'],
    ['Trash', '<b>OK</b>', ''],
    ['Trash', '<b>unclear</b>', ''],
  ]);
  expect(placedSection({}, [], speak('metric')).html).toBe('');
});

it('stations as built stand beside their planned places, with how many findings they add', () => {
  const station: PlacedStation = {
    station: 's1',
    course: 'c',
    item: 'water',
    planned: ORIGIN,
    recorded: ORIGIN,
    distance: 120,
    margin: 3.4,
    limit: 20,
    verdict: 'fails',
    along: 120,
    measures: [1500, 1620],
  };
  const off: PlacedStation = { ...station, station: 's2', verdict: 'holds', along: null, measures: [3000, null] };
  const far: Finding = { code: 'leg-long', severity: 'warning', message: 'Long.', where: { station: 's1' } };
  const findings = [{ ...far, built: true as const }, far];
  const page = placedSection({ placed: [], built: [station, off] }, findings, speak('metric')).html;
  expect(cellsOf(page).map((cells) => cells.slice(1))).toEqual([
    ['1.500 km', '1.620 km', '120 m ± 3.4 m', '<b>out of place</b>', '1 found'],
    ['3.000 km', 'off the course', '120 m ± 3.4 m', '<b>OK</b>', 'nothing'],
  ]);
  expect(findingList(findings, speak('metric')).html.match(/as built/gu)).toHaveLength(1);
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
    const page = practiceSection(analysis.plan, speak('metric')).html;
    expect(page).toContain(
      'Trash drop after the last table, to: <b>80 m</b> <span class="detail">(usual: 91.4 m)</span>',
    );
    expect(page).toContain('Steepest grade at tables: <b>5 %</b> <span class="detail">(usual: 4 %)</span>');
    expect(page).toContain('<li>Length of a table: <b>1.83 m</b></li>');
    const [station] = analysis.stations;
    expect(departures(station!, analysis.plan.practice, speak('metric'))).toEqual([
      'Longest distance without a station: 6.00 km (the plan: 5.00 km)',
      'Steepest grade at tables: 6 % (the plan: 5 %)',
      'Sign placed by hand',
      'its place is fixed',
    ]);
  });
});
