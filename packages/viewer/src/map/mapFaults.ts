/** What can go wrong with the map while the page is open, told apart; the map's own words go to the console. */
import type { Map as MapLibreMap } from 'maplibre-gl';
import { PART_MISSING, plainError } from '../trouble.ts';
import { PAPER_UNDERLAY, PLAN_UNDERLAY, type Underlay } from './underlay.ts';

const WORKER_REFUSED = 'this browser does not start the script that prepares it; an add-on or a setting may block it';
/** How long a worker has to fail, milliseconds. */
const WORKER_PATIENCE = 5000;

/** What can go wrong while the map is there. */
export interface MapFaults {
  /** The script that prepares what is drawn cannot be had. */
  readonly worker: (error: unknown) => void;
  /** The page's own style is refused: a programmer's fault. */
  readonly style: () => void;
  /** The background's style is refused, and the plan's own drawing is shown instead. */
  readonly background: () => void;
  /** Parts of the background cannot be had; told once for each background. */
  readonly tiles: () => void;
}

/** The types by which servers may send a script: all that the WHATWG's "MIME Sniffing" counts as JavaScript, from memory. */
const SCRIPT_TYPE = /^(?:text|application)\/(?:x-)?(?:java|ecma)script\b|^text\/(?:jscript|livescript)\b/iu;

const notAScript = (type: string): Error =>
  plainError(
    `this server sends a script of the map as “${type || 'no type'}”, which browsers refuse to run; whoever runs the server should send it as text/javascript`,
  );

/** MapLibre says nothing of a worker that does not start: whoever asks for its script sees whether it is there, and its type. */
export async function checkWorker(workerUrl: string, failed: MapFaults['worker']): Promise<void> {
  try {
    const { ok, status, headers } = await fetch(workerUrl);
    const type = headers.get('content-type') ?? '';
    if (!ok) {
      console.warn(`the map's worker answered ${status}`);
      failed(plainError(PART_MISSING));
    } else if (!SCRIPT_TYPE.test(type)) failed(notAScript(type));
  } catch (error) {
    console.warn(error);
    failed(plainError(PART_MISSING));
  }
}

/** Starts the map's worker once more, beside the map, to see whether this browser starts it at all. */
export function tryWorker(workerUrl: string, failed: MapFaults['worker']): void {
  const refused = (): void => failed(plainError(WORKER_REFUSED));
  try {
    const worker = new Worker(workerUrl, { type: 'module' });
    worker.addEventListener('error', (event) => {
      console.warn(event.message);
      worker.terminate();
      refused();
    });
    setTimeout(() => worker.terminate(), WORKER_PATIENCE);
  } catch (error) {
    console.warn(error);
    refused();
  }
}

/** Tells faults of styles and tiles from one another by what is being loaded when they come. */
export function watchFaults(
  map: MapLibreMap,
  {
    faults,
    underlay,
    fallBack,
  }: { readonly faults: MapFaults; readonly underlay: () => Underlay; readonly fallBack: () => void },
): { readonly loading: () => void } {
  let loading = true;
  let refused = false;
  let told: Underlay | null = null;
  const foreign = (): boolean => underlay() !== PLAN_UNDERLAY && underlay() !== PAPER_UNDERLAY;
  const refuse = (): void => {
    if (refused) return;
    refused = true;
    // One style gives an error for each of its faults, all at once.
    queueMicrotask(() => {
      if (!foreign()) return faults.style();
      fallBack();
      return faults.background();
    });
  };
  map.on('error', ({ error }) => {
    console.warn(error);
    if (loading) refuse();
    else if (foreign() && told !== underlay()) {
      told = underlay();
      faults.tiles();
    }
  });
  map.on('style.load', () => {
    loading = false;
  });
  return {
    loading: () => {
      loading = true;
      refused = false;
    },
  };
}
