/** All that the map draws of a plan, as one record of GeoJSON; pure. */
import type { Units } from '@halfcup/core';
import type { FeatureCollection, Point } from 'geojson';
import { courseOf, coursesOf } from '../state/derive.ts';
import type { OpenPlan } from '../state/store.ts';
import { background } from './layers/context.ts';
import { courseEnds, courseLines } from './layers/courses.ts';
import { itemShapes } from './layers/items.ts';
import { stationPoints, type StationProps } from './layers/stations.ts';
import { unitMarks } from './layers/unitMarks.ts';
import { zoneShapes } from './layers/zones.ts';

/** Sources of the map, in no order. */
export const SOURCES = ['context', 'zones', 'courses', 'marks', 'ends', 'items', 'stations'] as const;
export interface Scene extends Readonly<Record<(typeof SOURCES)[number], FeatureCollection>> {
  readonly stations: FeatureCollection<Point, StationProps>;
}

const NOTHING: FeatureCollection & { readonly features: [] } = { type: 'FeatureCollection', features: [] };
export const EMPTY_SCENE: Scene = { context: NOTHING, zones: NOTHING, courses: NOTHING, marks: NOTHING, ends: NOTHING, items: NOTHING, stations: NOTHING };

export function sceneOf(open: OpenPlan | null, courseId: string | null, units: Units): Scene {
  if (open === null) return EMPTY_SCENE;
  const { analysis } = open;
  const course = courseOf(open, courseId) ?? coursesOf(analysis)[0];
  return {
    context: background(open.files.context),
    zones: zoneShapes(analysis.plan),
    courses: courseLines(analysis, course?.id ?? null),
    marks: course === undefined ? NOTHING : unitMarks(course, units),
    ends: course === undefined ? NOTHING : courseEnds(course),
    items: itemShapes(analysis),
    stations: stationPoints(analysis),
  };
}
