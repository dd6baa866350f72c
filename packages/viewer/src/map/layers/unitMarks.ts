/** A mark at every whole kilometre or mile of a course. */
import type { Course, Units } from '@halfcup/core';
import { courseLength, pointAt } from '@halfcup/core/geometry';
import { featureCollection, point } from '@turf/turf';
import type { FeatureCollection, Point } from 'geojson';

export interface MarkProps {
  readonly label: string;
  /** 10, 5 or 1: the roundest step on which it lies, so that fewer are drawn from afar. */
  readonly every: 10 | 5 | 1;
  readonly azimuth: number;
}

const UNIT_METRES = { metric: 1000, imperial: 1609.344 } as const;

export function unitMarks(course: Course, units: Units): FeatureCollection<Point, MarkProps> {
  const step = UNIT_METRES[units];
  const count = Math.floor(courseLength(course) / step);
  const features = Array.from({ length: count }, (_, index) => {
    const number = index + 1;
    const place = pointAt(course, number * step);
    const every = number % 10 === 0 ? 10 : number % 5 === 0 ? 5 : 1;
    return place === null ? [] : [point<MarkProps>([place.at[0], place.at[1]], { label: `${number} ${units === 'metric' ? 'km' : 'mi'}`, every, azimuth: place.azimuthDeg })];
  });
  return featureCollection(features.flat());
}
