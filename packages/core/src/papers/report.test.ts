import { describe, expect, it } from 'vitest';
import type { Analysis } from '../analyse.ts';
import type { Finding } from '../finding.ts';
import type { PlanStation } from '../plan/plan.ts';
import type { PlacedVerdict } from '../review/placed.ts';
import { reviewLayout } from '../review/review.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { reviewDocument } from '../export/reviewDocument.ts';
import { reportHtml, resultText } from './report.ts';
import { en } from '../text/en.ts';
import { reportStyle } from './reportStyle.ts';

const course = turtle(ORIGIN, [[90, 4000]], 100);

function analysisOf(keys: Partial<PlanStation> = {}, more: readonly Finding[] = []): Analysis {
  const layout = layoutOf([course], [{ on: { course: 'c', measure: 2000, side: 'right', offset: 5 }, ...keys }]);
  const { findings, checks } = reviewLayout(layout);
  return { ...layout, day: null, findings: [...findings, ...more], checks };
}
const report = (analysis: Analysis, placed?: readonly PlacedVerdict[]): string =>
  reportHtml({
    analysis,
    review: reviewDocument(analysis, {
      sha256: 'ab'.repeat(32),
      inputs: [],
      ...(placed === undefined ? {} : { placed }),
    }),
    made: '2027-08-30',
  });
const rowWith = (text: string, part: string): string => text.split('<tr>').find((row) => row.includes(part)) ?? '';

describe('the report', () => {
  it('is the same for the same input: it knows no clock', () => {
    expect(report(analysisOf())).toBe(report(analysisOf()));
    expect(report(analysisOf())).toContain('2027-08-30');
  });

  it('has no section of recorded points where none were recorded, else each verdict with its margin and which way to move', () => {
    const verdict: PlacedVerdict = {
      station: 's1',
      item: 'sign',
      course: 'c',
      verdict: 'fails',
      measured: 70,
      limit: [82.296, 100.584],
      margin: 5,
      move: -21.4,
      at: ORIGIN,
      by: 'position',
      reference: 'placed',
      side: 'right',
      confidence: 0.99,
    };
    expect(report(analysisOf())).not.toContain('As built');
    const text = report(analysisOf(), [
      verdict,
      { ...verdict, item: 'trash', end: 'to', verdict: 'cannot tell', move: 0 },
    ]);
    expect(rowWith(text, '<b>out of place</b>')).toMatch(/Sign.*70 m ± 5 m.*82\.3 m – 100\.6 m.*21\.4 m back/u);
    expect(rowWith(text, '<b>unclear</b>')).toContain('Trash, last end');
  });

  it('marks what could not be decided, and says of a check that could not run why, never that it passed', () => {
    const text = report(
      analysisOf({}, [
        { code: 'drop-side', severity: 'note', message: 'm', where: { station: 's1' }, cannotTell: true },
      ]),
    );
    expect(text).toContain('<b>Note, unclear</b>');
    const notRun = text.slice(text.indexOf('<h2>What could not be checked'), text.indexOf('>Courses<'));
    const passed = text.slice(text.indexOf('Checks passed ('), text.indexOf('What was reviewed'));
    const lengths = 'The stated length of a course is that of its line';
    expect(notRun).toMatch(new RegExp(`<b>The plan states no course length\\.</b> Not checked: ${lengths}`, 'u'));
    expect(passed).not.toContain(lengths);
    expect(passed).toContain('No item stands where runners come the other way');
  });

  it('shows a station that departs from the practice with its reason, or that it gives none; an override that changes nothing is no departure', () => {
    expect(report(analysisOf({ practice: { kerb: 6 }, why: 'a ditch' }))).toMatch(
      /Differs from the plan’s practice.*6 m \(the plan: 4 m\).*a ditch/u,
    );
    expect(report(analysisOf({ practice: { kerb: 6 } }))).toContain('<b>no reason given</b>');
    expect(report(analysisOf({ practice: { kerb: 4 } }))).not.toContain('Differs from the plan’s practice');
  });

  it('has every station in its table, and a picture only of those of which there is something to say', () => {
    const layout = layoutOf(
      [course],
      [
        { id: 's1', name: 'Quiet Corner', on: { course: 'c', measure: 1500, side: 'right', offset: 5 } },
        { id: 's2', name: 'Gull Steps', on: { course: 'c', measure: 3000, side: 'right', offset: 5 } },
      ],
    );
    const text = report({
      ...layout,
      day: null,
      checks: [],
      findings: [
        {
          code: 'sign-distance',
          severity: 'error',
          message: 'The sign is near.',
          where: { station: 's2' },
          measured: 71.2,
          limit: [82, 100],
          unit: 'm',
          source: 'common practice, no source',
          waived: { by: 'Ada Kelp', reason: 'a ditch', date: '2027-08-01' },
        },
      ],
    });
    const [before, sheets] = text.split('Stations with findings, or that differ');
    expect(rowWith(before!, 'Quiet Corner')).toContain('none');
    expect(rowWith(before!, 'Gull Steps')).toContain('Waived by Ada Kelp');
    expect(sheets).not.toContain('Quiet Corner');
    expect(sheets).toContain('2 · <bdi>Gull Steps</bdi>');
    expect(sheets!.match(/<svg/gu)!.length).toBeGreaterThan(1);
    expect(sheets).toContain('measured 71.2 m · limit 82 to 100 m · common practice · sign-distance');
    expect(sheets).toContain('Waived by <bdi>Ada Kelp, 2027-08-01: a ditch</bdi>');
  });

  it('says that a plan has no name, no revision and no day, and the zone of the day where the plan has one', () => {
    const facts = (keys: object): string => {
      const analysis = analysisOf();
      return report({ ...analysis, plan: { ...analysis.plan, ...keys } });
    };
    const none = facts({ name: '' });
    expect(none).toContain('<h1><bdi>Unnamed plan</bdi></h1>');
    expect(rowWith(none, '>Race day<')).toContain('not stated');
    expect(rowWith(none, '>Report made<')).toContain('a plan without a revision');
    expect(rowWith(facts({ date: '2027-09-12' }), '>Race day<')).toContain('<bdi>Sunday 12 September 2027</bdi>');
    const all = facts({ date: '2027-09-12', timeZone: 'Etc/UTC', revision: '3' });
    expect(rowWith(all, '>Race day<')).toContain('<bdi>Sunday 12 September 2027, local time, UTC+0</bdi>');
    expect(rowWith(all, '>Report made<')).toContain('of revision 3');
  });

  it('tells an authority what, where, when and who: races, closures, contacts, what is to be decided, who signs', () => {
    const analysis = analysisOf();
    const races = analysis.plan.races.map((race) => ({
      ...race,
      waves: [{ time: 8 * 3600, entrants: 1200 }],
      cutoff: 15 * 3600,
    }));
    const clock = [
      { course: 'c', measure: 0, closes: 6.5 * 3600, reopens: 9 * 3600 },
      { course: 'c', measure: 4000, closes: 7 * 3600, reopens: 16 * 3600 },
    ];
    const contacts = { emergency: '112', raceControl: 'harbour office' };
    const plan = { ...analysis.plan, races, clock, contacts };
    const text = report({ ...analysis, plan });
    expect(rowWith(text, '>Races<')).toContain('4.00 km, starts 08:00, 1,200 entrants, finish closes 15:00');
    expect(rowWith(text, '>Roads<')).toContain('first closed at 06:30, last open again at 16:00');
    expect(rowWith(text, '>On the day<')).toContain(
      '<bdi>emergency: 112</bdi><br><bdi>race control: harbour office</bdi>',
    );
    expect(text).toContain('May the roads close and reopen at the times in the table overleaf?');
    // Half way along, half way between the two closures: 06:45 and 12:30.
    expect(rowWith(text.slice(text.indexOf('>Stations<')), '<b><bdi>s1')).toContain('06:45–12:30');
    for (const office of ['Event director', 'Safety reviewer', 'Police', 'Fire service', 'Medical', 'Road authority'])
      expect(text).toContain(`<td>${office}</td>`);
    const bare = report(analysisOf());
    expect([rowWith(bare, '>Roads<'), rowWith(bare, '>On the day<')].every((row) => row.includes('not stated'))).toBe(
      true,
    );
    expect(bare).toContain('When may the roads close and reopen? The plan does not say.');
  });

  it('is not ready to sign with an error, and says how many warnings are left to judge', () => {
    const found = (severity: 'error' | 'warning'): Finding => ({ code: 'x', severity, message: 'm', where: {} });
    const verdict = (...more: readonly Finding[]): string =>
      /<div class="result"><p>(.*?)<\/p>/u.exec(report({ ...analysisOf(), findings: more }))![1]!;
    expect(verdict(found('error'), found('warning'))).toBe(
      'Not ready to sign: 1 error must be corrected, or accepted by a named person.',
    );
    expect(verdict(found('warning'), found('warning'))).toBe('No errors. 2 warnings need your judgement.');
    expect(verdict()).toBe('No errors and no warnings.');
    const many = Array.from({ length: 8 }, () => found('warning'));
    const text = report({ ...analysisOf(), findings: many });
    expect(text).toContain('May these 8 findings stand, or must the plan change?');
    expect(text).toContain('and 2 more, below');
  });

  it('is printed on A4 or Letter', () => {
    const on = (paper: 'a4' | 'letter'): string => {
      const analysis = analysisOf();
      const review = reviewDocument(analysis, { sha256: 'ab'.repeat(32), inputs: [] });
      return reportHtml({ analysis, review, made: '2027-08-30', paper });
    };
    expect(on('a4')).toContain('@page { size: 210mm 297mm');
    expect(on('letter')).toContain('@page { size: 215.9mm 279.4mm');
    expect(report(analysisOf())).toBe(on('a4'));
  });
});

it('the style has nothing under 8 pt, breaks no row, numbers pages, and takes hexadecimal digits alone from the plan', () => {
  const style = reportStyle('a4', '0123456789ab', 'Halfcup 1.2.3', en.report);
  const sizes = [...style.matchAll(/(?:font|font-size):[^;}]*?(\d+(?:\.\d+)?)pt/gu)].map(([, size]) => Number(size));
  expect(sizes.length).toBeGreaterThan(5);
  expect(Math.min(...sizes)).toBe(8);
  expect(style).toMatch(/tr \{ break-inside: avoid; \}/u);
  expect(style).toContain('"Halfcup 1.2.3 · Page " counter(page) " of " counter(pages)');
  const analysis = analysisOf();
  const odd = reportHtml({
    analysis,
    review: reviewDocument(analysis, { sha256: '"; } </style>', inputs: [] }),
    made: '',
  });
  expect(odd.match(/<\/style>/gu)).toHaveLength(1);
});

it('the result tells what was not decided and did not run beside the counts', () => {
  expect(resultText({ error: 1, warning: 0, note: 2, waived: 3, cannotTell: 0, notRun: 0 })).toBe(
    '1 error, 0 warnings, 2 notes; 3 waived',
  );
  expect(resultText({ error: 0, warning: 1, note: 2, waived: 0, cannotTell: 1, notRun: 1 })).toBe(
    '0 errors, 1 warning, 2 notes; 0 waived; 1 of them unclear; 1 check could not run',
  );
});

it('speaks the language asked for, else the plan’s own, and English where Halfcup does not speak it', () => {
  const analysis = analysisOf({ items: { sign: { at: from(ORIGIN, 90, 1930) } } });
  const review = reviewDocument(analysis, { sha256: 'ab'.repeat(32), inputs: [] });
  const spanish = reportHtml({ analysis, review, made: '2027-08-30', language: 'es' });
  expect(spanish).toContain('lang="es"');
  const heads = (text: string): string[] => [...text.matchAll(/<(?:h2|h3|th)[^>]*>(.*?)</gu)].map(([, head]) => head!);
  const english = heads(report(analysis));
  const both = heads(spanish).filter((head) => english.includes(head));
  // Words that the two languages share.
  expect([...new Set(both)].filter((head) => !['SHA-256', '', '1 · '].includes(head))).toEqual([]);
  const message = analysis.findings.find(({ code }) => code === 'sign-distance')!.message;
  expect(report(analysis)).toContain(message);
  expect(spanish).not.toContain(message);
  const own = { ...analysis, plan: { ...analysis.plan, language: 'es' } };
  expect(reportHtml({ analysis: own, review, made: '2027-08-30' })).toBe(
    reportHtml({ analysis: own, review, made: '2027-08-30', language: 'es' }),
  );
  expect(reportHtml({ analysis, review, made: '2027-08-30', language: 'tlh' })).toBe(report(analysis));
});
