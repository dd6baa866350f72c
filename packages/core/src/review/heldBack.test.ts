/** One cause is found once: what comes of a line that is another's, or that runs the wrong way round, waits. */
import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import { goodPlan } from '../testing/planted/goodPlans.ts';
import type { FileTexts, PlanText } from '../testing/planted/planText.ts';
import { reviewPlan } from '../whole.ts';
import type { Analysis } from '../analyse.ts';

type Change = (plan: PlanText, files: FileTexts) => void;

/** The review of the good plan of a full and a half marathon with a change. */
function reviewed(change: Change): Analysis {
  const { text, files } = goodPlan('shared');
  const [plan, texts] = JSON.parse(JSON.stringify([text, files])) as [PlanText, FileTexts];
  change(plan, texts);
  const result = reviewPlan({ plan: JSON.stringify(plan), files: texts });
  if (!result.ok) throw new Error(result.findings[0]?.message);
  return result.value.analysis;
}

const codesOf = ({ findings }: Analysis): string[] =>
  findings.filter(({ severity }) => severity !== 'note').map(({ code }) => code);
const courseOf = (plan: PlanText, id: string): PlanText['courses'][number] =>
  plan.courses.find((course) => course.id === id)!;
const waiver = (code: string): object => ({
  code,
  by: 'R. Gull',
  reason: 'The measurers have walked it',
  date: '2027-01-02',
});

describe('a course with the line of another', () => {
  const wrong: Change = (plan) => {
    courseOf(plan, 'short').line = courseOf(plan, 'long').line!;
  };

  it('is found once, and says that what depends on it waits', () => {
    const review = reviewed(wrong);
    const first = review.findings.find(({ severity }) => severity !== 'note');
    expect(first).toMatchObject({ code: 'length-differs', severity: 'error', where: { course: 'short' } });
    expect(first!.message).toContain('checks of whom it serves and of its times wait until one is corrected');
    expect(codesOf(review)).not.toContain('passers-not-served');
    expect(review.checks.find(({ code }) => code === 'passers-not-served')).toMatchObject({
      ran: false,
      reasonCode: 'waits-for-line',
    });
  });

  it('is told with all that comes of it where somebody has waived the length', () => {
    const review = reviewed((plan, files) => {
      wrong(plan, files);
      Object.assign(plan, { waivers: [waiver('length-differs')] });
    });
    expect(codesOf(review)).toContain('passers-not-served');
  });

  it('that is off by less than a fifth holds nothing back', () => {
    const review = reviewed((plan) => {
      const short = courseOf(plan, 'short');
      short.length = `${Number.parseFloat(short.length!) * 1.15} km`;
    });
    const found = review.findings.find(({ code }) => code === 'length-differs');
    expect(found!.params!['waits']).toBeUndefined();
  });
});

describe('a course that runs the wrong way round', () => {
  const turned: Change = (plan) => {
    courseOf(plan, 'short').reverse = true;
    const own = plan.stations.find(({ id }) => id === 'd4')!;
    Object.assign(own, { races: ['k'], lead: { race: 'k', pass: 0 } });
    for (const id of ['d1', 'd5']) plan.stations.find((one) => one.id === id)!.passes = 'all';
  };
  const isTurned = ({ code }: Finding): boolean => code === 'side-contradicted';

  it('is one error that names it, and its crossings are not told at each station', () => {
    const review = reviewed(turned);
    const found = review.findings.filter(isTurned);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({
      severity: 'error',
      where: { course: 'short' },
      params: { turned: { course: 'short', stations: ['d4'], against: ['d1', 'd5'] } },
    });
    expect(found[0]!.message).toContain(
      'Short runs against the others at 2 stations, and at Mill Race the pin is on the other side than declared. It seems to run the wrong way round',
    );
    for (const code of ['crosses-flow', 'served-both-ways']) expect(codesOf(review)).not.toContain(code);
  });

  it('is told with all its crossings where somebody has waived it', () => {
    const review = reviewed((plan, files) => {
      turned(plan, files);
      Object.assign(plan, { waivers: [waiver('side-contradicted')] });
    });
    expect(codesOf(review)).toContain('crosses-flow');
  });
});
