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
    expect(report(analysisOf())).not.toContain('As placed');
    const text = report(analysisOf(), [
      verdict,
      { ...verdict, item: 'trash', end: 'to', verdict: 'cannot tell', move: 0 },
    ]);
    expect(rowWith(text, '<b>out of place</b>')).toMatch(/Sign.*70 m ± 5 m.*82\.3 m – 100\.6 m.*21\.4 m back/u);
    expect(rowWith(text, '<b>unclear</b>')).toContain('Trash, last end');
  });

  it('marks what could not be decided, and says of a check that could not run why, never that it found nothing', () => {
    const text = report(
      analysisOf({}, [
        { code: 'drop-side', severity: 'note', message: 'm', where: { station: 's1' }, cannotTell: true },
      ]),
    );
    expect(text).toContain('drop-side<br><b>unclear</b>');
    const unrun = rowWith(text, '>length-differs<');
    expect(unrun).toContain('<b>not run</b>: the plan states no course length');
    expect(unrun).not.toContain('found nothing');
  });

  it('shows a station that departs from the practice with its reason, or that it gives none; an override that changes nothing is no departure', () => {
    const departures = (text: string): string =>
      text.slice(text.indexOf('Stations that differ'), text.indexOf('>Checks<'));
    expect(departures(report(analysisOf({ practice: { kerb: 6 }, why: 'a ditch' })))).toMatch(
      /6 m \(the plan: 4 m\).*a ditch/u,
    );
    expect(departures(report(analysisOf({ practice: { kerb: 6 } })))).toContain('no reason given');
    expect(departures(report(analysisOf({ practice: { kerb: 4 } })))).toContain('None.');
  });

  it('says that a plan has no name, no revision and no day, and the zone of the day where the plan has one', () => {
    const facts = (keys: object): string => {
      const analysis = analysisOf();
      return report({ ...analysis, plan: { ...analysis.plan, ...keys } });
    };
    const none = facts({ name: '' });
    expect(none).toContain('<h1><bdi>Unnamed plan</bdi></h1>');
    expect([rowWith(none, '>Revision<'), rowWith(none, '>Race day<')].every((row) => row.includes('not stated'))).toBe(
      true,
    );
    expect(rowWith(facts({ date: '2027-09-12' }), '>Race day<')).toContain('<bdi>Sunday 12 September 2027</bdi>');
    expect(rowWith(facts({ date: '2027-09-12', timeZone: 'Etc/UTC', revision: '3' }), '>Race day<')).toContain(
      '<bdi>Sunday 12 September 2027 (Etc/UTC)</bdi>',
    );
  });

  it('names a station off the course as such', () => {
    const layout = layoutOf([course], [{ at: [ORIGIN[0], ORIGIN[1] + 0.1] }]);
    expect(report({ ...layout, day: null, ...reviewLayout(layout) })).toContain('off the course');
  });
});

it('the style has nothing under 9 pt, breaks no row, numbers pages, and takes hexadecimal digits alone from the plan', () => {
  const style = reportStyle('0123456789ab', 'Halfcup 1.2.3', en.report);
  const sizes = [...style.matchAll(/(?:font|font-size):[^;}]*?(\d+(?:\.\d+)?)pt/gu)].map(([, size]) => Number(size));
  expect(sizes.length).toBeGreaterThan(5);
  expect(Math.min(...sizes)).toBe(9);
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
  expect([...new Set(both)].filter((head) => !['SHA-256', ''].includes(head))).toEqual([]);
  const message = analysis.findings.find(({ code }) => code === 'sign-distance')!.message;
  expect(report(analysis)).toContain(message);
  expect(spanish).not.toContain(message);
  const own = { ...analysis, plan: { ...analysis.plan, language: 'es' } };
  expect(reportHtml({ analysis: own, review, made: '2027-08-30' })).toBe(
    reportHtml({ analysis: own, review, made: '2027-08-30', language: 'es' }),
  );
  expect(reportHtml({ analysis, review, made: '2027-08-30', language: 'tlh' })).toBe(report(analysis));
});
