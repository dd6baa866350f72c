/** The worker: reads a map file as a stream, keeps what lies beside the courses, and reports how far it is. */
import '../policy.ts';
import { clipGround, groundText } from '@halfcup/core/ground';
import { reasonOf } from '../trouble.ts';
import type { StreetsTask, StreetsTold } from './streetsMessages.ts';

const post = (told: StreetsTold): void => self.postMessage(told, {});

/** The bytes of a file as they come: not every browser can iterate over a stream. */
async function* piecesOf(blob: Blob): AsyncGenerator<Uint8Array> {
  const reader = blob.stream().getReader();
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return;
    yield value;
  }
}

async function read({ name, blob, courses }: StreetsTask): Promise<StreetsTold> {
  const onProgress = (done: number): void => post({ kind: 'progress', done });
  const clipped = await clipGround(piecesOf(blob), { file: name, courses, onProgress });
  if (!clipped.ok) return { kind: 'refused', findings: clipped.findings };
  const { ground } = clipped.value;
  const file = new Blob([groundText(ground)], { type: 'application/geo+json' });
  return { kind: 'read', streets: { ground, file, findings: clipped.findings } };
}

self.addEventListener('message', ({ data }: MessageEvent<StreetsTask>) => {
  read(data).then(post, (error: unknown) => post({ kind: 'failed', message: reasonOf(error) }));
});
