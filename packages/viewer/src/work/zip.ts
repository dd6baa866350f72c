/** A plan and the files that it names as one ZIP archive (APPNOTE 6.3.10); deflated and inflated by fflate. */
import type { Finding, Result } from '@halfcup/core';
import { LIMITS, limitFinding } from '@halfcup/core/schemas';
import { Inflate, zipSync } from 'fflate';
import { hasKnownEnding, isForeign, lastName, type NamedFile } from '../state/open/fileKinds.ts';
import { crc32, packedBytes, zipEntries, type ZipEntry } from './zipDirectory.ts';

/** What is unpacked has a bound for all together and for their number: else a small archive could fill the memory. */
const { bytes: MOST_BYTES, files: MOST_FILES, unpacked: MOST_UNPACKED } = LIMITS.zip;
/** Deflate makes at most so many bytes of one (RFC 1951: 258 of two bits): an entry that says more lies. */
const MOST_OF_ONE = 1032;
/** Deflated bytes are given to the unpacker in such pieces: each becomes at most about a thousand times as many. */
const PIECE = 2 ** 14;

export const isZip = (bytes: Uint8Array): boolean =>
  bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3 && bytes[3] === 4;

/** As a path inside an archive: no root, no step upwards. */
const inside = (name: string): string =>
  name
    .replaceAll('\\', '/')
    .split('/')
    .filter((part) => part !== '' && part !== '.' && part !== '..')
    .join('/');

export const packed = (files: readonly NamedFile[]): Uint8Array<ArrayBuffer> =>
  zipSync(Object.fromEntries(files.map(({ name, bytes }) => [inside(name), bytes])));

type Code = 'zip-too-large' | 'zip-unreadable' | 'zip-damaged' | 'zip-encrypted' | 'zip-left-out';

const finding = (code: Code, severity: Finding['severity'], file: string, message: string): Finding => ({
  code,
  severity,
  message,
  where: { file },
});

const refused = (file: string, code: Code, message: string): Result<NamedFile[]> => ({
  ok: false,
  findings: [finding(code, 'error', file, message)],
});

const DAMAGED = 'Download it again, or unpack it and open the files inside.';

/** The unpacked bytes; `null` where they are not as many as the list says, or cannot be unpacked. Never holds more than that and a piece. */
function inflated(deflated: Uint8Array, size: number): Uint8Array<ArrayBuffer> | null {
  const all = new Uint8Array(size);
  const grown = { length: 0, ended: false };
  const inflate = new Inflate((chunk, final) => {
    if (grown.length + chunk.length <= size) all.set(chunk, grown.length);
    grown.length += chunk.length;
    grown.ended ||= final;
  });
  try {
    for (let at = 0; at < deflated.length; at += PIECE) {
      inflate.push(deflated.subarray(at, at + PIECE), at + PIECE >= deflated.length);
      if (grown.length > size) return null;
    }
  } catch {
    return null;
  }
  return grown.ended && grown.length === size ? all : null;
}

/** One file of an archive, whole and unaltered, or why not. */
function contentOf(bytes: Uint8Array, entry: ZipEntry): Uint8Array<ArrayBuffer> | Code {
  if (entry.encrypted) return 'zip-encrypted';
  if (entry.size > MOST_UNPACKED) return 'zip-too-large';
  const own = packedBytes(bytes, entry);
  if (own === null || (entry.method !== 0 && entry.method !== 8)) return 'zip-unreadable';
  if (entry.size > MOST_OF_ONE * own.length) return 'zip-damaged';
  const content = entry.method === 0 ? own.slice() : inflated(own, entry.size);
  return content !== null && content.length === entry.size && crc32(content) === entry.crc ? content : 'zip-damaged';
}

const WHY: Readonly<Record<Code, (name: string) => string>> = {
  'zip-encrypted': (name) => `${name} in this ZIP file is locked with a password. Unpack it and open the files inside.`,
  'zip-too-large': (name) =>
    `${name} in this ZIP file is larger than ${MOST_UNPACKED / 1e6} MB. Open a plan with smaller files.`,
  'zip-unreadable': (name) =>
    `${name} in this ZIP file is packed in a way that cannot be read. Unpack it and open the files inside.`,
  'zip-damaged': (name) => `${name} in this ZIP file is damaged: it is not what was packed. ${DAMAGED}`,
  'zip-left-out': (name) => `${name} in this ZIP file is no course, plan, drawing or results, so it was left out.`,
};

/** Folders, and files that systems hide in archives. */
const isHidden = ({ name }: ZipEntry): boolean =>
  name.endsWith('/') || lastName(name).startsWith('.') || name.startsWith('__MACOSX/');

/** The files of an archive, each checked by its sum; folders and hidden files are left out, others that no plan can use with a note. */
export function unpacked({ name, bytes }: NamedFile): Result<NamedFile[]> {
  const past = (what: 'bytes' | 'files' | 'unpacked', found?: number): Result<NamedFile[]> => ({
    ok: false,
    findings: [limitFinding('zip', what, { file: name }, found)],
  });
  if (bytes.length > MOST_BYTES) return past('bytes', bytes.length);
  const entries = zipEntries(bytes, MOST_FILES);
  if (entries === 'many') return past('files');
  if (entries === null)
    return refused(name, 'zip-unreadable', `This ZIP file could not be unpacked. It may be cut off. ${DAMAGED}`);
  const shown = entries.filter((entry) => !isHidden(entry));
  const size = shown.reduce((sum, entry) => sum + (hasKnownEnding(entry.name) ? entry.size : 0), 0);
  if (size > MOST_UNPACKED) return past('unpacked', size);
  return sorted(name, bytes, shown);
}

function sorted(name: string, bytes: Uint8Array, entries: readonly ZipEntry[]): Result<NamedFile[]> {
  const files: NamedFile[] = [];
  const foreign: string[] = [];
  // Files whose names do not say what they are have their bound of bytes too.
  let unsure: number = MOST_UNPACKED;
  for (const entry of entries) {
    const known = hasKnownEnding(entry.name);
    if (!known) unsure -= entry.size;
    const content = known || unsure >= 0 ? contentOf(bytes, entry) : 'zip-too-large';
    const broken = typeof content === 'string';
    if (known && broken) return refused(name, content, WHY[content](entry.name));
    if (broken || isForeign({ name: entry.name, bytes: content })) foreign.push(entry.name);
    else files.push({ name: entry.name, bytes: content });
  }
  const notes = foreign.map((one) => finding('zip-left-out', 'note', name, WHY['zip-left-out'](one)));
  return { ok: true, value: files, findings: notes };
}
