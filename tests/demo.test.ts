/** The demo: drawn anew it has the same bytes, its lengths are geodesics of another library, and its plan names what it needs. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import geodesic from 'geographiclib-geodesic';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Feature, FeatureCollection, Position } from 'geojson';

const root = fileURLToPath(new URL('..', import.meta.url));
const committed = (name: string): string => readFileSync(join(root, 'fixtures/demo', name), 'utf8');
const files = ['full.gpx', 'half.gpx', 'plan.json', 'context.geojson', 'ground.geojson'];

interface Station {
  readonly id: string;
  readonly name: string;
  readonly serves: readonly string[];
  readonly width?: string;
  readonly points?: readonly { readonly kind: string }[];
  readonly on?: object;
  readonly at?: Position;
}
interface Plan {
  readonly name: string;
  readonly context: string;
  readonly courses: readonly { readonly gpx: string; readonly length: string }[];
  readonly stations: readonly Station[];
}

/** The track points of a demo GPX as printed: "lat,lon,ele". */
const printedPoints = (name: string): string[] =>
  [...committed(name).matchAll(/<trkpt lat="(-?\d+\.\d{7})" lon="(-?\d+\.\d{7})"><ele>(\d+\.\d)<\/ele>/g)].map(
    (m) => `${m[1]},${m[2]},${m[3]}`,
  );

const numbers = (point: string): number[] => point.split(',').map(Number);

/** WGS 84 geodesic length of each step, metres (Karney's own library). */
function steps(points: readonly string[]): number[] {
  return points.slice(1).map((point, i) => {
    const [lat1, lon1] = numbers(points[i]!);
    const [lat2, lon2] = numbers(point);
    return geodesic.Geodesic.WGS84.Inverse(lat1!, lon1!, lat2!, lon2!).s12!;
  });
}

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
const features = (): Feature[] => (JSON.parse(committed('context.geojson')) as FeatureCollection).features;
const kindOf = (f: Feature): string => String(f.properties?.['kind']);

/** Distance of a point from a segment in a flat plane, metres. */
function toSegment(p: Position, a: Position, b: Position): number {
  const [dx, dy] = [b[0]! - a[0]!, b[1]! - a[1]!];
  const t = Math.max(0, Math.min(1, ((p[0]! - a[0]!) * dx + (p[1]! - a[1]!) * dy) / (dx * dx + dy * dy)));
  return Math.hypot(p[0]! - a[0]! - t * dx, p[1]! - a[1]! - t * dy);
}

/** Whether a ring holds a point (even-odd). */
function holds(ring: readonly Position[], [x, y]: readonly [number, number]): boolean {
  const crossed = ring.slice(1).filter((b, i) => {
    const a = ring[i]!;
    return a[1]! > y !== b[1]! > y && x < ((b[0]! - a[0]!) * (y - a[1]!)) / (b[1]! - a[1]!) + a[0]!;
  });
  return crossed.length % 2 === 1;
}

const cell = (degrees: number): number => Math.floor(degrees * 1000);

/** Roads by cells of about 100 m, each segment in every cell of its bounds and those around; `at` gives flat metres. */
function roadsByCell(): { near: (p: Position) => [Position, Position][]; at: (p: Position) => Position } {
  const cells = new Map<string, [Position, Position][]>();
  for (const f of features()) {
    if ((kindOf(f) !== 'road' && kindOf(f) !== 'path') || f.geometry.type !== 'LineString') continue;
    const line = f.geometry.coordinates;
    line.slice(1).forEach((q, n) => {
      const p = line[n]!;
      for (let i = cell(Math.min(p[0]!, q[0]!)) - 1; i <= cell(Math.max(p[0]!, q[0]!)) + 1; i += 1) {
        for (let j = cell(Math.min(p[1]!, q[1]!)) - 1; j <= cell(Math.max(p[1]!, q[1]!)) + 1; j += 1) {
          const key = `${i},${j}`;
          cells.set(key, [...(cells.get(key) ?? []), [p, q]]);
        }
      }
    });
  }
  const metres = 111_195;
  return {
    near: (p) => cells.get(`${cell(p[0]!)},${cell(p[1]!)}`) ?? [],
    at: (p) => [p[0]! * metres * Math.cos((33.2 * Math.PI) / 180), p[1]! * metres],
  };
}

describe('the demo drawn anew', () => {
  let folder = '';
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'halfcup-demo-'));
    execFileSync(process.execPath, [join(root, 'scripts/makeDemo.mjs'), folder]);
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it.each(files)('has the same bytes as the committed %s', (name) => {
    expect(readFileSync(join(folder, name)).equals(readFileSync(join(root, 'fixtures/demo', name)))).toBe(true);
  });
});

describe('the demo courses', () => {
  // 42.195 km: World Athletics, Technical Rules, road races (figure from memory); half of it is 21.0975 km.
  it.each([
    ['full.gpx', 42_195],
    ['half.gpx', 21_097.5],
  ])('%s is its distance and no more than 3 m longer', (name, distance) => {
    const length = sum(steps(printedPoints(name)));
    expect(length).toBeGreaterThanOrEqual(distance);
    expect(length).toBeLessThanOrEqual(distance + 3);
  });

  it('has no step over 80 m and none of no length', () => {
    const all = [...steps(printedPoints('full.gpx')), ...steps(printedPoints('half.gpx'))];
    expect(Math.max(...all)).toBeLessThanOrEqual(80);
    expect(Math.min(...all)).toBeGreaterThan(1);
  });

  it('shares the very same points on the roads that both races run', () => {
    const full = printedPoints('full.gpx');
    const half = printedPoints('half.gpx');
    const parts = half.findIndex((point, i) => point !== full[i]);
    let tail = 0;
    while (half.at(-1 - tail) === full.at(-1 - tail)) tail += 1;
    expect(sum(steps(half.slice(0, parts)))).toBeGreaterThan(11_000);
    expect(sum(steps(half.slice(-tail)))).toBeGreaterThan(5_000);
    expect(parts + tail).toBeLessThan(half.length);
  });

  it('runs exactly on roads and paths of the background', () => {
    const roads = features().filter((f) => kindOf(f) === 'road' || kindOf(f) === 'path');
    const vertices = new Set(
      roads
        .flatMap((f) => (f.geometry.type === 'LineString' ? f.geometry.coordinates : []))
        .map(([lon, lat]) => `${lat},${lon}`),
    );
    for (const name of ['full.gpx', 'half.gpx']) {
      const off = printedPoints(name).filter((point) => !vertices.has(numbers(point).slice(0, 2).join(',')));
      expect(off).toEqual([]);
    }
  });
});

describe('the demo plan', () => {
  const plan = JSON.parse(committed('plan.json')) as Plan;

  it('names files that stand beside it', () => {
    expect([...plan.courses.map((course) => course.gpx), plan.context].every((name) => files.includes(name))).toBe(
      true,
    );
  });

  it('has nine stations with names, which the full course carries as waypoints', () => {
    const waypoints = [...committed('full.gpx').matchAll(/<wpt .*<name>(.+)<\/name><\/wpt>/g)].map((m) => m[1]);
    expect(plan.stations).toHaveLength(9);
    expect(plan.name.length).toBeGreaterThan(0);
    expect(waypoints).toEqual(plan.stations.map((station) => station.name));
  });

  it('has what later features need: gel twice, a narrow path, first aid, truck access, places by measure and by position', () => {
    const kinds = plan.stations.flatMap((station) => station.points ?? []).map((point) => point.kind);
    expect(plan.stations.filter((station) => station.serves.includes('gel'))).toHaveLength(2);
    expect(plan.stations.filter((station) => station.width === '4.5 m')).toHaveLength(1);
    expect(kinds).toEqual(expect.arrayContaining(['medical', 'access', 'drop']));
    expect(plan.stations.filter((station) => station.on).length).toBeGreaterThan(1);
    expect(plan.stations.filter((station) => station.at).length).toBeGreaterThan(1);
  });
});

describe('the demo background', () => {
  it('is under 600 kB, with every kind of thing and a name on each label', () => {
    const kinds = new Set(features().map(kindOf));
    expect(Buffer.byteLength(committed('context.geojson'))).toBeLessThan(600_000);
    expect([...kinds]).toEqual(
      expect.arrayContaining([
        'land',
        'beach',
        'road',
        'path',
        'harbour',
        'water',
        'park',
        'wood',
        'building',
        'pier',
        'bridge',
        'label',
      ]),
    );
    expect(
      features()
        .filter((f) => kindOf(f) === 'label')
        .every((f) => String(f.properties?.['name'] ?? '').length > 0),
    ).toBe(true);
  });

  it('has no building within 9 m of the middle of a road, and so none on the course', () => {
    const { near, at } = roadsByCell();
    const corners = features().flatMap((f) =>
      kindOf(f) === 'building' && f.properties?.['class'] !== 'lighthouse' && f.geometry.type === 'Polygon'
        ? f.geometry.coordinates.flat()
        : [],
    );
    const distances = corners.map((corner) =>
      Math.min(...near(corner).map(([p, q]) => toSegment(at(corner), at(p), at(q)))),
    );
    expect(corners.length).toBeGreaterThan(4_000);
    expect(Math.min(...distances)).toBeGreaterThan(9);
  });

  it('keeps the courses dry: every point is on land, a pier or a bridge', () => {
    const dry = features()
      .filter((f) => ['land', 'pier', 'bridge'].includes(kindOf(f)))
      .flatMap((f) => (f.geometry.type === 'Polygon' ? [f.geometry.coordinates] : []));
    const points = [...new Set([...printedPoints('full.gpx'), ...printedPoints('half.gpx')])];
    const wet = points.filter((point) => {
      const [lat, lon] = numbers(point);
      return !dry.some((rings) => rings.filter((ring) => holds(ring, [lon!, lat!])).length % 2 === 1);
    });
    expect(points.length).toBeGreaterThan(1_000);
    expect(wet).toEqual([]);
  });

  it('closes every ring', () => {
    const rings = features().flatMap((f) => (f.geometry.type === 'Polygon' ? f.geometry.coordinates : []));
    expect(rings.length).toBeGreaterThan(1000);
    expect(rings.filter((ring) => ring.length < 4 || String(ring[0]) !== String(ring.at(-1)))).toEqual([]);
  });
});
