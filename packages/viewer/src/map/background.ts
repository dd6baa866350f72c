/** From a chosen background to what the map lies on: reads a style by its address, or an archive of tiles from disk. */
import { addProtocol } from 'maplibre-gl';
import type { SourceSpecification, StyleSpecification } from 'maplibre-gl';
import { FileSource, PMTiles, Protocol, TileType, type Header } from 'pmtiles';
import type { Background } from '../state/store/backgrounds.ts';
import { plainError } from '../trouble.ts';
import { hostsOf, tileListOf, withTileList } from './hosts.ts';
import type { Palette } from './palette.ts';
import {
  PAPER_UNDERLAY,
  PLAN_UNDERLAY,
  rasterUnderlay,
  styleUnderlay,
  tilesUnderlay,
  type Underlay,
} from './underlay.ts';

/** Hosts that a background would ask and of which the person has not been told. */
export interface Asking {
  readonly ask: readonly string[];
}

async function jsonAt(address: string): Promise<Readonly<Record<string, unknown>> | null> {
  const { host } = new URL(address);
  // Where it leads elsewhere, the browser would ask there without a word.
  const answer = await fetch(address, { credentials: 'omit', referrerPolicy: 'no-referrer', redirect: 'manual' });
  if (answer.type === 'opaqueredirect')
    throw plainError(`${host} sends this page on to another address; use that address instead`);
  if (!answer.ok) throw plainError(`${host} answered ${answer.status}`);
  const value = (await answer.json().catch(() => null)) as unknown;
  return typeof value === 'object' && value !== null ? (value as Readonly<Record<string, unknown>>) : null;
}

/** A source with all that it asks for known; its list of tiles is had from its host, which is allowed. */
async function resolved(source: SourceSpecification): Promise<SourceSpecification> {
  const list = tileListOf(source);
  if (list === null) return source;
  const found = await jsonAt(list);
  if (found === null) throw plainError(`${new URL(list).host} did not send a list of tiles (TileJSON)`);
  return withTileList(source, found);
}

async function styleAt(address: string, allowed: readonly string[]): Promise<Underlay | Asking> {
  const { host } = new URL(address);
  const style = (await jsonAt(address)) as Partial<StyleSpecification> | null;
  if (style?.version !== 8 || typeof style.sources !== 'object' || !Array.isArray(style.layers))
    throw plainError(`${host} did not send a map style (version 8)`);
  const may = new Set([host, ...allowed]);
  const strange = (one: Pick<StyleSpecification, 'sources'> & Partial<StyleSpecification>): readonly string[] =>
    hostsOf(one).filter((other) => !may.has(other));
  const first = strange({ ...style, sources: style.sources });
  if (first.length > 0) return { ask: first };
  const sources = await Promise.all(
    Object.entries(style.sources).map(async ([name, source]) => [name, await resolved(source)] as const),
  );
  const whole = { ...(style as StyleSpecification), sources: Object.fromEntries(sources) };
  // Lists of tiles name hosts of their own.
  const second = strange(whole);
  return second.length > 0 ? { ask: second } : styleUnderlay(whole, [...may]);
}

async function headerOf(archive: PMTiles, name: string): Promise<Header> {
  try {
    return await archive.getHeader();
  } catch (error) {
    console.warn(error);
    throw plainError(`${name} is not a map file (.pmtiles), or is cut off`);
  }
}

/** Makes the map ask one protocol for archives of tiles; called once. */
export function tileArchives(): (file: File, palette: Palette) => Promise<Underlay> {
  const protocol = new Protocol();
  addProtocol('pmtiles', protocol.tile);
  return async (file, palette) => {
    const archive = new PMTiles(new FileSource(file));
    const header = await headerOf(archive, file.name);
    const about = (await archive.getMetadata()) as { readonly vector_layers?: readonly { readonly id: string }[] };
    protocol.add(archive);
    const kind = header.tileType === TileType.Mvt ? 'vector' : 'raster';
    return tilesUnderlay(
      {
        address: `pmtiles://${archive.source.getKey()}`,
        kind,
        layers: (about.vector_layers ?? []).map(({ id }) => id),
      },
      palette,
    );
  };
}

/** What the map lies on, or whom it would ask; throws with the reason where it cannot be had. */
export async function underlayOf(
  background: Background,
  palette: Palette,
  archives: ReturnType<typeof tileArchives>,
): Promise<Underlay | Asking> {
  if (background.kind === 'plan') return PLAN_UNDERLAY;
  if (background.kind === 'paper') return PAPER_UNDERLAY;
  if (background.kind === 'tiles') return archives(background.file, palette);
  return background.kind === 'raster'
    ? rasterUnderlay(background.address)
    : styleAt(background.address, background.hosts ?? []);
}
