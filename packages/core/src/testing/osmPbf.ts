/**
 * OpenStreetMap PBF for tests, written with the library `pbf` by the messages of `fileformat.proto` and `osmformat.proto` of OSM-binary.
 * Not part of the package.
 */
import { zlibSync } from 'fflate';
import { PbfWriter } from 'pbf';

type Write = (pbf: PbfWriter) => void;

export function message(write: Write): Uint8Array {
  const pbf = new PbfWriter();
  write(pbf);
  return pbf.finish();
}

export function joined(...parts: readonly Uint8Array[]): Uint8Array {
  return Uint8Array.from(parts.flatMap((part) => [...part]));
}

/** BlobHeader: `type` is 1, `datasize` 3; its own size stands before it in four bytes, the highest first. */
export function framed(type: string, blob: Uint8Array, datasize: number = blob.length): Uint8Array {
  const head = message((pbf) => {
    pbf.writeStringField(1, type);
    pbf.writeVarintField(3, datasize);
  });
  return joined(sizeOf(head.length), head, blob);
}

export function sizeOf(length: number): Uint8Array {
  const four = new Uint8Array(4);
  new DataView(four.buffer).setUint32(0, length);
  return four;
}

/** Blob: `raw` is 1. */
export const rawBlob = (content: Uint8Array): Uint8Array => message((pbf) => pbf.writeBytesField(1, content));

/** Blob: `raw_size` is 2, `zlib_data` 3. */
export const zlibBlob = (content: Uint8Array, rawSize: number = content.length): Uint8Array =>
  message((pbf) => {
    pbf.writeVarintField(2, rawSize);
    pbf.writeBytesField(3, zlibSync(content));
  });

/** HeaderBlock: `required_features` is 4. */
export const headerBlock = (
  features: readonly string[] = ['OsmSchema-V0.6', 'DenseNodes'],
  more: Write = () => {},
): Uint8Array =>
  message((pbf) => {
    for (const feature of features) pbf.writeStringField(4, feature);
    more(pbf);
  });

export const HEADER: Uint8Array = framed('OSMHeader', zlibBlob(headerBlock()));

export const pbfFile = (...blocks: readonly Uint8Array[]): Uint8Array =>
  joined(HEADER, ...blocks.map((block) => framed('OSMData', zlibBlob(block))));

type Tags = Readonly<Record<string, string>>;
/** Writes one element of a group; `at` gives the number of a text. */
export type Element = (pbf: PbfWriter, at: (text: string) => number) => void;

/** PrimitiveBlock: `stringtable` is 1, `primitivegroup` 2; the first text is empty, as dense nodes end their tags with a 0. */
export function blockOf(elements: readonly Element[], more: Write = () => {}): Uint8Array {
  const texts = [''];
  const at = (text: string): number => {
    if (!texts.includes(text)) texts.push(text);
    return texts.indexOf(text);
  };
  const group = message((pbf) => {
    for (const element of elements) element(pbf, at);
  });
  return message((pbf) => {
    pbf.writeBytesField(
      1,
      message((table) => texts.forEach((text) => table.writeStringField(1, text))),
    );
    pbf.writeBytesField(2, group);
    more(pbf);
  });
}

/** `keys` are 2, `vals` 3, of nodes, ways and relations. */
function writeTags(pbf: PbfWriter, at: (text: string) => number, tags: Tags): void {
  pbf.writePackedVarint(2, Object.keys(tags).map(at));
  pbf.writePackedVarint(3, Object.values(tags).map(at));
}

/** Info: `version` is 1, `timestamp` 2. */
function writeInfo(pbf: PbfWriter, time: number | undefined): void {
  if (time === undefined) return;
  const info = message((one) => {
    one.writeVarintField(1, 3);
    one.writeVarintField(2, time);
  });
  pbf.writeBytesField(4, info);
}

const steps = (values: readonly number[]): number[] => values.map((value, k) => value - (values[k - 1] ?? 0));

/** A node whose position is in steps of the block's granularity, by itself 1e-7 of a degree. */
export interface PbfNode {
  readonly id: number;
  readonly lon: number;
  readonly lat: number;
  readonly tags?: Tags;
  readonly time?: number;
}

/** Node: `id` is 1, `info` 4, `lat` 8, `lon` 9. */
export const plainNode =
  ({ id, lon, lat, tags = {}, time }: PbfNode): Element =>
  (group, at) =>
    group.writeBytesField(
      1,
      message((pbf) => {
        pbf.writeSVarintField(1, id);
        writeTags(pbf, at, tags);
        writeInfo(pbf, time);
        pbf.writeSVarintField(8, lat);
        pbf.writeSVarintField(9, lon);
      }),
    );

/** DenseNodes: `id` is 1, `denseinfo` 5 with its `timestamp` 2, `lat` 8, `lon` 9, `keys_vals` 10; numbers as steps from the one before. */
export const denseNodes =
  (nodes: readonly PbfNode[]): Element =>
  (group, at) =>
    group.writeBytesField(
      2,
      message((pbf) => {
        const times = nodes.map(({ time }) => time ?? 0);
        pbf.writePackedSVarint(1, steps(nodes.map(({ id }) => id)));
        pbf.writeBytesField(
          5,
          message((info) => info.writePackedSVarint(2, steps(times))),
        );
        pbf.writePackedSVarint(8, steps(nodes.map(({ lat }) => lat)));
        pbf.writePackedSVarint(9, steps(nodes.map(({ lon }) => lon)));
        pbf.writePackedVarint(
          10,
          nodes.flatMap(({ tags = {} }) => [...Object.entries(tags).flat().map(at), 0]),
        );
      }),
    );

/** Way: `id` is 1, `info` 4, `refs` 8. */
export const pbfWay =
  (id: number, refs: readonly number[], tags: Tags, time?: number): Element =>
  (group, at) =>
    group.writeBytesField(
      3,
      message((pbf) => {
        pbf.writeVarintField(1, id);
        writeTags(pbf, at, tags);
        writeInfo(pbf, time);
        pbf.writePackedSVarint(8, steps(refs));
      }),
    );

type Member = readonly [kind: 'node' | 'way' | 'relation', id: number, role: string];

/** Relation: `id` is 1, `info` 4, `roles_sid` 8, `memids` 9, `types` 10 by NODE 0, WAY 1, RELATION 2. */
export const pbfRelation =
  (id: number, members: readonly Member[], tags: Tags, time?: number): Element =>
  (group, at) =>
    group.writeBytesField(
      4,
      message((pbf) => {
        pbf.writeVarintField(1, id);
        writeTags(pbf, at, tags);
        writeInfo(pbf, time);
        pbf.writePackedVarint(
          8,
          members.map(([, , role]) => at(role)),
        );
        pbf.writePackedSVarint(9, steps(members.map(([, ref]) => ref)));
        pbf.writePackedVarint(
          10,
          members.map(([kind]) => ['node', 'way', 'relation'].indexOf(kind)),
        );
      }),
    );
