/** A plan and the files that it names as one ZIP archive (APPNOTE 6.3.10), written and read by fflate. */
import type { Finding, Result } from '@halfcup/core';
import { unzipSync, zipSync } from 'fflate';
import { lastName, type NamedFile } from '../state/open/gather.ts';

/** An archive whose files together are larger than this is refused: it would fill the memory of a telephone. */
const LARGEST = 2 ** 30;

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
  let size = 0;
  try {
    const entries = unzipSync(bytes, {
      filter: (entry) => {
        if (entry.name.endsWith('/') || lastName(entry.name).startsWith('.')) return false;
        size += entry.originalSize;
        return size <= LARGEST;
      },
    });
    if (size > LARGEST)
      return refused(
        name,
        'zip-too-large',
        `The files in this ZIP file are larger than ${LARGEST / 2 ** 20} MB together. Unpack it and open only the plan and its files.`,
      );
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
