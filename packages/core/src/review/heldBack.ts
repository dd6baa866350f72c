/**
 * One cause and what comes of it: where the line of a course is surely that of another, or runs the wrong way round, that is
 * found once and says that the rest waits. What else is found of its runners, by the road and by the clock, is not told until it is corrected;
 * all of it where somebody has waived the cause, and so has said that it is right.
 */
import { type Finding } from '../finding.ts';
import type { Layout } from '../layout/layout.ts';
import type { ReviewParams } from '../text/params/review.ts';

const TIMES = ['closes-late', 'reopens-early', 'sweep-impossible', 'cutoff-early', 'speed-impossible', 'crew-late'];
/** Of a line that is another's: it comes by stations that are not on its way, and takes longer. */
const OF_OTHER_LINE: ReadonlySet<string> = new Set([
  ...TIMES,
  'passers-not-served',
  'seen-not-served',
  'station-off-course',
  'pass-unknown',
  'name-distance',
]);
/** Of a line that runs the wrong way round. */
const OF_TURNED: ReadonlySet<string> = new Set([
  ...TIMES,
  'crosses-flow',
  'served-both-ways',
  'gel-without-water',
  'trash-blocks-medical',
  'flows-share-width',
  'drop-side',
  'side-change',
]);

interface Cause {
  readonly code: string;
  readonly course: string;
  readonly comes: ReadonlySet<string>;
}

/** The cause that a finding is, if it is one. */
function causeOf({ code, params, where }: Finding): Cause[] {
  const { course } = where;
  if (course === undefined) return [];
  if (code === 'length-differs')
    return (params as unknown as ReviewParams['length-differs']).waits === true
      ? [{ code, course, comes: OF_OTHER_LINE }]
      : [];
  if (code !== 'side-contradicted') return [];
  const { turned } = params as unknown as ReviewParams['side-contradicted'];
  return turned?.against === undefined ? [] : [{ code, course, comes: OF_TURNED }];
}

/** Ids of races anywhere in a finding's parameters. */
function racesIn(value: unknown): string[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    key === 'race' && typeof inner === 'string' ? [inner] : racesIn(inner),
  );
}

/** Findings without those that come of a cause among them, and the codes of what is left out. */
interface Told {
  readonly told: readonly Finding[];
  readonly waiting: ReadonlySet<string>;
}

export function withoutEffects(findings: readonly Finding[], { plan }: Layout): Told {
  const causes = findings.flatMap(causeOf).filter(({ code }) => !plan.waivers.some((waiver) => waiver.code === code));
  if (causes.length === 0) return { told: findings, waiting: new Set() };
  const racesOf = (course: string): ReadonlySet<string> =>
    new Set(plan.races.filter((race) => race.course === course).map(({ id }) => id));
  const comesOf = ({ code, where, params }: Finding, { course, comes }: Cause): boolean => {
    if (!comes.has(code)) return false;
    const own = racesOf(course);
    const races = [...racesIn(params), ...(where.race === undefined ? [] : [where.race])];
    return where.course === course && races.length === 0 ? true : races.length > 0 && races.every((id) => own.has(id));
  };
  const waits = (finding: Finding): boolean => causes.some((cause) => comesOf(finding, cause));
  return {
    told: findings.filter((finding) => !waits(finding)),
    waiting: new Set(findings.filter(waits).map(({ code }) => code)),
  };
}
