/** Street files of every format: what is read and kept of them, along courses, and what is said of those that cannot be read. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { gzipSync, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { buildCourse } from '../course/build.ts';
import type { Course } from '../course/course.ts';
import { nearestOn } from '../course/passes.ts';
import { indexCourse } from '../course/segmentIndex.ts';
import { findingLine } from '../finding.ts';
import { real } from '../testing/numbers.ts';
import { tries } from '../testing/tries.ts';
import { clipGround } from './clipGround.ts';
import { type ClippedGround, createGroundClipper } from './clipper.ts';
import { corridorOf, holds } from './corridor.ts';
import type { Ground } from './ground.ts';
import { groundText } from './groundText.ts';
import { readGround } from './readGround.ts';

const courseAlong = (...places: readonly (readonly [number, number])[]): Course => {
  const [lon, lat] = [0, 1].map((k) => Float64Array.from(places, (place) => place[k]!));
  const segment = { lon: lon!, lat: lat!, ele: Float64Array.from(places, () => NaN) };
  const built = buildCourse({ id: 'c', name: 'C', segments: [segment], gaps: 'join' });
  if (!built.ok) throw new Error(built.findings[0]?.message);
  return built.value;
};

/** Eastward along the 33rd parallel south; 0.001° of latitude are 110.9 m. */
const COURSE = courseAlong([-17.4, -33], [-17.39, -33], [-17.38, -33]);
const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
const clipped = (content: string | Uint8Array, course: Course = COURSE) => {
  const clipper = createGroundClipper('town.osm', [course], 300);
  clipper.write(typeof content === 'string' ? bytesOf(content) : content);
  return clipper.close();
};
const must = (content: string | Uint8Array, course: Course = COURSE): ClippedGround => {
  const result = clipped(content, course);
  if (!result.ok) throw new Error(result.findings.map(findingLine).join('\n'));
  expect(result.findings).toEqual([]);
  return result.value;
};
const said = (content: string | Uint8Array): string[] => clipped(content).findings.map(findingLine);

const osm = (...elements: readonly string[]): string => `<osm version="0.6">\n${elements.join('\n')}\n</osm>`;
const node = (id: number, lon: number, lat: number, tags = ''): string =>
  tags === ''
    ? `<node id="${id}" lat="${lat}" lon="${lon}"/>`
    : `<node id="${id}" lat="${lat}" lon="${lon}">${tags}</node>`;
const way = (id: number, refs: readonly number[], tags: string): string =>
  `<way id="${id}">${refs.map((ref) => `<nd ref="${ref}"/>`).join('')}${tags}</way>`;
const tag = (k: string, v: string): string => `<tag k="${k}" v="${v}"/>`;
const relation = (id: number, members: readonly (readonly [number, string])[], tags: string): string =>
  `<relation id="${id}">${members.map(([ref, role]) => `<member type="way" ref="${ref}" role="${role}"/>`).join('')}${tags}</relation>`;
const ROAD = tag('highway', 'residential');
const MULTIPOLYGON = tag('type', 'multipolygon');

const STREETS = new URL('../../../../fixtures/streets/', import.meta.url);
const XML = readFileSync(new URL('streets.osm', STREETS));
const PBF = readFileSync(new URL('streets.osm.pbf', STREETS));
const TOWN = courseAlong([13.3508, 52.5145], [13.3528, 52.5145]);

const shape = ({ ways, areas, points }: Ground): unknown => [ways, areas, points];

describe('a street file', () => {
  it('gives the same ground as XML, as PBF, packed, and as the GeoJSON that was written of it', () => {
    const xml = must(XML, TOWN);
    expect(xml.ground.ways.length).toBeGreaterThan(20);
    expect(xml.ground.points.length).toBeGreaterThan(10);
    const pbf = must(PBF, TOWN);
    expect(pbf).toEqual({ ...xml, format: 'pbf' });
    expect(must(gzipSync(XML), TOWN)).toEqual(xml);
    expect(must(gzipSync(PBF), TOWN)).toEqual(pbf);
    const text = groundText(xml.ground);
    const again = readGround(text, 'ground.geojson');
    expect(again).toEqual({ ok: true, value: xml.ground, findings: [] });
    const { ground, format } = must(text, TOWN);
    expect([format, shape(ground)]).toEqual(['geojson', shape(xml.ground)]);
  });

  it('is credited, and dated by its head, else by its newest element', () => {
    expect(must(XML, TOWN).ground.source).toEqual({
      date: '2017-09-13',
      credit: '© OpenStreetMap contributors',
      licence: 'ODbL 1.0',
    });
    const hydrant = node(1, -17.39, -33, tag('emergency', 'fire_hydrant'));
    expect(must(osm(hydrant)).ground.source.date).toBeNull();
    const dated = osm(
      '<meta osm_base="2026-10-02T04:00:00Z"/>',
      hydrant.replace('id', 'timestamp="2020-01-01T00:00:00Z" id'),
    );
    expect(must(dated).ground.source.date).toBe('2026-10-02');
  });

  it('is read alike however its bytes are cut', () => {
    for (const [bytes, steps] of [
      [XML, [1000, 4097]],
      [PBF, [1, 7, 333]],
      [gzipSync(XML), [17, 501]],
      [bytesOf(groundText(must(XML, TOWN).ground)), [61, 997]],
    ] as const) {
      const whole = clipped(bytes, TOWN);
      for (const step of steps) {
        const clipper = createGroundClipper('town.osm', [TOWN], 300);
        for (let at = 0; at < bytes.length; at += step) clipper.write(bytes.subarray(at, at + step));
        expect(clipper.close()).toEqual(whole);
      }
    }
  });

  it('may have its elements in any order, either quotes, and ids that are not in order', () => {
    const elements = [
      node(9, -17.395, -33),
      node(-3, -17.39, -33.0005),
      node(4, -17.385, -33),
      way(7, [9, -3, 4], ROAD),
      way(8, [9, -3], ''),
      way(6, [-3, 4, 9], ''),
      relation(
        5,
        [
          [8, 'outer'],
          [6, ''],
        ],
        MULTIPOLYGON + tag('natural', 'water'),
      ),
    ];
    const { ground } = must(osm(...elements));
    expect(ground.ways.map(({ id, nodes }) => [id, nodes])).toEqual([['way/7', ['node/9', 'node/-3', 'node/4']]]);
    expect(ground.areas.map(({ id, rings }) => [id, rings[0]!.lon.length])).toEqual([['relation/5', 4]]);
    for (const other of [elements.toReversed(), [...elements.slice(3), ...elements.slice(0, 3)]])
      expect(shape(must(osm(...other)).ground)).toEqual(shape(ground));
    expect(must(osm(...elements).replaceAll('"', "'")).ground).toEqual(ground);
  });

  it('keeps what is left of a way whose nodes are not all there', () => {
    const nodes = [1, 2, 4, 5, 7].map((id) => node(id, -17.4 + id / 1000, -33));
    const { ground, skipped } = must(osm(...nodes, way(1, [1, 2, 3, 4, 5, 6, 7], ROAD), way(2, [8, 9], ROAD)));
    expect(ground.ways.map(({ id, nodes: names }) => [id, names.length])).toEqual([
      ['way/1', 2],
      ['way/1', 2],
    ]);
    expect(skipped.cutWays).toBe(1);
  });

  it('joins outer ways into rings with the holes in them, turned as RFC 7946 asks, and counts what does not close', () => {
    const square = (first: number, west: number, size: number): string[] =>
      [
        [0, 0],
        [0, size],
        [size, size],
        [size, 0],
      ].map(([x, y], k) => node(first + k, west + x!, -33 + y!));
    const { ground, skipped } = must(
      osm(
        ...square(1, -17.399, 0.002),
        ...square(11, -17.3985, 0.0005),
        ...square(21, -17.39, 0.001),
        way(1, [1, 2, 3], ''),
        way(2, [1, 4, 3], ''),
        way(3, [11, 12, 13, 14, 11], ''),
        way(4, [21, 22, 23, 24, 21], ''),
        way(5, [21, 22], ''),
        relation(
          1,
          [
            [1, 'outer'],
            [2, 'outer'],
            [3, 'inner'],
            [4, 'outer'],
          ],
          MULTIPOLYGON + tag('building', 'yes'),
        ),
        relation(2, [[5, 'outer']], MULTIPOLYGON + tag('natural', 'water')),
        relation(3, [[99, 'outer']], MULTIPOLYGON + tag('natural', 'water')),
        relation(4, [[1, '']], tag('type', 'route') + tag('route', 'bus')),
      ),
    );
    expect(ground.areas.map(({ id, rings }) => [id, rings.map(({ lon }) => lon.length)])).toEqual([
      ['relation/1', [5, 5]],
      ['relation/1', [5]],
    ]);
    expect([...ground.areas[0]!.rings[0]!.lon].slice(0, 2)).toEqual([-17.399, -17.397]);
    expect([...ground.areas[0]!.rings[1]!.lat].slice(0, 2)).toEqual([-33, -32.9995]);
    expect(skipped).toEqual({ relations: 1, cutWays: 0, openAreas: 2, broken: 0 });
  });

  it('gives the holes of an old-style relation to its outer way, which has the tags', () => {
    const at = [
      [0, 0],
      [3, 0],
      [3, 3],
      [0, 3],
      [1, 1],
      [2, 1],
      [2, 2],
    ] as const;
    const { ground } = must(
      osm(
        ...at.map(([x, y], k) => node(k + 1, -17.39 + x / 1e4, -33 + y / 1e4)),
        way(1, [1, 2, 3, 4, 1], tag('building', 'yes')),
        way(2, [5, 6, 7, 5], ''),
        relation(
          1,
          [
            [1, 'outer'],
            [2, 'inner'],
          ],
          MULTIPOLYGON,
        ),
      ),
    );
    expect(ground.areas.map(({ id, rings }) => [id, rings.length])).toEqual([['way/1', 2]]);
  });

  it('leaves out what was deleted, and tags that the ground does not use', () => {
    const { ground } = must(
      osm(
        node(1, -17.39, -33, tag('barrier', 'gate') + tag('note', 'by me')),
        node(2, -17.39, -33, tag('barrier', 'gate')).replace('id', 'visible="false" id'),
        node(3, -17.39, -33, tag('amenity', 'bench')),
      ),
    );
    expect(ground.points.map(({ id, tags }) => [id, tags])).toEqual([['node/1', { barrier: 'gate' }]]);
  });
});

describe('a clip', () => {
  it('cuts ways where they leave 300 m, keeps their ids, and keeps a long segment that only passes by', () => {
    const nodes = [0, 0.001, 0.002, 0.004, 0.006, 0.004, 0.002].map((y, k) => node(k + 1, -17.395 + k / 1e4, -33 + y));
    const { ground } = must(
      osm(
        ...nodes,
        node(20, -17.39, -32.9),
        node(21, -17.39, -33.1),
        node(22, -17.39, -32.9),
        node(23, -17.3, -32.99),
        way(1, [1, 2, 3, 4, 5, 6, 7], ROAD),
        way(2, [20, 21], tag('railway', 'rail')),
        way(3, [22, 23], tag('railway', 'rail')),
      ),
    );
    expect(ground.ways.map(({ id, nodes: names }) => [id, names])).toEqual([
      ['way/1', ['node/1', 'node/2', 'node/3', 'node/4']],
      ['way/1', ['node/6', 'node/7']],
      ['way/2', ['node/20', 'node/21']],
    ]);
  });

  it('keeps a surface that the course runs inside of, and cuts a large one to the bounds of what is kept', () => {
    const ring = Array.from({ length: 720 }, (_, k) => (k / 360) * Math.PI);
    const nodes = ring.map((angle, k) => node(k + 1, -17.39 + 0.5 * Math.cos(angle), -33 + 0.5 * Math.sin(angle)));
    const refs = [...ring.keys(), 0].map((k) => k + 1);
    const { ground } = must(osm(...nodes, way(1, refs, tag('natural', 'water'))));
    expect(ground.areas.length).toBe(1);
    const [, south, east] = corridorOf([COURSE], 300).bounds;
    const { lon, lat } = ground.areas[0]!.rings[0]!;
    expect(lon.length).toBeLessThan(12);
    expect(Math.max(...lon)).toBeCloseTo(east, 6);
    expect(Math.min(...lat)).toBeCloseTo(south, 6);
  });

  it('goes by the geodesic distance from the course, anywhere on earth, to 0.1 %', () => {
    const start = fc.tuple(real(-180, 180), real(-80, 80));
    const steps = fc.array(fc.tuple(real(-0.01, 0.01), real(-0.01, 0.01)), { minLength: 2, maxLength: 5 });
    fc.assert(
      fc.property(start, steps, real(-0.012, 0.012), real(-0.012, 0.012), ([lon, lat], moves, dx, dy) => {
        const places: [number, number][] = [[lon, lat]];
        for (const [x, y] of moves) places.push([places.at(-1)![0] + x, places.at(-1)![1] + y]);
        const course = courseAlong(...places);
        const middle = places[1]!;
        const at = [((((middle[0] + dx + 180) % 360) + 360) % 360) - 180, middle[1] + dy] as const;
        const { distance } = nearestOn(indexCourse(course), at);
        fc.pre(Math.abs(distance - 300) > 0.3);
        expect(holds(corridorOf([course], 300), at[0], at[1])).toBe(distance < 300);
      }),
      { numRuns: tries(1000) },
    );
  });

  it('keeps each node and way of a town that the distance asks for, and no other', () => {
    const nodes = Array.from(
      { length: 400 },
      (_, k) => [-17.41 + (k % 20) * 0.002, -33.01 + Math.floor(k / 20) * 0.001] as const,
    );
    const { ground } = must(osm(...nodes.map(([lon, lat], k) => node(k + 1, lon, lat, tag('highway', 'crossing')))));
    const indexed = indexCourse(COURSE);
    const near = nodes.flatMap((at, k) => (nearestOn(indexed, at).distance <= 300 ? [`node/${k + 1}`] : []));
    expect(near.length).toBeGreaterThan(20);
    expect(ground.points.map(({ id }) => id)).toEqual(near);
  });
});

describe('a street file that cannot be used', () => {
  const CUT = 'it was cut off. Download or save it again.';

  it('is told apart by its content', () => {
    expect(said('')[0]).toContain('town.osm:1:1: The street file is empty.');
    expect(said(' \n ')[0]).toContain('town.osm:1:1: The street file is empty.');
    expect(said('id;lat\n1;2')[0]).toContain('town.osm:1:1: The file begins with “id;lat 1;2”.');
    expect(said(zipSync({ 'a.osm': XML }))[0]).toContain('town.osm:1:1: This is a ZIP file.');
    expect(said(Uint8Array.of(137, 80, 78, 71, 13, 10, 26, 10, 0, 0))[0]).toContain(
      'This is a file of an unknown kind.',
    );
    expect(said('<!DOCTYPE html><html><body>no</body></html>')[0]).toContain('This is a web page (HTML)');
    expect(said('<html><body>no</body></html>')[0]).toContain('This is a web page (HTML)');
    expect(said('<gpx version="1.1"/>')[0]).toContain(
      'town.osm:1:1: The outermost element is <gpx>. It should be <osm>.',
    );
    expect(said('{"type":"Topology"}')[0]).toContain('The type of this GeoJSON is “Topology”.');
    expect(said(gzipSync(gzipSync(XML)))[0]).toContain('This is a file of an unknown kind.');
  });

  it('is refused with line and column where its XML breaks', () => {
    expect(said(osm(node(1, -17.39, -33)).replace('</osm>', ''))).toEqual([
      `town.osm:3:1: The file ends in the middle of the XML: ${CUT}`,
    ]);
    expect(said('<osm>\n<node id="1"\n</osm>')[0]).toMatch(/^town\.osm:3:1: /u);
    expect(said('<osm>\n <way id="1"></node></osm>')[0]).toContain(
      'town.osm:2:14: Another tag is closed where </way> should be.',
    );
    expect(said('<osm>\n<a>&x;</a></osm>')[0]).toContain('An & does not begin one of');
    expect(said('<!DOCTYPE osm [<!ENTITY a "b">]><osm/>')[0]).toContain('The file has a <!DOCTYPE>');
    expect(said(Uint8Array.of(...bytesOf('<osm>\n<a b="'), 0xe9, ...bytesOf('"/></osm>')))[0]).toContain(
      'town.osm:2:7: The byte 0xE9 is not valid UTF-8.',
    );
    expect(said('<osm>\n\0</osm>')[0]).toContain('town.osm:2:1: The file has a NUL byte');
  });

  it('loses only the elements that are wrong, each with its place', () => {
    const result = clipped(
      osm(
        node(1, -17.39, -33, tag('barrier', 'gate')),
        '<node id="x" lat="1" lon="1"/>',
        '<node id="2" lat="91" lon="1"/>',
        '<node id="3" lat="1"/>',
        '<way id="9007199254740993"/>',
        '<node id="4" lat="" lon="1"/>',
      ),
    );
    expect(result.ok && result.value.skipped.broken).toBe(5);
    expect(result.findings.map(findingLine)).toEqual([
      'town.osm:3:1: The id of this <node> is “x”. It should be a whole number up to 562,949,953,421,312. The element is left out.',
      'town.osm:4:1: The latitude of this <node> is “91”. It should be a number from -90 to 90. The element is left out.',
      'town.osm:5:1: The longitude of this <node> is nothing. It should be a number from -180 to 180. The element is left out.',
      'town.osm:6:1: The id of this <way> is “9007199254740993”. It should be a whole number up to 562,949,953,421,312. The element is left out.',
      'town.osm:7:1: The latitude of this <node> is an empty text. It should be a number from -90 to 90. The element is left out.',
    ]);
  });

  it('is refused where an element has more than 100 attributes, is nested too deep, or has no end', () => {
    const spaces = Array.from({ length: 5000 }, (_, k) => `xmlns:a${k}="urn:${k}"`).join(' ');
    expect(said(`<osm ${spaces}></osm>`)[0]).toContain('An element has more than 100 attributes.');
    expect(said(`<osm>${'<a>'.repeat(20_000)}`)[0]).toContain('Elements are nested more than 16 deep.');
    expect(said(`<osm><tag k="${'x'.repeat(3_000_000)}`)[0]).toContain(
      'There are more than 1,000,000 characters from one tag to the next.',
    );
  });

  it('is refused where its PBF or its packing breaks', () => {
    expect(said(PBF.subarray(0, PBF.length - 9))).toEqual([`town.osm: The file ends in the middle of the PBF: ${CUT}`]);
    const bent = PBF.slice();
    bent.fill(7, 3000, 3100);
    expect(said(bent)[0]).toContain('town.osm: A part of the PBF cannot be read: the file is damaged.');
    const packed = gzipSync(XML);
    expect(said(packed.subarray(0, 9000))).toEqual([
      `town.osm: The file ends in the middle of the compressed file: ${CUT}`,
    ]);
    const broken = packed.slice();
    broken.fill(255, 9, 100);
    expect(said(broken)[0]).toContain('town.osm: A part of the compressed file cannot be read: the file is damaged.');
  });

  it('is refused where nothing of it lies beside a course', () => {
    expect(said(osm(node(1, 5, 5, tag('barrier', 'gate'))))).toEqual([
      'town.osm: Of 1 elements of the street file, none lies within 300 m of a course. Save an extract that covers the courses.',
    ]);
    expect(said(osm())[0]).toContain('The street file is empty.');
  });
});

describe('clipGround', () => {
  async function* pieces(bytes: Uint8Array, size: number): AsyncGenerator<Uint8Array> {
    for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size);
  }

  it('reads a stream, and says how far it has come', async () => {
    const seen: number[] = [];
    const read = await clipGround(pieces(XML, 20_000), {
      file: 'town.osm',
      courses: [TOWN],
      onProgress: (bytes) => seen.push(bytes),
    });
    expect(read).toEqual(clipped(XML, TOWN));
    expect(seen).toEqual([20_000, 40_000, 60_000, XML.length]);
  });

  it('stops with the reason of its signal', async () => {
    const signal = { aborted: false, reason: new Error('enough') };
    const read = clipGround(pieces(XML, 20_000), {
      file: 'town.osm',
      courses: [TOWN],
      signal,
      onProgress: () => (signal.aborted = true),
    });
    await expect(read).rejects.toBe(signal.reason);
  });

  it('reads no further than a fault, and wants a course', async () => {
    let given = 0;
    async function* endless(): AsyncGenerator<Uint8Array> {
      for (; given < 1000; given++) yield bytesOf(given === 0 ? '<osm><a></b>'.padEnd(2000) : ' '.repeat(2000));
    }
    const read = await clipGround(endless(), { file: 'town.osm', courses: [TOWN] });
    expect([read.ok, given < 5]).toEqual([false, true]);
    const none = await clipGround(pieces(XML, 20_000), { file: 'town.osm', courses: [] });
    expect(none.findings[0]?.code).toBe('ground-no-course');
    await expect(clipGround(7 as never, { file: '', courses: [] })).rejects.toThrow('clipGround wants bytes');
    await expect(clipGround([7 as never], { file: '', courses: [TOWN] })).rejects.toThrow('clipGround wants bytes');
  });
});

it('Where nothing can be used, each element that is wrong is an error at its place, beside that nothing is near.', () => {
  const street = { highway: 'residential' };
  const features = [
    { type: 'Feature', properties: street, geometry: { type: 'LineString', coordinates: [[999, 999], ['x', 2]] } }, // prettier-ignore
    { type: 'Feature', properties: {}, geometry: { type: 'Blob', coordinates: [] } },
  ];
  const text = `{"type":"FeatureCollection","features":[\n${features.map((one) => JSON.stringify(one)).join(',\n')}]}`;
  const { ok, findings } = clipped(text);
  expect(ok).toBe(false);
  expect(
    findings.map(({ code, severity, where, params }) => [code, severity, where.line, params?.['problem']]),
  ).toEqual([
    ['ground-element', 'error', 2, 'position'],
    ['ground-element', 'error', 3, 'geometry'],
    ['ground-nothing', 'error', undefined, undefined],
  ]);
});
