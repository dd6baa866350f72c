/**
 * The frames of OpenStreetMap PBF: what is taken out of them, and which files are refused for theirs.
 * Source: `fileformat.proto` of OSM-binary; OpenStreetMap wiki, "PBF Format".
 */
import { zlibSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { courseThrough } from '../testing/courses.ts';
import {
  HEADER,
  blockOf,
  framed,
  headerBlock,
  joined,
  message,
  pbfFile,
  pbfWay,
  plainNode,
  rawBlob,
  sizeOf,
  zlibBlob,
} from '../testing/osmPbf.ts';
import { findingLine } from '../finding.ts';
import { createGroundClipper } from './clipper.ts';

const COURSE = courseThrough([
  [-17.4, -33],
  [-17.38, -33],
]);
const clipped = (bytes: Uint8Array, step: number = bytes.length) => {
  const clipper = createGroundClipper('town.osm.pbf', [COURSE], 300);
  for (let at = 0; at < bytes.length; at += step) clipper.write(bytes.subarray(at, at + step));
  return clipper.close();
};
const said = (bytes: Uint8Array): string[] => clipped(bytes).findings.map(findingLine);

const NODES = [0, 1, 2].map((k) => plainNode({ id: k + 1, lon: -173_900_000 + 10_000 * k, lat: -330_000_000 }));
const BLOCK = blockOf([...NODES, pbfWay(7, [1, 2, 3], { highway: 'residential', name: 'Quay Street' })]);
const DATA = framed('OSMData', zlibBlob(BLOCK));
const FILE = pbfFile(BLOCK);
const WHOLE = clipped(FILE);

const DAMAGED = 'town.osm.pbf: A part of the PBF cannot be read: the file is damaged. Download or save it again.';
const CUT = 'town.osm.pbf: The file ends in the middle of the PBF: it was cut off. Download or save it again.';

describe('a PBF file', () => {
  it('gives the street that its block holds', () =>
    expect(WHOLE).toMatchObject({
      ok: true,
      findings: [],
      value: {
        format: 'pbf',
        ground: { ways: [{ id: 'way/7', nodes: ['node/1', 'node/2', 'node/3'] }] },
        read: { nodes: 3, ways: 1 },
      },
    }));

  it('is the same with its blobs packed or not', () => {
    const raw = joined(framed('OSMHeader', rawBlob(headerBlock())), framed('OSMData', rawBlob(BLOCK)));
    expect(clipped(raw)).toEqual(WHOLE);
  });

  it('is the same however many bytes come at once', () => {
    for (let step = 1; step < FILE.length; step++) expect(clipped(FILE, step)).toEqual(WHOLE);
  });

  it('may hold blobs of kinds that are not known, even empty ones', () => {
    // Wiki: "Parsers should ignore and skip fileblock types that they do not recognize."
    const other = framed('OSMPicture', Uint8Array.of(1, 2, 3));
    const empty = framed('OSMPicture', new Uint8Array(0));
    for (const step of [1, 5, 1000]) {
      expect(clipped(joined(HEADER, other, empty, DATA, other), step)).toEqual(WHOLE);
      expect(clipped(joined(HEADER, DATA, empty), step)).toEqual(WHOLE);
    }
  });

  it('is dated by its head before its elements, where the head has a time', () => {
    // HeaderBlock: osmosis_replication_timestamp is 32, seconds.
    const dated = (seconds: number): Uint8Array => {
      const header = headerBlock(undefined, (pbf) => pbf.writeVarintField(32, seconds));
      const gate = { id: 9, lon: -173_900_000, lat: -330_000_000, time: Date.parse('2020-02-03T00:00:00Z') / 1000 };
      return joined(
        framed('OSMHeader', zlibBlob(header)),
        framed(
          'OSMData',
          zlibBlob(blockOf([plainNode(gate), plainNode({ ...gate, id: 10 }), pbfWay(7, [9, 10], { highway: 'path' })])),
        ),
      );
    };
    const dateOf = (bytes: Uint8Array): unknown => {
      const result = clipped(bytes);
      return result.ok && result.value.ground.source.date;
    };
    expect(dateOf(dated(Date.parse('2026-10-02T04:00:00Z') / 1000))).toBe('2026-10-02');
    for (const none of [0, -5, 2 ** 40]) expect(dateOf(dated(none))).toBe('2020-02-03');
  });
});

describe('a PBF file that cannot be used', () => {
  it('is cut off at any byte of its last blob, not damaged', () => {
    for (let end = HEADER.length + 1; end < FILE.length; end++)
      expect(said(FILE.subarray(0, end)), `cut at ${end}`).toEqual([CUT]);
  });

  it('needs a reader that knows more', () => {
    const needs = (feature: string): Uint8Array =>
      joined(framed('OSMHeader', zlibBlob(headerBlock(['OsmSchema-V0.6', feature]))), DATA);
    expect(said(needs('DenseNodes'))).toEqual([]);
    expect(said(needs('HistoricalInformation'))).toEqual([
      'town.osm.pbf: This PBF file needs a reader that knows “HistoricalInformation”. It should be plain OpenStreetMap data, without history. Save a current extract.',
    ]);
  });

  it('names the packing that is not read', () => {
    // Blob: lzma_data is 4, OBSOLETE_bzip2_data 5, lz4_data 6, zstd_data 7.
    for (const [field, name] of [
      [4, 'lzma'],
      [5, 'bzip2'],
      [6, 'lz4'],
      [7, 'zstd'],
    ] as const) {
      const blob = message((pbf) => {
        pbf.writeVarintField(2, 100);
        pbf.writeBytesField(field, Uint8Array.of(1, 2, 3));
      });
      expect(said(joined(HEADER, framed('OSMData', blob)))[0]).toContain(`needs a reader that knows “${name}”.`);
    }
  });

  it('is damaged where a blob holds nothing, or other than its size says', () => {
    const packed = message((pbf) => pbf.writeBytesField(3, zlibSync(BLOCK)));
    for (const blob of [
      new Uint8Array(0),
      packed,
      zlibBlob(BLOCK, BLOCK.length - 1),
      zlibBlob(BLOCK, BLOCK.length + 1),
      zlibBlob(BLOCK, 33_554_433),
    ])
      expect(said(joined(HEADER, framed('OSMData', blob)))).toEqual([DAMAGED]);
  });

  it('is damaged where a head has no size, is longer than 64 KiB, has no type, or wants more than 32 MiB', () => {
    const untyped = message((pbf) => pbf.writeVarintField(3, 5));
    for (const frame of [
      sizeOf(0),
      sizeOf(65_537),
      joined(sizeOf(untyped.length), untyped),
      framed('OSMData', new Uint8Array(0), 33_554_433),
    ])
      expect(said(joined(HEADER, frame))).toEqual([DAMAGED]);
  });

  it('may say of a blob what only others need', () => {
    // BlobHeader: indexdata is 2.
    const head = message((pbf) => {
      pbf.writeStringField(1, 'OSMData');
      pbf.writeBytesField(2, Uint8Array.of(9, 9));
      pbf.writeVarintField(3, zlibBlob(BLOCK).length);
    });
    expect(clipped(joined(HEADER, sizeOf(head.length), head, zlibBlob(BLOCK)))).toEqual(WHOLE);
  });

  it('is damaged where data come before the header', () => {
    const data = framed('OSMData', rawBlob(new Uint8Array(0)));
    expect(said(joined(data, HEADER, DATA))).toEqual([DAMAGED]);
  });
});
