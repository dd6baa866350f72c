/** `ground.geojson` there and back, other GeoJSON with OpenStreetMap's tags, and what is said of files that cannot be read. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { Ajv } from 'ajv';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findingLine } from '../finding.ts';
import { real } from '../testing/numbers.ts';
import { tries } from '../testing/tries.ts';
import type { Ground, GroundLine } from './ground.ts';
import { groundText } from './groundText.ts';
import { createGeoJsonReader, readGround } from './readGround.ts';

const collection = (features: readonly unknown[], more: object = {}): string =>
  JSON.stringify({ type: 'FeatureCollection', ...more, features });
const feature = (properties: object, type: string, coordinates: unknown, more: object = {}): object => ({
  type: 'Feature',
  ...more,
  properties,
  geometry: { type, coordinates },
});
const read = (text: string): Ground => {
  const result = readGround(text, 'g.geojson');
  if (!result.ok) throw new Error(result.findings.map(findingLine).join('\n'));
  expect(result.findings).toEqual([]);
  return result.value;
};
const faults = (text: string): string[] => readGround(text, 'g.geojson').findings.map(findingLine);
const QUAY = feature({ highway: 'residential', name: 'Quay Street' }, 'LineString', [
  [-17.4, -33.2],
  [-17.39, -33.2],
]);
const SQUARE = [
  [-17.4, -33.2],
  [-17.4, -33.1],
  [-17.3, -33.1],
  [-17.3, -33.2],
  [-17.4, -33.2],
];

const line = (positions: readonly (readonly number[])[]): GroundLine => ({
  lon: Float64Array.from(positions, ([lon]) => lon!),
  lat: Float64Array.from(positions, ([, lat]) => lat!),
});

describe('ground.geojson', () => {
  const degree = fc.tuple(real(-180, 180), real(-90, 90)).map((at) => at.map((x) => Math.round(x * 1e7) / 1e7 + 0));
  const word = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 9 });
  const id = fc.integer({ min: 1, max: 2 ** 40 });
  const wayOf = fc
    .tuple(id, word, fc.array(fc.tuple(degree, id), { minLength: 2, maxLength: 6 }))
    .map(([number, name, places]) => ({
      id: `way/${number}`,
      tags: { highway: 'path', name },
      ...line(places.map(([at]) => at)),
      nodes: places.map(([, node]) => `node/${node}`),
    }));
  const pointOf = fc
    .tuple(id, degree)
    .map(([number, [lon, lat]]) => ({ id: `node/${number}`, tags: { barrier: 'bollard' }, lon: lon!, lat: lat! }));
  const groundOf: fc.Arbitrary<Ground> = fc.record({
    source: fc.constantFrom(
      { date: null, credit: '© us', licence: null },
      { date: '2027-05-01', credit: '© OpenStreetMap contributors', licence: 'ODbL 1.0' },
    ),
    ways: fc.array(wayOf, { maxLength: 4 }),
    areas: fc.array(
      id.map((number) => ({
        id: `relation/${number}`,
        tags: { building: 'yes' },
        rings: [line(SQUARE.toReversed()), line([...SQUARE].map(([x, y]) => [x! / 2, y! / 2]))],
      })),
      { maxLength: 2 },
    ),
    points: fc.array(pointOf, { maxLength: 4 }),
  });

  it('is read as it was written, and written again with the same bytes', () => {
    fc.assert(
      fc.property(groundOf, (ground) => {
        const text = groundText(ground);
        expect(read(text)).toEqual(ground);
        expect(groundText(read(text))).toBe(text);
      }),
      { numRuns: tries(500) },
    );
  });

  it('is GeoJSON by the schema of geojson.org, and carries the credit, the licence and the day of the data', () => {
    const schema = JSON.parse(
      readFileSync(createRequire(import.meta.url).resolve('geojson-schema/FeatureCollection.json'), 'utf8'),
    ) as object;
    const validate = new Ajv({ strict: false }).compile(schema);
    fc.assert(
      fc.property(groundOf, (ground) => {
        const document: unknown = JSON.parse(groundText(ground));
        expect(validate(document), JSON.stringify(validate.errors)).toBe(true);
        expect(document).toMatchObject({
          attribution: ground.source.credit,
          licence: ground.source.licence,
          date: ground.source.date,
        });
      }),
      { numRuns: tries(100) },
    );
  });

  it('has its tags sorted, so that their order in the source changes no byte', () => {
    const way = { id: 'way/1', ...line(SQUARE.slice(0, 2)), nodes: ['node/1', 'at/x'] };
    const source = { date: null, credit: '', licence: null };
    const text = (tags: Record<string, string>): string =>
      groundText({ source, ways: [{ ...way, tags }], areas: [], points: [] });
    expect(text({ name: 'A', highway: 'path' })).toBe(text({ highway: 'path', name: 'A' }));
    expect(text({ name: 'A', highway: 'path' })).toContain(
      '"nodes":[1,"at/x"],"properties":{"highway":"path","name":"A"}',
    );
  });
});

describe('GeoJSON of other tools', () => {
  it('gives ids from `id`, `@id` or the property `id`, with the kind of element where only a number is given', () => {
    const ids = [{ id: 'way/7' }, { id: 8 }, {}, {}, {}];
    const properties = [{}, {}, { '@id': 'way/9' }, { id: '10' }, {}];
    const text = collection(
      ids.map((more, k) => feature({ highway: 'path', ...properties[k] }, 'LineString', SQUARE.slice(0, 2), more)),
    );
    expect(read(text).ways.map(({ id }) => id)).toEqual(['way/7', 'way/8', 'way/9', 'way/10', 'feature/5']);
  });

  it('takes tags from the properties or from `tags` in them, numbers as texts, and only those that the ground knows', () => {
    const text = collection([
      feature({ highway: 'residential', lanes: 2, note: 'x', '@version': '3' }, 'LineString', SQUARE.slice(0, 2)),
      feature({ id: 5, tags: { highway: 'steps' } }, 'LineString', SQUARE.slice(0, 2)),
    ]);
    expect(read(text).ways.map(({ tags }) => tags)).toEqual([
      { highway: 'residential', lanes: '2' },
      { highway: 'steps' },
    ]);
  });

  it('lets ways meet where they share a place to 7 decimals, and gives it the id of a point that is there', () => {
    const text = collection([
      QUAY,
      feature({ highway: 'footway' }, 'LineString', [
        [-17.39000000001, -33.2],
        [-17.39, -33.1],
      ]),
      feature({ highway: 'crossing' }, 'Point', [-17.39, -33.2], { id: 'node/77' }),
      feature({ barrier: 'gate' }, 'Point', [-17.39, -33.1]),
    ]);
    const { ways, points } = read(text);
    expect(ways[0]!.nodes).toEqual(['at/-17.4000000,-33.2000000', 'node/77']);
    expect(ways[1]!.nodes).toEqual(['node/77', 'at/-17.3900000,-33.1000000']);
    expect(points.map(({ id }) => id)).toEqual(['node/77', 'at/-17.3900000,-33.1000000']);
  });

  it('tells streets from surfaces: a closed building is an area, a roundabout a way, whichever shape they have', () => {
    const text = collection([
      feature({ building: 'yes' }, 'LineString', SQUARE),
      feature({ highway: 'primary', junction: 'roundabout' }, 'Polygon', [SQUARE]),
      feature({ highway: 'pedestrian', area: 'yes' }, 'Polygon', [SQUARE]),
      feature({ natural: 'water' }, 'MultiPolygon', [[SQUARE], [SQUARE]]),
      feature({ highway: 'path' }, 'MultiLineString', [SQUARE.slice(0, 2), SQUARE.slice(2)]),
      feature({ amenity: 'bench' }, 'Point', [0, 0]),
      feature({ shop: 'bakery' }, 'Polygon', [SQUARE]),
      { type: 'Feature', properties: { highway: 'path' }, geometry: null },
    ]);
    const { ways, areas, points } = read(text);
    expect(areas.map(({ tags }) => Object.keys(tags)[0])).toEqual(['building', 'highway', 'natural', 'natural']);
    expect(ways.map(({ lon, nodes }) => [lon.length, nodes.length])).toEqual([
      [5, 5],
      [2, 2],
      [3, 3],
    ]);
    expect(ways[0]!.nodes[0]).toBe(ways[0]!.nodes[4]);
    expect(points).toEqual([]);
    // Turned counterclockwise.
    expect([...areas[0]!.rings[0]!.lon]).toEqual([-17.4, -17.3, -17.3, -17.4, -17.4]);
  });

  it('takes credit, licence and day where the file has them, under the names that are in use', () => {
    expect(read(collection([])).source).toEqual({
      date: null,
      credit: '© OpenStreetMap contributors',
      licence: null,
    });
    const more = { copyright: 'Made available under ODbL.', timestamp: '2026-10-02T07:00:00Z' };
    expect(read(collection([], more)).source).toEqual({
      date: '2026-10-02',
      credit: 'Made available under ODbL.',
      licence: 'ODbL 1.0',
    });
    expect(read(collection([], { attribution: 'City', license: 'CC0', date: '2026-10-03' })).source).toEqual({
      date: '2026-10-03',
      credit: 'City',
      licence: 'CC0',
    });
  });
});

describe('GeoJSON that cannot be read', () => {
  const SAVE = 'Save the street file again.';

  it('is refused with line and column of what breaks it', () => {
    const good = `{"type":"FeatureCollection",\n"features":[\n${JSON.stringify(QUAY)}`;
    expect(faults(`${good},\n{"type":"Feature" "id":7}]}`)).toEqual([
      `g.geojson:4:19: The JSON breaks at “"id":7}”. ${SAVE}`,
    ]);
    expect(faults(`${good},\n]}`)).toEqual([`g.geojson:4:1: The JSON breaks at “,”. ${SAVE}`]);
    expect(faults(`${good}\n}`)).toEqual([
      'g.geojson:4:2: The file ends in the middle of the JSON: it was cut off. Download or save it again.',
    ]);
    expect(faults(good.slice(0, -9))[0]).toMatch(/^g\.geojson:3:\d+: The file ends in the middle of the JSON/u);
    expect(faults(`${good}], "more": nope}`)).toEqual([
      expect.stringMatching(/^g\.geojson:3:\d+: The JSON breaks at “nope\}”/u),
    ]);
    expect(faults(`${good}]}}`)[0]).toMatch(/The JSON breaks at “\}”/u);
  });

  it('is refused where it is empty, or JSON of another kind', () => {
    expect(faults(' \n')).toEqual([
      `g.geojson:1:1: The street file is empty. It should be OpenStreetMap data as .osm, .osm.gz, .osm.pbf or GeoJSON. ${SAVE}`,
    ]);
    for (const [text, type] of [
      ['[]', 'an empty list'],
      ['{"type":"Topology"}', '“Topology”'],
      ['{"elements":[{"type":"node"}]}', 'nothing'],
    ] as const)
      expect(faults(text)[0]).toContain(`g.geojson:1:1: The type of this GeoJSON is ${type}`);
    expect(faults('{"type":"FeatureCollection"}')[0]).toContain('g.geojson:1:1: This GeoJSON has no list of features.');
    expect(faults('{"type":"Topology"}')[0]).toContain('“Topology”. It should be “FeatureCollection”.');
  });

  it('loses only the features that are wrong, and lists the first twenty', () => {
    const wrong = [
      feature({ highway: 'path' }, 'LineString', [[0, 0]]),
      feature({ highway: 'path' }, 'LineString', [
        [0, 0],
        [0, 91],
      ]),
      feature({ highway: 'path' }, 'LineString', [
        [0, 0],
        ['0', 1],
      ]),
      feature({ building: 'yes' }, 'Polygon', [SQUARE.slice(1)]),
      feature({ building: 'yes' }, 'Blob', []),
      feature({ highway: 'path' }, 'LineString', SQUARE, { nodes: [1] }),
      7,
    ];
    const result = readGround(
      `{"type":"FeatureCollection","features":[\n${[QUAY, ...wrong].map((one) => JSON.stringify(one)).join(',\n')}]}`,
      'g.geojson',
    );
    expect(result.ok && result.value.ways.length).toBe(1);
    expect(result.findings.map(({ severity, where, params }) => [severity, where.line, params!['problem']])).toEqual([
      ['warning', 3, 'geometry'],
      ['warning', 4, 'position'],
      ['warning', 5, 'position'],
      ['warning', 6, 'geometry'],
      ['warning', 7, 'geometry'],
      ['warning', 8, 'nodes'],
      ['warning', 9, 'feature'],
    ]);
    expect(result.findings.map(({ message }) => message)).toContain(
      'A position is “[0, 91]”. It should be [longitude, latitude] in degrees. The feature is left out.',
    );
    const many = faults(collection(Array.from({ length: 50 }, () => 7)));
    expect(many).toHaveLength(21);
    expect(many[20]).toBe('g.geojson: 30 more are left out likewise; there are 50 in all.');
  });

  it('is read alike however its text is cut', () => {
    const text = `\u{FEFF}{"type": "FeatureCollection", "name": "a \\"features\\": [", "features": [\n${JSON.stringify(QUAY)} ,\r\n 7,${JSON.stringify(
      feature({ highway: 'path', name: '}],\\' }, 'LineString', SQUARE),
    )}], "date": "2026-10-02"}`;
    const whole = readGround(text, 'g.geojson');
    expect(whole.ok && whole.value.ways.map(({ tags }) => tags['name'])).toEqual(['Quay Street', '}],\\']);
    for (const step of [1, 2, 3, 7, 50]) {
      const reader = createGeoJsonReader('g.geojson');
      for (let at = 0; at < text.length; at += step) reader.write(text.slice(at, at + step));
      expect(reader.close()).toEqual(whole);
    }
  });
});

it('the demo’s map is read whole', () => {
  const text = readFileSync(new URL('../../../../fixtures/demo/ground.geojson', import.meta.url), 'utf8');
  const { ways, areas, points, source } = read(text);
  const all = (JSON.parse(text) as { readonly features: readonly unknown[] }).features.length;
  expect(ways.length + areas.length + points.length).toBe(all);
  expect(source.credit).toBe('Invented for Halfcup');
  expect(ways[0]!.nodes[0]).toBe('node/1');
});
