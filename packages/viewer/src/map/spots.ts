/** Shapes and points in map sources of their own, drawn once more in each new style. */
import type { GeoJSONSource, Map as MapLibreMap } from 'maplibre-gl';
import type { FeatureCollection } from 'geojson';
import type { LonLat } from '@halfcup/core';
import { featureCollection, point } from '@turf/turf';

export interface Spot {
  readonly put: (at: LonLat | null) => void;
  /** Once more, in a new style. */
  readonly again: () => void;
}

/** Shows shapes in a source of their own. */
export function shapesOn(
  map: MapLibreMap,
  name: 'sketch',
): Omit<Spot, 'put'> & { put: (shapes: FeatureCollection) => void } {
  let shown: FeatureCollection = featureCollection([]);
  const again = (): void => void map.getSource<GeoJSONSource>(name)?.setData(shown);
  return {
    again,
    put: (shapes) => {
      if (shapes.features.length === 0 && shown.features.length === 0) return;
      shown = shapes;
      again();
    },
  };
}

/** Shows one point, or none, in a source of its own. */
export function spotOn(map: MapLibreMap, name: 'cursor' | 'asked'): Spot {
  let shown: LonLat | null = null;
  const again = (): void => {
    void map
      .getSource<GeoJSONSource>(name)
      ?.setData(featureCollection(shown === null ? [] : [point([shown[0], shown[1]])]));
  };
  return {
    again,
    put: (at) => {
      if (at === shown || (at !== null && shown !== null && at[0] === shown[0] && at[1] === shown[1])) return;
      shown = at;
      again();
    },
  };
}
