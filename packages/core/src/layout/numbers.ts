/** The numbers by which people call the stations: along the course, or as the plan keeps them. */
import type { Plan } from '../plan/plan.ts';
import type { StationLayout } from './layout.ts';

/** A place among all stations: by which race of the plan it is reached, and how far along it. */
type Reached = readonly [race: number, measure: number];

/** The first time that the first race of the plan which is served there comes past. */
function reached(plan: Plan, { passes }: Pick<StationLayout, 'passes'>): Reached {
  for (const [race, { id }] of plan.races.entries()) {
    const served = passes.filter((pass) => pass.served && pass.race === id);
    if (served.length > 0) return [race, Math.min(...served.map(({ measure }) => measure))];
  }
  return [plan.races.length, 0];
}

/** In the order in which the plan's first race reaches them; then those of the next race alone, and so on. Of the same place, as in the plan. */
export function alongTheCourse<S extends Pick<StationLayout, 'passes'>>(
  plan: Plan,
  stations: readonly S[],
): readonly S[] {
  return stations
    .map((station) => ({ station, at: reached(plan, station) }))
    .toSorted((a, b) => a.at[0] - b.at[0] || a.at[1] - b.at[1])
    .map(({ station }) => station);
}

/** A number for each station, from 1: those that the plan keeps, and after them the others along the course. */
export function numbered(plan: Plan, stations: readonly StationLayout[]): readonly StationLayout[] {
  const kept = plan.numbers ?? {};
  const numbers = new Map(
    stations.flatMap(({ id }): [string, number][] => (Object.hasOwn(kept, id) ? [[id, kept[id]!]] : [])),
  );
  let next = Math.max(0, ...numbers.values());
  for (const { id } of alongTheCourse(plan, stations)) if (!numbers.has(id)) numbers.set(id, ++next);
  return stations.map((station) => {
    const number = numbers.get(station.id)!;
    return station.number === number ? station : { ...station, number };
  });
}
