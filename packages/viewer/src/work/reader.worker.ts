/** The worker: reads files and makes their courses, or packs files into one, and reports how far it is. */
import '../policy.ts';
import type { Finding } from '@halfcup/core';
import { createGpxReader } from '@halfcup/core/gpx';
import type { NamedFile } from '../state/open/fileKinds.ts';
import { gatherFiles, withFindings, type GpxReading } from '../state/open/gather.ts';
import { offeredFile, FIRST_CHOICE } from '../state/open/offering.ts';
import { openGathered, type Opening } from '../state/open/open.ts';
import { startedFrom, wholeOf } from '../state/open/starting.ts';
import { blocksOf, plainOpening, plainPlan, waitingOf, type NamedBlob, type Task, type Told } from './messages.ts';
import { reasonOf } from '../trouble.ts';
import { isZip, packed, unpacked } from './zip.ts';

const PIECE = 2 ** 18;

const post = (told: Told, blocks: Transferable[] = []): void => self.postMessage(told, { transfer: blocks });

const load = ({ name, blob }: NamedBlob): NamedFile => ({
  name,
  bytes: new Uint8Array(new FileReaderSync().readAsArrayBuffer(blob)),
});

/** The files, and those in archives among them. */
function unfolded(files: readonly NamedFile[]): {
  readonly files: readonly NamedFile[];
  readonly findings: readonly Finding[];
} {
  const results = files.map((file) =>
    isZip(file.bytes) ? unpacked(file) : { ok: true as const, value: [file], findings: [] },
  );
  return {
    files: results.flatMap((result) => (result.ok ? result.value : [])),
    findings: results.flatMap(({ findings }) => findings),
  };
}

/** Reports how far it is after every piece. */
function readingOf(total: number): GpxReading {
  let done = 0;
  return (bytes, name) => {
    const reader = createGpxReader(name);
    for (let at = 0; at < bytes.length; at += PIECE) {
      const piece = bytes.subarray(at, at + PIECE);
      reader.write(piece);
      done += piece.length;
      post({ kind: 'progress', read: { file: name, done, total } });
    }
    const result = reader.close();
    if (done >= total) post({ kind: 'progress', read: null });
    return result;
  };
}

/** Course files with what they offer, so that the page does not have to work it out. */
function withOffers(opening: Opening): Opening {
  if (opening.kind !== 'starting') return opening;
  const files = opening.starting.files.map((file) => ({ ...file, offered: offeredFile(file, FIRST_CHOICE).offered }));
  return { ...opening, starting: { ...opening.starting, files } };
}

function read({ files, waiting }: Extract<Task, { kind: 'read' }>): Opening {
  const all = unfolded(files.map(load));
  if (all.findings.some(({ severity }) => severity === 'error')) return { kind: 'refused', findings: all.findings };
  const total = all.files
    .filter(({ name }) => !/\.(?:json|geojson|csv)$/iu.test(name))
    .reduce((sum, { bytes }) => sum + bytes.length, 0);
  const before = waiting === null ? null : waitingOf(waiting);
  return withOffers(openGathered(withFindings(gatherFiles(all.files, before, readingOf(total)), all.findings)));
}

function start({ starting, answers }: Extract<Task, { kind: 'start' }>): Told {
  const started = startedFrom(starting, answers);
  if (!started.ok) return { kind: 'unstarted', findings: started.findings };
  const whole = wholeOf(started.value);
  return whole.ok
    ? { kind: 'started', bare: plainPlan(started.value.bare), whole: plainPlan(whole.value) }
    : { kind: 'unstarted', findings: whole.findings };
}

function carriedOut(task: Task): void {
  if (task.kind === 'pack')
    return post({ kind: 'packed', zip: new Blob([packed(task.files.map(load))], { type: 'application/zip' }) });
  if (task.kind === 'offer') return post({ kind: 'offered', ...offeredFile(task.file, task.choice) });
  if (task.kind === 'start') return post(start(task));
  const opening = plainOpening(read(task));
  return post({ kind: 'read', opening }, blocksOf(opening));
}

self.addEventListener('message', ({ data: task }: MessageEvent<Task>) => {
  try {
    carriedOut(task);
  } catch (error) {
    post({ kind: 'failed', message: reasonOf(error) });
  }
});
