/** Neighbouring stations of a race on opposite sides of the road, so near that runners weave across for both. */
import type { Side } from '../course/course.ts';
import type { Layout, StationLayout } from '../layout/layout.ts';
import type { PlanRace } from '../plan/plan.ts';
import { type Check, COMMON_PRACTICE, type Found, atStation, check, metres, named } from './check.ts';

interface Stop {
  readonly station: StationLayout;
  readonly measure: number;
  readonly side: Side;
}

interface Change {
  readonly race: PlanRace;
  readonly from: Stop;
  readonly to: Stop;
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
  return stops
    .slice(1)
    .map((to, k) => ({ race, from: stops[k]!, to }))
    .filter(
      ({ from, to }) => to.measure - from.measure < layout.plan.practice.minSpacing && from.station !== to.station,
    )
    .filter(({ from, to }) => from.side !== to.side && from.side !== 'unclear' && to.side !== 'unclear');
}

function foundOf({ race, from, to }: Change, { plan }: Layout): Found {
  const apart = to.measure - from.measure;
  const limit = plan.practice.minSpacing;
  const message = `${race.name}: ${named(from.station)} stands on the ${from.side}, ${named(to.station)}, ${metres(apart)} on, on the ${to.side}; expected one side for stations closer than ${metres(limit)}, since runners cross the road for both. Move one over, or move them apart.`;
  return {
    message,
    where: { ...atStation(to.station), race: race.id, course: race.course, measure: to.measure },
    measured: apart,
    limit,
    unit: 'm',
  };
}
