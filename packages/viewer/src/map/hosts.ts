/** Which hosts a foreign style would ask: for its tiles, its pictures and its icons. Nobody is asked of whom the person does not know. */
import type { SourceSpecification, StyleSpecification } from 'maplibre-gl';

type Json = Readonly<Record<string, unknown>>;

/** The host of an address of the web; `null` of anything else, such as a name inside the page. */
export function hostOf(address: unknown): string | null {
  if (typeof address !== 'string' || !/^(?:https?:)?\/\//iu.test(address)) return null;
  try {
    return new URL(address.replaceAll(/[{}]/gu, ''), 'https://page.invalid').host;
  } catch {
    return null;
  }
}

const listed = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : [value]);

/** Addresses by which sources of any kind ask: lists of tiles, pictures, films, drawings. */
const addressesOf = (source: SourceSpecification): readonly unknown[] => {
  const { tiles, url, urls, data } = source as unknown as Json;
  return [tiles, url, urls, data].flatMap(listed);
};

/** Icons: one address, or several by name. */
const spritesOf = ({ sprite }: Partial<StyleSpecification>): readonly unknown[] =>
  listed(sprite).map((one) => (typeof one === 'object' && one !== null ? (one as Json)['url'] : one));

/** Every host that a style asks when it is drawn, as far as it says so itself. */
export function hostsOf(style: Pick<StyleSpecification, 'sources'> & Partial<StyleSpecification>): readonly string[] {
  const all = [...Object.values(style.sources).flatMap(addressesOf), ...spritesOf(style)];
  return [...new Set(all.map(hostOf).filter((host) => host !== null))];
}

/** What a list of tiles says that a source takes over (TileJSON 3.0.0). */
const TAKEN = ['tiles', 'minzoom', 'maxzoom', 'bounds', 'scheme', 'tileSize', 'encoding'] as const;

/** Where a source names a list of tiles, so that only the list says which hosts have them. */
export const tileListOf = (source: SourceSpecification): string | null => {
  const { type, url } = source as unknown as Json;
  return type !== 'image' && hostOf(url) !== null ? (url as string) : null;
};

/** A source with its list of tiles in it, instead of the list's address. */
export function withTileList(source: SourceSpecification, list: Json): SourceSpecification {
  const { url: _, ...own } = source as unknown as Json;
  const taken = TAKEN.flatMap((key) => (list[key] === undefined ? [] : [[key, list[key]] as const]));
  return { ...Object.fromEntries(taken), ...own } as unknown as SourceSpecification;
}
