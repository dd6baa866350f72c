/** The list of the files in a ZIP archive, from its central directory (APPNOTE 6.3.10, sections 4.3.7, 4.3.12 to 4.3.16, 4.4). */

export interface ZipEntry {
  readonly name: string;
  /** 0: as it is; 8: deflated. */
  readonly method: number;
  readonly encrypted: boolean;
  readonly crc: number;
  /** Bytes in the archive, and unpacked. */
  readonly packed: number;
  readonly size: number;
  /** Where its own header begins. */
  readonly at: number;
}

const END = 0x06054b50;
const END_64 = 0x06064b50;
const LOCATOR_64 = 0x07064b50;
const CENTRAL = 0x02014b50;
const LOCAL = 0x04034b50;
const END_LENGTH = 22;
/** The end record is followed by a comment of at most so many bytes. */
const COMMENT = 0xffff;
const FULL = 0xffffffff;

const viewOf = ({ buffer, byteOffset, byteLength }: Uint8Array): DataView =>
  new DataView(buffer, byteOffset, byteLength);

/** A count of 64 bits; beyond what a number holds exactly it is past the end of any file, which is noticed there. */
const count64 = (view: DataView, at: number): number => Number(view.getBigUint64(at, true));

function endOf(view: DataView): number | null {
  const last = view.byteLength - END_LENGTH;
  for (let at = last; at >= Math.max(0, last - COMMENT); at--) if (view.getUint32(at, true) === END) return at;
  return null;
}

/** How many files the archive has, and where their list begins. */
function listOf(view: DataView): { readonly count: number; readonly at: number } | null {
  const end = endOf(view);
  if (end === null) return null;
  if (end >= 20 && view.getUint32(end - 20, true) === LOCATOR_64) {
    const at = count64(view, end - 12);
    if (at + 56 > view.byteLength || view.getUint32(at, true) !== END_64) return null;
    return { count: count64(view, at + 32), at: count64(view, at + 48) };
  }
  return { count: view.getUint16(end + 10, true), at: view.getUint32(end + 16, true) };
}

/** UTF-8 where it is valid, as nearly all programs write it; else each byte a letter, as old ones do. */
function nameOf(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return String.fromCharCode(...bytes);
  }
}

/** The three lengths that a record of more than 4 GB, or of unknown size when it was begun, keeps elsewhere. */
function wide(view: DataView, from: number, to: number, short: readonly number[]): readonly number[] {
  if (!short.includes(FULL)) return short;
  for (let at = from; at + 4 <= to;) {
    const length = view.getUint16(at + 2, true);
    if (view.getUint16(at, true) === 1) {
      let next = at + 4;
      return short.map((one) => {
        if (one !== FULL || next + 8 > Math.min(to, at + 4 + length)) return one;
        next += 8;
        return count64(view, next - 8);
      });
    }
    at += 4 + length;
  }
  return short;
}

/** The files of an archive; `null` where its list is cut off or is none. `most`: beyond so many, `'many'`. */
export function zipEntries(bytes: Uint8Array, most: number): readonly ZipEntry[] | 'many' | null {
  const view = viewOf(bytes);
  const list = bytes.length < END_LENGTH ? null : listOf(view);
  if (list === null) return null;
  if (list.count > most) return 'many';
  const entries: ZipEntry[] = [];
  let at = list.at;
  for (let k = 0; k < list.count; k++) {
    if (at + 46 > bytes.length || view.getUint32(at, true) !== CENTRAL) return null;
    const nameEnd = at + 46 + view.getUint16(at + 28, true);
    const extraEnd = nameEnd + view.getUint16(at + 30, true);
    if (extraEnd > bytes.length) return null;
    const short = [view.getUint32(at + 24, true), view.getUint32(at + 20, true), view.getUint32(at + 42, true)];
    const [size, packed, local] = wide(view, nameEnd, extraEnd, short);
    entries.push({
      name: nameOf(bytes.subarray(at + 46, nameEnd)),
      method: view.getUint16(at + 10, true),
      encrypted: (view.getUint16(at + 8, true) & 1) === 1,
      crc: view.getUint32(at + 16, true),
      packed: packed!,
      size: size!,
      at: local!,
    });
    at = extraEnd + view.getUint16(at + 32, true);
  }
  return entries;
}

/** The bytes of a file as they stand in the archive; `null` where they are not where the list says. */
export function packedBytes(bytes: Uint8Array, { at, packed }: ZipEntry): Uint8Array | null {
  const view = viewOf(bytes);
  if (at + 30 > bytes.length || view.getUint32(at, true) !== LOCAL) return null;
  const from = at + 30 + view.getUint16(at + 26, true) + view.getUint16(at + 28, true);
  return from + packed > bytes.length ? null : bytes.subarray(from, from + packed);
}

const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let one = byte;
  for (let bit = 0; bit < 8; bit++) one = (one & 1) === 1 ? (one >>> 1) ^ 0xedb88320 : one >>> 1;
  return one;
});

/** CRC-32 as in ISO 3309 and APPNOTE 4.4.7. */
export function crc32(bytes: Uint8Array): number {
  let crc = FULL;
  for (let at = 0; at < bytes.length; at++) crc = TABLE[(crc ^ bytes[at]!) & 0xff]! ^ (crc >>> 8);
  return (crc ^ FULL) >>> 0;
}
