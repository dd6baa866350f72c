/**
 * Multipolygon relations as areas: outer ways joined into rings, each with the inner rings that lie in it.
 * Source: OpenStreetMap wiki, "Relation:multipolygon", with its old style, where the outer way has the tags.
 */
import type { GroundArea, GroundLine, Tags } from './ground.ts';
import { joinRings } from './joinRings.ts';
import { isWantedArea } from './kept.ts';
import { isInside, turnedRings } from './rings.ts';
import type { WayStore } from './wayStore.ts';

/** A relation by the ids of its ways. */
export interface Multipolygon {
  readonly id: number;
  readonly outer: readonly number[];
  readonly inner: readonly number[];
  readonly tags: Tags;
}

interface Sources {
  readonly store: WayStore;
  /** Positions of nodes, `null` where some are not known. */
  readonly line: (refs: readonly number[]) => GroundLine | null;
  /** Areas so far, of which those of old-style outer ways get their holes, and where each of an id stands in them. */
  readonly areas: GroundArea[];
  readonly places: ReadonlyMap<string, number>;
}

/** The relation's areas, one for each outer ring; `open` where its ways do not close. */
export function areasOf({ id, outer, inner, tags }: Multipolygon, sources: Sources): readonly GroundArea[] | 'open' {
  const holes = ringsOf(inner, sources) ?? [];
  if (!isWantedArea(tags)) {
    for (const way of outer) addHoles(`way/${way}`, holes, sources);
    return [];
  }
  const rings = ringsOf(outer, sources);
  if (rings === null) return 'open';
  return rings.map((ring) => ({
    id: `relation/${id}`,
    tags,
    rings: turnedRings([ring, ...holes.filter((hole) => isInside(ring, ...insideOf(hole)))]),
  }));
}

/** The middle of a ring's corners: a corner itself may lie on the ring around it. */
const insideOf = ({ lon, lat }: GroundLine): readonly [number, number] => {
  const last = lon.length - 1;
  const mean = (values: Float64Array): number => values.subarray(0, last).reduce((sum, x) => sum + x, 0) / last;
  return [mean(lon), mean(lat)];
};

function ringsOf(ways: readonly number[], { store, line }: Sources): readonly GroundLine[] | null {
  const lists = ways.map((way) => store.get(way));
  if (lists.length === 0 || lists.includes(null)) return null;
  const rings = joinRings(lists as number[][]);
  const lines = rings?.map(line);
  return lines === undefined || lines.includes(null) ? null : (lines as GroundLine[]);
}

function addHoles(id: string, holes: readonly GroundLine[], { areas, places }: Sources): void {
  const at = places.get(id);
  if (holes.length === 0 || at === undefined) return;
  const area = areas[at]!;
  const [ring] = area.rings;
  const own = holes.filter((hole) => isInside(ring!, ...insideOf(hole)));
  areas[at] = { ...area, rings: turnedRings([...area.rings, ...own]) };
}
