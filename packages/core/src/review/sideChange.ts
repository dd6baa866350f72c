/** Neighbouring stations of a race on opposite sides of the road, so near that runners weave across for both. */
import type { Side } from '../course/course.ts';
import type { DeclaredSide } from '../kinds.ts';
import type { Layout, StationLayout } from '../layout/layout.ts';
import type { PlanRace } from '../plan/plan.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, check } from './check.ts';
import { FACE_TO_FACE } from './legs.ts';

interface Stop<S extends Side = Side> {
  readonly station: StationLayout;
  readonly measure: number;
  readonly side: S;
}

interface Change {
  readonly race: PlanRace;
  readonly from: Stop<DeclaredSide>;
  readonly to: Stop<DeclaredSide>;
}

export const sideChange: Check = check(
  {
    code: 'side-change',
    severity: 'note',
    source: COMMON_PRACTICE,
  },
  (layout) => {
    const changes = layout.plan.races.flatMap((race) => changesOf(race, layout));
    // Races that share the road share the change.
    const isFirst = (change: Change, k: number): boolean =>
      changes.findIndex(({ from, to }) => from.station === change.from.station && to.station === change.to.station) ===
      k;
    return changes.filter(isFirst).map((change) => foundOf(change, layout));
  },
);

function stopsOf(race: string, { stations }: Layout): Stop[] {
  return stations
    .flatMap((station) =>
      station.passes.flatMap((pass, k) => {
        const side = station.directions.find(({ passes }) => passes.includes(k))?.side ?? 'unclear';
        return pass.served && pass.race === race ? [{ station, measure: pass.measure, side }] : [];
      }),
    )
    .sort((a, b) => a.measure - b.measure);
}

/** Neighbours in running order on different sides and too near; the same station passed twice is none. */
function changesOf(race: PlanRace, layout: Layout): Change[] {
  const stops = stopsOf(race.id, layout);
  return stops.slice(1).flatMap((to, k) => {
    const from = stops[k]!;
    const apart = to.measure - from.measure;
    // Stations face to face are one on each side, which has a finding of its own.
    if (apart >= layout.plan.practice.minSpacing || apart < FACE_TO_FACE || from.station === to.station) return [];
    return isClear(from) && isClear(to) && from.side !== to.side ? [{ race, from, to }] : [];
  });
}

const isClear = (stop: Stop): stop is Stop<DeclaredSide> => stop.side !== 'unclear';

function foundOf({ race, from, to }: Change, { plan }: Layout): Case<'side-change'> {
  const apart = to.measure - from.measure;
  const limit = plan.practice.minSpacing;
  return {
    params: { measured: apart, limit, race: race.id, before: from.station.id, beforeSide: from.side, side: to.side },
    where: { ...atStation(to.station), race: race.id, course: race.course, measure: to.measure },
    measured: apart,
    limit,
    unit: 'm',
  };
}
