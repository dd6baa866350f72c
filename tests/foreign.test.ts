/**
 * What other tools hold, in and out: gpxparser's result (gpxparser 3, MIT, in a process of its own) and GeoJSON (RFC 7946; the schema is
 * that of the npm package geojson-schema 1.0.5, the peers are Turf 7 and the standard's own examples, appendix A).
 */
import { booleanClockwise, kinks, lineString } from '@turf/turf';
import { Ajv } from 'ajv';
import fc from 'fast-check';
import type { Feature, GeoJSON, LineString, MultiLineString, MultiPolygon, Polygon } from 'geojson';
import geoJsonSchema from 'geojson-schema/GeoJSON.json' with { type: 'json' };
import type GpxParser from 'gpxparser';
import {
  courseFromGeoJson,
  courseToGeoJson,
  passesToGeoJson,
  placesFromGeoJson,
  placesToGeoJson,
  polygonsFromGeoJson,
  polygonsToGeoJson,
} from '@halfcup/core/geojson';
import {
  type Course,
  type ForeignOptions,
  buildCourse,
  courseFromGpxParser,
  courseLength,
  indexCourse,
  passesOf,
} from '@halfcup/core/geometry';
import { readGpx } from '@halfcup/core/gpx';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { OUT_AND_BACK } from './support/courses.ts';
import { peerOf } from './support/gpxparser.ts';
import { tries } from '../packages/core/src/testing/tries.ts';

interface Answer<T> {
  readonly ok: boolean;
  readonly value?: T;
  readonly findings: readonly {
    readonly message: string;
    readonly code: string;
    readonly where: { readonly path?: string };
  }[];
}

const valueOf = <T>(result: Answer<T>): T => {
  expect(result.findings.map(({ message }) => message)).toEqual([]);
  return result.value!;
};
const messagesOf = (result: Answer<unknown>): readonly string[] => {
  expect(result.ok).toBe(false);
  return result.findings.map(({ message }) => message);
};
const columns = ({ lon, lat, ele, raw }: Course): unknown => ({
  lon: [...lon],
  lat: [...lat],
  ele: ele === null ? null : [...ele],
  raw: [...raw],
});

describe('a course from gpxparser’s result', () => {
  const peer = peerOf(OUT_AND_BACK);
  const read = readGpx(readFileSync(OUT_AND_BACK), 'run.gpx');
  if (!read.ok) throw new Error('the file is read in other tests');
  const own = buildCourse({ id: 'course', name: 'x', segments: read.value.tracks[0]!.segments });

  it('is the course of the file that gpxparser has read, to the bit', () => {
    const result = courseFromGpxParser(peer);
    expect(result.ok && own.ok && [columns(result.value), result.value.name]).toEqual(
      own.ok && [columns(own.value), peer.tracks[0]!.name],
    );
  });

  it('takes the package’s own type as it is', () => {
    const take = (parsed: GpxParser): number => courseFromGpxParser(parsed).findings.length;
    expect(take({ ...peer, tracks: [], routes: [] } as unknown as GpxParser)).toBe(1);
  });

  it('takes the named line, or the second, of several', () => {
    const lap = (name: string, lon: number): { name: string; points: { lat: number; lon: number }[] } => ({
      name,
      points: [
        { lat: 0, lon: 0 },
        { lat: 0, lon },
      ],
    });
    const parsed = { tracks: [lap('Short', 0.001)], routes: [lap('Long', 0.002)] };
    const metresOf = (options: ForeignOptions): string => {
      const result = courseFromGpxParser(parsed, options);
      return result.ok ? courseLength(result.value).toFixed(2) : 'none';
    };
    // A degree along the equator is 111,319.49 m (WGS 84: 6,378,137 m × π ÷ 180).
    expect([metresOf({}), metresOf({ track: 'Long' }), metresOf({ track: 1 })]).toEqual(['111.32', '222.64', '222.64']);
    expect(courseFromGpxParser(parsed).findings).toMatchObject([
      { code: 'track-chosen', message: expect.stringContaining('0: “Short”, 1: “Long”') },
    ]);
    expect(messagesOf(courseFromGpxParser(parsed, { track: 'Longest' }))).toEqual([
      'gpxparser has no track or route “Longest”. Choose one of these: 0: “Short”, 1: “Long”.',
    ]);
  });

  it('refuses the NaN that gpxparser makes of a missing latitude, only where it is on the line that is taken', () => {
    const broken = {
      name: 'B',
      points: [
        { lat: NaN, lon: 1 },
        { lat: 2, lon: 1 },
      ],
    };
    const whole = {
      name: 'W',
      points: [
        { lat: 0, lon: 0 },
        { lat: 0, lon: 1e-3 },
      ],
    };
    expect(messagesOf(courseFromGpxParser({ tracks: [broken], routes: [] }))).toEqual([
      'The longitude is 1, the latitude is not a number. They should be degrees from -180 to 180 and from -90 to 90.',
    ]);
    expect(courseFromGpxParser({ tracks: [whole, broken], routes: [] }).ok).toBe(true);
  });

  it('warns of a step that was a gap between segments, which gpxparser joins', () => {
    const points = Array.from({ length: 40 }, (_, k) => ({ lat: 0, lon: (k < 20 ? k : k + 5000) * 1e-4 }));
    expect(courseFromGpxParser({ tracks: [{ points }], routes: [] }).findings).toMatchObject([
      { code: 'track-jump', severity: 'warning' },
    ]);
  });
});

describe('GeoJSON in', () => {
  const LINE: LineString = {
    type: 'LineString',
    coordinates: [
      [102, 0],
      [102.001, 0.001],
      [102.002, 0],
    ],
  };
  // Appendix A.2, A.3 and A.6 of RFC 7946, with the line made short enough to be a course.
  const RING = [
    [100, 0],
    [101, 0],
    [101, 1],
    [100, 1],
    [100, 0],
  ];

  it.each<[string, GeoJSON]>([
    ['a geometry', LINE],
    ['a feature', { type: 'Feature', properties: { name: 'Shore' }, geometry: LINE }],
    [
      'a collection of features with other geometries',
      {
        type: 'FeatureCollection',
        features: [
          { type: 'Feature', properties: null, geometry: { type: 'Point', coordinates: [1, 2] } },
          { type: 'Feature', properties: {}, geometry: LINE },
        ],
      },
    ],
    ['a collection of geometries', { type: 'GeometryCollection', geometries: [LINE] }],
  ])('takes the line of %s', (_, geoJson) => {
    const course = valueOf(courseFromGeoJson(geoJson, { id: 'c' }));
    expect([[...course.lon], [...course.lat], course.ele]).toEqual([[102, 102.001, 102.002], [0, 0.001, 0], null]);
    expect(course.name).toBe(geoJson.type === 'Feature' ? 'Shore' : 'c');
  });

  it('takes elevations, and the parts of a line as segments with their gaps', () => {
    const parts: MultiLineString = {
      type: 'MultiLineString',
      coordinates: [
        [
          [0, 0, 5],
          [0.001, 0, 7],
        ],
        [
          [0.003, 0, 7],
          [0.004, 0, 9],
        ],
      ],
    };
    expect(messagesOf(courseFromGeoJson(parts))[0]).toContain('Two segments are 223 m apart, between points 2 and 3.');
    const skipped = courseFromGeoJson(parts, { gaps: 'skip' });
    expect(skipped.ok && [[...skipped.value.ele!], courseLength(skipped.value).toFixed(2)]).toEqual([
      [5, 7, 7, 9],
      '222.64',
    ]);
  });

  it('takes named places and the outer rings of polygons, closed by themselves', () => {
    const feature = (geometry: Feature['geometry'], name?: string): Feature => ({
      type: 'Feature',
      properties: name === undefined ? null : { name },
      geometry,
    });
    const all: GeoJSON = {
      type: 'FeatureCollection',
      features: [
        feature({ type: 'Point', coordinates: [100, 0] }, 'Pier'),
        feature({
          type: 'MultiPoint',
          coordinates: [
            [100, 0],
            [101, 1],
          ],
        }),
        feature({ type: 'Polygon', coordinates: [RING] }, 'Yard'),
        feature({ type: 'MultiPolygon', coordinates: [[RING], [RING]] }),
        { type: 'Feature', properties: null, geometry: null } as unknown as Feature,
      ],
    };
    expect(valueOf(placesFromGeoJson(all))).toEqual([
      { name: 'Pier', at: [100, 0] },
      { name: null, at: [100, 0] },
      { name: null, at: [101, 1] },
    ]);
    const ring = RING.slice(0, 4);
    expect(valueOf(polygonsFromGeoJson(all))).toEqual([
      { name: 'Yard', polygon: ring },
      { name: null, polygon: ring },
      { name: null, polygon: ring },
    ]);
  });

  it.each<[string, unknown, string]>([
    ['a text', 'LineString', 'The GeoJSON has “LineString” here. It should be a GeoJSON object.'],
    ['nothing', null, 'The GeoJSON has null here. It should be a GeoJSON object.'],
    [
      'a topology',
      { type: 'Topology' },
      'The type in the GeoJSON is “Topology”. It should be Feature, FeatureCollection, GeometryCollection, or a point, line or polygon.',
    ],
    ['no features', { type: 'FeatureCollection' }, 'The GeoJSON has nothing here. It should be a list.'],
    [
      'no coordinates',
      { type: 'Feature', geometry: { type: 'LineString' } },
      'The GeoJSON has nothing here. It should be a list of coordinates.',
    ],
    [
      'a swapped pair',
      {
        type: 'LineString',
        coordinates: [
          [-33.2, -117.4],
          [-33.3, -117.5],
        ],
      },
      'The longitude is -33.2, the latitude is -117.4. They should be degrees from -180 to 180 and from -90 to 90. Longitude comes first: the two may be swapped.',
    ],
    [
      'a text for a number',
      { type: 'LineString', coordinates: [['1', 2]] },
      'The longitude is “1”, the latitude is 2. They should be degrees from -180 to 180 and from -90 to 90.',
    ],
    [
      'points only',
      { type: 'Point', coordinates: [1, 2] },
      'GeoJSON has no track or route with points. It should have one to be the course.',
    ],
  ])('says what is wrong with %s', (_, geoJson, message) =>
    expect(messagesOf(courseFromGeoJson(geoJson))[0]).toBe(message),
  );

  it('refuses holes, rings of two corners and places that are none, each with where it stands', () => {
    const placed = ({ findings }: Answer<unknown>): string[] =>
      findings.map(({ where, message }) => `${where.path}: ${message}`);
    expect(placed(polygonsFromGeoJson({ type: 'Polygon', coordinates: [RING, RING] }))).toEqual([
      '/coordinates: The polygon has a hole. It should be one ring.',
    ]);
    expect(
      placed(
        polygonsFromGeoJson({
          type: 'MultiPolygon',
          coordinates: [
            [
              [
                [0, 0],
                [1, 1],
                [0, 0],
              ],
            ],
          ],
        }),
      ),
    ).toEqual(['/coordinates/0: The ring has 2 corners. It should have three or more.']);
    expect(
      placed(
        placesFromGeoJson({
          type: 'MultiPoint',
          coordinates: [
            [1, 2],
            [1, 91],
          ],
        }),
      )[0],
    ).toContain('/coordinates/1: The longitude is 1, the latitude is 91.');
  });

  it('refuses a nest of collections without an end, and never throws whatever it is given', () => {
    let nest: unknown = { type: 'Point', coordinates: [0, 0] };
    for (let k = 0; k < 5000; k++) nest = { type: 'GeometryCollection', geometries: [nest] };
    expect(messagesOf(placesFromGeoJson(nest))).toEqual([
      'The GeoJSON nests collections too deeply. There should be only a few levels.',
    ]);
    const type = fc.constantFrom(
      'Feature',
      'FeatureCollection',
      'GeometryCollection',
      'Point',
      'LineString',
      'MultiLineString',
      'Polygon',
      'MultiPolygon',
      'MultiPoint',
      'x',
    );
    const { any } = fc.letrec<{ any: unknown }>((tie) => ({
      any: fc.oneof(
        { maxDepth: 5 },
        fc.anything({ maxDepth: 1 }),
        fc.record(
          {
            type,
            coordinates: fc.anything({ maxDepth: 3 }),
            geometry: tie('any'),
            features: fc.array(tie('any')),
            geometries: fc.array(tie('any')),
            properties: fc.anything({ maxDepth: 1 }),
          },
          { requiredKeys: ['type'] },
        ),
      ),
    }));
    fc.assert(
      fc.property(any, (value) => {
        for (const read of [courseFromGeoJson, placesFromGeoJson, polygonsFromGeoJson]) {
          const result = read(value);
          expect(result.ok || result.findings.length > 0).toBe(true);
        }
      }),
      { seed: 20, numRuns: tries(500) },
    );
  });
});

describe('GeoJSON out', () => {
  const valid = new Ajv({ strict: false, logger: false }).compile(geoJsonSchema);
  const must = <T>(value: T): T => {
    expect(valid(value), JSON.stringify(valid.errors)).toBe(true);
    return value;
  };

  it('gives a course back as it was given, to 1e-8 of a degree', () => {
    const degrees = (from: number, to: number): fc.Arbitrary<number> =>
      fc.integer({ min: Math.round(from * 1e8), max: Math.round(to * 1e8) }).map((whole) => whole / 1e8);
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.tuple(degrees(-17.401, -17.4), degrees(-33.201, -33.2)), {
          minLength: 2,
          maxLength: 30,
          selector: String,
        }),
        (line) => {
          // So wild a line has findings, which are no matter here.
          const result = courseFromGeoJson({ type: 'LineString', coordinates: line });
          const feature = result.ok ? must(courseToGeoJson(result.value)) : null;
          expect(feature?.geometry.coordinates).toEqual(line);
          expect(feature?.properties.length).toBeCloseTo(result.ok ? courseLength(result.value) : NaN, 6);
        },
      ),
      { seed: 21, numRuns: 200 },
    );
  });

  it('cuts a course at the antimeridian and comes back to the same length', () => {
    const course = valueOf(
      courseFromGeoJson({
        type: 'LineString',
        coordinates: [
          [179.999, -33],
          [-179.999, -33],
        ],
      }),
    );
    const feature = must(courseToGeoJson(course));
    expect(feature.geometry).toEqual({
      type: 'MultiLineString',
      coordinates: [
        [
          [179.999, -33],
          [180, -33],
        ],
        [
          [-180, -33],
          [-179.999, -33],
        ],
      ],
    });
    const back = valueOf(courseFromGeoJson(feature));
    expect(courseLength(back)).toBeCloseTo(courseLength(course), 3);
  });

  it('gives passes at their feet, with all that is known of them', () => {
    const course = valueOf(
      courseFromGeoJson({
        type: 'LineString',
        coordinates: [
          [-17.4, -33.2],
          [-17.39, -33.2],
          [-17.39, -33.1995],
          [-17.4, -33.1995],
        ],
      }),
    );
    const passes = passesOf(indexCourse(course), [-17.395, -33.1998]);
    const { features } = must(passesToGeoJson(passes));
    expect(features.map(({ properties }) => properties.side)).toEqual(['left', 'left']);
    features.forEach(({ geometry, properties }, k) => {
      const { foot, ...rest } = passes[k]!;
      expect(properties).toEqual(rest);
      expect(geometry.coordinates.map((value, n) => Math.abs(value - foot[n]!) <= 5e-9)).toEqual([true, true]);
    });
  });

  it('gives places and polygons that read back, rings counterclockwise', () => {
    const places = [
      { name: 'Pier', at: [-17.4, -33.2] as const },
      { name: null, at: [1, 2] as const },
    ];
    expect(valueOf(placesFromGeoJson(must(placesToGeoJson(places))))).toEqual(places);
    const clockwise = {
      name: 'Yard',
      polygon: [
        [0, 0],
        [0, 1],
        [1, 1],
        [1, 0],
      ] as const,
    };
    const collection = must(polygonsToGeoJson([clockwise]));
    const ring = (collection.features[0]!.geometry as Polygon).coordinates[0]!;
    expect(booleanClockwise(lineString(ring))).toBe(false);
    expect(valueOf(polygonsFromGeoJson(collection))[0]!.polygon).toEqual(
      expect.arrayContaining(clockwise.polygon.map((corner) => [...corner])),
    );
  });

  it('cuts a polygon at the antimeridian into halves that stay on the map', () => {
    const { geometry } = must(
      polygonsToGeoJson([
        {
          name: null,
          polygon: [
            [179, 0],
            [-179, 0],
            [-179, 1],
            [179, 1],
          ],
        },
      ]),
    ).features[0]! as Feature<MultiPolygon>;
    expect(geometry.type).toBe('MultiPolygon');
    const longitudes = geometry.coordinates.map((part) => part[0]!.map(([lon]) => lon!));
    expect(longitudes.map((half) => [Math.min(...half), Math.max(...half)])).toEqual([
      [179, 180],
      [-180, -179],
    ]);
    for (const coordinates of geometry.coordinates)
      expect(kinks({ type: 'Polygon', coordinates }).features).toEqual([]);
  });
});
