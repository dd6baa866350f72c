/** The text of a chosen file, strictly: a table whose letters would be altered is refused with the place of the byte. */
import type { Result } from '@halfcup/core';
import { textFrom } from '@halfcup/core/plan';
import { reasonOf } from '../trouble.ts';

export async function textOfFile(file: File): Promise<Result<string>> {
  try {
    return textFrom(new Uint8Array(await file.arrayBuffer()), file.name);
  } catch (error) {
    const message = `The file could not be read: ${reasonOf(error)}.`;
    return {
      ok: false,
      findings: [{ code: 'file-unreadable', severity: 'error', message, where: { file: file.name } }],
    };
  }
}
