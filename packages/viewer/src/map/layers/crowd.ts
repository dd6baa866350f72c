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
import { lanesOf } from './laps.ts';
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
  /** Sample at its middle. */
  readonly at: number;
}

const binsOf: (course: Course) => readonly Bin[] = keep((course) => {
  const [start, end] = [startMeasure(course), courseLength(course)];
  const { measure } = samplesOf(course);
  const count = Math.max(1, Math.ceil((end - start) / EVERY - 1e-9));
  return Array.from({ length: count }, (_, k) => {
    const [from, to] = [start + k * EVERY, Math.min(end, start + (k + 1) * EVERY)];
    const at = measure.findIndex((one) => one >= (from + to) / 2);
    return {
      line: sliceLine(drawnCourse(course), from, to).map(([lon, lat]) => [lon, lat]),
      at: at < 0 ? measure.length - 1 : at,
    };
  });
});

/** Nearest to the course, and the room of all lanes, pixels. */
const FIRST = 9;
const ROOM = 40;
const WIDEST = 11;

/** Stretches of every race with a field, in the order of the races. */
export function crowdLines(
  analysis: OpenPlan['analysis'],
  races: readonly string[],
): Feature<LineString, CrowdProps>[] {
  const courses = races.map((id) => {
    const race = analysis.plan.races.find((one) => one.id === id);
    return coursesOf(analysis).find((one) => one.id === race?.course)!;
  });
  const lanes = lanesOf(courses.map(samplesOf));
  const most = lanes.reduce((all, own) => own.reduce((high, lane) => Math.max(high, lane), all), 0);
  const pitch = Math.min(WIDEST, ROOM / (1 + most));
  return courses.flatMap((course, race) =>
    binsOf(course).flatMap(({ line, at }, k) => {
      const offset = FIRST + (lanes[race]?.[at] ?? 0) * pitch;
      const properties = { race: races[race] ?? '', colour: race % COLOURS, offset };
      return line.length < 2 ? [] : [lineString(line, properties, { id: race * EACH + k })];
    }),
  );
}
