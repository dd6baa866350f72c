/**
 * Choosing files so that the page may write to them again (File System Access, WICG draft of 2023), where the
 * browser lets it; TypeScript's library does not know these parts.
 */
interface Pickers {
  readonly showSaveFilePicker?: (options: object) => Promise<FileSystemFileHandle>;
  readonly showOpenFilePicker?: (options: object) => Promise<FileSystemFileHandle[]>;
}
interface Asking {
  readonly requestPermission?: (wanted: { readonly mode: 'readwrite' }) => Promise<PermissionState>;
}
interface Dropped {
  readonly getAsFileSystemHandle?: () => Promise<FileSystemHandle | null>;
}

const pickers = (): Pickers => window as Pickers;

export const canChooseTarget = (): boolean => pickers().showSaveFilePicker !== undefined;
export const canChooseSources = (): boolean => pickers().showOpenFilePicker !== undefined;

/** `null` where the person has chosen none. */
async function unlessLeft<T>(choosing: Promise<T>): Promise<T | null> {
  try {
    return await choosing;
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return null;
    throw error;
  }
}

export const chooseTarget = (
  name: string,
  description: string,
  type: `${string}/${string}`,
  ending: `.${string}`,
): Promise<FileSystemFileHandle | null> =>
  unlessLeft(
    pickers().showSaveFilePicker!({ suggestedName: name, types: [{ description, accept: { [type]: [ending] } }] }),
  );

export const chooseSources = (): Promise<FileSystemFileHandle[] | null> =>
  unlessLeft(pickers().showOpenFilePicker!({ multiple: true }));

export async function mayWrite(handle: FileSystemFileHandle): Promise<boolean> {
  const { requestPermission } = handle as Asking;
  return requestPermission === undefined || (await requestPermission.call(handle, { mode: 'readwrite' })) === 'granted';
}

/** The time of the file's last change, after the writing. */
export async function writeTo(handle: FileSystemFileHandle, content: string | Blob): Promise<number> {
  const stream = await handle.createWritable();
  await stream.write(content);
  await stream.close();
  return (await handle.getFile()).lastModified;
}

/** By name, the files of a drop that the page may write to again. To be called while the drop is handled. */
export async function handlesOf(transfer: DataTransfer | null): Promise<ReadonlyMap<string, FileSystemFileHandle>> {
  const asked = [...(transfer?.items ?? [])]
    .filter(({ kind }) => kind === 'file')
    .map(async (item) => {
      try {
        return (await (item as Dropped).getAsFileSystemHandle?.()) ?? null;
      } catch {
        // Without a handle the file can be read all the same.
        return null;
      }
    });
  const handles = await Promise.all(asked);
  return new Map(
    handles.flatMap((handle) =>
      handle?.kind === 'file' ? [[handle.name, handle as FileSystemFileHandle] as const] : [],
    ),
  );
}

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
