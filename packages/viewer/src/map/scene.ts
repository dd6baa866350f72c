/**
 * All that the map draws of a plan, as one record of GeoJSON. What has not changed since the scene before is the
 * same record again, so that the map is told of changes only; stations and items have ids that stay theirs. The station
 * of a trial has a source of its own, with its old place: a move touches no more than that.
 */
import type { Finding, PlacedVerdict, StationLayout } from '@halfcup/core';
import type { Units } from '@halfcup/core/plan';
import type { Course } from '@halfcup/core/stages';
import type { Feature, FeatureCollection, Geometry, Point } from 'geojson';
import { courseOf, coursesOf, findingsByStation } from '../state/view/derive.ts';
import type { OpenPlan, Trial } from '../state/store/store.ts';
import { background } from './layers/context.ts';
import { courseEnds, courseLines } from './layers/courses.ts';
import { flagOf, flagPoints, type Flag } from './layers/flags.ts';
import { stationItems } from './layers/items.ts';
import { placedPoints } from './layers/placed.ts';
import { runShapes } from './layers/runs.ts';
import { stationPoint, type StationProps } from './layers/stations.ts';
import { groundShapes } from './layers/streets.ts';
import { againstFeatures, ghostFeatures } from './layers/trial.ts';
import { unitMarks } from './layers/unitMarks.ts';
import { zoneShapes } from './layers/zones.ts';

/** Sources of the map, in no order. */
export const SOURCES = [
  'context',
  'streets',
  'zones',
  'courses',
  'marks',
  'ends',
  'items',
  'stations',
  'trial',
  'against',
  'runs',
  'placed',
  'flags',
] as const;
/** Sources whose features have ids that stay theirs, so that a change of one feature is told as that. */
export const KEPT_IDS: ReadonlySet<string> = new Set(['items', 'stations', 'trial']);

export interface Scene extends Readonly<Record<(typeof SOURCES)[number], FeatureCollection>> {
  readonly stations: FeatureCollection<Point, StationProps>;
}

/** What a scene is made of. */
export interface Seen {
  readonly open: OpenPlan | null;
  readonly course: string | null;
  readonly units: Units;
  readonly trial?: Trial | null;
  /** The variant compared with the one shown. */
  readonly against?: OpenPlan | null;
  /** The station whose drop and collection runs are shown. */
  readonly runsOf?: string | null;
  /** Of points recorded on the ground. */
  readonly placed?: readonly PlacedVerdict[];
  /** Those with a place and about no station are marked. */
  readonly findings?: readonly Finding[];
}

const NO_VERDICTS: readonly PlacedVerdict[] = [];
const NO_FINDINGS: readonly Finding[] = [];
const NOTHING: FeatureCollection & { readonly features: [] } = { type: 'FeatureCollection', features: [] };
export const EMPTY_SCENE: Scene = {
  context: NOTHING,
  streets: NOTHING,
  zones: NOTHING,
  courses: NOTHING,
  marks: NOTHING,
  ends: NOTHING,
  items: NOTHING,
  stations: NOTHING,
  trial: NOTHING,
  against: NOTHING,
  runs: NOTHING,
  placed: NOTHING,
  flags: NOTHING,
};

const same = (a: unknown, b: unknown): boolean =>
  a === b ||
  (Array.isArray(a) && Array.isArray(b) && a.length === b.length && a.every((one, index) => one === b[index]));

/** Keeps the last result for as long as its arguments are the same, lists by what is in them. */
function once<A extends readonly unknown[], V>(compute: (...args: A) => V): (...args: A) => V {
  let last: { readonly args: A; readonly value: V } | null = null;
  return (...args) => {
    if (last === null || !args.every((arg, index) => same(arg, last!.args[index])))
      last = { args, value: compute(...args) };
    return last.value;
  };
}

const collection = <G extends Geometry, P>(features: readonly Feature<G, P>[]): FeatureCollection<G, P> =>
  features.length === 0 ? NOTHING : { type: 'FeatureCollection', features: features as Feature<G, P>[] };

/** No station draws as many features. */
const EACH = 1000;
/** Ids of the old place and the difference: at the far end of those that stations have. */
const GHOST = 2 ** 31;

/** Features of each station, with ids that stay those of the station; kept with its layout. */
function stationFeatures(): {
  readonly points: (station: StationLayout, flag: Flag) => Feature<Point, StationProps>;
  readonly items: (courses: readonly Course[], station: StationLayout) => Feature[];
} {
  const slots = new Map<string, number>();
  const slot = (id: string): number => {
    const own = slots.get(id) ?? slots.size + 1;
    slots.set(id, own);
    return own;
  };
  const items = new WeakMap<StationLayout, Feature[]>();
  const points = new WeakMap<StationLayout, Feature<Point, StationProps>>();
  return {
    points: (station, flag) => {
      const known = points.get(station);
      if (known?.properties.flag === flag) return known;
      const fresh = { ...stationPoint(station, flag), id: slot(station.id) };
      points.set(station, fresh);
      return fresh;
    },
    items: (courses, station) => {
      const known =
        items.get(station) ??
        stationItems(courses, station).map((feature, index) => ({ ...feature, id: slot(station.id) * EACH + index }));
      items.set(station, known);
      return known;
    },
  };
}

/** A maker of scenes; it holds the parts of the last one. */
export function createScenes(): (seen: Seen) => Scene {
  const { points, items } = stationFeatures();
  const drawing = once(background);
  const streets = once(groundShapes);
  const zones = once((list: OpenPlan['analysis']['plan']['zones']) => zoneShapes({ zones: list }));
  const lines = once(courseLines);
  const marks = once((course: Course | undefined, units: Units) =>
    course === undefined ? NOTHING : unitMarks(course, units),
  );
  const ends = once((course: Course | undefined) => (course === undefined ? NOTHING : courseEnds(course)));
  const against = once((other: OpenPlan | null, open: OpenPlan) =>
    collection(other === null ? [] : againstFeatures(other, open)),
  );
  const runs = once((analysis: OpenPlan['analysis'], station: string | null) =>
    collection(station === null ? [] : runShapes(analysis, station)),
  );
  const crosses = once((verdicts: readonly PlacedVerdict[]) => collection(placedPoints(verdicts)));
  const flags = once((open: OpenPlan, findings: readonly Finding[]) => collection(flagPoints(open, findings)));
  return (seen) => {
    const { open, course: id, units, trial = null, against: other = null, runsOf = null } = seen;
    if (open === null) return EMPTY_SCENE;
    const { placed = NO_VERDICTS, findings = NO_FINDINGS } = seen;
    const { analysis } = open;
    const ground = analysis.ground ?? null;
    const found = findingsByStation(open);
    const pointOf = (station: StationLayout): Feature<Point, StationProps> =>
      points(station, flagOf(found.get(station.id) ?? NO_FINDINGS));
    const courses = coursesOf(analysis);
    const course = courseOf(open, id) ?? courses[0];
    const tried = trial === null ? undefined : analysis.stations.find((station) => station.id === trial.station);
    const others = tried === undefined ? analysis.stations : analysis.stations.filter((station) => station !== tried);
    const ofTrial: Feature[] =
      trial === null || tried === undefined
        ? []
        : [
            pointOf(tried),
            ...items(courses, tried),
            ...ghostFeatures(trial, open, units).map((feature, index) => ({ ...feature, id: GHOST - index })),
          ];
    return {
      context: drawing(open.files.context, ground?.ground ?? null),
      streets: streets(ground),
      zones: zones(analysis.plan.zones),
      courses: lines(courses, course?.id ?? null),
      marks: marks(course, units),
      ends: ends(course),
      items: collection(others.flatMap((station) => items(courses, station))),
      stations: collection(others.map(pointOf)),
      trial: collection(ofTrial),
      against: against(other, open),
      runs: runs(analysis, runsOf),
      placed: crosses(placed),
      flags: flags(trial?.from ?? open, findings),
    };
  };
}
