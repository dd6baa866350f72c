/** The layout as GeoJSON: RFC 7946 and what a map needs, read by Turf and against the layout itself. */
import { bboxPolygon, booleanPointInPolygon, coordEach } from '@turf/turf';
import type { Feature, FeatureCollection, LineString, MultiLineString, Point } from 'geojson';
import { describe, expect, it } from 'vitest';
import { ROOT } from './support/build.ts';
import { OCEAN, type Position, geodesicLength, go, gpxText, planText, straight } from './support/courses.ts';
import { documentIn, folderWith, halfcupIn } from './support/halfcup.ts';

const geoJsonIn = async (folder: string, plan: string): Promise<FeatureCollection> =>
  JSON.parse((await halfcupIn(folder, 'export', plan, '--to', 'geojson')).out) as FeatureCollection;
const ofKind = <G extends Feature['geometry']>(collection: FeatureCollection, kind: string): Feature<G>[] =>
  collection.features.filter(({ properties }) => properties?.['kind'] === kind) as Feature<G>[];

/** A right-hand bend of 40 m radius between two straights, so that items do not lie on one line. */
const CORNER = go(OCEAN, 90, 1500);
const CENTRE = go(CORNER, 180, 40);
const bend = Array.from({ length: 9 }, (_, k) => go(CENTRE, (k + 1) * 10, 40));
const points = [...straight(OCEAN, 90, 16, 100), ...bend, ...straight(go(bend.at(-1)!, 180, 10), 180, 20, 100)];
const folder = folderWith({
  'c.gpx': gpxText([points]),
  'p.json': planText([
    {
      id: 's1',
      name: 'Bend',
      on: { course: 'c', measure: 1490, side: 'left' },
      tables: { water: 20 },
      points: [{ kind: 'drop', at: go(points[14]!, 0, 30) }],
    },
    { id: 's2', on: { course: 'c', measure: 50, side: 'right' } },
  ]),
});

describe('halfcup export --to geojson', () => {
  it('gives courses, stations, directions, items and boxes with plain names', async () => {
    const collection = await geoJsonIn(ROOT, 'fixtures/demo/plan.json');
    const layout = (await documentIn(ROOT, 'layout', 'fixtures/demo/plan.json')) as {
      courses: object[];
      stations: { directions: { lead: boolean; items: { kind: string; boxes?: object[] }[] }[] }[];
    };
    const directions = layout.stations.flatMap((station) => station.directions);
    const items = directions.flatMap((direction) => direction.items);
    const count = (kind: string): number => ofKind(collection, kind).length;
    expect(collection.type).toBe('FeatureCollection');
    expect(count('course')).toBe(layout.courses.length);
    expect(count('station')).toBe(layout.stations.length);
    expect(count('direction')).toBe(directions.length);
    for (const kind of ['sign', 'trash']) expect(count(kind)).toBe(items.filter((item) => item.kind === kind).length);
    expect(count('box')).toBe(items.reduce((sum, item) => sum + (item.boxes?.length ?? 0), 0));
    expect(new Set(collection.features.map(({ id }) => id)).size).toBe(collection.features.length);
    expect(ofKind(collection, 'sign')[0]!.properties).toMatchObject({
      station: 's1',
      name: 'Strand Road',
      race: 'm',
      side: 'left',
      wording: 'Water ahead',
    });
  });

  it('keeps positions to eight decimals, within its own box', async () => {
    const collection = await geoJsonIn(folder, 'p.json');
    const box = bboxPolygon(collection.bbox!);
    let seen = 0;
    coordEach(collection, (position) => {
      seen++;
      for (const degrees of position) expect(String(degrees)).toMatch(/^-?\d+(\.\d{1,8})?$/u);
      // Items stand some metres off the course: the box is of courses and pins.
      const [lon, lat] = position as [number, number];
      const near = [
        [lon, lat],
        go([lon, lat], 0, 30),
        go([lon, lat], 90, 30),
        go([lon, lat], 180, 30),
        go([lon, lat], 270, 30),
      ];
      expect(near.some((one) => booleanPointInPolygon([...one], box))).toBe(true);
    });
    expect(seen).toBeGreaterThan(points.length);
  });

  it('draws tables along the bend, one offset from the course', async () => {
    const water = ofKind<LineString>(await geoJsonIn(folder, 'p.json'), 'water').find(
      ({ properties }) => properties?.['station'] === 's1',
    );
    const line = water!.geometry.coordinates as unknown as Position[];
    expect(line.length).toBeGreaterThan(4);
    for (const one of line) {
      const nearest = Math.min(...points.map((point) => geodesicLength(point, one)));
      expect(nearest).toBeGreaterThan(3.9);
      expect(nearest).toBeLessThan(8);
    }
  });

  it('puts a sign where the layout has it, and gives one without a place no geometry', async () => {
    const collection = await geoJsonIn(folder, 'p.json');
    const { stations } = (await documentIn(folder, 'layout', 'p.json')) as {
      stations: { id: string; directions: { items: { kind: string; at: Position[] }[] }[] }[];
    };
    const truth = stations[0]!.directions[0]!.items.find(({ kind }) => kind === 'sign')!.at[0]!;
    const [placed, lost] = ofKind<Point>(collection, 'sign');
    expect(geodesicLength(truth, placed!.geometry.coordinates as unknown as Position)).toBeLessThan(0.002);
    expect(lost!.geometry).toBeNull();
    expect(lost!.properties).toMatchObject({ station: 's2', measure: expect.closeTo(-41.44, 5) as number });
  });

  it("carries the station's further points", async () => {
    expect(
      ofKind<Point>(await geoJsonIn(folder, 'p.json'), 'drop').map(({ properties }) => properties?.['station']),
    ).toEqual(['s1']);
  });

  it('cuts a course at the antimeridian, and lets its box run across (RFC 7946, sections 3.1.9 and 5.2)', async () => {
    const start: Position = [179.99, -17];
    const across = straight(start, 90, 40, 100);
    const there = folderWith({
      'c.gpx': gpxText([across]),
      'p.json': planText([{ id: 's1', on: { course: 'c', measure: 1060, side: 'left' }, tables: { water: 30 } }]),
    });
    const collection = await geoJsonIn(there, 'p.json');
    const [course] = ofKind<MultiLineString>(collection, 'course');
    expect(course!.geometry.type).toBe('MultiLineString');
    const [west, east] = course!.geometry.coordinates as unknown as [Position[], Position[]];
    expect([west.at(-1)![0], east[0]![0]]).toEqual([180, -180]);
    expect(west.at(-1)![1]).toBe(east[0]![1]);
    expect(west.length + east.length).toBe(across.length + 2);
    const length = [west, east].reduce(
      (sum, piece) => sum + piece.slice(1).reduce((part, one, k) => part + geodesicLength(piece[k]!, one), 0),
      0,
    );
    expect(length).toBeCloseTo(3900, 2);
    expect(collection.bbox![0]).toBeGreaterThan(collection.bbox![2]);
    coordEach(collection, ([lon]) => expect(Math.abs(lon!)).toBeLessThanOrEqual(180));
  });

  it('does not draw over a gap that the plan skips', async () => {
    const line = straight(OCEAN, 90, 40, 50);
    const gap = folderWith({
      'c.gpx': gpxText([line.slice(0, 20), line.slice(24)]),
      'p.json': planText([], { courses: [{ id: 'c', gpx: 'c.gpx', gaps: 'skip' }] }),
    });
    const [course] = ofKind<MultiLineString>(await geoJsonIn(gap, 'p.json'), 'course');
    expect(course!.geometry.coordinates.map((run) => run.length)).toEqual([20, 16]);
  });
});
