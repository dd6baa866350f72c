/**
 * One block of OpenStreetMap PBF: its texts, and its groups of nodes, ways or relations.
 * Source: `osmformat.proto` of OSM-binary: messages PrimitiveBlock, PrimitiveGroup, DenseNodes, Way, Relation.
 */
import { PbfReader } from 'pbf';
import { takeMultipolygon, takeNode, takeWay } from './assemble.ts';
import type { Tags } from './ground.ts';
import { isKept } from './kept.ts';
import { MOST } from './limits.ts';
import { Broken, bytesOf, eachPacked, endOf, fieldsOf } from './pbfFields.ts';
import { NO_ELEMENT, type Reading, isId, wrongId } from './reading.ts';

interface Block {
  readonly reading: Reading;
  readonly strings: string[];
  /** Of positions: nanodegrees of a step, and what is added. */
  granularity: number;
  lonOffset: number;
  latOffset: number;
  /** Milliseconds of a step of time. */
  dateGranularity: number;
}

/** Reads a block; throws where it is broken. */
export function readBlock(reading: Reading, bytes: Uint8Array): void {
  const block: Block = { reading, strings: [], granularity: 100, lonOffset: 0, latOffset: 0, dateGranularity: 1000 };
  const groups: Uint8Array[] = [];
  const pbf = new PbfReader(bytes);
  fieldsOf(pbf, (field) => {
    if (field === 1) readStrings(block, new PbfReader(bytesOf(pbf)));
    else if (field === 2) groups.push(bytesOf(pbf));
    else if (field === 17) block.granularity = pbf.readVarint(true);
    else if (field === 18) block.dateGranularity = pbf.readVarint(true);
    else if (field === 19) block.latOffset = pbf.readVarint(true);
    else if (field === 20) block.lonOffset = pbf.readVarint(true);
  });
  for (const group of groups) readGroup(block, new PbfReader(group));
}

function readStrings({ strings }: Block, pbf: PbfReader): void {
  fieldsOf(pbf, (field) => {
    if (field === 1) strings.push(pbf.readString());
    if (strings.length > MOST.strings) throw new Broken();
  });
}

function readGroup(block: Block, pbf: PbfReader): void {
  fieldsOf(pbf, (field) => {
    if (field === 1) readNode(block, pbf);
    else if (field === 2) readDense(block, pbf);
    else if (field === 3) readWay(block, pbf);
    else if (field === 4) readRelation(block, pbf);
  });
}

const textAt = ({ strings }: Block, index: number): string => strings[index] ?? '';

/** The tags that the ground knows among keys and values by their numbers, `null` where there are none. */
function tagsOf(block: Block, keys: readonly number[], values: readonly number[]): Tags | null {
  let tags: Record<string, string> | null = null;
  for (const [k, key] of keys.entries()) {
    const [name, value] = [textAt(block, key), textAt(block, values[k] ?? -1)];
    if (isKept(name, value)) (tags ??= {})[name] = value;
  }
  return tags;
}

function addNode(block: Block, id: number, lon: number, lat: number, tags: Tags | null): void {
  const x = Math.round((block.lonOffset + block.granularity * lon) / 100);
  const y = Math.round((block.latOffset + block.granularity * lat) / 100);
  const { assembly, leftOut } = block.reading;
  if (!isId(id)) leftOut.report(wrongId('node', id), {});
  else if (!(Math.abs(y) <= 90e7)) leftOut.report({ problem: 'latitude', element: 'node', found: y / 1e7 }, {});
  else if (!(Math.abs(x) <= 180e7)) leftOut.report({ problem: 'longitude', element: 'node', found: x / 1e7 }, {});
  else takeNode(assembly, id, x, y, tags);
}

function readNode(block: Block, pbf: PbfReader): void {
  let [id, lon, lat] = [0, 0, 0];
  const [keys, values]: [number[], number[]] = [[], []];
  fieldsOf(
    pbf,
    (field) => {
      if (field === 1) id = pbf.readSVarint();
      else if (field === 2) eachPacked(pbf, () => keys.push(pbf.readVarint()));
      else if (field === 3) eachPacked(pbf, () => values.push(pbf.readVarint()));
      else if (field === 4) readInfo(block, pbf);
      else if (field === 8) lat = pbf.readSVarint();
      else if (field === 9) lon = pbf.readSVarint();
    },
    endOf(pbf),
  );
  addNode(block, id, lon, lat, tagsOf(block, keys, values));
}

function readInfo(block: Block, pbf: PbfReader): void {
  fieldsOf(
    pbf,
    (field) => {
      if (field === 2) noteTime(block, pbf.readVarint(true));
    },
    endOf(pbf),
  );
}

function noteTime({ reading, dateGranularity }: Block, step: number): void {
  const milliseconds = step * dateGranularity;
  if (!(milliseconds > 0 && milliseconds < 4e12)) return;
  const time = new Date(milliseconds).toISOString();
  if (time > reading.newestTime) reading.newestTime = time;
}

const NOTHING: Uint8Array = new Uint8Array(0);

function readDense(block: Block, pbf: PbfReader): void {
  let [ids, lons, lats, texts] = [NOTHING, NOTHING, NOTHING, NOTHING];
  fieldsOf(
    pbf,
    (field) => {
      if (field === 1) ids = bytesOf(pbf);
      else if (field === 5) readDenseInfo(block, new PbfReader(bytesOf(pbf)));
      else if (field === 8) lats = bytesOf(pbf);
      else if (field === 9) lons = bytesOf(pbf);
      else if (field === 10) texts = bytesOf(pbf);
    },
    endOf(pbf),
  );
  // Read side by side, so that no list of a block's nodes is made.
  const [idsIn, lonsIn, latsIn, textsIn] = [ids, lons, lats, texts].map((bytes) => new PbfReader(bytes)) as [
    PbfReader,
    PbfReader,
    PbfReader,
    PbfReader,
  ];
  let [id, lon, lat] = [0, 0, 0];
  while (idsIn.pos < idsIn.length && block.reading.assembly.counts.nodes <= MOST.nodes) {
    id += idsIn.readSVarint();
    lon += lonsIn.readSVarint();
    lat += latsIn.readSVarint();
    addNode(block, id, lon, lat, denseTags(block, textsIn));
  }
}

/** Keys and values by turns, up to a 0. */
function denseTags(block: Block, pbf: PbfReader): Tags | null {
  let tags: Record<string, string> | null = null;
  while (pbf.pos < pbf.length) {
    const key = pbf.readVarint();
    if (key === 0) break;
    const [name, value] = [textAt(block, key), textAt(block, pbf.readVarint())];
    if (isKept(name, value)) (tags ??= {})[name] = value;
  }
  return tags;
}

function readDenseInfo(block: Block, pbf: PbfReader): void {
  let [time, newest] = [0, 0];
  fieldsOf(pbf, (field) => {
    if (field !== 2) return;
    eachPacked(pbf, () => {
      time += pbf.readSVarint();
      if (time > newest) newest = time;
    });
  });
  noteTime(block, newest);
}

function readWay(block: Block, pbf: PbfReader): void {
  let [id, ref] = [0, 0];
  const [keys, values, refs]: [number[], number[], number[]] = [[], [], []];
  fieldsOf(
    pbf,
    (field) => {
      if (field === 1) id = pbf.readVarint(true);
      else if (field === 2) eachPacked(pbf, () => keys.push(pbf.readVarint()));
      else if (field === 3) eachPacked(pbf, () => values.push(pbf.readVarint()));
      else if (field === 4) readInfo(block, pbf);
      else if (field === 8)
        eachPacked(pbf, () => {
          ref += pbf.readSVarint();
          refs.push(isId(ref) ? ref : NO_ELEMENT);
        });
    },
    endOf(pbf),
  );
  const { assembly, leftOut } = block.reading;
  if (isId(id)) takeWay(assembly, id, refs, tagsOf(block, keys, values));
  else leftOut.report(wrongId('way', id), {});
}

function readRelation(block: Block, pbf: PbfReader): void {
  let [id, ref] = [0, 0];
  const [keys, values, roles, refs, types]: number[][] = [[], [], [], [], []];
  fieldsOf(
    pbf,
    (field) => {
      if (field === 1) id = pbf.readVarint(true);
      else if (field === 2) eachPacked(pbf, () => keys!.push(pbf.readVarint()));
      else if (field === 3) eachPacked(pbf, () => values!.push(pbf.readVarint()));
      else if (field === 4) readInfo(block, pbf);
      else if (field === 8) eachPacked(pbf, () => roles!.push(pbf.readVarint()));
      else if (field === 9)
        eachPacked(pbf, () => {
          ref += pbf.readSVarint();
          refs!.push(isId(ref) ? ref : NO_ELEMENT);
        });
      else if (field === 10) eachPacked(pbf, () => types!.push(pbf.readVarint()));
    },
    endOf(pbf),
  );
  const { assembly, leftOut } = block.reading;
  if (!isId(id)) return leftOut.report(wrongId('relation', id), {});
  assembly.counts.relations++;
  const multipolygon = keys!.some(
    (key, k) => textAt(block, key) === 'type' && textAt(block, values![k] ?? -1) === 'multipolygon',
  );
  if (!multipolygon) {
    assembly.skipped.relations++;
    return;
  }
  // Members of type 1 are ways.
  const ways = refs!.map((way, k) => ({ way, inner: textAt(block, roles![k] ?? -1) === 'inner', is: types![k] === 1 }));
  const [outer, inner] = [false, true].map((side) => ways.filter((one) => one.is && one.inner === side));
  takeMultipolygon(assembly, {
    id,
    outer: outer!.map(({ way }) => way),
    inner: inner!.map(({ way }) => way),
    tags: tagsOf(block, keys!, values!) ?? {},
  });
}
