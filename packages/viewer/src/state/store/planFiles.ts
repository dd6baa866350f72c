/** What is read beside a plan. */
import type { Finding } from '@halfcup/core';
import type { Ground } from '@halfcup/core/ground';
import type { GpxDocument } from '@halfcup/core/stages';
import type { FeatureCollection } from 'geojson';

/** All that is read beside the plan itself. One record lives as long as no file is added. */
export interface PlanFiles {
  readonly gpx: ReadonlyMap<string, GpxDocument>;
  readonly results: ReadonlyMap<string, string>;
  /** Maps of the ground beside the courses. */
  readonly ground: ReadonlyMap<string, Ground>;
  readonly context: FeatureCollection | null;
  /** What reading them has found. */
  readonly findings: readonly Finding[];
  /** The bytes of every file, as they came, by the name by which the plan calls it. */
  readonly originals: ReadonlyMap<string, Blob>;
}
