/** Lays the chosen background under the course; of one that cannot be had a notice tells, and what was there stays. */
import { effect } from '@preact/signals';
import type { Store } from '../state/store/store.ts';
import type { tileArchives } from './background.ts';
import type { MapView } from './mapView.ts';
import { reasonOf } from '../trouble.ts';
import { readPalette } from './palette.ts';

export function watchBackground(store: Store, view: MapView): () => void {
  let latest = 0;
  let archives: ReturnType<typeof tileArchives> | undefined;
  const lay = async (background: typeof store.background.value): Promise<void> => {
    const turn = ++latest;
    try {
      // Whoever sees the plan's own drawing does not wait for what reads others.
      const reading = await import('./background.ts');
      archives ??= reading.tileArchives();
      const under = await reading.underlayOf(background, readPalette(document.documentElement), archives);
      if (turn === latest) view.underlay(under);
    } catch (error) {
      if (turn !== latest) return;
      const reason = reasonOf(error);
      store.notice.value = {
        text: `This background cannot be shown: ${reason}. The course and all distances are not affected. Choose another background, or the drawing in the plan.`,
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
