/** GPX of a layout: what a hand-held device shows of each station, where things have no place or no side as well. */
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../analyse.ts';
import type { GpxWaypoint } from '../gpx/document.ts';
import { readGpx } from '../gpx/read.ts';
import type { Layout } from '../layout/layout.ts';
import { AT_1500, OUT_AND_BACK, STRAIGHT, analysisOf, runners } from '../testing/analyses.ts';
import { ORIGIN, courseOfSegments, from, turtle, turtlePoints, valueOf } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import type { UnitSystem } from '../units.ts';
import { CAUTION } from '../text/caution.ts';
import { toGpx } from './waypoints.ts';

const waypointsOf = (layout: Layout, units?: UnitSystem): readonly GpxWaypoint[] =>
  valueOf(readGpx(valueOf(toGpx(layout, units)), 'out.gpx')).waypoints;
const namesOf = (layout: Layout): (string | null)[] => waypointsOf(layout).map(({ name }) => name);
const descriptionOf = (layout: Layout, name: string, units?: UnitSystem): string | null =>
  waypointsOf(layout, units).find((one) => one.name === name)!.description;

describe('the waypoints of a station', () => {
  const layout = analysisOf(STRAIGHT, [{ ...AT_1500, name: 'Kelp Bay', serves: ['gel', 'water'] }]);

  it('are sign, first table, chalk mark and both ends of the trash drop, lettered in running order', () => {
    expect(namesOf(layout)).toEqual(['01A SIGN', '01B GEL', '01C STATION', '01D TRASH FROM', '01E TRASH TO']);
  });

  it('say what stands there, on which side, at which course distance and how far from the chalk mark by wheel', () => {
    // From the pin: gel tables end 25 ft (7.62 m) ahead and are 6 ft (1.8288 m) long, so the sign stands 91.44 + 9.4488 m before.
    expect(descriptionOf(layout, '01A SIGN')).toBe(
      'Sign "Water and gel ahead", right side; 1.399 km of Shore; 100.9 m before the chalk mark by wheel',
    );
    expect(descriptionOf(layout, '01B GEL')).toBe(
      'Gel, first table, right side; 1.491 km of Shore; 9.4 m before the chalk mark by wheel',
    );
    expect(descriptionOf(layout, '01C STATION')).toBe('Kelp Bay: gel, water; chalk mark at 1.500 km of Shore');
    // The water table is 1.8288 m long; boxes stand 50 to 100 yd past its end: 1.8288 + 45.72 = 47.5 m.
    expect(descriptionOf(layout, '01D TRASH FROM')).toBe(
      'Trash from, right side; 1.548 km of Shore; 47.5 m past the chalk mark by wheel',
    );
    expect(descriptionOf(layout, '01E TRASH TO')).toContain('Trash to, right side; 1.593 km');
  });

  it('are told in the units asked for, else in the plan’s', () => {
    // 50 yd and a table of 2 yd.
    expect(descriptionOf(layout, '01D TRASH FROM', 'imperial')).toContain('; 52 yd past the chalk mark by wheel');
    expect(descriptionOf({ ...layout, plan: { ...layout.plan, units: 'imperial' } }, '01D TRASH FROM')).toContain(
      '52 yd',
    );
  });

  it('call a table that begins at the chalk mark just that', () => {
    const drink = analysisOf(STRAIGHT, [{ ...AT_1500, serves: ['water'] }]);
    expect(descriptionOf(drink, '01C WATER')).toBe(
      'Water, first table, right side; 1.500 km of Shore; at the chalk mark',
    );
  });

  it('take the first table, never the hand-out line that race day adds, also where that line begins farther up', () => {
    const busy = analysisOf(STRAIGHT, [{ ...AT_1500, serves: ['water'], tables: { water: 1 } }], {
      races: [runners(3000)],
    });
    const line = busy.stations[0]!.directions[0]!.items.find(({ kind }) => kind === 'handOut')!;
    expect(line.along[0]).toBeLessThan(-1);
    expect(namesOf(busy)).toEqual(['01A SIGN', '01B STATION', '01C WATER', '01D TRASH FROM', '01E TRASH TO']);
  });

  it('end with its points, each by its kind, its name else its kind, its street and its note', () => {
    const at = from(ORIGIN, 90, 1450);
    const points = [
      { kind: 'drop', at, name: 'Supplies', street: 'Kelp Road', note: 'gate is low' },
      { kind: 'toilets', at },
    ] as const;
    const own = analysisOf(STRAIGHT, [{ ...AT_1500, serves: ['water'], points }]);
    expect(namesOf(own).slice(-2)).toEqual(['01F DROP', '01G TOILETS']);
    expect(descriptionOf(own, '01F DROP')).toBe('Supplies; Kelp Road; gate is low');
    expect(descriptionOf(own, '01G TOILETS')).toBe('toilets');
  });

  it('go on past the letter Y with ZA, so that more than 25 still sort', () => {
    const points = Array.from({ length: 25 }, () => ({ kind: 'other', at: ORIGIN }) as const);
    const names = namesOf(analysisOf(STRAIGHT, [{ ...AT_1500, serves: ['water'], points }]));
    expect(names.slice(23, 27)).toEqual(['01X OTHER', '01Y OTHER', '01ZA OTHER', '01ZB OTHER']);
    expect(names.toSorted((a, b) => (a! < b! ? -1 : 1))).toEqual(names);
  });

  it('have numbers of three digits in a plan of a hundred stations', () => {
    const many = layoutOf(
      [turtle(ORIGIN, [[90, 4000]], 200)],
      Array.from({ length: 100 }, (_, k) => ({
        on: { course: 'c', measure: 500 + 30 * k, side: 'right' as const, offset: 5 },
      })),
    );
    const marks = namesOf(many).filter((name) => name!.endsWith('STATION'));
    expect([marks[0], marks[8], marks[99]]).toEqual(['001B STATION', '009B STATION', '100B STATION']);
  });
});

describe('a station whose runners come both ways', () => {
  it('has a sign and a trash drop of its own for the other direction, and its tables once', () => {
    const layout = analysisOf(OUT_AND_BACK, [{ ...AT_1500, serves: ['water'], passes: 'all' }]);
    expect(namesOf(layout)).toEqual([
      '01A SIGN',
      '01B STATION',
      '01C WATER',
      '01D TRASH FROM',
      '01E TRASH TO',
      '01F SIGN',
      '01G TRASH FROM',
      '01H TRASH TO',
    ]);
    // They come back at 4.5 km, meet the table's end 1.8288 m before the pin, and have the tables on their left.
    expect(descriptionOf(layout, '01F SIGN')).toMatch(
      /^Sign "Water ahead", left side; 4\.407 km of Shore; .* before the chalk mark by wheel; for runners of another direction$/u,
    );
  });
});

describe('what has no place, no side or no wheel', () => {
  it('is left out of the waypoints, with one note that names it', () => {
    const layout = analysisOf(STRAIGHT, [
      { on: { course: 'c', measure: 50, side: 'right', offset: 5 }, serves: ['water'] },
    ]);
    const result = toGpx(layout);
    expect(namesOf(layout)).toEqual(['01B STATION', '01C WATER', '01D TRASH FROM', '01E TRASH TO']);
    expect(result.findings).toEqual([
      {
        code: 'export-unplaced',
        severity: 'note',
        message: 'These have no place on the ground: sign. The GPX file leaves them out; the layout says why.',
        params: { items: [{ item: 'sign', end: 'whole' }] },
        where: { path: '/stations/0', station: 's1' },
      },
    ]);
  });

  it('says that a side is unclear', () => {
    const layout = analysisOf(STRAIGHT, [{ at: from(ORIGIN, 90, 1500), serves: ['water'] }]);
    expect(layout.stations[0]!.directions[0]!.side).toBe('unclear');
    expect(descriptionOf(layout, '01A SIGN')).toContain('"Water ahead", side unclear; ');
  });

  it('says "along the course" where the line folds and no wheel can be run', () => {
    // A hairpin just after the tables, whose inside is the station's side.
    const layout = analysisOf(
      turtlePoints(
        ORIGIN,
        [
          [90, 1520],
          [255, 1500],
        ],
        20,
      ),
      [{ ...AT_1500, serves: ['water'] }],
    );
    expect(layout.stations[0]!.directions[0]!.items.at(-1)!.wheel).toBeNull();
    expect(descriptionOf(layout, '01D TRASH FROM')).toContain('47.5 m past the chalk mark along the course');
  });

  it('is one waypoint and its points for a station that no course runs by', () => {
    const far: Analysis = analysisOf(STRAIGHT, [
      { at: [-10, -30], name: 'Far Skerry', points: [{ kind: 'medical', at: [-10, -30] }] },
    ]);
    expect(waypointsOf(far).map(({ name, description, lon, lat }) => [name, description, lon, lat])).toEqual([
      ['01A STATION', 'Far Skerry: sports drink, water; no course runs by it', -10, -30],
      ['01B MEDICAL', 'medical', -10, -30],
    ]);
  });
});

describe('the courses', () => {
  it('are tracks with their length and their races', () => {
    const layout = analysisOf(STRAIGHT, [AT_1500], {
      races: [runners(10), runners(10, { id: 'h', name: 'Half Mile' })],
    });
    expect(valueOf(toGpx(layout))).toContain(
      '<trk><name>Shore</name><desc>4.000 km; Mile Run; Half Mile</desc><type>course</type>',
    );
  });

  it('have a segment before and one after a skipped gap, and elevations where the course has them', () => {
    const [first, second] = [
      turtlePoints(ORIGIN, [[90, 500]], 100),
      turtlePoints(from(ORIGIN, 90, 700), [[90, 500]], 100),
    ];
    const course = courseOfSegments([first, second], 'skip');
    const text = (one: typeof course): string =>
      valueOf(toGpx(layoutOf([one], [{ on: { course: 'c', measure: 300, side: 'right', offset: 5 } }])));
    const [track] = valueOf(readGpx(text(course), 'out.gpx')).tracks;
    expect(track!.segments.map(({ lon }) => lon.length)).toEqual([6, 6]);
    expect([...track!.segments[0]!.ele].every(Number.isNaN)).toBe(true);
    const [raised] = valueOf(
      readGpx(text({ ...course, ele: Float64Array.from({ length: 12 }, (_, i) => 10 + i) }), 'out.gpx'),
    ).tracks;
    expect(raised!.segments.map(({ ele }) => [...ele])).toEqual([
      [10, 11, 12, 13, 14, 15],
      [16, 17, 18, 19, 20, 21],
    ]);
  });

  it('have the caution of the papers in the file’s description, and the version where the plan has one', () => {
    const layout = analysisOf(STRAIGHT, [AT_1500]);
    const description = (own: Layout): string =>
      /<metadata><name>test<\/name><desc>(.*?)<\/desc>/u.exec(valueOf(toGpx(own)))![1]!;
    expect(description({ ...layout, plan: { ...layout.plan, revision: '3' } })).toBe(
      `Version 3. ${description(layout)}`,
    );
    expect(description(layout)).toBe(CAUTION);
  });
});
