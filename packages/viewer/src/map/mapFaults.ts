/** What can go wrong with the map while the page is open, told apart; the map's own words go to the console. */
import type { Map as MapLibreMap } from 'maplibre-gl';
import { PART_MISSING, plainError } from '../trouble.ts';
import { PAPER_UNDERLAY, PLAN_UNDERLAY, type Underlay } from './underlay.ts';

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

/** MapLibre says nothing of a worker that does not start: whoever asks for its script sees whether it is there. */
export async function checkWorker(workerUrl: string, failed: MapFaults['worker']): Promise<void> {
  try {
    const { ok, status } = await fetch(workerUrl);
    if (!ok) failed(plainError(PART_MISSING));
    if (!ok) console.warn(`the map's worker answered ${status}`);
  } catch (error) {
    console.warn(error);
    failed(plainError(PART_MISSING));
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
