/**
 * The road in stretches of 100 m for each race: lines that stay, whose thickness follows the runners on them. Races and laps that share
 * a road lie side by side, right of the course in the running direction. Pure.
 */
import type { Course } from '@halfcup/core/stages';
import { courseLength, sliceLine, startMeasure } from '@halfcup/core/geometry';
import { lineString } from '@turf/turf';
import type { Feature, LineString } from 'geojson';
import { coursesOf, keep, samplesOf } from '../../state/view/derive.ts';
import type { OpenPlan } from '../../state/store/store.ts';
import { lapsBefore } from './laps.ts';
import { drawnCourse } from './thin.ts';

export const EVERY = 100;
/** Ids of a race begin at a multiple of this: no course has as many stretches. */
export const EACH = 100_000;
/** Races are told apart by as many colours. */
export const COLOURS = 4;

export interface CrowdProps {
  readonly race: string;
  readonly colour: number;
  /** Right of the course, pixels. */
  readonly offset: number;
}

interface Bin {
  readonly line: number[][];
  readonly lap: number;
}

const binsOf: (course: Course) => readonly Bin[] = keep((course) => {
  const [start, end] = [startMeasure(course), courseLength(course)];
  const samples = samplesOf(course);
  const laps = lapsBefore(samples);
  const count = Math.max(1, Math.ceil((end - start) / EVERY - 1e-9));
  return Array.from({ length: count }, (_, k) => {
    const [from, to] = [start + k * EVERY, Math.min(end, start + (k + 1) * EVERY)];
    const middle = (from + to) / 2;
    const at = samples.measure.findIndex((measure) => measure >= middle);
    return {
      line: sliceLine(drawnCourse(course), from, to).map(([lon, lat]) => [lon, lat]),
      lap: laps[at < 0 ? laps.length - 1 : at] ?? 0,
    };
  });
});

/** Nearest to the course, and the room of all lanes, pixels. */
const FIRST = 9;
const ROOM = 40;
const WIDEST = 11;

/** Stretches of every race with a field, in the order of the races, so that a lane stays that of its race all along the course. */
export function crowdLines(
  analysis: OpenPlan['analysis'],
  races: readonly string[],
): Feature<LineString, CrowdProps>[] {
  const all = races.map((id) => {
    const race = analysis.plan.races.find((one) => one.id === id);
    const course = coursesOf(analysis).find((one) => one.id === race?.course);
    return course === undefined ? [] : binsOf(course);
  });
  const lanes = all.map((bins) => 1 + bins.reduce((most, { lap }) => Math.max(most, lap), 0));
  const pitch = Math.min(
    WIDEST,
    ROOM /
      Math.max(
        1,
        lanes.reduce((sum, one) => sum + one, 0),
      ),
  );
  return all.flatMap((bins, race) => {
    const before = lanes.slice(0, race).reduce((sum, one) => sum + one, 0);
    return bins.flatMap(({ line, lap }, k) =>
      line.length < 2
        ? []
        : [
            lineString(
              line,
              { race: races[race] ?? '', colour: race % COLOURS, offset: FIRST + (before + lap) * pitch },
              { id: race * EACH + k },
            ),
          ],
    );
  });
}
