/**
 * The ground against computations written apart: sight by Turf over every wall of every house; junctions by the walk that a course
 * was laid on, with Karney's lengths and a plain list of ways; what to keep clear by Karney at places every half metre of the course.
 */
import { bearing, booleanPointInPolygon, lineIntersect, lineString, midpoint, point, polygon } from '@turf/turf';
import geodesic from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import { indexCourse } from '../packages/core/src/course/segmentIndex.ts';
import { pointAt } from '../packages/core/src/course/locate.ts';
import { courseLength } from '../packages/core/src/course/course.ts';
import type { LonLat } from '../packages/core/src/finding.ts';
import type { Junction } from '../packages/core/src/ground/along.ts';
import { fromEastNorth } from '../packages/core/src/geodesy/frame.ts';
import { indexBuildings } from '../packages/core/src/ground/buildings.ts';
import type { Ground, GroundArea, GroundPoint, GroundWay } from '../packages/core/src/ground/ground.ts';
import { groundAlong } from '../packages/core/src/ground/groundAlong.ts';
import { sightBlocked } from '../packages/core/src/ground/sightBlocked.ts';
import { courseThrough, generator } from '../packages/core/src/testing/courses.ts';
import { type Walk, gridTown, randomWalk } from '../packages/core/src/testing/gridTown.ts';
import { type Place, drawnGround, placed } from '../packages/core/src/testing/towns.ts';

const wgs84 = geodesic.Geodesic.WGS84;
const karney = ([lon1, lat1]: LonLat, [lon2, lat2]: LonLat): number => wgs84.Inverse(lat1, lon1, lat2, lon2).s12!;

/** Houses at random: turned rectangles and angles, some with a courtyard. */
function randomHouses(count: number, random: () => number): GroundArea[] {
  return Array.from({ length: count }, (_, k): GroundArea => {
    const [east, north, turn] = [random() * 600, random() * 600, random() * 7];
    const [a, b] = [8 + random() * 20, 8 + random() * 20];
    const ring = (places: readonly Place[]): { lon: Float64Array; lat: Float64Array } => {
      const turned = places.map(([x, y]) =>
        placed([east + x * Math.cos(turn) - y * Math.sin(turn), north + x * Math.sin(turn) + y * Math.cos(turn)]),
      );
      const closed = [...turned, turned[0]!];
      return { lon: Float64Array.from(closed, ([lon]) => lon), lat: Float64Array.from(closed, ([, lat]) => lat) };
    };
    const angle: Place[] = [
      [0, 0],
      [a, 0],
      [a, b / 3],
      [a / 3, b / 3],
      [a / 3, b],
      [0, b],
    ];
    const court: Place[] = [
      [a * 0.3, b * 0.3],
      [a * 0.3, b * 0.7],
      [a * 0.7, b * 0.7],
      [a * 0.7, b * 0.3],
    ];
    const box: Place[] = [
      [0, 0],
      [a, 0],
      [a, b],
      [0, b],
    ];
    const rings = k % 3 === 0 ? [ring(angle)] : k % 3 === 1 ? [ring(box), ring(court)] : [ring(box)];
    return { id: `house ${k}`, tags: { building: 'yes' }, rings };
  });
}

const ringOf = ({ lon, lat }: { lon: Float64Array; lat: Float64Array }): [number, number][] =>
  Array.from(lon, (each, i) => [each, lat[i]!]);

/** By Turf: the line cut at every wall; metres from its first point to where over 1 cm of it lies inside, the first of all houses. */
function blockedBy(houses: readonly GroundArea[], from: LonLat, to: LonLat): { id: string; distance: number } | null {
  const line = lineString([[...from], [...to]]);
  const entries = houses.flatMap(({ id, rings }) => {
    const house = polygon(rings.map(ringOf));
    const walls = lineIntersect(line, house).features.map(({ geometry }) => geometry.coordinates as [number, number]);
    const cuts = [[...from] as [number, number], ...walls, [...to] as [number, number]]
      .map((at) => ({ at, far: karney(from, at) }))
      .sort((a, b) => a.far - b.far);
    for (let k = 1; k < cuts.length; k++) {
      const [a, b] = [cuts[k - 1]!, cuts[k]!];
      if (b.far - a.far > 0.01 && booleanPointInPolygon(midpoint(point(a.at), point(b.at)), house))
        return [{ id, distance: a.far }];
    }
    return [];
  });
  return entries.sort((a, b) => a.distance - b.distance)[0] ?? null;
}

describe('sight, against Turf over every wall', () => {
  it('is blocked by the same house at the same place on 500 random lines', () => {
    const random = generator(21);
    const areas = randomHouses(160, random);
    const buildings = indexBuildings({ ...drawnGround({ places: {}, ways: {} }), areas });
    let blocked = 0;
    for (let k = 0; k < 500; k++) {
      const from: Place = [random() * 600, random() * 600];
      const [length, angle] = [10 + random() * 110, random() * 7];
      const [a, b] = [placed(from), placed([from[0] + length * Math.cos(angle), from[1] + length * Math.sin(angle)])];
      const [got, wanted] = [sightBlocked(a, b, buildings), blockedBy(areas, a, b)];
      expect(got?.building.id ?? null).toBe(wanted?.id ?? null);
      if (got === null || wanted === null) continue;
      blocked++;
      expect(Math.abs(got.distance - wanted.distance)).toBeLessThan(0.01);
      expect(Math.abs(karney(a, got.at) - got.distance)).toBeLessThan(1e-6);
    }
    expect(blocked).toBeGreaterThan(150);
    expect(blocked).toBeLessThan(450);
  });
});

/** Of a node of a walk: the ways that have it, other than the two steps there, as the ends of their next segments. */
function leaving(ground: Ground, walk: Walk, k: number): { way: GroundWay; at: LonLat }[] {
  const [node, before, after] = [walk.nodes[k]!, walk.nodes[k - 1]!, walk.nodes[k + 1]!];
  return ground.ways.flatMap((way) =>
    way.nodes.flatMap((each, i) =>
      each !== node
        ? []
        : [i - 1, i + 1]
            .filter((j) => way.nodes[j] !== undefined && way.nodes[j] !== before && way.nodes[j] !== after)
            .map((j) => ({ way, at: [way.lon[j]!, way.lat[j]!] as LonLat })),
    ),
  );
}

const lanes = ({ tags }: GroundWay): number =>
  ({ residential: 6, tertiary: 6.5, secondary: 7, primary: 6.5, trunk: 8, service: 4, footway: 2 })[tags['highway']!]!;

/** Junctions of a walk without the matching: at each of its nodes what else leaves there. */
function junctionsBy(ground: Ground, walk: Walk): Omit<Junction, 'ways'>[] {
  let measure = 0;
  return walk.points.slice(1, -1).flatMap((here, i) => {
    const k = i + 1;
    measure += karney(walk.points[k - 1]!, here);
    const others = leaving(ground, walk, k).filter(({ way }) => way.tags['footway'] !== 'sidewalk');
    if (others.length === 0 || walk.nodes[k - 1] === walk.nodes[k + 1]) return [];
    const clockwise = (at: LonLat): number =>
      (bearing([...here], [...at]) - bearing([...here], [...walk.points[k + 1]!]) + 720) % 360;
    const back = clockwise(walk.points[k - 1]!);
    const own = new Set([undefined, walk.ways[k - 1]!.tags['name'], walk.ways[k]!.tags['name']]);
    const names = others.map(({ way }) => way.tags['name']).filter((name) => !own.has(name));
    const half = Math.max(...others.map(({ way }) => lanes(way) / 2 + 5));
    const sides = (['left', 'right'] as const).filter((side) =>
      others.some(({ at }) => clockwise(at) > back === (side === 'left')),
    );
    const mouth = { from: measure - half, to: measure + half };
    const vehicles = others.some(({ way }) => way.tags['highway'] !== 'footway');
    return [
      {
        measure,
        node: walk.nodes[k]!,
        names: Array.from(new Set(names as string[])).sort(),
        sides,
        mouth,
        vehicles,
        access: false,
      },
    ];
  });
}

describe('junctions, against the walk that the course was laid on', () => {
  const town = gridTown(3);

  it('are all that the walk comes by, in order, to 5 cm, with sides, names and mouths; none with the viaduct above or the underpass below', () => {
    const random = generator(8);
    let compared = 0;
    for (let k = 0; k < 8; k++) {
      const walk = randomWalk(town, 3000, random);
      const course = courseThrough(walk.points);
      const wanted = junctionsBy(town, walk).filter(({ mouth }) => mouth.from > 0 && mouth.to < courseLength(course));
      const found = groundAlong(indexCourse(course), town).junctions.filter(
        ({ mouth }) => mouth.from > 0 && mouth.to < courseLength(course),
      );
      expect(found.map(({ node }) => node)).toEqual(wanted.map(({ node }) => node));
      for (const [i, { measure, mouth, names, sides, vehicles, access }] of found.entries()) {
        expect(Math.abs(measure - wanted[i]!.measure)).toBeLessThan(0.05);
        expect(mouth.to - mouth.from).toBeCloseTo(wanted[i]!.mouth.to - wanted[i]!.mouth.from, 6);
        expect({ i, names: names.toSorted(), sides, vehicles, access }).toEqual({
          i,
          names: wanted[i]!.names,
          sides: wanted[i]!.sides,
          vehicles: wanted[i]!.vehicles,
          access: wanted[i]!.access,
        });
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(150);
  });
});

describe('what to keep clear, against Karney along the course', () => {
  it('is listed where it is within 60 m, with its nearest measure and its offset', () => {
    const town = gridTown(3);
    const random = generator(5);
    const walk = randomWalk(town, 1500, random);
    const course = courseThrough(walk.points);
    const places = Array.from({ length: 60 }, (): LonLat => {
      const near = walk.points[Math.floor(random() * walk.points.length)]!;
      return fromEastNorth(near, random() * 200 - 100, random() * 200 - 100);
    });
    const points = places.map(([lon, lat], k): GroundPoint => ({
      id: `tap ${k}`,
      tags: { emergency: 'fire_hydrant' },
      lon,
      lat,
    }));
    const { keepClear } = groundAlong(indexCourse(course), { ...town, points });
    const found = new Map(keepClear.map((thing) => [thing.id, thing]));
    const steps = Array.from({ length: Math.floor(courseLength(course) * 2) }, (_, k) => k / 2);
    for (const [k, place] of places.entries()) {
      const distances = steps.map((measure) => karney(pointAt(course, measure)!.at, place));
      const least = Math.min(...distances);
      const thing = found.get(`tap ${k}`);
      if (Math.abs(least - 60) < 0.1) continue;
      expect(thing !== undefined).toBe(least < 60);
      if (thing === undefined) continue;
      const at = distances[Math.round(thing.measure * 2)] ?? distances.at(-1)!;
      expect(Math.abs(at - least)).toBeLessThan(0.3);
      expect(Math.abs(thing.offset)).toBeLessThan(least + 0.01);
    }
    expect(found.size).toBeGreaterThan(20);
  });
});
