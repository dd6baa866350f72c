import { expect, it } from 'vitest';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { CHECKS } from './checks.ts';
import { reviewLayout } from './review.ts';

it('every check has a code of its own, a title and a source', () => {
  expect(new Set(CHECKS.map((check) => check.code)).size).toBe(CHECKS.length);
  for (const { code, title, source } of CHECKS) {
    expect(code).toMatch(/^[a-z]+(-[a-z]+)+$/);
    expect(title.length).toBeGreaterThan(15);
    expect(source.length).toBeGreaterThan(5);
  }
});

it('findings carry the code, severity and source of their check, in the order of the list', () => {
  const layout = layoutOf([turtle(ORIGIN, [[90, 9000]])], [{ at: from(from(ORIGIN, 90, 50), 180, 1) }, { at: from(ORIGIN, 0, 700) }]);
  const { findings } = reviewLayout(layout);
  expect(findings.map((finding) => finding.code)).toEqual(['station-off-course', 'side-unclear', 'item-outside', 'leg-long']);
  for (const finding of findings) {
    const check = CHECKS.find(({ code }) => code === finding.code)!;
    expect(finding).toMatchObject({ severity: check.severity, source: check.source });
  }
});

it('a good layout has no finding', () => {
  expect(reviewLayout(layoutOf([turtle(ORIGIN, [[90, 6000]])], [2000, 4000].map((measure) => ({ on: { course: 'c', measure, side: 'right', offset: 5 } })))).findings).toEqual([]);
});
