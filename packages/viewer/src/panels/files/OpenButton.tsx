/** A button that asks for files and opens them. */
import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';
import { canChooseSources, chooseSources } from '../../storage/pickers.ts';
import { useStore } from '../../state/store/store.ts';
import { openOrAsk } from '../../work/arrived.ts';

export function OpenButton({ label, large }: { readonly label: string; readonly large?: boolean }): JSX.Element {
  const store = useStore();
  const input = useRef<HTMLInputElement>(null);
  /** With handles where the browser gives them, so that “Save” writes to the same file. */
  const choose = async (): Promise<void> => {
    if (!canChooseSources()) return input.current?.click();
    const handles = (await chooseSources()) ?? [];
    const files = await Promise.all(handles.map((handle) => handle.getFile()));
    return openOrAsk(store, files, new Map(handles.map((handle) => [handle.name, handle])));
  };
  return (
    <>
      <button
        type="button"
        class={large === true ? 'open-button large' : 'open-button'}
        title="GPX courses, a plan with its GPX files, a packed plan (ZIP), or a map of streets (.osm, .osm.pbf, .geojson)"
        onClick={() => void choose()}
      >
        {label}
      </button>
      <input
        ref={input}
        type="file"
        multiple
        hidden
        accept=".gpx,.json,.geojson,.csv,.zip,.pmtiles,.osm,.gz,.pbf,application/gpx+xml,application/json"
        onChange={(event) => {
          const files = [...(event.currentTarget.files ?? [])];
          event.currentTarget.value = '';
          void openOrAsk(store, files);
        }}
      />
    </>
  );
}
