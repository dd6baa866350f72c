/**
 * What a person chose to see under the course, and how that is remembered. Nothing is fetched unless an
 * address was typed here; an archive of tiles is read from the person's own disk.
 */
import { PLAN_BACKGROUND, type Background } from '../store/backgrounds.ts';
import type { Store } from '../store/store.ts';

const KEY = 'halfcup-background';

type Checked =
  | { readonly ok: true; readonly background: Background }
  | { readonly ok: false; readonly field: 'address' | 'credit'; readonly message: string };

const refuse = (field: 'address' | 'credit', message: string): Checked => ({ ok: false, field, message });

/** A typed address as a background; why not, where it is none. */
export function addressed(address: string, credit: string): Checked {
  const typed = address.trim();
  const words = credit.trim();
  const accepted = 'Use an https URL of a map style (JSON), or of tiles with {z}, {x} and {y} in it.';
  let url: URL;
  try {
    url = new URL(typed);
  } catch {
    return refuse('address', `${typed === '' ? 'No URL given' : `“${typed}” is no URL`}. ${accepted}`);
  }
  if (url.protocol !== 'https:') return refuse('address', `This URL begins with ${url.protocol}//. ${accepted}`);
  if (words === '')
    return refuse('credit', 'Type the credit line that the map’s owner asks for. The owner’s terms apply.');
  const raster = typed.includes('{z}') || typed.includes('{x}') || typed.includes('{y}');
  if (raster && !['{z}', '{x}', '{y}'].every((part) => typed.includes(part)))
    return refuse('address', `This URL has only some of {z}, {x} and {y}. ${accepted}`);
  return { ok: true, background: { kind: raster ? 'raster' : 'style', address: typed, credit: words } };
}

const isText = (value: unknown): value is string => typeof value === 'string';

/** What was chosen when the page was last here; the plan's own drawing where nothing was, or what was kept cannot be used. */
export function rememberedBackground(storage: () => Pick<Storage, 'getItem'>): Background {
  try {
    const kept = JSON.parse(storage().getItem(KEY) ?? 'null') as Partial<
      Record<'kind' | 'address' | 'credit' | 'hosts', unknown>
    > | null;
    if (kept?.kind === 'paper') return { kind: 'paper' };
    const checked = isText(kept?.address) && isText(kept.credit) ? addressed(kept.address, kept.credit) : null;
    if (checked?.ok !== true) return PLAN_BACKGROUND;
    const hosts: unknown = kept?.hosts;
    return Array.isArray(hosts) && hosts.length > 0 && hosts.every(isText)
      ? ({ ...checked.background, hosts } as Background)
      : checked.background;
  } catch {
    return PLAN_BACKGROUND;
  }
}

/** Shows a background and remembers it; an archive of tiles is not remembered, since the page may not read it again unasked. */
export function chooseBackground(store: Store, background: Background): void {
  store.background.value = background;
  try {
    if (background.kind !== 'tiles') localStorage.setItem(KEY, JSON.stringify(background));
  } catch {
    store.notice.value = {
      text: 'This browser saves nothing for this page, so the choice of background is not remembered.',
    };
  }
}

const isTiles = (file: File): boolean => file.name.toLowerCase().endsWith('.pmtiles');

/** Takes an archive of tiles from among dropped files as the background; the files that are left. */
export function takeTiles(store: Store, files: readonly File[]): readonly File[] {
  const tiles = files.find(isTiles);
  if (tiles !== undefined) chooseBackground(store, { kind: 'tiles', file: tiles });
  return files.filter((file) => !isTiles(file));
}

const HOSTS = new Intl.ListFormat('en', { type: 'conjunction' });

/** Whose map is seen, in words for the map's foot; `null` where it is the plan's own. */
export function creditOf(background: Background): string | null {
  if (background.kind === 'tiles')
    return `Background: ${background.file.name}, from this device. Its maker’s terms apply.`;
  if (background.kind === 'plan' || background.kind === 'paper') return null;
  const hosts = [new URL(background.address.replaceAll(/[{}]/gu, '')).host, ...(background.hosts ?? [])];
  const whose = hosts.length === 1 ? 'its owner’s' : 'their owners’';
  return `Background: ${background.credit}. Loaded from ${HOSTS.format(hosts)}; ${whose} terms apply.`;
}
