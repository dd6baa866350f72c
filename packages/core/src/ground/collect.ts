/** Gathers the parts of features, names nodes that a file does not name, and says what is left out. */
import type { Finding } from '../finding.ts';
import type { GroundParams } from '../text/params/ground.ts';
import type { FeatureParts, FeatureWay } from './feature.ts';
import type { Ground, GroundArea, GroundPoint, GroundSource, GroundWay } from './ground.ts';
import { groundFinding } from './groundFinding.ts';

/** Of faults of single elements so many are listed, the rest counted. */
const LISTED = 20;

/** Elements that are left out: the first ones as warnings, then how many more. */
export interface LeftOut {
  readonly report: (
    params: GroundParams['ground-element'],
    place: { readonly line?: number; readonly column?: number },
  ) => void;
  readonly count: () => number;
  readonly findings: () => readonly Finding[];
}

export function createLeftOut(file: string): LeftOut {
  const kept: Finding[] = [];
  let all = 0;
  return {
    report: (params, place) => {
      all++;
      if (all > LISTED) return;
      kept.push(groundFinding('ground-element', params, { severity: 'warning', where: { file, ...place } }));
    },
    count: () => all,
    findings: () => {
      if (all <= LISTED) return kept;
      const params = { more: all - LISTED, all };
      return [...kept, groundFinding('ground-element', params, { severity: 'warning', where: { file } })];
    },
  };
}

/** A node by its position, where a file does not name it. */
const placeName = (lon: number, lat: number): string => `at/${lon.toFixed(7)},${lat.toFixed(7)}`;

/** The parts of all features of a file, kept in its order. */
export interface Collection {
  readonly add: (parts: FeatureParts) => void;
  /** Ways, areas and points together. */
  readonly size: () => number;
  readonly ground: (source: GroundSource) => Ground;
}

export function createCollection(): Collection {
  const ways: FeatureWay[] = [];
  const areas: GroundArea[] = [];
  const points: FeatureParts['points'][number][] = [];

  const ground = (source: GroundSource): Ground => {
    const named = points.map((point): GroundPoint => ({ ...point, id: point.id ?? placeName(point.lon, point.lat) }));
    const byPlace = new Map(named.map(({ id, lon, lat }) => [placeName(lon, lat), id]));
    const nodesOf = ({ lon, lat }: FeatureWay): readonly string[] =>
      Array.from(lon, (x, k) => {
        const name = placeName(x, lat[k]!);
        return byPlace.get(name) ?? name;
      });
    return {
      source,
      ways: ways.map((way): GroundWay => ({ ...way, nodes: way.nodes ?? nodesOf(way) })),
      areas,
      points: named,
    };
  };

  return {
    add: (parts) => {
      // One by one: a thing may have more parts than a call takes arguments.
      for (const way of parts.ways) ways.push(way);
      for (const area of parts.areas) areas.push(area);
      for (const point of parts.points) points.push(point);
    },
    size: () => ways.length + areas.length + points.length,
    ground,
  };
}
