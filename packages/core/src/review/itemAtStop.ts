/**
 * Signs, tables or boxes at a bus or tram stop, by the map. A stop that the map has beside the course is that of its side; one on
 * the line, of both.
 */
import { passesOf } from '../course/passes.ts';
import type { Feature } from '../ground/along.ts';
import type { GroundPoint } from '../ground/ground.ts';
import type { PlanGround } from '../ground/planGround.ts';
import { type Check, COMMON_PRACTICE, type Ground } from './check.ts';
import type { Span } from './byMap.ts';
import { onFeature } from './onFeature.ts';
import { courseOf } from './standing.ts';

/** Half of a stop along the road, metres (common practice, no source): the map has its sign. */
const HALF = 10;
/** Nearer to the line than so many metres a stop is on no side. */
const ON_LINE = 2;
const REACH = 60;

export const itemAtStop: Check = onFeature(
  { code: 'item-at-stop', severity: 'warning', source: COMMON_PRACTICE },
  {
    kinds: ['busStop', 'tramStop'],
    room: HALF,
    counts: onItsSide,
    params: (shared, { kind }) => ({ ...shared, stop: kind === 'busStop' ? 'bus' : 'tram' }),
  },
);

function onItsSide({ id, from, to }: Feature, { item, direction }: Span, ground: Ground): boolean {
  const point = ground.ground === undefined ? undefined : pointsOf(ground.ground).get(id);
  if (point === undefined || item.side === 'unclear') return true;
  const passes = passesOf(courseOf(ground, direction.course), [point.lon, point.lat], { snapRadius: REACH });
  const away = ({ measure }: { readonly measure: number }): number => Math.abs(measure - (from + to) / 2);
  const [pass] = passes.toSorted((a, b) => away(a) - away(b));
  return pass === undefined || Math.abs(pass.offset) < ON_LINE || pass.offset > 0 === (item.side === 'left');
}

const known = new WeakMap<PlanGround, ReadonlyMap<string, GroundPoint>>();

/** The map's points by id, listed once. */
function pointsOf(ground: PlanGround): ReadonlyMap<string, GroundPoint> {
  const listed = known.get(ground) ?? new Map(ground.ground.points.map((point) => [point.id, point]));
  known.set(ground, listed);
  return listed;
}
