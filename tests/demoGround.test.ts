/** The demo's street map: it is one network, the courses lie on it, and the stations stand clear of what it knows. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { distance, point } from '@turf/turf';
import type { Feature, FeatureCollection, LineString, Polygon, Position } from 'geojson';
import { describe, expect, it } from 'vitest';
import { groundText } from '../packages/core/src/ground/groundText.ts';
import { readGround } from '../packages/core/src/ground/readGround.ts';
import { layoutPlan } from '../packages/core/src/whole.ts';
import { valueOf } from '../packages/core/src/testing/courses.ts';
import { ROOT } from './support/build.ts';

const text = (name: string): string => readFileSync(join(ROOT, 'fixtures/demo', name), 'utf8');
type Thing = Feature & { readonly nodes?: readonly number[] };
const map = JSON.parse(text('ground.geojson')) as FeatureCollection & { readonly features: readonly Thing[] };
const isLine = (one: Thing): one is Feature<LineString> & { readonly nodes: readonly number[] } =>
  one.geometry.type === 'LineString';
const isArea = (one: Thing): one is Feature<Polygon> => one.geometry.type === 'Polygon';
const ways = map.features.filter(isLine);
const roads = ways.filter(({ properties }) => properties?.['highway'] !== undefined);
const houses = map.features.filter(isArea).filter(({ properties }) => properties?.['building'] !== undefined);
const singles = map.features.filter(({ geometry }) => geometry.type === 'Point');

const metres = 111_195;
const flat = ([lon, lat]: Position): [number, number] => [
  lon! * metres * Math.cos((33.2 * Math.PI) / 180),
  lat! * metres,
];
function toSegment(place: Position, from: Position, to: Position): number {
  const [p, a, b] = [flat(place), flat(from), flat(to)];
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const t = Math.max(0, Math.min(1, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy);
}
const toLine = (place: Position, line: readonly Position[]): number =>
  line.slice(1).reduce((least, to, k) => Math.min(least, toSegment(place, line[k]!, to)), Infinity);
const courseOf = (name: string): Position[] =>
  [...text(name).matchAll(/<trkpt lat="([^"]+)" lon="([^"]+)">/g)].map((m) => [Number(m[2]), Number(m[1])]);
const far = (a: Position, b: Position): number => distance(point(a), point(b), { units: 'meters' });

const laid = valueOf(
  layoutPlan({ plan: text('plan.json'), files: { 'full.gpx': text('full.gpx'), 'half.gpx': text('half.gpx') } }),
);
const stands = laid.layout.stations
  .flatMap(({ directions }) => directions.flatMap(({ items }) => items))
  .flatMap(({ at }) => at.map((end) => [...end!]));

/** Whether two segments cross. */
function cross(a: Position, b: Position, c: Position, d: Position): boolean {
  const side = (p: Position, q: Position, r: Position): number =>
    Math.sign((q[0]! - p[0]!) * (r[1]! - p[1]!) - (q[1]! - p[1]!) * (r[0]! - p[0]!));
  return side(a, b, c) !== side(a, b, d) && side(c, d, a) !== side(c, d, b);
}

describe("the demo's street map", () => {
  it('is at most 350 kB and says whom it credits and of which day it is', () => {
    expect(Buffer.byteLength(text('ground.geojson'))).toBeLessThan(350_000);
    expect(map).toMatchObject({ attribution: 'Invented for Halfcup', licence: 'CC0 1.0', date: '2027-06-01' });
  });

  it('has the very bytes that Halfcup writes of it', () => {
    const written = groundText(valueOf(readGround(text('ground.geojson'), 'ground.geojson'))).split('\n');
    const lines = text('ground.geojson').split('\n');
    expect(written).toHaveLength(lines.length);
    expect(lines.filter((line, k) => line !== written[k]).slice(0, 1)).toEqual([]);
  });

  it('has each node at one place, and no two nodes there', () => {
    const places = new Map<number, string>();
    const nodes = new Map<string, number>();
    for (const way of ways) {
      expect(way.nodes).toHaveLength(way.geometry.coordinates.length);
      for (const [k, node] of way.nodes.entries()) {
        const at = String(way.geometry.coordinates[k]);
        expect([places.get(node) ?? at, nodes.get(at) ?? node]).toEqual([at, node]);
        places.set(node, at);
        nodes.set(at, node);
      }
    }
  });

  it.each(['full.gpx', 'half.gpx'])('has a street under every point of %s, to half a metre', (name) => {
    const off = courseOf(name).map((at) => Math.min(...roads.map((way) => toLine(at, way.geometry.coordinates))));
    expect(Math.max(...off)).toBeLessThan(0.5);
  });

  it('joins Hill Road and Strand Road in one node, past the tables there', () => {
    const nodesOf = (name: string): number[] =>
      roads.filter(({ properties }) => properties?.['name'] === name).flatMap(({ nodes }) => [...nodes]);
    const strand = new Set(nodesOf('Strand Road'));
    expect(nodesOf('Hill Road').filter((node) => strand.has(node))).toHaveLength(1);
  });

  it('knows what a plan has to keep clear of, each on a node of a way or beside it', () => {
    const tags = new Set(
      map.features.flatMap(({ properties }) =>
        Object.entries(properties ?? {}).map(([key, value]) => `${key}=${value}`),
      ),
    );
    for (const tag of [
      'bridge=yes',
      'highway=steps',
      'railway=level_crossing',
      'railway=narrow_gauge',
      'highway=bus_stop',
      'highway=crossing',
      'highway=traffic_signals',
      'emergency=fire_hydrant',
      'amenity=fire_station',
      'amenity=hospital',
      'leisure=park',
      'natural=water',
    ])
      expect([...tags]).toContain(tag);
  });

  it('has no house in a road', () => {
    const near = houses.map(({ geometry }) =>
      Math.min(
        ...geometry.coordinates[0]!.map((at) => Math.min(...roads.map((way) => toLine(at, way.geometry.coordinates)))),
      ),
    );
    expect(houses.length).toBeGreaterThan(900);
    expect(Math.min(...near)).toBeGreaterThan(5);
  });
});

describe("the demo's stations on the street map", () => {
  it('stand 10 m and more from junctions and 15 m from hydrants and bus stops', () => {
    const uses = new Map<number, number>();
    for (const { nodes } of roads) for (const node of new Set(nodes)) uses.set(node, (uses.get(node) ?? 0) + 1);
    const junctions = roads.flatMap(({ nodes, geometry }) =>
      nodes.flatMap((node, k) => (uses.get(node)! > 1 ? [geometry.coordinates[k]!] : [])),
    );
    const least = (places: readonly Position[]): number =>
      Math.min(...stands.flatMap((at) => places.map((place) => far(at, place))));
    expect(stands.length).toBeGreaterThan(30);
    expect(least(junctions)).toBeGreaterThan(10);
    expect(least(singles.map(({ geometry }) => (geometry as { coordinates: Position }).coordinates))).toBeGreaterThan(
      15,
    );
  });

  it('have no house between sign and first table', () => {
    for (const { directions, station } of laid.layout.stations)
      for (const { items } of directions) {
        const sign = items.find(({ kind }) => kind === 'sign')!.at[0]!;
        const table = items.find(({ kind }) => kind !== 'sign')!.at[0]!;
        const inTheWay = houses.filter(({ geometry }) =>
          geometry.coordinates[0]!.slice(1).some((to, k) =>
            cross([...sign], [...table], geometry.coordinates[0]![k]!, to),
          ),
        );
        expect([station.id, inTheWay.length]).toEqual([station.id, 0]);
      }
  });
});
