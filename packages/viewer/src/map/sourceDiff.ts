/** What changed between two lists of features with stable numeric ids; a feature that is the same record is left alone. Pure. */
import type { Feature } from 'geojson';
import type { GeoJSONSourceDiff } from 'maplibre-gl';

/** `null` where nothing changed. A changed feature is given anew under its id. */
export function sourceDiff(before: readonly Feature[], after: readonly Feature[]): GeoJSONSourceDiff | null {
  const known = new Map(before.map((feature) => [feature.id, feature]));
  const add = after.filter((feature) => known.get(feature.id) !== feature);
  for (const { id } of after) known.delete(id);
  const remove = [...known.keys()].filter((id) => id !== undefined);
  return add.length === 0 && remove.length === 0 ? null : { remove, add };
}
