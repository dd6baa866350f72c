import { describe, expect, it } from 'vitest';
import type { Result } from '../finding.ts';
import { valueOf } from '../testing/courses.ts';
import { courseFromGeoJson, placesFromGeoJson, polygonsFromGeoJson } from './fromGeoJson.ts';
import { positionOf } from './foreign.ts';
import { courseFromGpxParser } from './fromGpxParser.ts';

const LINE = [
  [-30.1, 12.2, 5],
  [-30.099, 12.2, 7],
  [-30.098, 12.2, 9],
];
const feature = (geometry: unknown, properties: unknown = null): object => ({ type: 'Feature', properties, geometry });
const collection = (...features: unknown[]): object => ({ type: 'FeatureCollection', features });
const line = (coordinates: unknown = LINE): object => ({ type: 'LineString', coordinates });
const point = (...coordinates: number[]): object => ({ type: 'Point', coordinates });
const messages = ({ findings }: Result<unknown>): string[] => findings.map(({ message }) => message);

// RFC 7946: types and their coordinates (read).
describe('a course from GeoJSON', () => {
  it('is read from a geometry, a feature, and collections of either, with the feature’s name', () => {
    for (const of of [
      line(),
      feature(line()),
      collection(feature(line())),
      { type: 'GeometryCollection', geometries: [point(0, 0), line()] },
    ]) {
      const course = valueOf(courseFromGeoJson(of));
      expect(course).toMatchObject({
        id: 'course',
        name: 'course',
        points: 3,
        skips: [],
        lon: Float64Array.of(-30.1, -30.099, -30.098),
        ele: Float64Array.of(5, 7, 9),
      });
    }
    expect(valueOf(courseFromGeoJson(feature(line(), { name: 'Pier run' })))).toMatchObject({
      id: 'course',
      name: 'Pier run',
    });
    expect(
      valueOf(courseFromGeoJson(feature({ type: 'GeometryCollection', geometries: [line()] }, { name: 'Pier run' })))
        .name,
    ).toBe('Pier run');
    for (const properties of [null, { name: '' }, { name: 7 }, ['name']])
      expect(valueOf(courseFromGeoJson(feature(line(), properties))).name).toBe('course');
    expect(valueOf(courseFromGeoJson(feature(line(), { name: 'Pier run' }), { id: 'p', name: 'Own' }))).toMatchObject({
      id: 'p',
      name: 'Own',
    });
  });

  it('has a segment for each part of a line in several', () => {
    const parts = {
      type: 'MultiLineString',
      coordinates: [
        LINE,
        [
          [-30.0979, 12.2],
          [-30.097, 12.2],
        ],
      ],
    };
    const course = valueOf(courseFromGeoJson(parts));
    expect(course.gaps).toEqual([{ after: 2, length: expect.closeTo(10.9, 1) }]);
    expect(course.ele).toBeNull();
  });

  it('is the line that is asked for, by name or index, else the first, with a note', () => {
    const two = collection(
      feature(
        line([
          [1, 1],
          [1.001, 1],
        ]),
        { name: 'A' },
      ),
      feature(point(1, 1)),
      feature(line(), { name: 'B' }),
    );
    expect(valueOf(courseFromGeoJson(two, { track: 'B' })).lon[0]).toBe(-30.1);
    expect(valueOf(courseFromGeoJson(two, { track: 1 })).name).toBe('B');
    const first = courseFromGeoJson(two);
    expect(valueOf(first).name).toBe('A');
    expect(first.findings).toEqual([expect.objectContaining({ code: 'track-chosen', severity: 'note' })]);
  });

  it('tells of what the track leaves to be desired', () => {
    const spiked = [
      [-30.104, 12.2],
      [-30.102, 12.2],
      [-30.1, 12.2],
      [-30.099, 12.201],
      [-30.1, 12.2001],
      [-30.098, 12.2],
      [-30.096, 12.2],
    ];
    expect(courseFromGeoJson(line(spiked)).findings.map(({ code }) => code)).toEqual(['track-spike']);
    expect(
      courseFromGeoJson(
        line([
          [0, 0],
          [0, 0],
        ]),
      ).findings.map(({ code }) => code),
    ).toEqual(['course-too-short']);
  });

  it('is refused with the place of each point that is no position, the first twenty', () => {
    const wrong = courseFromGeoJson(feature(line([[-30.1, 12.2], [-30.1], [12.2, -95], ['1', 2], [181, 5]])));
    expect(wrong.ok).toBe(false);
    expect(wrong.findings.map(({ where }) => where.path)).toEqual([
      '/geometry/coordinates/1',
      '/geometry/coordinates/2',
      '/geometry/coordinates/3',
      '/geometry/coordinates/4',
    ]);
    expect(messages(wrong)[0]).toBe(
      'The longitude is -30.1, the latitude is missing. They should be degrees from -180 to 180 and from -90 to 90.',
    );
    expect(
      messages(
        courseFromGeoJson(
          line([
            [12.2, -130.1],
            [12.2, -130],
          ]),
        ),
      )[0],
    ).toContain('the two may be swapped');
    expect(messages(wrong)[1]).toContain('the two may be swapped');
    expect(messages(wrong)[3]).not.toContain('swapped');
    expect(courseFromGeoJson(line(Array.from({ length: 30 }, () => [200, 0]))).findings).toHaveLength(20);
    // What is wrong with a line that is not chosen does not count.
    expect(
      courseFromGeoJson(collection(feature(line(), { name: 'A' }), feature(line([[200, 0]]), { name: 'B' })), {
        track: 'A',
      }).ok,
    ).toBe(true);
  });

  it('takes an elevation that is no number for none', () => {
    for (const ele of [null, '5', Infinity])
      expect(
        valueOf(
          courseFromGeoJson(
            line([
              [-30.1, 12.2, ele],
              [-30.099, 12.2, 7],
            ]),
          ),
        ).ele,
      ).toBeNull();
  });
});

describe('what is no GeoJSON', () => {
  it('is named by what was found, where, and what was expected', () => {
    const cases: [value: unknown, path: string, message: string][] = [
      [null, '', 'The GeoJSON has null here. It should be a GeoJSON object.'],
      [[line()], '', 'The GeoJSON has a list of 1 here. It should be a GeoJSON object.'],
      [7, '', 'The GeoJSON has 7 here. It should be a GeoJSON object.'],
      [
        { type: 'Curve', coordinates: [] },
        '',
        'The type in the GeoJSON is “Curve”. It should be Feature, FeatureCollection, GeometryCollection, or a point, line or polygon.',
      ],
      [
        { coordinates: [] },
        '',
        'The type in the GeoJSON is nothing. It should be Feature, FeatureCollection, GeometryCollection, or a point, line or polygon.',
      ],
      [{ type: 'LineString' }, '/coordinates', 'The GeoJSON has nothing here. It should be a list of coordinates.'],
      [
        { type: 'FeatureCollection', features: {} },
        '/features',
        'The GeoJSON has an object here. It should be a list.',
      ],
      [{ type: 'GeometryCollection' }, '/geometries', 'The GeoJSON has nothing here. It should be a list.'],
      [collection(feature(line()), 'x'), '/features/1', 'The GeoJSON has “x” here. It should be a GeoJSON object.'],
      [feature('x'), '/geometry', 'The GeoJSON has “x” here. It should be a GeoJSON object.'],
    ];
    for (const [value, path, message] of cases) {
      for (const read of [courseFromGeoJson, placesFromGeoJson, polygonsFromGeoJson]) {
        const result: Result<unknown> = read(value);
        expect(result.ok).toBe(false);
        expect(messages(result)).toEqual([message]);
        expect(result.findings[0]).toMatchObject({ code: 'geojson', severity: 'error', where: { path } });
      }
    }
  });

  it('is told of every feature that is wrong, not only of the first', () => {
    expect(placesFromGeoJson(collection(1, feature(point(1, 2)), 2)).findings.map(({ where }) => where.path)).toEqual([
      '/features/0',
      '/features/2',
    ]);
  });

  it('ends where collections are nested without end', () => {
    let nest: object = point(1, 2);
    for (let k = 0; k < 200; k++) nest = { type: 'GeometryCollection', geometries: [nest] };
    expect(placesFromGeoJson(nest).findings).toEqual([
      expect.objectContaining({
        message: 'The GeoJSON nests collections too deeply. There should be only a few levels.',
        where: { path: expect.stringMatching(/^\/geometries\/0\/.{1,40}$/u) as string },
      }),
    ]);
    let few: object = point(1, 2);
    for (let k = 0; k < 50; k++) few = { type: 'GeometryCollection', geometries: [few] };
    expect(valueOf(placesFromGeoJson(few))).toHaveLength(1);
  });

  it('is not a feature without a place', () => {
    expect(valueOf(placesFromGeoJson(collection(feature(null), feature(point(1, 2)))))).toEqual([
      { name: null, at: [1, 2] },
    ]);
  });
});

describe('places and polygons from GeoJSON', () => {
  const RING = [
    [1, 1],
    [1.01, 1],
    [1.01, 1.01],
    [1, 1],
  ];

  it('are all points, with their names, and all polygons, without the closing point', () => {
    const mixed = collection(
      feature(point(1, 2, 30), { name: 'Pin' }),
      feature({
        type: 'MultiPoint',
        coordinates: [
          [3, 4],
          [5, 6],
        ],
      }),
      feature(line()),
      feature({ type: 'Polygon', coordinates: [RING] }, { name: 'Green' }),
      feature({ type: 'MultiPolygon', coordinates: [[RING], [RING.slice(0, 3)]] }),
    );
    expect(valueOf(placesFromGeoJson(mixed))).toEqual([
      { name: 'Pin', at: [1, 2] },
      { name: null, at: [3, 4] },
      { name: null, at: [5, 6] },
    ]);
    const open = RING.slice(0, 3);
    expect(valueOf(polygonsFromGeoJson(mixed))).toEqual([
      { name: 'Green', polygon: open },
      { name: null, polygon: open },
      { name: null, polygon: open },
    ]);
  });

  it('keep a ring open whose ends share one of both numbers only', () => {
    for (const last of [
      [1, 1.02],
      [1.02, 1],
    ])
      expect(
        valueOf(polygonsFromGeoJson({ type: 'Polygon', coordinates: [[...RING.slice(0, 3), last]] }))[0]!.polygon,
      ).toHaveLength(4);
  });

  it('are refused with holes, with fewer than three corners, and with a corner that is no position', () => {
    const polygon = (...rings: unknown[]): object => ({ type: 'Polygon', coordinates: rings });
    expect(messages(polygonsFromGeoJson(polygon(RING, RING)))).toEqual([
      'The polygon has a hole. It should be one ring.',
    ]);
    expect(messages(polygonsFromGeoJson(polygon(RING, RING, RING)))).toEqual([
      'The polygon has 2 holes. It should be one ring.',
    ]);
    expect(
      messages(
        polygonsFromGeoJson(
          polygon([
            [1, 1],
            [2, 2],
            [1, 1],
          ]),
        ),
      ),
    ).toEqual(['The ring has 2 corners. It should have three or more.']);
    expect(messages(polygonsFromGeoJson(polygon()))).toEqual(['The ring has 0 corners. It should have three or more.']);
    expect(
      polygonsFromGeoJson(
        polygon([
          [1, 1],
          [2, 200],
          [2, 1],
        ]),
      ).findings.map(({ code, where }) => [code, where.path]),
    ).toEqual([['position', '/coordinates/0/1']]);
    expect(
      polygonsFromGeoJson({ type: 'MultiPolygon', coordinates: [[RING], [RING, RING]] }).findings.map(
        ({ where }) => where.path,
      ),
    ).toEqual(['/coordinates/1']);
    expect(
      placesFromGeoJson({ type: 'MultiPoint', coordinates: [[3, 4], [3]] }).findings.map(({ where }) => where.path),
    ).toEqual(['/coordinates/1']);
    expect(placesFromGeoJson(point(3, 91)).findings.map(({ where }) => where.path)).toEqual(['/coordinates']);
  });

  it('may lie right at the bounds of longitude and latitude', () => {
    for (const at of [
      [180, 90],
      [-180, -90],
    ])
      expect(valueOf(placesFromGeoJson({ type: 'Point', coordinates: at }))).toEqual([{ name: null, at }]);
  });
});

describe('a course from the result of a parser', () => {
  const points = LINE.map(([lon, lat, ele]) => ({ lon: lon!, lat: lat!, ele: ele! }));

  it('is the first track with points, else the first route, with its name', () => {
    expect(
      valueOf(courseFromGpxParser({ tracks: [{ name: 'T', points }], routes: [{ name: 'R', points }] })).name,
    ).toBe('T');
    expect(valueOf(courseFromGpxParser({ tracks: [], routes: [{ name: 'R', points }] }))).toMatchObject({
      name: 'R',
      ele: Float64Array.of(5, 7, 9),
    });
    expect(
      valueOf(
        courseFromGpxParser({
          tracks: [{ points: points.map(({ lon, lat }) => ({ lon, lat, ele: null })) }],
          routes: [],
        }),
      ),
    ).toMatchObject({ name: 'course', ele: null });
  });

  it('is refused where a point is no position', () => {
    const { ok, findings } = courseFromGpxParser({
      tracks: [{ name: 'T', points: [...points, { lon: NaN, lat: 1 }] }],
      routes: [],
    });
    expect([ok, findings.map(({ code }) => code)]).toEqual([false, ['position']]);
    expect(findings[0]!.where).toEqual({ path: '/tracks/0/points/3' });
    expect(findings[0]!.message).toBe(
      'The longitude is not a number, the latitude is 1. They should be degrees from -180 to 180 and from -90 to 90.',
    );
  });
});

it('a position is refused with its place where it has one, and without where it has none', () => {
  for (const where of [{}, { path: '' }, { path: '/at' }]) {
    const [finding] = positionOf({ lon: 200, lat: 1, where }).findings;
    expect(finding!.where).toEqual(where);
    expect(finding!.message).toMatch(/^The longitude is 200, the latitude is 1\. They should be degrees/u);
  }
});
