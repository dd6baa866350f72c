import { describe, expect, it } from 'vitest';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { en } from '../text/en.ts';
import { stationMap } from './stationMap.ts';
import { niceLength } from './svg.ts';
import { type Box, POINT, overlap, textWidth } from './textBox.ts';

const mapOf = (
  azimuthDeg: number,
  keys: Partial<PlanStation> = {},
  units: 'metric' | 'imperial' = 'metric',
): string => {
  const layout = layoutOf(
    [turtle(ORIGIN, [[azimuthDeg, 4000]], 100)],
    [{ on: { course: 'c', measure: 2000, side: 'right', offset: 5 }, ...keys }],
  );
  return stationMap({ layout, station: layout.stations[0]!, units, text: en, width: 66, height: 42 }).html;
};

const words = (svg: string): (Box & { readonly says: string })[] =>
  [
    ...svg.matchAll(
      /<text x="([-\d.]+)" y="([-\d.]+)" font-size="([\d.]+)"[^>]*?(text-anchor="middle")?[^>]*>([^<]*)</gu,
    ),
  ].map(([, x, y, size, middle, says]) => {
    const width = textWidth(says!, Number(size) / POINT);
    return {
      says: says!,
      x: Number(x) - (middle === undefined ? 0 : width / 2),
      y: Number(y) - Number(size) * 0.8,
      width,
      height: Number(size),
    };
  });

describe('the map of a station', () => {
  const points = (['drop', 'access', 'medical', 'toilets', 'radio', 'other'] as const).map((kind, k) => ({
    kind,
    at: from(from(ORIGIN, 90, 1990 + 8 * k), 180, 9),
  }));

  it.each([0, 45, 90, 135, 200, 270, 330])(
    'puts no word on another and none outside, with many points close together, running at %i°',
    (azimuthDeg) => {
      const centre = from(ORIGIN, azimuthDeg, 2000);
      const svg = mapOf(azimuthDeg, {
        serves: ['gel', 'sportsDrink', 'water'],
        points: points.map((point, k) => ({ ...point, at: from(centre, 20 * k, 12) })),
      });
      const all = words(svg);
      expect(all.length).toBeGreaterThan(5);
      all.forEach((one, k) => {
        expect(one.x).toBeGreaterThanOrEqual(0);
        expect(one.x + one.width).toBeLessThanOrEqual(66.05);
        expect(one.y).toBeGreaterThanOrEqual(0);
        expect(one.y + one.height).toBeLessThanOrEqual(42.6);
        for (const other of all.slice(k + 1)) expect(overlap(one, other), `${one.says} | ${other.says}`).toBe(false);
      });
    },
  );

  it('draws to the scale of its bar, north up', () => {
    const svg = mapOf(0, { serves: ['water'], tables: { water: 10 } });
    const bar = /v1\.4h([\d.]+)v-1\.4/u.exec(svg)!;
    const [metres] = words(svg)
      .filter(({ says }) => says.endsWith(' m'))
      .map(({ says }) => Number.parseFloat(says));
    const [, x0, y0, x1, y1] = /<path d="M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)" stroke="#000" stroke-width="2\.2"/u
      .exec(svg)!
      .map(Number) as [number, number, number, number, number];
    expect(x1).toBeCloseTo(x0, 1);
    expect(y1).toBeLessThan(y0);
    expect((y0 - y1) / (Number(bar[1]) / metres!)).toBeCloseTo(18.288, 0);
  });

  it('gives its bar in yards for a plan in yards', () => {
    expect(words(mapOf(90, {}, 'imperial')).some(({ says }) => /^\d+ yd$/u.test(says))).toBe(true);
  });

  it.each([0, 45, 90, 135, 180, 225, 270, 315])(
    'names the sign, the tables as one, access, drop, first aid and toilets only, the north arrow off the course, running at %i°',
    (azimuthDeg) => {
      const centre = from(ORIGIN, azimuthDeg, 2000);
      const svg = mapOf(azimuthDeg, {
        serves: ['gel', 'sportsDrink', 'water'],
        points: points.map((point, k) => ({
          ...point,
          at: from(from(centre, azimuthDeg, 40 * k - 60), azimuthDeg + 90, 9),
        })),
      });
      const says = words(svg).map((one) => one.says);
      const { items, points: named, station } = en.frame;
      for (const word of [items.sign, `${station} 1`, named.drop, named.access, named.medical, named.toilets])
        expect(says).toContain(word);
      for (const word of [items.gel, items.sportsDrink, items.water, items.trash, named.radio, named.other])
        expect(says).not.toContain(word);
      // The course is one straight line through the middle of what is shown; the arrow's box stands beside it.
      const north = words(svg).find((one) => one.says === en.captain.map.north)!;
      const course = [...svg.matchAll(/<path d="(M[^"]*)" stroke="#000" stroke-width="0\.9"/gu)].flatMap(([, d]) =>
        [...d!.matchAll(/[ML]([-\d.]+) ([-\d.]+)/gu)].map(([, x, y]) => [Number(x), Number(y)] as const),
      );
      const [[x0, y0], [x1, y1]] = [course[0]!, course.at(-1)!];
      const off = (x: number, y: number): number =>
        Math.abs((x - x0) * (y1 - y0) - (y - y0) * (x1 - x0)) / Math.hypot(x1 - x0, y1 - y0);
      const middle = [north.x + north.width / 2, north.y - 3] as const;
      expect(off(...middle)).toBeGreaterThan(4);
    },
  );

  it('names roads of the context once each, beside their lines', () => {
    const layout = layoutOf(
      [turtle(ORIGIN, [[90, 4000]], 100)],
      [{ on: { course: 'c', measure: 2000, side: 'right', offset: 5 } }],
    );
    const [station] = layout.stations;
    const line = [from(station!.at, 0, 60), from(station!.at, 180, 60)].map(([lon, lat]) => [lon, lat]);
    const road = (name?: string) => ({
      type: 'Feature' as const,
      properties: { kind: 'road', ...(name === undefined ? {} : { name }) },
      geometry: { type: 'LineString' as const, coordinates: line },
    });
    const context = { type: 'FeatureCollection' as const, features: [road('Mill Lane'), road('Mill Lane'), road()] };
    const says = words(
      stationMap({ layout, station: station!, units: 'metric', text: en, width: 66, height: 42, context }).html,
    ).map((one) => one.says);
    expect(says.filter((one) => one === 'Mill Lane')).toHaveLength(1);
  });

  it('shows a station that no course passes by its points alone', () => {
    const layout = layoutOf(
      [turtle(ORIGIN, [[90, 4000]], 100)],
      [{ at: [-10, -30], points: [{ kind: 'medical', at: [-10.0001, -30] }] }],
    );
    const svg = stationMap({
      layout,
      station: layout.stations[0]!,
      units: 'metric',
      text: en,
      width: 66,
      height: 42,
    }).html;
    expect(svg).toContain('First aid');
    expect(svg).not.toMatch(/NaN|stroke-width="0\.9" fill="none" stroke-linejoin/u);
  });
});

it('takes 1, 2 or 5 times a power of ten for scale bars', () => {
  expect([0.7, 1, 3, 7, 23, 99, 100, 600].map(niceLength)).toEqual([0.5, 1, 2, 5, 20, 50, 100, 500]);
});
