/**
 * What a person has chosen to see under the course, as sources and layers of the map; pure. The plan's own
 * drawing and the paper need nothing from anywhere. Texts of a foreign style are drawn with the system's
 * fonts, so that no fonts are asked for; scripts never come with a style.
 */
import type { LayerSpecification, SourceSpecification, StyleSpecification } from 'maplibre-gl';
import type { Palette } from './palette.ts';

export interface Underlay {
  readonly sources: Readonly<Record<string, SourceSpecification>>;
  readonly layers: readonly LayerSpecification[];
  readonly sprite?: StyleSpecification['sprite'];
  /** The only hosts that may be asked for it. */
  readonly hosts: readonly string[];
  /** Whether the plan's own drawing is shown. */
  readonly plan: boolean;
  /** Whether lines of longitude and latitude are drawn. */
  readonly graticule: boolean;
}

export const PLAN_UNDERLAY: Underlay = { sources: {}, layers: [], hosts: [], plan: true, graticule: false };
export const PAPER_UNDERLAY: Underlay = { sources: {}, layers: [], hosts: [], plan: false, graticule: true };

/** Sources and layers of others must not meet ours. */
const PREFIX = 'under-';
const SEEN = 0.75;

export const rasterUnderlay = (address: string): Underlay => ({
  sources: { [`${PREFIX}raster`]: { type: 'raster', tiles: [address], tileSize: 256, maxzoom: 19 } },
  layers: [
    {
      id: `${PREFIX}raster`,
      type: 'raster',
      source: `${PREFIX}raster`,
      paint: { 'raster-opacity': SEEN, 'raster-fade-duration': 0 },
    },
  ],
  hosts: [new URL(address.replaceAll(/[{}]/gu, '')).host],
  plan: false,
  graticule: false,
});

const named = (layer: LayerSpecification): LayerSpecification => {
  const source = 'source' in layer && typeof layer.source === 'string' ? { source: PREFIX + layer.source } : {};
  return { ...layer, id: PREFIX + layer.id, ...source };
};

/** A style by somebody else under ours: all of it but its fonts, its terrain and its sky. */
export function styleUnderlay(style: StyleSpecification, hosts: readonly string[]): Underlay {
  return {
    sources: Object.fromEntries(Object.entries(style.sources).map(([name, source]) => [PREFIX + name, source])),
    layers: style.layers.map(named),
    ...(style.sprite === undefined ? {} : { sprite: style.sprite }),
    hosts,
    plan: false,
    graticule: false,
  };
}

/** What a tile archive says of itself. */
export interface TilesAbout {
  /** As the map asks for it: `pmtiles://name`. */
  readonly address: string;
  readonly kind: 'raster' | 'vector';
  /** Names of the layers of vector tiles. */
  readonly layers: readonly string[];
}

/** An archive of tiles: pictures as they are; vector layers as plain areas, lines and points, since an archive brings no style. */
export function tilesUnderlay({ address, kind, layers }: TilesAbout, palette: Palette): Underlay {
  const source = `${PREFIX}tiles`;
  if (kind === 'raster') {
    return {
      sources: { [source]: { type: 'raster', url: address, tileSize: 256 } },
      layers: [{ id: source, type: 'raster', source, paint: { 'raster-opacity': SEEN, 'raster-fade-duration': 0 } }],
      hosts: [],
      plan: false,
      graticule: false,
    };
  }
  const drawn = layers.flatMap((name): LayerSpecification[] => [
    {
      id: `${source}-${name}-area`,
      type: 'fill',
      source,
      'source-layer': name,
      filter: ['==', ['geometry-type'], 'Polygon'],
      paint: { 'fill-color': palette.building, 'fill-opacity': 0.35, 'fill-outline-color': palette.shore },
    },
    {
      id: `${source}-${name}-line`,
      type: 'line',
      source,
      'source-layer': name,
      filter: ['==', ['geometry-type'], 'LineString'],
      paint: { 'line-color': palette.shore, 'line-width': 1.2 },
    },
    {
      id: `${source}-${name}-point`,
      type: 'circle',
      source,
      'source-layer': name,
      filter: ['==', ['geometry-type'], 'Point'],
      minzoom: 13,
      paint: { 'circle-color': palette.place, 'circle-radius': 1.6 },
    },
  ]);
  return {
    sources: { [source]: { type: 'vector', url: address } },
    layers: drawn,
    hosts: [],
    plan: false,
    graticule: false,
  };
}
