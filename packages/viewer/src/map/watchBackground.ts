/** Lays the chosen background under the course; one that cannot be had is told, and what was there stays. */
import { effect } from '@preact/signals';
import type { Store } from '../state/store/store.ts';
import type { tileArchives } from './background.ts';
import type { MapView } from './mapView.ts';
import { readPalette } from './palette.ts';

export function watchBackground(store: Store, view: MapView): () => void {
  let latest = 0;
  let archives: ReturnType<typeof tileArchives> | undefined;
  const lay = async (background: typeof store.background.value): Promise<void> => {
    const turn = ++latest;
    try {
      // Nobody who sees the plan's own drawing waits for what reads others.
      const reading = await import('./background.ts');
      archives ??= reading.tileArchives();
      const under = await reading.underlayOf(background, readPalette(document.documentElement), archives);
      if (turn === latest) view.underlay(under);
    } catch (error) {
      if (turn !== latest) return;
      const reason = error instanceof Error ? error.message : String(error);
      store.notice.value = {
        text: `This background cannot be shown: ${reason}. The course and all distances are as they were; choose another background, or the plan's own drawing.`,
      };
    }
  };
  let first = true;
  return effect(() => {
    const background = store.background.value;
    if (!first || background.kind !== 'plan') void lay(background);
    first = false;
  });
}
