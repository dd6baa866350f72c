/** Single geometries as GeoJSON. Source: RFC 7946, sections 3.1.6 (rings) and 3.1.9 (antimeridian). */
import type { MultiPolygon, Polygon, Position } from 'geojson';
import { describe, expect, it } from 'vitest';
import type { LonLat } from '../finding.ts';
import { ORIGIN, courseOfSegments, courseThrough, from } from '../testing/courses.ts';
import { courseToGeoJson, polygonsToGeoJson } from './geojsonOf.ts';

/** Twice the area of a ring, positive where it runs counterclockwise. */
const area = (ring: readonly Position[]): number =>
  ring.slice(1).reduce((sum, [x, y], k) => sum + ring[k]![0]! * y! - x! * ring[k]![1]!, 0);
const box = ([west, east]: readonly [number, number], south: number, north: number): LonLat[] => [
  [west, south],
  [east, south],
  [east, north],
  [west, north],
];
const geometryOf = (polygon: readonly LonLat[]): Polygon | MultiPolygon =>
  polygonsToGeoJson([{ name: 'Yard', polygon }]).features[0]!.geometry;

describe('a course as GeoJSON', () => {
  it('is one line, or as many as it has runs between skipped gaps', () => {
    const run = (metres: number): LonLat[] => [from(ORIGIN, 90, metres), from(ORIGIN, 90, metres + 400)];
    const whole = courseToGeoJson(courseThrough(run(0), 'pier'));
    expect(whole).toMatchObject({ geometry: { type: 'LineString' }, properties: { course: 'pier', name: 'pier' } });
    expect(whole.properties.length).toBeCloseTo(400, 3);
    const { geometry } = courseToGeoJson(courseOfSegments([run(0), run(600)], 'skip'));
    expect([geometry.type, geometry.coordinates.length]).toEqual(['MultiLineString', 2]);
  });

  it('is cut where it crosses 180°', () => {
    const { geometry } = courseToGeoJson(courseThrough([from([180, -17], 270, 300), from([180, -17], 90, 300)]));
    expect(geometry.type).toBe('MultiLineString');
    const [west, east] = geometry.coordinates as Position[][];
    expect([west!.at(-1)![0], east![0]![0]]).toEqual([180, -180]);
  });
});

describe('a polygon as GeoJSON', () => {
  it('is closed and runs counterclockwise, however it was drawn', () => {
    for (const polygon of [box([-17.4, -17.3], -33.2, -33.1), box([-17.4, -17.3], -33.2, -33.1).toReversed()]) {
      const { type, coordinates } = geometryOf(polygon);
      const [ring] = coordinates as Position[][];
      expect([type, ring!.length, ring!.at(-1)]).toEqual(['Polygon', 5, ring![0]]);
      expect(area(ring!)).toBeGreaterThan(0);
    }
  });

  it('that crosses 180° is one polygon on each side of it, together as large', () => {
    const eastward = box([179.9, -179.8], -17, -16.9);
    const rotated = [...eastward.slice(1), eastward[0]!];
    for (const polygon of [eastward, rotated, eastward.toReversed(), rotated.toReversed()]) {
      const geometry = geometryOf(polygon);
      expect(geometry.type).toBe('MultiPolygon');
      const parts = (geometry as MultiPolygon).coordinates.map(([ring]) => {
        const lons = ring!.map(([lon]) => lon!);
        expect(area(ring!)).toBeGreaterThan(0);
        expect(ring!.at(-1)).toEqual(ring![0]);
        return [Math.min(...lons), Math.max(...lons), area(ring!) / 2];
      });
      expect(parts.toSorted(([a], [b]) => a! - b!)).toEqual([
        [-180, expect.closeTo(-179.8, 8), expect.closeTo(0.02, 8)],
        [expect.closeTo(179.9, 8), 180, expect.closeTo(0.01, 8)],
      ]);
    }
  });
});
