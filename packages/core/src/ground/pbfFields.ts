/** Fields and packed lists of Protocol Buffers, held to the bytes that there are. Source: protobuf.dev, "Encoding". */
import type { PbfReader } from 'pbf';

/** Thrown by readers of PBF only, and caught where a file is read: what is read is no PBF. */
export class Broken extends Error {}

const LENGTH_DELIMITED = 2;

/** Calls `read` with the number of each field; it may take the field's value, or leave it. */
export function fieldsOf(pbf: PbfReader, read: (field: number) => void, end: number = pbf.length): void {
  if (!(end <= pbf.length)) throw new Broken();
  for (let field = pbf.nextField(end); field > 0; field = pbf.nextField(end)) {
    read(field);
    if (!(pbf.pos <= pbf.length)) throw new Broken();
  }
  if (pbf.pos !== end) throw new Broken();
}

/** Where a message or a list within the message ends that begins here. */
export function endOf(pbf: PbfReader): number {
  const list = pbf.type === LENGTH_DELIMITED;
  const end = list ? pbf.readVarint() + pbf.pos : pbf.pos + 1;
  if (!(end <= pbf.length)) throw new Broken();
  return end;
}

/** Calls `read` until all of a packed list is read. */
export function eachPacked(pbf: PbfReader, read: () => void): void {
  const end = endOf(pbf);
  while (pbf.pos < end) read();
}

/** Bytes of a field, to be read apart from what stands beside them. */
export function bytesOf(pbf: PbfReader): Uint8Array {
  const end = endOf(pbf);
  const bytes = pbf.buf.subarray(pbf.pos, end);
  pbf.pos = end;
  return bytes;
}
