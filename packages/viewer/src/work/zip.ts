/** A plan and the files that it names as one ZIP archive (APPNOTE 6.3.10), written and read by fflate. */
import type { Finding, Result } from '@halfcup/core';
import { LIMITS, limitFinding } from '@halfcup/core/schemas';
import { unzipSync, zipSync } from 'fflate';
import { lastName, type NamedFile } from '../state/open/gather.ts';

/** Deflate makes at most so many bytes of one (RFC 1951: a length of 258 in two bits): an entry that says more lies. */
const MOST_PACKED = 1032;

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

const refused = (file: string, code: string, message: string): Result<NamedFile[]> => {
  const finding: Finding = { code, severity: 'error', message, where: { file } };
  return { ok: false, findings: [finding] };
};

/** The files of an archive; folders and hidden files are left out. */
export function unpacked({ name, bytes }: NamedFile): Result<NamedFile[]> {
  if (bytes.length > LIMITS.zip.bytes)
    return { ok: false, findings: [limitFinding('zip', 'bytes', { file: name }, bytes.length)] };
  let size = 0;
  let count = 0;
  let lies = false;
  try {
    const entries = unzipSync(bytes, {
      filter: (entry) => {
        if (entry.name.endsWith('/') || lastName(entry.name).startsWith('.')) return false;
        size += entry.originalSize;
        count += 1;
        lies ||= entry.originalSize > MOST_PACKED * entry.size;
        return !lies && size <= LIMITS.zip.unpacked && count <= LIMITS.zip.files;
      },
    });
    if (size > LIMITS.zip.unpacked)
      return { ok: false, findings: [limitFinding('zip', 'unpacked', { file: name }, size)] };
    if (count > LIMITS.zip.files) return { ok: false, findings: [limitFinding('zip', 'files', { file: name }, count)] };
    if (lies) throw new Error('an entry says that it is larger than it can be');
    return {
      ok: true,
      value: Object.entries(entries).map(([entry, content]) => ({ name: entry, bytes: content })),
      findings: [],
    };
  } catch (error) {
    console.warn(error);
    return refused(
      name,
      'zip-unreadable',
      'This ZIP file could not be unpacked. It may be cut off or encrypted. Download it again, or unpack it and open the files inside.',
    );
  }
}
