/** Course lines: one feature for each stretch, with whether it is retraced; and the two ends of each course. */
import type { LonLat } from '@halfcup/core';
import type { Course } from '@halfcup/core/stages';
import { courseLength, pointAt, sliceLine } from '@halfcup/core/geometry';
import { featureCollection, lineString, point } from '@turf/turf';
import type { FeatureCollection, LineString, Point, Position } from 'geojson';
import { keep, samplesOf } from '../../state/view/derive.ts';
import { stretches } from './lanes.ts';
import { drawnCourse } from './thin.ts';

export interface CourseProps {
  readonly course: string;
  readonly current: boolean;
  readonly retraced: boolean;
}

const position = (at: LonLat): Position => [at[0], at[1]];

const linesOf = keep((course: Course) =>
  stretches(samplesOf(course)).map(({ from, to, retraced }) => ({
    line: sliceLine(drawnCourse(course), from, to).map(position),
    retraced,
  })),
);

/** The current course last, so that it is drawn above the others. */
export function courseLines(
  courses: readonly Course[],
  current: string | null,
): FeatureCollection<LineString, CourseProps> {
  const ordered = courses.toSorted((a, b) => Number(a.id === current) - Number(b.id === current));
  const features = ordered.flatMap((course) =>
    linesOf(course)
      .filter(({ line }) => line.length > 1)
      .map(({ line, retraced }) => lineString(line, { course: course.id, current: course.id === current, retraced })),
  );
  return featureCollection(features);
}

export interface EndProps {
  readonly end: 'start' | 'finish' | 'both';
  readonly label: string;
  readonly azimuth: number;
}

/** Start and finish of the current course; within 40 m of each other they share one shape. */
export function courseEnds(course: Course): FeatureCollection<Point, EndProps> {
  const start = pointAt(course, 0);
  const finish = pointAt(course, courseLength(course));
  if (start === null || finish === null) return featureCollection([]);
  const north = (start.at[1] - finish.at[1]) * 110_600;
  const east = (start.at[0] - finish.at[0]) * 111_320 * Math.cos((start.at[1] * Math.PI) / 180);
  if (Math.hypot(north, east) < 40) {
    return featureCollection([
      point(position(start.at), { end: 'both', label: 'Start and finish', azimuth: start.azimuthDeg }),
    ]);
  }
  return featureCollection<Point, EndProps>([
    point<EndProps>(position(start.at), { end: 'start', label: 'Start', azimuth: start.azimuthDeg }),
    point<EndProps>(position(finish.at), { end: 'finish', label: 'Finish', azimuth: finish.azimuthDeg }),
  ]);
}
