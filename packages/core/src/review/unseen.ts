/**
 * Buildings that hide the sign from those who come to it, or the tables from the sign, by the map: outlines at eye height, on the
 * flat; walls, hedges, parked vans and crowds are not known.
 */
import { pointAt } from '../course/locate.ts';
import type { LonLat } from '../finding.ts';
import { type Buildings, buildingsIn } from '../ground/buildings.ts';
import { sightBlocked } from '../ground/sightBlocked.ts';
import { type Item, type LaidDirection, isTable } from '../layout/layout.ts';
import { itemOf } from '../plan/lookups.ts';
import { dayOfMap, noMap } from './byMap.ts';
import { type Check, COMMON_PRACTICE, type Ground, type RuleOf, atStation, stationCheck } from './check.ts';
import { hasBuildings } from './mapItself.ts';
import { courseOf } from './standing.ts';

/** Course before the sign over which runners read it, metres. */
const READ = 30;

type Missing = NonNullable<RuleOf<'sign-unseen'>['missing']>;

const noBuildings: Missing = (layout) => noMap(layout) ?? (hasBuildings(layout.ground!) ? null : 'no-buildings');

/** Where runners are at a measure of a direction's course. */
const runnersAt = (ground: Ground, { course }: LaidDirection, measure: number): LonLat | null =>
  pointAt(courseOf(ground, course).course, measure)?.at ?? null;

/** A building this near, metres, tells that the map has the buildings here. */
const NEAR = 100;

/** Whether a building stands between two places; `null` where the map has none around them, or one of them is none. */
function hidden({ ground }: Ground, from: LonLat | null, to: LonLat | null): boolean | null {
  if (ground === undefined || from === null || to === null || !hasNear(ground.buildings, from)) return null;
  return sightBlocked(from, to, ground.buildings) !== null;
}

/** Degrees of latitude, metres. */
const DEGREE = 111_000;

function hasNear(buildings: Buildings, [lon, lat]: LonLat): boolean {
  const [x, y] = [NEAR / (DEGREE * Math.cos((lat * Math.PI) / 180)), NEAR / DEGREE];
  return buildingsIn(buildings, [lon - x, lat - y, lon + x, lat + y]).length > 0;
}

/** Whether a building hides the first table from those at the sign. */
export function tablesBehind(direction: LaidDirection, sign: Item, first: Item, ground: Ground): boolean | null {
  return ground.ground === undefined ? null : hidden(ground, runnersAt(ground, direction, sign.from), first.at[0]);
}

export const signUnseen: Check = stationCheck(
  { code: 'sign-unseen', severity: 'warning', source: COMMON_PRACTICE, missing: noBuildings },
  (station, ground) =>
    (ground.ground === undefined ? [] : station.directions).flatMap((direction) => {
      const sign = itemOf(direction, 'sign');
      const at = sign?.at[0] ?? null;
      if (sign === undefined || hidden(ground, runnersAt(ground, direction, sign.from - READ), at) !== true) return [];
      return [
        {
          params: { map: dayOfMap(ground.ground!), within: READ },
          where: {
            ...atStation(station, sign.byHand === true ? 'items/sign' : ''),
            course: direction.course,
            item: 'sign' as const,
            measure: sign.from,
            at: at!,
          },
        },
      ];
    }),
);

export const tablesUnseen: Check = stationCheck(
  { code: 'tables-unseen', severity: 'note', source: COMMON_PRACTICE, missing: noBuildings },
  (station, ground) =>
    (ground.ground === undefined ? [] : station.directions).flatMap((direction) => {
      const sign = itemOf(direction, 'sign');
      const first = direction.items.find(isTable);
      if (sign === undefined || first === undefined || first.from <= sign.from) return [];
      if (tablesBehind(direction, sign, first, ground) !== true) return [];
      return [
        {
          params: { map: dayOfMap(ground.ground!), distance: first.from - sign.from },
          where: { ...atStation(station), course: direction.course, item: 'sign' as const, measure: sign.from },
        },
      ];
    }),
);
