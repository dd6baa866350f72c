/** The drop and collection runs that stop at a station: the way along the course, and the stops in their order. Pure. */
import type { Analysis, StationLayout } from '@halfcup/core';
import { pointAt, sliceLine } from '@halfcup/core/geometry';
import { lineString, point } from '@turf/turf';
import type { Feature, LineString, Point } from 'geojson';
import { coursesOf, leadOf } from '../../state/view/derive.ts';

export interface RunProps {
  readonly draw: 'line' | 'stop';
  readonly kind: 'drop' | 'collect';
  /** "Truck 1, stop 2", at the first with what the vehicle does. */
  readonly label: string;
}

type Run = NonNullable<Analysis['day']>['runs'][number];
type RunFeature = Feature<LineString | Point, RunProps>;

const KIND = { drop: 'drop-off', collect: 'collection' } as const;

function runFeatures(analysis: Analysis, run: Run, vehicle: string): RunFeature[] {
  const station = analysis.stations.find(({ id }: StationLayout) => id === run.stops[0]?.station);
  const course = coursesOf(analysis).find(
    ({ id }) => id === (station === undefined ? undefined : leadOf(station)?.course),
  );
  const last = run.stops.at(-1);
  if (course === undefined || last === undefined) return [];
  const line = sliceLine(course, 0, Math.max(...run.stops.map(({ measure }) => measure))).map((at) => [at[0], at[1]]);
  const stops = run.stops.flatMap(({ measure }, index) => {
    const at = pointAt(course, measure)?.at;
    const label = `${vehicle}, stop ${index + 1}${index === 0 ? ` (${KIND[run.kind]})` : ''}`;
    return at === undefined ? [] : [point<RunProps>([at[0], at[1]], { draw: 'stop', kind: run.kind, label })];
  });
  return [
    ...(line.length < 2 ? [] : [lineString<RunProps>(line, { draw: 'line', kind: run.kind, label: '' })]),
    ...stops,
  ];
}

/** Runs of one station, at most one of each kind, so that the numbers stay legible: the first that stops there. */
export function runShapes(analysis: Analysis, station: string): RunFeature[] {
  const here = (analysis.day?.runs ?? []).filter((run) => run.stops.some((stop) => stop.station === station));
  return (['drop', 'collect'] as const).flatMap((kind) => {
    const run = here.find((one) => one.kind === kind);
    return run === undefined
      ? []
      : runFeatures(analysis, run, analysis.plan.vehicles.find(({ id }) => id === run.vehicle)?.name ?? run.vehicle);
  });
}
