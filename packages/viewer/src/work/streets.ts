/** Takes in a map file: the streets beside the open plan's courses are kept with the plan. Read in a worker, with a way to stop. */
import type { Finding } from '@halfcup/core';
import type { Ground } from '@halfcup/core/ground';
import { addStreets } from '../state/edits/streets.ts';
import type { Store } from '../state/store/store.ts';
import { coursesOf } from '../state/view/derive.ts';
import { workerTrouble } from '../trouble.ts';
import { counted, grouped } from '../words.ts';
import type { StreetsTask, StreetsTold } from './streetsMessages.ts';

/** Files that can be nothing but a map: OpenStreetMap's own formats, packed or not. */
const MAP_FILE = /\.(?:osm|pbf)(?:\.gz)?$/iu;
const DRAWING = /\.geojson(?:\.gz)?$/iu;

export const isMapFile = ({ name }: File): boolean => MAP_FILE.test(name);
/** A drawing by itself beside an open plan is its streets: nothing else can be done with it. */
export const isStreets = (store: Store, files: readonly File[]): boolean => {
  const [file] = files;
  if (file === undefined || files.length > 1) return false;
  return isMapFile(file) || (DRAWING.test(file.name) && store.open.value !== null && store.waiting.value === null);
};

const MEGA = 1e6;
const megabytes = (bytes: number): string => (bytes / MEGA).toFixed(bytes < 10 * MEGA ? 1 : 0);

type End = Exclude<StreetsTold, { kind: 'progress' }>;

/** What the worker says at the end; `null` where a person has stopped it. */
function readStreets(store: Store, task: StreetsTask): Promise<End | null> {
  store.job.value?.stop();
  const worker = new Worker(new URL('./streets.worker.ts', import.meta.url), { type: 'module' });
  const { name, blob } = task;
  return new Promise((resolve) => {
    const end = (told: End | null): void => {
      worker.terminate();
      store.job.value = null;
      resolve(told);
    };
    const stop = (): void => end(null);
    const show = (done: number): void => {
      const label = `Reading streets from ${name}: ${megabytes(done)} of ${megabytes(blob.size)} MB`;
      store.job.value = { label, share: blob.size === 0 ? null : done / blob.size, stop };
    };
    show(0);
    worker.addEventListener('message', ({ data }: MessageEvent<StreetsTold>) =>
      data.kind === 'progress' ? show(data.done) : end(data),
    );
    worker.addEventListener('error', (event) => end({ kind: 'failed', message: workerTrouble(event) }));
    worker.postMessage(task, []);
  });
}

/** "1,204 streets and paths, 312 houses": what a person recognizes their town by. */
function whatIsIn({ ways, areas }: Ground): string {
  const streets = ways.filter(({ tags }) => tags['highway'] !== undefined).length;
  const houses = areas.filter(({ tags }) => tags['building'] !== undefined).length;
  return `${grouped(streets)} pieces of streets and paths, ${counted(houses, 'building')}`;
}

/** Reads a map file and keeps what lies beside the courses; says why where that cannot be done. */
export async function takeStreets(store: Store, file: File): Promise<void> {
  const refuse = (findings: readonly Finding[]): void => {
    store.refusal.value = { files: [file.name], findings };
  };
  const trouble = (code: string, message: string): void =>
    refuse([{ code, severity: 'error', message, where: { file: file.name } }]);
  const open = store.open.value;
  if (open === null)
    return trouble(
      'streets-without-plan',
      'This is a map of streets. Open a plan or a course first: the streets beside its courses are kept with it.',
    );
  const told = await readStreets(store, { name: file.name, blob: file, courses: coursesOf(open.analysis) });
  if (told === null) {
    store.notice.value = { text: `Stopped. No streets taken from ${file.name}.` };
    return;
  }
  if (told.kind === 'failed') return trouble('streets-failed', `The file could not be read: ${told.message}.`);
  if (told.kind === 'refused') return refuse(told.findings);
  const findings = addStreets(store, file.name, told.streets);
  if (findings.length > 0) return refuse(findings);
  store.refusal.value = null;
  store.notice.value = { text: `Streets from ${file.name} added: ${whatIsIn(told.streets.ground)}.` };
}
