/** The overview: which stations, ends and distances stand on the map and on the course drawn straight. */
import type { FeatureCollection } from 'geojson';
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../analyse.ts';
import { rawLength } from '../course/course.ts';
import type { LonLat } from '../finding.ts';
import { AT_1500, OUT_AND_BACK, STRAIGHT, analysisOf, runners } from '../testing/analyses.ts';
import { ORIGIN, courseOfSegments, from, turtlePoints } from '../testing/courses.ts';
import { layoutOf, planCourse, planRace } from '../testing/plans.ts';
import { en } from '../text/en.ts';
import { overviewBody } from './overview.ts';
import { overviewMap, ring } from './overviewMap.ts';
import { calledAt, courseStrip } from './overviewStrip.ts';
import type { Sheet } from './sheet.ts';

const sheet: Sheet = { text: en, paper: 'a4', printedAt: '2027-08-30 18:00' };
const mapOf = (
  layout: Pick<Analysis, 'courses' | 'stations'>,
  keys: Partial<Parameters<typeof overviewMap>[0]> = {},
): string => overviewMap({ layout, units: 'metric', text: en, width: 180, height: 100, ...keys }).html;
const textsOf = (drawing: string): string[] =>
  [...drawing.matchAll(/<text [^>]*>([^<]*)<\/text>/gu)].map(([, text]) => text!);
const endingIn = (drawing: string, unit: string): string[] => textsOf(drawing).filter((text) => text.endsWith(unit));
const placeOf = (drawing: string, id: string): { pin: readonly [number, number]; ring: readonly [number, number] } => {
  const [, group] = new RegExp(`<g data-station="${id}">(.*?)</g>`, 'u').exec(drawing)!;
  const [, cx, cy] = /<circle cx="([\d.-]+)" cy="([\d.-]+)"/u.exec(group!)!;
  const [, rx, ry] = /<ellipse cx="([\d.-]+)" cy="([\d.-]+)"/u.exec(group!)!;
  return { pin: [Number(cx), Number(cy)], ring: [Number(rx), Number(ry)] };
};

describe('the map', () => {
  const layout = analysisOf(STRAIGHT, [AT_1500, { on: { course: 'c', measure: 2500, side: 'left', offset: 5 } }]);
  const drawing = mapOf(layout);

  it('has start and finish, the stations’ numbers, north and a scale bar', () => {
    // 4 km on 158 mm: 1 km is 39.5 mm, so that the bar is the longest nice length of at most 40 mm.
    expect(textsOf(drawing)).toEqual(['Start', 'Finish', '1', '2', '1 km', 'N']);
  });

  it('puts each number on the station’s side of the road, as runners to the east see it', () => {
    const [right, left] = [placeOf(drawing, 's1'), placeOf(drawing, 's2')];
    // North is up and y grows downwards: right of a runner to the east is below.
    expect(right.ring[1]).toBeGreaterThan(right.pin[1] + 5);
    expect(left.ring[1]).toBeLessThan(left.pin[1] - 5);
    // 1,000 m apart at 158 mm for 4,000 m.
    expect(left.pin[0] - right.pin[0]).toBeCloseTo(39.5, 1);
  });

  it('dashes the ring of a station whose side is unclear, and makes room for numbers of three digits', () => {
    const unclear = analysisOf(STRAIGHT, [{ at: from(ORIGIN, 90, 1500) }]);
    expect(mapOf(unclear)).toMatch(/<ellipse [^>]*stroke-dasharray="0\.8 0\.6"/u);
    expect(drawing).not.toMatch(/<ellipse [^>]*stroke-dasharray/u);
    expect(ring(0, 0, 99).html).toContain('rx="2.7"');
    expect(ring(0, 0, 100).html).toContain('rx="3.7"');
  });

  it('is turned where the courses come out a quarter larger, with north kept and stations on their sides', () => {
    expect(drawing).toContain('data-turn="0"');
    // The same 4 km to the east in a frame that is taller than wide.
    const tall = mapOf(layout, { width: 100, height: 180 });
    const turn = Number(/data-turn="(-?\d+)"/u.exec(tall)![1]);
    expect(Math.abs(turn)).toBeGreaterThanOrEqual(45);
    const [right, left] = [placeOf(tall, 's1'), placeOf(tall, 's2')];
    const run = [left.pin[0] - right.pin[0], left.pin[1] - right.pin[1]] as const;
    // Upright in this frame 4 km would have 78 mm.
    expect(Math.hypot(...run)).toBeGreaterThan((78 / 4) * 1.25);
    // y grows downwards: what lies right of the way from one pin to the other has a positive cross product with it.
    const across = ({ pin, ring: at }: typeof right): number => run[0] * (at[1] - pin[1]) - run[1] * (at[0] - pin[0]);
    expect(across(right)).toBeGreaterThan(0);
    expect(across(left)).toBeLessThan(0);
    expect(tall).toContain(`rotate(${turn})`);
  });

  it('shows a station that no course runs by, with its number', () => {
    expect(textsOf(mapOf(analysisOf(STRAIGHT, [{ at: from(ORIGIN, 0, 500) }])))).toContain('1');
  });

  it('still numbers a station for which no free place is left', () => {
    const crowd = analysisOf(
      STRAIGHT,
      Array.from({ length: 30 }, () => AT_1500),
    );
    const numbers = textsOf(mapOf(crowd)).filter((text) => /^\d+$/u.test(text));
    expect(numbers).toEqual(Array.from({ length: 30 }, (_, k) => String(k + 1)));
  });

  it('writes start and finish once where both courses have them together', () => {
    const two = analysisOf(STRAIGHT, [], {
      courses: [planCourse('c', { line: STRAIGHT }), planCourse('d', { line: STRAIGHT })],
      races: [planRace('m', 'c'), planRace('h', 'd')],
    });
    expect(textsOf(mapOf(two)).filter((text) => text === 'Start' || text === 'Finish')).toEqual(['Start', 'Finish']);
    expect(mapOf(two).match(/<rect [^>]*width="2" height="2"/gu)).toHaveLength(4);
  });

  it('has figures each fifth kilometre, and no ticks between where they would touch', () => {
    const long = analysisOf(turtlePoints(ORIGIN, [[90, 22_000]], 200), []);
    expect(endingIn(mapOf(long), ' km')).toEqual(['5 km', '10 km', '15 km', '20 km', '5 km']);
    const tight = analysisOf(turtlePoints(ORIGIN, [[90, 160_000]], 1000), []);
    // 158 mm for 160 km: a tick a kilometre would be 0.99 mm apart.
    expect(mapOf(tight).match(/stroke-width="0\.35"/gu)).toBeNull();
    expect(mapOf(long).match(/stroke-width="0\.35"/gu)).toHaveLength(17);
  });

  it('counts in miles where the plan does', () => {
    const long = analysisOf(turtlePoints(ORIGIN, [[90, 22_000]], 200), []);
    // 22 km are 13.67 mi; 40 mm of 158 are 3.46 mi, of which the longest nice length is 2.
    expect(endingIn(mapOf(long, { units: 'imperial' }), ' mi')).toEqual(['5 mi', '10 mi', '2 mi']);
    const short = analysisOf(turtlePoints(ORIGIN, [[90, 1000]], 100), []);
    expect(endingIn(mapOf(short, { units: 'imperial' }), ' mi')).toEqual(['0.1 mi']);
    expect(endingIn(mapOf(short), ' m')).toEqual(['200 m']);
  });

  it('draws no line over a skipped gap, and no tick in it', () => {
    const course = courseOfSegments(
      [turtlePoints(ORIGIN, [[90, 5000]], 100), turtlePoints(from(ORIGIN, 90, 5400), [[90, 3000]], 100)],
      'skip',
    );
    const gapped = layoutOf([course], []);
    const [, d] = /<path d="([^"]*)" fill="none" stroke="#000" stroke-width="0\.8"/u.exec(mapOf(gapped))!;
    expect(d!.match(/M/gu)).toHaveLength(2);
    // The fifth kilometre lies at the gap: it has no place and so no figure.
    expect(endingIn(mapOf(gapped), ' km')).toEqual(['2 km']);
  });

  it('lays the plan’s drawing under the course', () => {
    const context: FeatureCollection = {
      type: 'FeatureCollection',
      features: [
        {
          type: 'Feature',
          properties: { kind: 'road' },
          geometry: { type: 'LineString', coordinates: [[...ORIGIN], [...from(ORIGIN, 90, 2000)]] },
        },
      ],
    };
    const [before, after] = mapOf(layout, { context }).split('stroke-width="0.8"');
    expect(before).toContain('stroke="#bdbdbd" stroke-width="0.4"');
    expect(after).not.toContain('#bdbdbd');
    expect(drawing).not.toContain('#bdbdbd');
  });
});

describe('the course drawn straight', () => {
  it('numbers stations above the line for the left, below for the right, in running order, each as often as it is passed', () => {
    const both = analysisOf(OUT_AND_BACK, [{ ...AT_1500, passes: 'all' }]);
    expect(
      calledAt(both.stations, 'c').map(({ number, side, measure }) => [number, side, Math.round(measure)]),
    ).toEqual([
      [1, 'right', 1500],
      [1, 'left', 4500],
    ]);
    expect(calledAt(both.stations, 'other')).toEqual([]);
    const { svg } = courseStrip(both, both.courses[0]!.course, 180, en);
    const rings = [...svg.html.matchAll(/<ellipse cx="([\d.]+)" cy="([\d.]+)"/gu)].map(([, x, y]) => [
      Number(x),
      Number(y),
    ]);
    const line = Number(/M33 ([\d.]+)H/u.exec(svg.html)![1]);
    expect(rings[0]![1]).toBeGreaterThan(line);
    expect(rings[1]![1]).toBeLessThan(line);
    // 33 mm gutter, 142 mm for 6 km.
    expect(rings.map(([x]) => x)).toEqual([expect.closeTo(33 + 35.5, 1), expect.closeTo(33 + 106.5, 1)]);
  });

  it('shares one number where two races pass the station at the same distance', () => {
    const two = analysisOf(STRAIGHT, [AT_1500], { races: [runners(0), runners(0, { id: 'h' })] });
    expect(calledAt(two.stations, 'c')).toHaveLength(1);
  });

  it('sets a number a level out where it would lie on the one before', () => {
    const near = analysisOf(STRAIGHT, [AT_1500, { on: { course: 'c', measure: 1560, side: 'right', offset: 5 } }]);
    const heights = [
      ...courseStrip(near, near.courses[0]!.course, 180, en).svg.html.matchAll(/<ellipse cx="[\d.]+" cy="([\d.]+)"/gu),
    ].map(([, y]) => Number(y));
    expect(heights[1]! - heights[0]!).toBeCloseTo(6.2, 2);
  });

  it('has a lane a race with the length of every leg, in kilometres or miles', () => {
    const layout = analysisOf(STRAIGHT, [AT_1500], { races: [runners(0)] });
    const legs = (one: Analysis): string[] =>
      [...courseStrip(one, one.courses[0]!.course, 180, en).svg.html.matchAll(/data-leg="m">([^<]*)</gu)].map(
        ([, leg]) => leg!,
      );
    expect(legs(layout)).toEqual(['1.50', '2.50']);
    const miles = { ...layout, plan: { ...layout.plan, units: 'imperial' as const } };
    // 1.5 km ÷ 1.609344 and 2.5 km ÷ 1.609344.
    expect(legs(miles)).toEqual(['0.93', '1.55']);
    expect(textsOf(courseStrip(layout, layout.courses[0]!.course, 180, en).svg.html)).toContain('Mile Run, km');
    expect(textsOf(courseStrip(miles, miles.courses[0]!.course, 180, en).svg.html)).toEqual(
      expect.arrayContaining(['Mile Run, mi', 'mi', '1', '2']),
    );
  });

  it('has a figure as often as there is room', () => {
    const figures = (length: number): string[] => {
      const layout = analysisOf(STRAIGHT, []);
      const { course } = layout.courses[0]!;
      const stretched = { ...course, scale: { raw: [0, rawLength(course)], measure: [0, length] } };
      return textsOf(courseStrip({ ...layout, spacing: [] }, stretched, 180, en).svg.html).slice(1);
    };
    expect(figures(4100)).toEqual(['0', '1', '2', '3', '4']);
    // 142 mm for 50.5 km: 2.8 mm a kilometre, so every fifth.
    expect(figures(50_500)).toEqual(['0', '5', '10', '15', '20', '25', '30', '35', '40', '45', '50']);
    // To the very end also where a kilometre is far too small to be seen: 142 mm for 2,500 km leave 11.4 mm for 200.
    expect(figures(2_500_500).map(Number)).toEqual(Array.from({ length: 13 }, (_, k) => 200 * k));
  });

  it('shows the ground in grey, from the lowest to the highest, where the course has elevations', () => {
    const layout = layoutOf([courseOfSegments([STRAIGHT], 'refuse')], []);
    const { course } = layout.courses[0]!;
    expect(courseStrip(layout, course, 180, en).ground).toBeNull();
    const raised = { ...course, ele: Float64Array.from(course.lon, (_, k) => 10 + k) };
    const strip = courseStrip(layout, raised, 180, en);
    expect(strip.ground).toEqual([10, expect.closeTo(50, 6)]);
    expect(strip.svg.html).toContain('fill="#dcdcdc"');
    expect(
      courseStrip(layout, { ...course, ele: new Float64Array(course.lon.length).fill(NaN) }, 180, en).ground,
    ).toBeNull();
  });

  it('cuts a race’s name that has no room, and shows it whole where it has', () => {
    const layout = analysisOf(STRAIGHT, [], {
      races: [runners(0, { name: 'The very long name of a race round the island' })],
    });
    const name = textsOf(courseStrip(layout, layout.courses[0]!.course, 180, en).svg.html).find((text) =>
      text.endsWith(', km'),
    );
    expect(name).toMatch(/^The very.*…, km$/u);
  });
});

describe('the overview', () => {
  it('lists each station with its distance and side, a dash for one that no course runs by', () => {
    const page = overviewBody(
      analysisOf(STRAIGHT, [AT_1500, { at: [ORIGIN[0], ORIGIN[1] + 0.01], name: 'Skerry' }]),
      sheet,
    ).html;
    expect(page).toMatch(/<b>1<\/b> <span class="name"><bdi>s1<\/bdi><\/span> <span>1\.500 km, right<\/span>/u);
    expect(page).toMatch(/<b>2<\/b> <span class="name"><bdi>Skerry<\/bdi><\/span> <span>–<\/span>/u);
  });

  it('says how high the ground is under a strip', () => {
    const line: LonLat[] = [...STRAIGHT];
    const courses = [planCourse('c', { name: 'Shore', line: line.map(([lon, lat], k) => [lon, lat, 10 + k]) })];
    expect(overviewBody(analysisOf(STRAIGHT, [], { courses }), sheet).html).toContain('Elevation (grey): 10 m to 50 m');
    expect(overviewBody(analysisOf(STRAIGHT, []), sheet).html).not.toContain('class="ground"');
  });

  it('draws the courses that races run, else all, and the plan’s drawing where it is given', () => {
    const courses = [
      planCourse('c', { name: 'Shore', line: STRAIGHT }),
      planCourse('d', { name: 'Hill', line: STRAIGHT }),
    ];
    const one = overviewBody(analysisOf(STRAIGHT, [], { courses }), sheet).html;
    expect([one.includes('Shore'), one.includes('Hill')]).toEqual([true, false]);
    const none = overviewBody(analysisOf(STRAIGHT, [], { courses, races: [] }), sheet).html;
    expect(none).toContain('Hill');
    expect(none).not.toContain('class="strip"');
    const context: FeatureCollection = {
      type: 'FeatureCollection',
      features: [
        {
          type: 'Feature',
          properties: { kind: 'land' },
          geometry: {
            type: 'Polygon',
            coordinates: [[[...ORIGIN], [...from(ORIGIN, 90, 2000)], [...from(ORIGIN, 0, 2000)], [...ORIGIN]]],
          },
        },
      ],
    };
    expect(overviewBody(analysisOf(STRAIGHT, []), sheet, context).html).toContain('fill="#f5f5f5"');
  });
});
