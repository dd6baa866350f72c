/**
 * The map's style: sources and layers from a scene and a palette; pure. Text is drawn with the
 * system's own fonts (no glyphs address), shapes by images.ts when first asked for.
 */
import type { LayerSpecification, StyleSpecification } from 'maplibre-gl';
import { hasLand } from '../layers/context.ts';
import type { Palette } from '../palette.ts';
import { KEPT_IDS, SOURCES, type Scene } from '../scene.ts';
import type { Underlay } from '../underlay.ts';
import { beside, said } from './beside.ts';
import { courses, ends } from './courses.ts';
import { crowd, phases } from './crowd.ts';
import { placeFlags, stationFlags } from './flags.ts';
import { ground, groundNames } from './ground.ts';
import { items } from './items.ts';
import { marks } from './marks.ts';
import { placedLayers } from './placed.ts';
import { graticuleLayers, spot } from './pointers.ts';
import { runs } from './runs.ts';
import { sketchLayers } from './sketch.ts';
import { stationLayers } from './stations.ts';
import { streetNames, streets } from './streets.ts';
import { zones } from './zones.ts';

/** Deepest zoom to which stations and items are cut into tiles, 4 cm fine: deeper, a window would need many, each made anew at every move. */
const CUT_ZOOM = 17;

/** The same layer for what belongs to the station on trial. */
const onTrial = (layer: LayerSpecification): LayerSpecification =>
  ({ ...layer, id: `trial-${layer.id}`, source: 'trial' }) as LayerSpecification;

export function styleOf(scene: Scene, palette: Palette, latitude: number, under: Underlay): StyleSpecification {
  const nothing = { type: 'FeatureCollection' as const, features: [] };
  const sources = Object.fromEntries(
    SOURCES.map((name) => [
      name,
      {
        type: 'geojson' as const,
        data: scene[name],
        tolerance: 0.1,
        buffer: 128,
        ...(KEPT_IDS.has(name) ? { maxzoom: CUT_ZOOM } : {}),
      },
    ]),
  );
  return {
    version: 8,
    sources: {
      ...under.sources,
      ...sources,
      cursor: { type: 'geojson', data: nothing },
      asked: { type: 'geojson', data: nothing },
      sketch: { type: 'geojson', data: nothing },
      crowd: { type: 'geojson', data: nothing, tolerance: 0.1, maxzoom: CUT_ZOOM },
      phases: { type: 'geojson', data: nothing },
      graticule: { type: 'geojson', data: nothing },
    },
    ...(under.sprite === undefined ? {} : { sprite: under.sprite }),
    layers: [
      {
        id: 'paper',
        type: 'background',
        paint: { 'background-color': under.plan && hasLand(scene.context) ? palette.water : palette.land },
      },
      ...under.layers,
      ...(under.plan
        ? [...ground(palette), ...streets(palette), ...groundNames(palette), ...streetNames(palette)]
        : []),
      ...(under.graticule ? graticuleLayers(palette) : []),
      ...zones(palette),
      ...courses(palette),
      ...crowd(palette),
      ...marks(palette),
      ...runs(palette),
      ...items(palette, latitude),
      ...beside('against', palette),
      ...items(palette, latitude).map(onTrial),
      ...beside('trial', palette),
      ...stationLayers(palette, 'all'),
      ...ends(palette),
      ...stationLayers(palette, 'picked'),
      ...stationLayers(palette, 'trial'),
      phases,
      ...stationFlags,
      ...placedLayers(palette),
      placeFlags,
      ...said(palette),
      ...sketchLayers(palette),
      spot('asked', palette),
      spot('cursor', palette),
    ],
  };
}
