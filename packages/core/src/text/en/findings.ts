/** Every finding's text. */
import type { FindingParams } from '../params.ts';
import type { TextsOf } from '../sentence.ts';
import { course } from './findings/course.ts';
import { exports } from './findings/exports.ts';
import { gpx } from './findings/gpx.ts';
import { ground } from './findings/ground.ts';
import { placed } from './findings/placed.ts';
import { plan } from './findings/plan.ts';
import { raceday } from './findings/raceday.ts';
import { review } from './findings/review.ts';
import { year } from './findings/year.ts';

export const findings: TextsOf<FindingParams> = {
  ...gpx,
  ...course,
  ...plan,
  ...raceday,
  ...review,
  ...placed,
  ...exports,
  ...ground,
  ...year,
};
