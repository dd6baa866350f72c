/** From a chosen background to what the map lies on: reads a style by its address, or an archive of tiles from disk. */
import { addProtocol } from 'maplibre-gl';
import type { StyleSpecification } from 'maplibre-gl';
import { FileSource, PMTiles, Protocol, TileType, type Header } from 'pmtiles';
import type { Background } from '../state/store/backgrounds.ts';
import { plainError } from '../trouble.ts';
import type { Palette } from './palette.ts';
import {
  PAPER_UNDERLAY,
  PLAN_UNDERLAY,
  rasterUnderlay,
  styleUnderlay,
  tilesUnderlay,
  type Underlay,
} from './underlay.ts';

async function styleAt(address: string): Promise<Underlay> {
  const answer = await fetch(address, { credentials: 'omit', referrerPolicy: 'no-referrer' });
  if (!answer.ok) throw plainError(`${new URL(address).host} answered ${answer.status}`);
  const style = (await answer.json().catch(() => null)) as Partial<StyleSpecification> | null;
  if (style?.version !== 8 || typeof style.sources !== 'object' || !Array.isArray(style.layers))
    throw plainError(`${new URL(address).host} did not send a map style (version 8)`);
  return styleUnderlay(style as StyleSpecification);
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

/** What the map lies on; throws with the reason where it cannot be had. */
export async function underlayOf(
  background: Background,
  palette: Palette,
  archives: ReturnType<typeof tileArchives>,
): Promise<Underlay> {
  if (background.kind === 'plan') return PLAN_UNDERLAY;
  if (background.kind === 'paper') return PAPER_UNDERLAY;
  if (background.kind === 'tiles') return archives(background.file, palette);
  return background.kind === 'raster' ? rasterUnderlay(background.address) : styleAt(background.address);
}
