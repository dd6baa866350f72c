/** A layout as GeoJSON (RFC 7946): what each feature says, and which have no geometry. */
import type { Feature, Geometry, Position } from 'geojson';
import { describe, expect, it } from 'vitest';
import type { Layout } from '../layout/layout.ts';
import { AT_1500, OUT_AND_BACK, STRAIGHT, analysisOf, runners } from '../testing/analyses.ts';
import { ORIGIN, courseOfSegments, from, turtle, turtlePoints } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { toGeoJson } from './geojson.ts';

const featuresOf = (layout: Layout): Feature<Geometry | null>[] => toGeoJson(layout).features;
const kinds = (layout: Layout): unknown[] => featuresOf(layout).map(({ properties }) => properties!['kind']);
const ofKind = (layout: Layout, kind: string): Feature<Geometry | null>[] =>
  featuresOf(layout).filter(({ properties }) => properties!['kind'] === kind);
const coordinatesOf = ({ geometry }: Feature<Geometry | null>): unknown =>
  geometry === null || geometry.type === 'GeometryCollection' ? null : geometry.coordinates;

describe('the features of a layout', () => {
  const points = [
    { kind: 'drop', at: from(ORIGIN, 90, 1450), name: 'Supplies', street: 'Kelp Road' },
    { kind: 'toilets', at: ORIGIN },
  ] as const;
  const layout = analysisOf(STRAIGHT, [{ ...AT_1500, name: 'Kelp Bay', serves: ['gel', 'water'], boxes: 2, points }], {
    races: [runners(10), runners(10, { id: 'h', name: 'Half Mile' })],
  });

  it('are the courses, then each station with its direction, items in running order, boxes and points', () => {
    expect(kinds(layout)).toEqual([
      'course',
      'station',
      'direction',
      'sign',
      'gel',
      'water',
      'handOut',
      'trash',
      'box',
      'box',
      'drop',
      'toilets',
    ]);
  });

  it('have an id each, no two alike', () => {
    const ids = featuresOf(layout).map(({ id }) => id);
    expect(ids.slice(0, 5)).toEqual(['course/c', 'station/s1', 'direction/s1/0', 'sign/s1/0', 'gel/s1/0']);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('have texts as ids, or numbers from 1 with the same texts as their keys', () => {
    const [texts, numbers] = [toGeoJson(layout), toGeoJson(layout, { ids: 'numbers' })];
    expect(texts.features.map(({ id }) => id)).toEqual(texts.features.map(({ properties }) => properties.key));
    expect(new Set(texts.features.map(({ id }) => id)).size).toBe(texts.features.length);
    expect(numbers.features.map(({ id }) => id)).toEqual(numbers.features.map((_, k) => k + 1));
    const bare = (collection: typeof texts): object[] =>
      collection.features.map(({ geometry, properties }) => ({ geometry, properties }));
    expect(bare(numbers)).toEqual(bare(texts));
  });

  it('say plainly what they are', () => {
    expect(ofKind(layout, 'course')[0]!.properties).toEqual({
      kind: 'course',
      key: 'course/c',
      course: 'c',
      name: 'Shore',
      races: 'Mile Run, Half Mile',
      raceIds: ['m', 'h'],
      length: expect.closeTo(4000, 3) as number,
    });
    expect(ofKind(layout, 'station')[0]!.properties).toEqual({
      kind: 'station',
      key: 'station/s1',
      station: 's1',
      name: 'Kelp Bay',
      serves: 'Gel, Water',
      races: 'Mile Run, Half Mile',
      raceIds: ['m', 'h'],
      course: 'c',
      measure: 1500,
      side: 'right',
    });
    expect(ofKind(layout, 'sign')[0]!.properties).toMatchObject({
      label: 'Water and gel ahead',
      wording: 'Water and gel ahead',
      side: 'right',
      measure: expect.closeTo(1500 - 91.44 - 9.4488, 5) as number,
    });
    expect(ofKind(layout, 'sign')[0]!.properties).not.toHaveProperty('until');
    expect(ofKind(layout, 'water')[0]!.properties).toMatchObject({
      label: 'Water',
      measure: 1500,
      until: expect.closeTo(1500 + 1.8288 * layout.stations[0]!.needs!.tables.water, 5) as number,
    });
    expect(ofKind(layout, 'box').map(({ properties }) => properties!['label'])).toEqual(['Box 1', 'Box 2']);
    expect(ofKind(layout, 'drop')[0]!.properties).toEqual({
      kind: 'drop',
      key: 'point/s1/0',
      station: 's1',
      name: 'Supplies',
      street: 'Kelp Road',
    });
    expect(ofKind(layout, 'toilets')[0]!.properties).toMatchObject({
      kind: 'toilets',
      key: 'point/s1/1',
      station: 's1',
    });
  });

  it('are points for the sign and boxes, and lines for what stands along a stretch, all to eight decimals', () => {
    const types = Object.fromEntries(
      featuresOf(layout).map(({ geometry, properties }) => [properties!['kind'], geometry!.type]),
    );
    expect(types).toMatchObject({
      course: 'LineString',
      station: 'Point',
      direction: 'Point',
      sign: 'Point',
      water: 'LineString',
      trash: 'LineString',
      box: 'Point',
      drop: 'Point',
    });
    expect(JSON.stringify(featuresOf(layout).map(coordinatesOf))).not.toMatch(/\.\d{9}/u);
  });

  it('stand in a box around courses and pins: west, south, east, north', () => {
    const [west, south, east, north] = toGeoJson(layout).bbox!;
    const end = from(ORIGIN, 90, 4000);
    expect([west, east]).toEqual([expect.closeTo(ORIGIN[0], 8), expect.closeTo(end[0], 8)]);
    // The pin stands 5 m south of the road; a degree of latitude is about 110.9 km here (WGS 84).
    expect(south).toBeCloseTo(ORIGIN[1] - 5 / 110_900, 5);
    expect(north).toBeCloseTo(Math.max(ORIGIN[1], end[1]), 7);
  });
});

describe('a station', () => {
  it('whose runners come both ways has its tables once, and a sign and boxes for each direction', () => {
    const layout = analysisOf(OUT_AND_BACK, [{ ...AT_1500, serves: ['water'], boxes: 2, passes: 'all' }]);
    expect(kinds(layout)).toEqual([
      'course',
      'station',
      'direction',
      'sign',
      'water',
      'trash',
      'box',
      'box',
      'direction',
      'sign',
      'trash',
      'box',
      'box',
    ]);
    expect(
      ofKind(layout, 'direction').map(({ properties }) => [
        properties!['lead'],
        properties!['side'],
        Math.round(properties!['measure'] as number),
      ]),
    ).toEqual([
      [true, 'right', 1500],
      [false, 'left', 4500],
    ]);
    const [out, back] = ofKind(layout, 'direction').map(coordinatesOf) as Position[];
    expect([out![0], out![1]]).toEqual([expect.closeTo(back![0]!, 5), expect.closeTo(back![1]!, 5)]);
  });

  it('that no course runs by is a point without a course, and serves no race', () => {
    const layout = analysisOf(STRAIGHT, [{ at: [-10, -30], serves: ['water'] }]);
    expect(kinds(layout)).toEqual(['course', 'station']);
    expect(ofKind(layout, 'station')[0]!.properties).toEqual({
      kind: 'station',
      key: 'station/s1',
      station: 's1',
      name: 's1',
      serves: 'Water',
      races: '',
      raceIds: [],
    });
    expect(coordinatesOf(ofKind(layout, 'station')[0]!)).toEqual([-10, -30]);
  });

  it('near the start keeps its sign as a feature without a place (RFC 7946, section 3.2: unlocated)', () => {
    const layout = analysisOf(STRAIGHT, [{ on: { course: 'c', measure: 50, side: 'right', offset: 5 } }]);
    const [sign] = ofKind(layout, 'sign');
    expect([sign!.geometry, sign!.id, sign!.properties!['wording']]).toEqual([null, 'sign/s1/0', 'Water ahead']);
  });

  it('near the finish keeps the boxes that have a place, and the others without one', () => {
    const layout = analysisOf(STRAIGHT, [
      { on: { course: 'c', measure: 3930, side: 'right', offset: 5 }, serves: ['water'], boxes: 2 },
    ]);
    expect(ofKind(layout, 'trash').map(({ geometry }) => geometry)).toEqual([null]);
    expect(ofKind(layout, 'box').map(({ geometry, id }) => [geometry?.type ?? null, id])).toEqual([
      ['Point', 'box/s1/0/0'],
      [null, 'box/s1/0/1'],
    ]);
  });
});

describe('a course', () => {
  it('with a skipped gap is several lines', () => {
    const course = courseOfSegments(
      [turtlePoints(ORIGIN, [[90, 500]], 100), turtlePoints(from(ORIGIN, 90, 700), [[90, 500]], 100)],
      'skip',
    );
    const [line] = ofKind(layoutOf([course], []), 'course');
    expect(line!.geometry!.type).toBe('MultiLineString');
    expect((coordinatesOf(line!) as Position[][]).map((run) => run.length)).toEqual([6, 6]);
  });

  it('over the antimeridian is cut there, and its box runs across (RFC 7946, sections 3.1.9 and 5.2)', () => {
    const layout = layoutOf([turtle([179.99, -17], [[90, 4000]], 100)], []);
    const [west, east] = coordinatesOf(ofKind(layout, 'course')[0]!) as [Position[], Position[]];
    expect([west.at(-1)![0], east[0]![0]]).toEqual([180, -180]);
    const [left, , right] = toGeoJson(layout).bbox!;
    expect(left).toBeCloseTo(179.99, 8);
    expect(right).toBeLessThan(-179.9);
  });
});
