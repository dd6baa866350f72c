/**
 * What a block of OpenStreetMap PBF says, element by element.
 * Source of messages, fields and formulas: `osmformat.proto` of OSM-binary.
 */
import { describe, expect, it } from 'vitest';
import { courseThrough } from '../testing/courses.ts';
import {
  type Element,
  type PbfNode,
  blockOf,
  denseNodes,
  message,
  pbfFile,
  pbfRelation,
  pbfWay,
  plainNode,
} from '../testing/osmPbf.ts';
import { findingLine } from '../finding.ts';
import { type ClippedGround, createGroundClipper } from './clipper.ts';
import { MOST } from './limits.ts';

/** Eastward along the 33rd parallel south. */
const COURSE = courseThrough([
  [-17.4, -33],
  [-17.38, -33],
]);
const clipped = (bytes: Uint8Array) => {
  const clipper = createGroundClipper('town.osm.pbf', [COURSE], 300);
  clipper.write(bytes);
  return clipper.close();
};
const must = (bytes: Uint8Array): ClippedGround => {
  const result = clipped(bytes);
  expect(result.findings.map(findingLine)).toEqual([]);
  if (!result.ok) throw new Error('the file is good');
  return result.value;
};
const said = (...elements: readonly Element[]): string[] =>
  clipped(pbfFile(blockOf(elements))).findings.map(findingLine);
const dateOf = (bytes: Uint8Array): string | null => must(bytes).ground.source.date;

/** A gate on the course, and a node 1e-4° from the one before. */
const GATE: PbfNode = { id: 1, lon: -173_900_000, lat: -330_000_000, tags: { barrier: 'gate' } };
const corner = (id: number, east: number, north: number): PbfNode => ({
  id,
  lon: GATE.lon + east * 1000,
  lat: GATE.lat + north * 1000,
});
const ROAD = { highway: 'residential' };

describe('a node of a block', () => {
  const nodes = [
    { ...GATE, tags: { barrier: 'gate', note: 'ours', access: 'private' } },
    corner(2, 5, 0),
    { ...corner(-7, 9, 2), tags: { emergency: 'fire_hydrant' } },
  ];

  it('is the same whether it stands alone or among dense ones', () => {
    const alone = must(pbfFile(blockOf(nodes.map(plainNode))));
    expect(alone.read.nodes).toBe(3);
    expect(alone.ground.points).toEqual([
      { id: 'node/1', tags: { barrier: 'gate', access: 'private' }, lon: -17.39, lat: -33 },
      { id: 'node/-7', tags: { emergency: 'fire_hydrant' }, lon: -17.3891, lat: -32.9998 },
    ]);
    expect(must(pbfFile(blockOf([denseNodes(nodes)])))).toEqual(alone);
  });

  it('lies at its steps times the granularity, from the offset on, in nanodegrees', () => {
    // .000000001 * (lat_offset + (granularity * lat))
    const coarse = blockOf([plainNode({ ...GATE, lon: 10_000, lat: 100 })], (pbf) => {
      pbf.writeVarintField(17, 1000);
      pbf.writeVarintField(19, -33e9);
      pbf.writeVarintField(20, -17.4e9);
    });
    expect(must(pbfFile(coarse)).ground.points).toMatchObject([{ lon: -17.39, lat: -32.9999 }]);
  });

  it('is left out alone where its id or its position is none', () => {
    const wrong: PbfNode[] = [
      { ...GATE, id: 2 ** 50 },
      { ...GATE, id: 3, lat: -900_000_001 },
      { ...GATE, id: 4, lon: 1_800_000_001 },
    ];
    const words = [
      'town.osm.pbf: The id of this <node> is a number of 16 digits. It should be a whole number up to 562,949,953,421,312. The element is left out.',
      'town.osm.pbf: The latitude of this <node> is -90.0000001. It should be a number from -90 to 90. The element is left out.',
      'town.osm.pbf: The longitude of this <node> is 180.0000001. It should be a number from -180 to 180. The element is left out.',
    ];
    expect(said(...[GATE, ...wrong].map(plainNode))).toEqual(words);
    expect(said(denseNodes([GATE, ...wrong]))).toEqual(words);
    const result = clipped(pbfFile(blockOf([GATE, ...wrong].map(plainNode))));
    expect(result.ok && [result.value.read.nodes, result.value.skipped.broken]).toEqual([1, 3]);
  });

  it('has no tag for a key that has no value', () => {
    const block = blockOf([
      (group, at) =>
        group.writeBytesField(
          1,
          message((pbf) => {
            pbf.writePackedVarint(2, [at('barrier'), at('access')]);
            pbf.writePackedVarint(3, [at('gate')]);
            pbf.writeSVarintField(8, GATE.lat);
            pbf.writeSVarintField(9, GATE.lon);
          }),
        ),
    ]);
    expect(must(pbfFile(block)).ground.points.map(({ tags }) => tags)).toEqual([{ barrier: 'gate' }]);
  });
});

describe('the day of the data', () => {
  /** Seconds to the time. */
  const at = (time: string): number => Date.parse(time) / 1000;
  const [old, middle, late] = [at('2019-05-04T10:00:00Z'), at('2021-07-01T00:00:00Z'), at('2026-10-02T23:59:59Z')];

  it('is that of the newest element, of whatever kind', () => {
    for (const [node, way, relation] of [
      [late, old, middle],
      [middle, late, old],
      [old, middle, late],
    ] as const) {
      const elements = [pbfWay(1, [1, 2], ROAD, way), pbfRelation(1, [], {}, relation)];
      const nodes = [
        { ...GATE, time: node },
        { ...corner(2, 1, 0), time: old },
      ];
      expect(dateOf(pbfFile(blockOf([...nodes.map(plainNode), ...elements])))).toBe('2026-10-02');
      expect(dateOf(pbfFile(blockOf([denseNodes(nodes), ...elements])))).toBe('2026-10-02');
    }
  });

  it('counts times in the block’s own steps', () => {
    const minutes = blockOf([plainNode({ ...GATE, time: late / 60 - 59 / 60 })], (pbf) =>
      pbf.writeVarintField(18, 60_000),
    );
    expect(dateOf(pbfFile(minutes))).toBe('2026-10-02');
  });

  it('is unknown where the times are none', () => {
    for (const time of [0, -1, 2 ** 40]) {
      expect(dateOf(pbfFile(blockOf([plainNode({ ...GATE, time })])))).toBeNull();
      expect(dateOf(pbfFile(blockOf([denseNodes([{ ...GATE, time }])])))).toBeNull();
    }
  });
});

describe('a way of a block', () => {
  const nodes = [corner(1, 0, 0), corner(2, 1, 0), corner(3, 2, 0)].map(plainNode);

  it('loses what refers to no node, and keeps the rest', () => {
    const { ground, skipped } = must(pbfFile(blockOf([...nodes, pbfWay(9, [1, 2, 2 ** 51, 3], ROAD)])));
    expect(ground.ways.map(({ id, nodes: names }) => [id, names])).toEqual([['way/9', ['node/1', 'node/2']]]);
    expect(skipped.cutWays).toBe(1);
  });

  it('is left out where its id is none', () => {
    expect(said(...nodes, pbfWay(9, [1, 2], ROAD), pbfWay(2 ** 50, [2, 3], ROAD))).toEqual([
      'town.osm.pbf: The id of this <way> is a number of 16 digits. It should be a whole number up to 562,949,953,421,312. The element is left out.',
    ]);
  });
});

describe('a relation of a block', () => {
  const square = (first: number, from: number, to: number): Element[] =>
    [
      corner(first, from, from),
      corner(first + 1, to, from),
      corner(first + 2, to, to),
      corner(first + 3, from, to),
    ].map(plainNode);
  const house = { type: 'multipolygon', building: 'yes' };
  const [outer, yard] = [pbfWay(1, [1, 2, 3, 4, 1], {}), pbfWay(2, [11, 12, 13, 14, 11], {})];
  const elements = [...square(1, 0, 6), ...square(11, 2, 4), outer, yard];

  it('is a surface with its holes where it is a multipolygon; other relations are counted', () => {
    const { ground, read, skipped } = must(
      pbfFile(
        blockOf([
          ...elements,
          pbfRelation(
            5,
            [
              ['node', 1, 'label'],
              ['way', 1, 'outer'],
              ['way', 2, 'inner'],
              ['relation', 8, 'outer'],
            ],
            house,
          ),
          pbfRelation(6, [['way', 1, '']], { type: 'route', route: 'bus' }),
        ]),
      ),
    );
    expect(ground.areas.map(({ id, tags, rings }) => [id, tags, rings.map(({ lon }) => lon.length)])).toEqual([
      ['relation/5', { building: 'yes' }, [5, 5]],
    ]);
    expect([read.relations, read.buildings, skipped.relations]).toEqual([2, 1, 1]);
  });

  it('does not close where a member is no id, or is of no kind', () => {
    const noId = pbfRelation(5, [['way', 2 ** 51, 'outer']], house);
    const noKind: Element = (group, at) =>
      group.writeBytesField(
        4,
        message((pbf) => {
          pbf.writeVarintField(1, 6);
          pbf.writePackedVarint(2, [at('type'), at('building')]);
          pbf.writePackedVarint(3, [at('multipolygon'), at('yes')]);
          pbf.writePackedSVarint(9, [1]);
        }),
      );
    const { ground, skipped } = must(pbfFile(blockOf([...elements, pbfWay(3, [1, 2], ROAD), noId, noKind])));
    expect([ground.areas.length, skipped.openAreas]).toEqual([0, 2]);
  });

  it('is no multipolygon where its type has no value', () => {
    const untyped: Element = (group, at) =>
      group.writeBytesField(
        4,
        message((pbf) => pbf.writePackedVarint(2, [at('type')])),
      );
    const { skipped } = must(pbfFile(blockOf([...elements, pbfWay(3, [1, 2], ROAD), untyped])));
    expect(skipped.relations).toBe(1);
  });

  it('is left out where its id is none', () => {
    expect(said(plainNode(GATE), pbfRelation(2 ** 50, [], house))).toEqual([
      'town.osm.pbf: The id of this <relation> is a number of 16 digits. It should be a whole number up to 562,949,953,421,312. The element is left out.',
    ]);
  });
});

it('a block with more texts than any has is taken for broken', () => {
  // Field 1 of the table with no byte, over and over.
  const empty = new Uint8Array(2 * (MOST.strings + 1)).map((_, k) => (k % 2 === 0 ? 10 : 0));
  const block = message((pbf) => pbf.writeBytesField(1, empty));
  const words = 'A part of the PBF cannot be read: the file is damaged.';
  expect(clipped(pbfFile(block)).findings.map(({ message: text }) => text)[0]).toContain(words);
});
