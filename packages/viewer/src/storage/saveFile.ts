/**
 * Saves the open plan's text as a file: to the file that it came from where the browser lets the page write
 * there, else to one that the person chooses, else as a download. Writes the text as it is, byte for byte.
 */
import type { OpenPlan, Origin, Store } from '../state/store.ts';

/** The parts of the File System Access draft that TypeScript's library does not know (WICG File System Access, 2023). */
interface Pickers {
  readonly showSaveFilePicker?: (options: object) => Promise<FileSystemFileHandle>;
}
interface Asking {
  readonly requestPermission?: (wanted: { readonly mode: 'readwrite' }) => Promise<PermissionState>;
}

/** The plan as it is kept: a station held in the hand is not let go yet. */
export const keptPlan = (store: Store): OpenPlan | null => store.trial.value?.from ?? store.open.value;

export const isSaved = (store: Store): boolean => {
  const origin = store.origin.value;
  return origin === null || keptPlan(store)?.document.text === origin.saved;
};

const lastName = (path: string): string => path.slice(path.lastIndexOf('/') + 1);
export const planFileName = (file: string): string => lastName(file).replace(/(\.json)?$/iu, '.json');

/** Hands a file to the browser's downloads. */
export function download(name: string, content: BlobPart, type: string): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser reads the address after the click has been handled.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

const said = (store: Store, text: string): void => void (store.notice.value = { text });
const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** `null` where the person has chosen none. */
async function chooseFile(name: string): Promise<FileSystemFileHandle | null> {
  try {
    return await (window as Pickers).showSaveFilePicker!({ suggestedName: name, types: [{ description: 'Plan', accept: { 'application/json': ['.json'] } }] });
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return null;
    throw error;
  }
}

async function mayWrite(handle: FileSystemFileHandle): Promise<boolean> {
  const { requestPermission } = handle as Asking;
  return requestPermission === undefined || (await requestPermission.call(handle, { mode: 'readwrite' })) === 'granted';
}

async function write(handle: FileSystemFileHandle, text: string): Promise<number> {
  const stream = await handle.createWritable();
  await stream.write(text);
  await stream.close();
  return (await handle.getFile()).lastModified;
}

/** Whether the file holds something else than when this page last read or wrote it. */
async function changedElsewhere({ handle, modified, saved }: Origin): Promise<boolean> {
  if (handle === null || modified === null) return false;
  try {
    const file = await handle.getFile();
    return file.lastModified !== modified && new TextDecoder('utf-8', { ignoreBOM: true }).decode(await file.arrayBuffer()) !== saved;
  } catch {
    return false;
  }
}

function askBeforeWritingOver(store: Store, name: string): void {
  store.notice.value = {
    text: `${name} was changed elsewhere since it was opened here. Saving would write over that.`,
    choices: [
      { label: 'Save a copy', act: () => void saveCopy(store) },
      { label: 'Write over it', act: () => void save(store, true) },
      { label: 'Not now', act: () => void (store.notice.value = null) },
    ],
  };
}

async function toFile(store: Store, open: OpenPlan, origin: Origin, anyway: boolean): Promise<void> {
  const { text, file } = open.document;
  const handle = origin.handle ?? (await chooseFile(planFileName(file)));
  if (handle === null) return;
  if (!(await mayWrite(handle))) return said(store, `This page was not allowed to write to ${handle.name}. “Save a copy” makes another file.`);
  if (!anyway && (await changedElsewhere(origin))) return askBeforeWritingOver(store, handle.name);
  const modified = await write(handle, text);
  if (store.origin.value?.id === origin.id) store.origin.value = { ...store.origin.value, handle, modified, saved: text };
  said(store, `Saved to ${handle.name}`);
}

/** Saves the plan; `anyway`: also over what another program has written there meanwhile. */
export async function save(store: Store, anyway = false): Promise<void> {
  const open = keptPlan(store);
  const origin = store.origin.value;
  if (open === null || origin === null) return;
  try {
    if ((window as Pickers).showSaveFilePicker !== undefined) return await toFile(store, open, origin, anyway);
    const name = planFileName(open.document.file);
    download(name, open.document.text, 'application/json');
    store.origin.value = { ...origin, saved: open.document.text };
    said(store, `Saved as ${name} among the downloads`);
  } catch (error) {
    said(store, `The file could not be saved: ${reasonOf(error)}. The plan stays open; “Save a copy” makes another file.`);
  }
}

/** Writes the plan to another file; the plan's own file stays what it was. */
export async function saveCopy(store: Store): Promise<void> {
  const open = keptPlan(store);
  if (open === null) return;
  const name = planFileName(open.document.file).replace(/\.json$/iu, '-copy.json');
  try {
    if ((window as Pickers).showSaveFilePicker === undefined) return download(name, open.document.text, 'application/json');
    const handle = await chooseFile(name);
    if (handle === null) return;
    await write(handle, open.document.text);
    said(store, `A copy was saved to ${handle.name}`);
  } catch (error) {
    said(store, `The copy could not be saved: ${reasonOf(error)}. The plan stays open.`);
  }
}
