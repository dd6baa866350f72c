/**
 * Reads the frames of OpenStreetMap PBF with the library `pbf`: a header and then blocks, each a compressed blob of its own.
 * Source: OpenStreetMap wiki, "PBF Format"; `fileformat.proto` and `osmformat.proto` of OSM-binary.
 */
import { unzlibSync } from 'fflate';
import { PbfReader } from 'pbf';
import { excerpt } from '../gpx/trouble.ts';
import { Broken, fieldsOf } from './pbfFields.ts';
import { readBlock } from './pbfBlock.ts';
import { type BytesReader, type Reading, holdToLimits, refuse } from './reading.ts';

/** Limits of the format, bytes: of a blob's header, and of what it holds. */
const LONGEST_HEADER = 65_536;
const LONGEST_BLOB = 33_554_432;

const KNOWN: ReadonlySet<string> = new Set(['OsmSchema-V0.6', 'DenseNodes']);
/** Compressions that a blob may have and that are not read, by their fields. */
const COMPRESSIONS: readonly (readonly [field: number, name: string])[] = [
  [4, 'lzma'],
  [5, 'bzip2'],
  [6, 'lz4'],
  [7, 'zstd'],
];

interface BlobHead {
  readonly type: string;
  readonly size: number;
}

interface Frames {
  readonly reading: Reading;
  /** Bytes that wait, in order. */
  pieces: Uint8Array[];
  size: number;
  head: BlobHead | null;
  begun: boolean;
}

/** A reader of PBF that puts what it reads into `reading`. */
export function createPbfReader(reading: Reading): BytesReader {
  const frames: Frames = { reading, pieces: [], size: 0, head: null, begun: false };
  return {
    write: (chunk) => {
      frames.pieces.push(chunk.slice());
      frames.size += chunk.length;
      try {
        while (reading.fault === null && step(frames)) holdToLimits(reading);
      } catch {
        // Whatever broken bytes make of the library's readers is a fault of the file.
        refuse(reading, 'ground-broken', { format: 'pbf' });
      }
    },
    close: () => {
      if (!frames.begun || frames.size > 0 || frames.head !== null)
        refuse(reading, 'ground-cut-off', { format: 'pbf' });
    },
  };
}

/** The first bytes, joined once where they came in several pieces; `null` where there are not so many yet. */
function firstOf(frames: Frames, length: number): Uint8Array | null {
  if (frames.size < length) return null;
  if ((frames.pieces[0]?.length ?? 0) < length) {
    const all = new Uint8Array(frames.size);
    let at = 0;
    for (const piece of frames.pieces) {
      all.set(piece, at);
      at += piece.length;
    }
    frames.pieces = [all];
  }
  return (frames.pieces[0] ?? new Uint8Array(0)).subarray(0, length);
}

function drop(frames: Frames, length: number): void {
  const [first] = frames.pieces;
  if (first === undefined) return;
  frames.size -= length;
  if (first.length === length) frames.pieces.shift();
  else frames.pieces[0] = first.subarray(length);
}

/** Takes the next head or blob, if it is whole. */
function step(frames: Frames): boolean {
  const { head } = frames;
  if (head !== null) {
    const blob = firstOf(frames, head.size);
    if (blob === null) return false;
    frames.head = null;
    drop(frames, head.size);
    readBlob(frames, head.type, blob);
    return true;
  }
  const four = firstOf(frames, 4);
  if (four === null) return false;
  const length = new DataView(four.buffer, four.byteOffset, 4).getUint32(0);
  if (length === 0 || length > LONGEST_HEADER) throw new Broken();
  const bytes = firstOf(frames, 4 + length);
  if (bytes === null) return false;
  frames.head = blobHead(bytes.subarray(4));
  drop(frames, 4 + length);
  return true;
}

function readBlob(frames: Frames, type: string, blob: Uint8Array): void {
  if (!frames.begun && type !== 'OSMHeader') throw new Broken();
  frames.begun = true;
  if (type !== 'OSMHeader' && type !== 'OSMData') return;
  const content = contentOf(frames.reading, blob);
  if (content === null) return;
  if (type === 'OSMHeader') readHeader(frames.reading, content);
  else readBlock(frames.reading, content);
}

function blobHead(bytes: Uint8Array): BlobHead {
  const pbf = new PbfReader(bytes);
  let [type, size] = ['', -1];
  fieldsOf(pbf, (field) => {
    if (field === 1) type = pbf.readString();
    else if (field === 3) size = pbf.readVarint();
  });
  if (type === '' || !(size >= 0 && size <= LONGEST_BLOB)) throw new Broken();
  return { type, size };
}

/** What a blob holds, unpacked; `null` where it cannot be and the reading has the reason. */
function contentOf(reading: Reading, blob: Uint8Array): Uint8Array | null {
  const pbf = new PbfReader(blob);
  let raw: Uint8Array | null = null;
  let packed: Uint8Array | null = null;
  let size = -1;
  let other: string | undefined;
  fieldsOf(pbf, (field) => {
    if (field === 1) raw = pbf.readBytes();
    else if (field === 2) size = pbf.readVarint();
    else if (field === 3) packed = pbf.readBytes();
    else other ??= COMPRESSIONS.find(([one]) => one === field)?.[1];
  });
  if (raw !== null) return raw;
  if (packed === null && other !== undefined) {
    refuse(reading, 'ground-pbf-feature', { feature: other });
    return null;
  }
  if (packed === null || !(size >= 0 && size <= LONGEST_BLOB)) throw new Broken();
  const content = unzlibSync(packed, { out: new Uint8Array(size) });
  if (content.length !== size) throw new Broken();
  return content;
}

/** Refuses a file that needs more of a reader than is known here; takes its day. */
function readHeader(reading: Reading, bytes: Uint8Array): void {
  const pbf = new PbfReader(bytes);
  fieldsOf(pbf, (field) => {
    if (field === 4) {
      const feature = pbf.readString();
      if (!KNOWN.has(feature)) refuse(reading, 'ground-pbf-feature', { feature: excerpt(feature) });
    } else if (field === 32) reading.headTime = timeOf(pbf.readVarint(true) * 1000);
  });
}

/** A time as OpenStreetMap XML has it; empty where the number is none. */
const timeOf = (milliseconds: number): string =>
  milliseconds > 0 && milliseconds < 4e12 ? new Date(milliseconds).toISOString() : '';
