/** Features of GeoJSON as parts of the ground. Source: RFC 7946, sections 3.1 and 3.2. */
import { describe, expect, it } from 'vitest';
import { type FeatureFault, type FeatureParts, partsOf } from './feature.ts';

const QUAY = [
  [-17.4, -33.2],
  [-17.39, -33.2],
  [-17.38, -33.2],
];
const SQUARE = [
  [-17.4, -33.2],
  [-17.39, -33.2],
  [-17.39, -33.1],
  [-17.4, -33.2],
];
const ROAD = { highway: 'residential' };
const HOUSE = { building: 'yes' };
const parts = (properties: unknown, geometry: unknown, more: object = {}): FeatureParts | FeatureFault =>
  partsOf({ type: 'Feature', id: 7, properties, geometry, ...more }, 'feature/1');
const NONE = { ways: [], areas: [], points: [] };

describe('a feature', () => {
  it('is a way for each line of several, and an area for each polygon', () => {
    const lines = parts(ROAD, { type: 'MultiLineString', coordinates: [QUAY, QUAY.toReversed()] });
    expect(lines).toMatchObject({ ways: [{ id: 'way/7' }, { id: 'way/7' }], areas: [] });
    const houses = parts(HOUSE, { type: 'MultiPolygon', coordinates: [[SQUARE], [SQUARE]] });
    expect(houses).toMatchObject({ ways: [], areas: [{ rings: [{}] }, { rings: [{}] }] });
  });

  it('is nothing on the ground where it has no place, or is a heap of points or of geometries', () => {
    for (const geometry of [
      null,
      { type: 'MultiPoint', coordinates: QUAY },
      { type: 'GeometryCollection', geometries: [{ type: 'LineString', coordinates: QUAY }] },
    ])
      expect(parts(ROAD, geometry)).toEqual(NONE);
    expect(parts(null, { type: 'LineString', coordinates: QUAY })).toEqual(NONE);
  });

  it('has its nodes by number or by name, one for each position', () => {
    const nodesOf = (nodes: unknown): unknown => {
      const made = parts(ROAD, { type: 'LineString', coordinates: QUAY }, { nodes });
      return 'ways' in made ? made.ways[0]!.nodes : made;
    };
    expect(nodesOf([1, 'at/x', -3])).toEqual(['node/1', 'at/x', 'node/-3']);
    for (const wrong of ['', 1.5, 'x'.repeat(65), null, 2 ** 53])
      expect(nodesOf([1, wrong, 3])).toMatchObject({ problem: 'nodes' });
    expect(nodesOf([1, 2])).toEqual({ problem: 'nodes', found: { kind: 'list', count: 2 } });
  });

  it('wants a ring in a polygon, four positions in a ring, and the first one again at its end', () => {
    for (const rings of [[], [SQUARE.slice(1)], [[...QUAY, [-17.4, -33.1]]]])
      expect(parts(HOUSE, { type: 'Polygon', coordinates: rings })).toMatchObject({ problem: 'geometry' });
  });
});
