/** A mark at every whole kilometre or mile of a course. */
import type { Units } from '@halfcup/core/plan';
import type { Course } from '@halfcup/core/stages';
import { courseLength, pointAt } from '@halfcup/core/geometry';
import { featureCollection, point } from '@turf/turf';
import type { FeatureCollection, Point } from 'geojson';
import { anchorTowards, away, type Anchor } from './directions.ts';

export interface MarkProps {
  readonly label: string;
  /** 10, 5 or 1: the roundest step on which it lies, so that fewer are drawn from afar. */
  readonly every: 10 | 5 | 1;
  readonly azimuth: number;
  /** The label stands outside the bend, where the course does not run under it. */
  readonly anchor: Anchor;
}

/** How far before and after the mark a bend is looked for, metres. */
const REACH = 180;

function outside(course: Course, measure: number, azimuthDeg: number): Anchor {
  const before = pointAt(course, Math.max(0, measure - REACH))?.azimuthDeg ?? azimuthDeg;
  const after = pointAt(course, Math.min(courseLength(course), measure + REACH))?.azimuthDeg ?? azimuthDeg;
  const turn = ((after - before + 540) % 360) - 180;
  return anchorTowards(away(azimuthDeg, turn > 0 ? 'left' : 'right'));
}

const UNIT_METRES = { metric: 1000, imperial: 1609.344 } as const;

export function unitMarks(course: Course, units: Units): FeatureCollection<Point, MarkProps> {
  const step = UNIT_METRES[units];
  const count = Math.floor(courseLength(course) / step);
  const features = Array.from({ length: count }, (_, index) => {
    const number = index + 1;
    const place = pointAt(course, number * step);
    const every = number % 10 === 0 ? 10 : number % 5 === 0 ? 5 : 1;
    return place === null
      ? []
      : [
          point<MarkProps>([place.at[0], place.at[1]], {
            label: `${number} ${units === 'metric' ? 'km' : 'mi'}`,
            every,
            azimuth: place.azimuthDeg,
            anchor: outside(course, number * step, place.azimuthDeg),
          }),
        ];
  });
  return featureCollection(features.flat());
}
