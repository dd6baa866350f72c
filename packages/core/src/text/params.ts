/** The named parameters of every finding, by code. */
import type { CourseParams } from './params/course.ts';
import type { ExportsParams } from './params/exports.ts';
import type { GpxParams } from './params/gpx.ts';
import type { GroundParams } from './params/ground.ts';
import type { PlacedParams } from './params/placed.ts';
import type { PlanParams } from './params/plan.ts';
import type { RacedayParams } from './params/raceday.ts';
import type { ReviewParams } from './params/review.ts';
import type { YearParams } from './params/year.ts';

export interface FindingParams
  extends
    GpxParams,
    CourseParams,
    GroundParams,
    PlanParams,
    RacedayParams,
    ReviewParams,
    PlacedParams,
    ExportsParams,
    YearParams {}
