/** Streets of a station and its items: the plan's own words first, else by its map. */
import type { StreetPlace } from '../ground/along.ts';
import { streetPlace } from '../ground/streetPlace.ts';
import type { PlanGround } from '../ground/planGround.ts';
import type { Item, LaidDirection, StationLayout, ToldPlace } from './layout.ts';

/** The same station where neither the plan nor a map has a street. */
export function withStreets(laid: StationLayout, ground: PlanGround | undefined): StationLayout {
  const street = streetOf(laid, ground);
  if (ground === undefined) return street === null ? laid : { ...laid, street };
  const directions = laid.directions.map((direction) => withItemStreets(direction, ground));
  return { ...laid, directions, ...(street === null ? {} : { street }) };
}

function streetOf({ station, directions }: StationLayout, ground: PlanGround | undefined): ToldPlace | null {
  const own = station.street?.trim() ?? '';
  if (own !== '') return { street: own, after: null, before: null, by: 'plan' };
  const [lead] = directions;
  const place = lead === undefined ? null : placeAt(ground, lead.course, lead.measure);
  return place === null ? null : { ...place, by: 'map' };
}

function placeAt(ground: PlanGround | undefined, course: string, measure: number): StreetPlace | null {
  const along = ground?.along.get(course);
  const place = along === undefined ? null : streetPlace(along, measure);
  return place?.street === null ? null : place;
}

function withItemStreets(direction: LaidDirection, ground: PlanGround): LaidDirection {
  const items = direction.items.map((item): Item => {
    const street = placeAt(ground, direction.course, item.from);
    return street === null ? item : { ...item, street };
  });
  return { ...direction, items };
}
