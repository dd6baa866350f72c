/** What each named case is there for, by hand and against GeographicLib (C. F. F. Karney). */
import type { Position as GeoJsonPosition } from 'geojson';
import { describe, expect, it } from 'vitest';
import { type Position, geodesicLength, go } from './support/courses.ts';
import { type Analysed, analysed, codesOf, pointsOf, sourceOf } from './support/fixtures.ts';

type Layout = Analysed['layout'];
const layoutOf = (name: string): Layout => analysed(sourceOf(name)).layout;
type Station = Layout['stations'][number];
type Item = Station['directions'][number]['items'][number];
const stationOf = (layout: Layout, id: string): Station => layout.stations.find((station) => station.id === id)!;
const itemOf = (station: Station, kind: Item['kind'], direction: number = 0): Item =>
  station.directions[direction]!.items.find((item) => item.kind === kind)!;
const sumOf = (points: readonly Position[]): number =>
  points.slice(1).reduce((sum, to, k) => sum + geodesicLength(points[k]!, to), 0);
const sidesOf = (station: Station): string[] => station.passes.map(({ side }) => side);
const servedOf = (station: Station): boolean[] => station.passes.map(({ served }) => served);

describe('an out-and-back', () => {
  const layout = layoutOf('out-and-back');
  const [once, twice] = [stationOf(layout, 's1'), stationOf(layout, 's2')];
  const length = layout.courses[0]!.length;

  it('passes a place twice, mirrored at the turn, on opposite sides and in opposite directions', () => {
    for (const { passes } of [once, twice]) {
      const [out, home] = [passes[0]!, passes[1]!];
      expect(passes).toHaveLength(2);
      expect(out.measure + home.measure).toBeCloseTo(length, 4);
      expect(out.offset).toBeCloseTo(-home.offset, 4);
      expect(Math.abs(out.azimuthDeg - home.azimuthDeg)).toBeCloseTo(180, 4);
    }
    expect([sidesOf(once), sidesOf(twice)]).toEqual([
      ['right', 'left'],
      ['left', 'right'],
    ]);
  });

  it('serves the way out, and the way home only where the plan says so', () => {
    expect([servedOf(once), servedOf(twice)]).toEqual([
      [true, false],
      [true, true],
    ]);
    expect(layout.spacing[0]!.legs.map(({ to }) => to)).toEqual(['s1', 's2', 's2', 'finish']);
  });

  it('has a sign of its own for the way home, before the same tables in the other order', () => {
    const kinds = twice.directions.map(({ items }) => items.map(({ kind }) => kind));
    expect(kinds).toEqual([
      ['sign', 'gel', 'sportsDrink', 'water', 'trash'],
      ['sign', 'water', 'sportsDrink', 'gel', 'trash'],
    ]);
    // 100 yd before the table met first, which on the way home is the last of the way out: 12.192 m behind the pin.
    expect(itemOf(twice, 'sign', 1).along[0]).toBeCloseTo(-(2 * 6 + 10 + 3 * 6) * 0.3048 - 91.44, 3);
    expect(itemOf(twice, 'water', 1).at).toEqual([...itemOf(twice, 'water').at].reverse());
    expect(itemOf(twice, 'trash', 1).along[0]).toBeCloseTo((25 + 6) * 0.3048 + 45.72, 3);
  });
});

describe('three laps', () => {
  const layout = layoutOf('laps');
  const station = stationOf(layout, 's1');

  it('are three served passes a lap apart, in one direction', () => {
    const lap = layout.courses[0]!.length / 3;
    expect(servedOf(station)).toEqual([true, true, true]);
    station.passes.forEach(({ measure }, k) => expect(measure).toBeCloseTo(station.passes[0]!.measure + k * lap, 4));
    expect(station.directions.map(({ passes }) => passes)).toEqual([[0, 1, 2]]);
    expect(layout.spacing[0]!.legs.map(({ from, to }) => `${from}-${to}`)).toEqual([
      'start-s1',
      's1-s1',
      's1-s1',
      's1-finish',
    ]);
    expect(layout.spacing[0]!.legs[1]!.length).toBeCloseTo(lap, 4);
  });
});

describe('a lollipop', () => {
  const layout = layoutOf('lollipop');

  it('passes a station on the stick twice, one on the loop once', () => {
    expect([sidesOf(stationOf(layout, 's1')), sidesOf(stationOf(layout, 's2'))]).toEqual([['right', 'left'], ['left']]);
    // The way back down the stick is not served, and shares the road, of which no width is given.
    expect(codesOf(layout.findings).filter((code) => !code.startsWith('no-'))).toEqual([
      'seen-not-served',
      'flows-share-width',
    ]);
  });
});

describe('a figure of eight', () => {
  const station = stationOf(layoutOf('figure-of-eight'), 's1');

  it('sees the pass over the crossing road, square to the served one, and serves it not', () => {
    expect(servedOf(station)).toEqual([true, false]);
    const [served, seen] = [station.passes[0]!, station.passes[1]!];
    expect(served.azimuthDeg - seen.azimuthDeg).toBeCloseTo(90, 1);
    expect([served.distance, seen.distance]).toEqual([expect.closeTo(7, 1), expect.closeTo(30, 1)]);
    expect(station.directions).toHaveLength(1);
  });
});

describe('a turn-around', () => {
  const layout = layoutOf('turn-around-at-tables');
  const [at, short] = [stationOf(layout, 's1'), stationOf(layout, 's2')];

  it('right at the tables is one pass, 50 m behind them two', () => {
    expect([at.passes.length, short.passes.length]).toEqual([1, 2]);
    expect(at.passes[0]!.measure).toBeCloseTo(1495, 1);
    expect(short.passes[1]!.measure - short.passes[0]!.measure).toBeCloseTo(100, 1);
  });

  it('leaves trash on the way home without a wheel distance, since no kerb runs round a point', () => {
    for (const station of [at, short]) {
      expect(itemOf(station, 'trash').wheel).toBeNull();
      expect(itemOf(station, 'trash').at).not.toContain(null);
      expect(itemOf(station, 'sign').wheel![0]).toBeCloseTo(-91.44, 2);
    }
    expect(codesOf(layout.findings).filter((code) => code === 'wheel-folds')).toHaveLength(2);
  });
});

describe('switchbacks 20 m apart', () => {
  const source = sourceOf('switchbacks-20-m');
  const station = stationOf(analysed(source).layout, 's1');

  it('are five passes, one a row, on alternating ways, 20 m from row to row', () => {
    expect(station.passes.map(({ azimuthDeg }) => Math.round(azimuthDeg / 10))).toEqual([9, 27, 9, 27, 9]);
    // From the pin 5 m right (south) of the third row to the rows: north is positive.
    const north = station.passes.map(({ offset, azimuthDeg }) => (azimuthDeg < 180 ? offset : -offset));
    expect(north.map((metres) => Math.round(metres))).toEqual([-45, -25, -5, 15, 35]);
  });

  it('serve the row that the plan names; without its word the one that the pin stands by leads, and is asked for', () => {
    expect(servedOf(station)).toEqual([false, false, true, false, false]);
    const plan = JSON.parse(source.plan) as { stations: { lead?: object }[] };
    delete plan.stations[0]!.lead;
    const unsaid = analysed({ ...source, plan: JSON.stringify(plan) }).layout;
    expect(servedOf(stationOf(unsaid, 's1'))).toEqual([false, false, true, false, false]);
    expect(codesOf(unsaid.findings)).toContain('lead-far');
  });
});

describe('repeated vertices', () => {
  const source = sourceOf('repeated-vertices');

  it('change nothing: the same file with each point once has the same layout', () => {
    const lines = source.gpx['course.gpx']!.split('\n');
    const once = lines.filter((line, k) => line !== lines[k - 1]).join('\n');
    expect(lines.length - once.split('\n').length).toBeGreaterThan(80);
    expect(analysed({ ...source, gpx: { 'course.gpx': once } })).toEqual(analysed(source));
  });

  it('leave the pin on a vertex on no side, and its tables on the declared one at the kerb', () => {
    const station = stationOf(layoutOf('repeated-vertices'), 's2');
    expect(station.passes[0]).toMatchObject({ side: 'unclear', distance: 0 });
    expect(itemOf(station, 'water')).toMatchObject({ side: 'left', offset: 4 });
  });
});

/** Every longitude of a text of a fixture moved: 7 decimals hold 113° exactly. */
const LON = /(lon="|"at": \[)(-?\d+\.\d+)/gu;
const moved = (text: string, degrees: number): string =>
  text.replace(LON, (_, before: string, lon: string) => {
    const turned = Number(lon) + degrees;
    return before + (turned > 180 ? turned - 360 : turned <= -180 ? turned + 360 : turned).toFixed(7);
  });

/** Every position in a document as the way from a point, degrees; other numbers as they are. */
function fromThere(value: unknown, lon0: number): unknown {
  if (Array.isArray(value)) {
    const [lon, lat] = value as unknown[];
    if (value.length === 2 && typeof lon === 'number' && typeof lat === 'number' && Math.abs(lat - 33.4) < 0.1) {
      const way = lon - lon0;
      return [Number((way - 360 * Math.round(way / 360)).toFixed(6)), Number(lat.toFixed(6))];
    }
    return value.map((one) => fromThere(one, lon0));
  }
  if (typeof value === 'number') return Number(value.toFixed(4));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, fromThere(one, lon0)]));
}

describe('a course across the antimeridian', () => {
  const source = sourceOf('antimeridian');

  it('has the same layout as the same course moved by 113°, but for its longitudes', () => {
    const elsewhere = { plan: moved(source.plan, 113), gpx: { 'course.gpx': moved(source.gpx['course.gpx']!, 113) } };
    expect(elsewhere.gpx['course.gpx']).not.toContain('lon="179');
    const [here, there] = [analysed(source).layout, analysed(elsewhere).layout];
    expect(fromThere(there.stations, 293)).toEqual(fromThere(here.stations, 180));
    expect(fromThere(there.spacing, 0)).toEqual(fromThere(here.spacing, 0));
    expect(codesOf(there.findings)).toEqual(codesOf(here.findings));
  });

  it('has stations on both sides of the line, and longitudes within ±180 everywhere', () => {
    const { layout, geojson } = analysed(source);
    expect(layout.stations.map(({ at }) => Math.sign(at[0]))).toEqual([1, expect.any(Number), -1]);
    const dateline =
      itemOf(stationOf(layout, 's2'), 'sign').at[0]![0] * itemOf(stationOf(layout, 's2'), 'trash').at[1]![0];
    expect(dateline).toBeLessThan(0);
    const course = geojson.features[0]!.geometry!;
    expect(course.type).toBe('MultiLineString');
    const pieces = (course as { coordinates: GeoJsonPosition[][] }).coordinates;
    expect(pieces).toHaveLength(3);
    for (const [lon] of pieces.flat()) expect(Math.abs(lon!)).toBeLessThanOrEqual(180);
  });
});

describe('68° north', () => {
  const layout = layoutOf('north-68');

  it('has its offsets and distances on the ground, by GeographicLib', () => {
    const northing = stationOf(layout, 's1');
    const pass = northing.passes[0]!;
    expect(geodesicLength(northing.at, pass.foot)).toBeCloseTo(pass.distance, 4);
    // On a straight road the sign stands as far from the pin as the course says, at the same offset.
    expect(geodesicLength(itemOf(northing, 'sign').at[0]!, northing.at)).toBeCloseTo(91.44, 2);
    expect(geodesicLength(go(pass.foot, pass.azimuthDeg - 90, pass.offset), northing.at)).toBeLessThan(1e-3);
    expect(layout.stations.map(sidesOf)).toEqual([['left'], ['right']]);
  });
});

/** Nearest place on the geodesic from `a` to `b` by bisecting the slope of the distance, which falls and then rises. */
function nearestOn(a: Position, b: Position, point: Position): { along: number; distance: number } {
  const length = geodesicLength(a, b);
  const azimuth = azimuthOf(a, b);
  const distanceAt = (along: number): number => geodesicLength(go(a, azimuth, along), point);
  let [low, high] = [0, length];
  while (high - low > 1e-6) {
    const middle = (low + high) / 2;
    if (distanceAt(middle + 0.05) > distanceAt(middle - 0.05)) high = middle;
    else low = middle;
  }
  return { along: low, distance: distanceAt(low) };
}

/** Azimuth of a geodesic found with lengths alone: where one comes nearest to `b`. */
function azimuthOf(a: Position, b: Position): number {
  const length = geodesicLength(a, b);
  let best = 0;
  for (let step = 90, from = 0; step > 1e-11; step /= 2) {
    for (const azimuth of [from - step, from, from + step]) {
      if (geodesicLength(go(a, azimuth, length), b) < geodesicLength(go(a, best, length), b)) best = azimuth;
    }
    from = best;
  }
  return best;
}

describe('a sparse course', () => {
  const layout = layoutOf('sparse');
  const points = pointsOf('sparse');

  it('has each pass where GeographicLib finds the nearest place of the geodesic, to 1 mm', () => {
    const segments = [0, 1, 3];
    layout.stations.forEach(({ at, passes }, k) => {
      const segment = segments[k]!;
      const { along, distance } = nearestOn(points[segment]!, points[segment + 1]!, at);
      expect(passes).toHaveLength(1);
      expect(Math.abs(passes[0]!.measure - sumOf(points.slice(0, segment + 1)) - along)).toBeLessThan(1e-3);
      expect(Math.abs(passes[0]!.distance - distance)).toBeLessThan(1e-3);
    });
  });

  it('says of each long step on a bend that the line may leave the road', () => {
    expect(codesOf(layout.findings).filter((code) => code === 'track-sparse-bend')).toHaveLength(3);
  });
});

describe('a noisy recording', () => {
  const layout = layoutOf('noisy');

  it('has both passes of the U-turn, and two further down the road', () => {
    expect(layout.stations.map(({ passes }) => passes.length)).toEqual([2, 2]);
    const [out, home] = [stationOf(layout, 's1').passes[0]!, stationOf(layout, 's1').passes[1]!];
    expect(Math.abs(Math.abs(out.azimuthDeg - home.azimuthDeg) - 180)).toBeLessThan(45);
  });

  it('runs long, and is brought to its known length', () => {
    expect(layout.courses[0]!.length).toBe(3000);
    expect(layout.courses[0]!.raw).toBeGreaterThan(3050);
    // The road out is 1,495 m: 700 m along it are 700 m of course distance, but for the noise.
    expect(Math.abs(stationOf(layout, 's2').passes[0]!.measure - 700)).toBeLessThan(5);
  });
});

describe('a closed loop', () => {
  const layout = layoutOf('closed-loop');
  const tent = stationOf(layout, 's3');

  it('passes a pin just after the start once; from the finish it lies beyond the end, seen and not served', () => {
    expect(tent.passes.map(({ end, served }) => [end ?? null, served])).toEqual([
      [null, true],
      ['finish', false],
    ]);
    expect(tent.passes[1]!.measure).toBeCloseTo(layout.courses[0]!.length, 4);
    expect(stationOf(layout, 's1').passes).toHaveLength(1);
  });

  it('does not wrap: a sign before the start has no place, and that is an error', () => {
    expect(itemOf(tent, 'sign')).toMatchObject({ at: [null, null], wheel: null });
    expect(layout.findings.filter(({ severity }) => severity === 'error')).toEqual([
      expect.objectContaining({
        code: 'item-outside',
        where: expect.objectContaining({ station: 's3', item: 'sign' }),
      }),
    ]);
    expect(itemOf(tent, 'sign').from).toBeCloseTo(30 - 91.44, 1);
  });
});

describe('a half that joins 50 m before the tables', () => {
  const layout = layoutOf('half-joins');

  it('runs the same way by them, and misses the sign: the one finding about signs', () => {
    const station = stationOf(layout, 's1');
    expect(station.directions.map(({ passes }) => passes)).toEqual([[0, 1]]);
    expect(servedOf(station)).toEqual([true, true]);
    const missed = layout.findings.filter(({ code }) => code.startsWith('sign'));
    expect(missed).toEqual([
      expect.objectContaining({
        code: 'sign-missed',
        where: expect.objectContaining({ station: 's1', race: 'half', course: 'half' }),
      }),
    ]);
  });

  it('meets the sign of the next station like the full', () => {
    const { at } = stationOf(layout, 's2');
    const sign = itemOf(stationOf(layout, 's2'), 'sign').at[0]!;
    expect(geodesicLength(sign, at)).toBeCloseTo(91.44, 2);
    const nearest = Math.min(...pointsOf('half-joins', 'half.gpx').map((point) => geodesicLength(point, sign)));
    expect(nearest).toBeLessThan(15);
  });
});
