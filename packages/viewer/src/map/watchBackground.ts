/** Lays the chosen background under the course; of one that cannot be had a notice tells, and what was there stays. */
import { effect, untracked } from '@preact/signals';
import { PLAN_BACKGROUND, type Background } from '../state/store/backgrounds.ts';
import type { Notice, Store } from '../state/store/store.ts';
import { chooseBackground } from '../state/view/background.ts';
import type { tileArchives } from './background.ts';
import type { MapView } from './mapView.ts';
import { reasonOf } from '../trouble.ts';
import { readPalette } from './palette.ts';

type Addressed = Extract<Background, { readonly kind: 'style' | 'raster' }>;

const listed = new Intl.ListFormat('en', { type: 'conjunction' });

/** Tells whom a background would ask beside the host that was typed; it is shown when the person says so. */
function tellHosts(store: Store, background: Addressed, ask: readonly string[]): Notice {
  const load = (): void => chooseBackground(store, { ...background, hosts: [...(background.hosts ?? []), ...ask] });
  const them = ask.length === 1 ? 'that server' : 'those servers';
  return {
    text: `This map also loads from ${listed.format(ask)}. If you use it, ${them} will learn where your course is too. Their owners’ terms apply.`,
    choices: [
      { label: 'Use it', act: load },
      { label: 'Do not use it', act: () => chooseBackground(store, PLAN_BACKGROUND) },
    ],
  };
}

/** A notice that is about a background that is not chosen any more goes with it. */
function takeBack(store: Store, told: Notice | null): void {
  if (told !== null && store.notice.value === told) store.notice.value = null;
  store.asking.value = null;
}

export function watchBackground(store: Store, view: MapView): () => void {
  let latest = 0;
  let told: Notice | null = null;
  let archives: ReturnType<typeof tileArchives> | undefined;
  const lay = async (background: Background): Promise<void> => {
    const turn = ++latest;
    try {
      // Whoever sees the plan's own drawing does not wait for what reads others.
      const reading = await import('./background.ts');
      archives ??= reading.tileArchives();
      const under = await reading.underlayOf(background, readPalette(document.documentElement), archives);
      if (turn !== latest) return;
      if (!('ask' in under)) view.underlay(under);
      else if ('address' in background) store.asking.value = tellHosts(store, background, under.ask);
    } catch (error) {
      if (turn !== latest) return;
      const reason = reasonOf(error);
      told = {
        text: `This background cannot be shown: ${reason}. The course and all distances are not affected. Choose another background, or the drawing in the plan.`,
      };
      store.notice.value = told;
    }
  };
  let first = true;
  return effect(() => {
    const background = store.background.value;
    untracked(() => takeBack(store, told));
    if (!first || background.kind !== 'plan') void lay(background);
    first = false;
  });
}
