/**
 * Saves the open plan's text as a file: to the file that it came from where the browser lets the page write
 * there, else to one that the person chooses, else as a download. Writes the text as it is, byte for byte.
 */
import { textFrom } from '@halfcup/core/plan';
import { lastName } from '../state/open/fileKinds.ts';
import { savedName } from '../state/view/fileNames.ts';
import type { OpenPlan, Origin, Store } from '../state/store/store.ts';
import { planWithoutTrial } from '../state/store/trial.ts';
import { FAULT, reasonOf } from '../trouble.ts';
import type { NamedBlob } from '../work/messages.ts';
import type { runInWorker } from '../work/work.ts';
import { canChooseTarget, chooseTarget, download, mayWrite, writeTo } from './pickers.ts';
import { openDropped } from '../work/dropped.ts';

export const isSaved = (store: Store): boolean => {
  const origin = store.origin.value;
  return origin === null || planWithoutTrial(store)?.document.text === origin.saved;
};

export const planFileName = (file: string): string => lastName(file).replace(/(\.json)?$/iu, '.json');

const notify = (store: Store, text: string): void => void (store.notice.value = { text });

const choosePlan = (name: string): Promise<FileSystemFileHandle | null> =>
  chooseTarget(name, 'Plan', 'application/json', '.json');

/** Whether the file holds something else than when this page last read or wrote it. */
async function changedElsewhere({ handle, modified, saved }: Origin): Promise<boolean> {
  if (handle === null || modified === null) return false;
  try {
    const file = await handle.getFile();
    if (file.lastModified === modified) return false;
    const text = textFrom(new Uint8Array(await file.arrayBuffer()), file.name);
    return !text.ok || text.value !== saved;
  } catch {
    // The file is gone: writing makes it again and destroys nothing.
    return false;
  }
}

function askBeforeWritingOver(store: Store, handle: FileSystemFileHandle): void {
  const openTheirs = async (): Promise<void> =>
    openDropped(store, [await handle.getFile()], new Map([[handle.name, handle]]));
  const done = (then: () => Promise<void>) => (): void => {
    store.question.value = null;
    void then();
  };
  store.question.value = {
    text: `${handle.name} was changed by another program since you opened it. Saving would overwrite that.`,
    choices: [
      { label: 'Save a copy', act: done(() => saveCopy(store)) },
      { label: 'Open the changed file', act: done(openTheirs) },
      { label: 'Overwrite', act: done(() => save(store, true)) },
      { label: 'Cancel', act: done(() => Promise.resolve()) },
    ],
  };
}

function markSaved(store: Store, id: string, change: Partial<Origin>): void {
  const now = store.origin.value;
  if (now?.id === id) store.origin.value = { ...now, ...change };
}

async function toFile(store: Store, open: OpenPlan, origin: Origin, anyway: boolean): Promise<void> {
  const { text, file } = open.document;
  const handle = origin.handle ?? (await choosePlan(planFileName(file)));
  if (handle === null) return;
  if (!(await mayWrite(handle)))
    return notify(store, `The browser did not allow writing to ${handle.name}. Use “Save a copy” under “Plans”.`);
  if (!anyway && (await changedElsewhere(origin))) return askBeforeWritingOver(store, handle);
  const modified = await writeTo(handle, text);
  markSaved(store, origin.id, { handle, modified, saved: text });
  notify(store, `Saved to ${handle.name}`);
}

/** Saves the plan; `anyway`: also over what another program has written there meanwhile. */
export async function save(store: Store, anyway = false): Promise<void> {
  const open = planWithoutTrial(store);
  const origin = store.origin.value;
  if (open === null || origin === null) return;
  try {
    if (canChooseTarget()) return await toFile(store, open, origin, anyway);
    const name = planFileName(open.document.file);
    download(name, open.document.text, 'application/json');
    markSaved(store, origin.id, { saved: open.document.text });
    notify(store, `Downloaded as ${name}`);
  } catch (error) {
    notify(
      store,
      `The file could not be saved: ${reasonOf(error)}. The plan is still open; try “Save a copy” under “Plans”.`,
    );
  }
}

/** Writes something to a file of its own; `true` where it was written, or handed to the downloads. */
export async function exportFile(
  store: Store,
  name: string,
  content: Blob,
  kind: readonly [description: string, type: `${string}/${string}`, ending: `.${string}`],
): Promise<boolean> {
  try {
    if (!canChooseTarget()) {
      download(name, content, kind[1]);
      notify(store, `Downloaded as ${name}`);
      return true;
    }
    const handle = await chooseTarget(name, ...kind);
    if (handle === null) return false;
    await writeTo(handle, content);
    notify(store, `Saved to ${handle.name}`);
    return true;
  } catch (error) {
    notify(store, `${name} could not be saved: ${reasonOf(error)}. The plan is still open.`);
    return false;
  }
}

/** Writes the plan to another file; the plan's own file stays what it was. */
export async function saveCopy(store: Store): Promise<void> {
  const open = planWithoutTrial(store);
  if (open === null) return;
  await exportFile(
    store,
    planFileName(open.document.file).replace(/\.json$/iu, '-copy.json'),
    new Blob([open.document.text]),
    ['Plan', 'application/json', '.json'],
  );
}

async function pack(store: Store, name: string, files: readonly NamedBlob[]): ReturnType<typeof runInWorker> {
  try {
    const work = await import('../work/work.ts');
    return await work.runInWorker(store, `Packing ${name} with its files`, { kind: 'pack', files });
  } catch (error) {
    return { kind: 'failed', message: reasonOf(error) };
  }
}

/** Writes the plan and every file that it names into one ZIP file, which opens here again. */
export async function savePacked(store: Store): Promise<void> {
  const open = planWithoutTrial(store);
  const origin = store.origin.value;
  if (open === null || origin === null) return;
  const { file, text } = open.document;
  const name = planFileName(file);
  const files = [
    { name, blob: new Blob([text]) },
    ...[...open.files.originals].map(([own, blob]) => ({ name: own, blob })),
  ];
  const told = await pack(store, name, files);
  if (told === null) return notify(store, 'Stopped. Nothing was saved.');
  if (told.kind !== 'packed')
    return notify(
      store,
      `The files could not be packed: ${told.kind === 'failed' ? told.message : FAULT}. “Save” saves the plan alone.`,
    );
  const done = await exportFile(store, savedName(open, '', '.zip'), told.zip, [
    'Plan with its files',
    'application/zip',
    '.zip',
  ]);
  if (done) markSaved(store, origin.id, { saved: text });
  return undefined;
}
