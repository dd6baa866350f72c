/**
 * From OpenStreetMap's nodes, ways and relations, in any order, to what lies beside the courses. Of what lies elsewhere only the
 * compact columns of `nodeIndex.ts` and `wayStore.ts` are kept; what names elements that have not come yet waits with its tags.
 */
import { clippedArea, partOf, runsBeside } from './clip.ts';
import { type Corridor, holds } from './corridor.ts';
import type { GroundArea, GroundLine, GroundPoint, GroundWay, Tags } from './ground.ts';
import { areasOf, type Multipolygon } from './multipolygon.ts';
import { isSurface, isWantedLine, isWantedPoint } from './kept.ts';
import { type NodeIndex, createNodeIndex } from './nodeIndex.ts';
import { turnedRings } from './rings.ts';
import { type WayStore, createWayStore } from './wayStore.ts';

/** What a file holds. */
export interface ElementCounts {
  nodes: number;
  ways: number;
  relations: number;
  /** Ways and relations that have the tag `building`. */
  buildings: number;
}

/** What of it could not be used whole. */
export interface SkippedCounts {
  /** Relations that are no multipolygons: bus lines, turn restrictions, boundaries. */
  relations: number;
  /** Ways by a course that name nodes which the file does not hold; what is left of them is kept. */
  cutWays: number;
  /** Multipolygons that do not close, mostly since the file does not hold all their ways. */
  openAreas: number;
}

interface WaitingWay {
  readonly id: number;
  readonly tags: Tags;
}

/** All that one reading of nodes, ways and relations keeps; `createAssembly` makes it. */
export interface Assembly {
  readonly corridor: Corridor;
  readonly nodes: NodeIndex;
  readonly store: WayStore;
  readonly counts: ElementCounts;
  readonly skipped: SkippedCounts;
  readonly ways: GroundWay[];
  readonly areas: GroundArea[];
  readonly points: GroundPoint[];
  readonly waitingWays: WaitingWay[];
  readonly waitingAreas: Multipolygon[];
}

export const createAssembly = (corridor: Corridor): Assembly => ({
  corridor,
  nodes: createNodeIndex(),
  store: createWayStore(),
  counts: { nodes: 0, ways: 0, relations: 0, buildings: 0 },
  skipped: { relations: 0, cutWays: 0, openAreas: 0 },
  ways: [],
  areas: [],
  points: [],
  waitingWays: [],
  waitingAreas: [],
});

/** Takes a node; `lon`, `lat`: whole numbers of 1e-7 of a degree. */
export function takeNode(assembly: Assembly, id: number, lon: number, lat: number, tags: Tags | null): void {
  assembly.counts.nodes++;
  assembly.nodes.add(id, lon, lat);
  if (tags === null || !isWantedPoint(tags) || !holds(assembly.corridor, lon / 1e7, lat / 1e7)) return;
  assembly.points.push({ id: `node/${id}`, tags, lon: lon / 1e7, lat: lat / 1e7 });
}

/** Takes a way by the ids of its nodes. */
export function takeWay(assembly: Assembly, id: number, refs: readonly number[], tags: Tags | null): void {
  assembly.counts.ways++;
  if (tags?.['building'] !== undefined) assembly.counts.buildings++;
  assembly.store.add(id, refs);
  if (tags === null || !(isWantedLine(tags) || (isSurface(tags) && isRing(refs)))) return;
  // While the nodes are in order, looking one up costs no sorting.
  const line = assembly.nodes.ordered() ? lineOf(assembly.nodes, refs) : null;
  if (line === null) assembly.waitingWays.push({ id, tags });
  else addWay(assembly, id, refs, line, tags);
}

const isRing = (refs: readonly number[]): boolean => refs.length >= 4 && refs[0] === refs.at(-1);

/** Takes a multipolygon; `tags`: its own, empty where those of its outer way count. */
export function takeMultipolygon(assembly: Assembly, multipolygon: Multipolygon): void {
  if (multipolygon.tags['building'] !== undefined) assembly.counts.buildings++;
  assembly.waitingAreas.push(multipolygon);
}

/** Positions of nodes in order, `null` where the file has not all of them. */
export function lineOf(nodes: NodeIndex, refs: readonly number[]): GroundLine | null {
  const lon = new Float64Array(refs.length);
  const lat = new Float64Array(refs.length);
  for (let k = 0; k < refs.length; k++) {
    const slot = nodes.find(refs[k]!);
    if (slot < 0) return null;
    lon[k] = nodes.lon(slot) / 1e7;
    lat[k] = nodes.lat(slot) / 1e7;
  }
  return { lon, lat };
}

function addWay(assembly: Assembly, id: number, refs: readonly number[], line: GroundLine, tags: Tags): void {
  const { corridor, ways, areas } = assembly;
  const name = `way/${id}`;
  if (isRing(refs) && isSurface(tags)) {
    areas.push(...clippedArea({ id: name, tags, rings: turnedRings([line]) }, corridor));
    return;
  }
  if (!isWantedLine(tags)) return;
  for (const run of runsBeside(line, corridor)) {
    const nodes = refs.slice(run.first, run.last + 1).map((ref) => `node/${ref}`);
    ways.push({ id: name, tags, nodes, ...partOf(line, run) });
  }
}

/** The parts of a way between nodes that the file does not hold. */
function addBrokenWay(assembly: Assembly, id: number, refs: readonly number[], tags: Tags): void {
  const before = assembly.ways.length;
  let part: number[] = [];
  for (const ref of [...refs, NaN]) {
    if (assembly.nodes.find(ref) >= 0) part.push(ref);
    else {
      // An open part of what should be a surface bounds nothing.
      if (part.length >= 2 && isWantedLine(tags)) addWay(assembly, id, part, lineOf(assembly.nodes, part)!, tags);
      part = [];
    }
  }
  if (assembly.ways.length > before) assembly.skipped.cutWays++;
}

/** Goes through what has waited for all elements to come. */
export function finishAssembly(assembly: Assembly): void {
  const { waitingWays, waitingAreas, store, nodes, corridor, areas, skipped } = assembly;
  for (const { id, tags } of waitingWays) {
    const refs = store.get(id)!;
    const line = lineOf(nodes, refs);
    if (line === null) addBrokenWay(assembly, id, refs, tags);
    else addWay(assembly, id, refs, line, tags);
  }
  const places = new Map(areas.map(({ id }, k) => [id, k]));
  for (const multipolygon of waitingAreas) {
    const made = areasOf(multipolygon, { store, line: (refs) => lineOf(nodes, refs), areas, places });
    if (made === 'open') skipped.openAreas++;
    else for (const area of made) areas.push(...clippedArea(area, corridor));
  }
}
