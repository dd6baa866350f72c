/** Zones of the plan: ground to keep clear, or the only ground allowed. */
import type { Plan } from '@halfcup/core';
import { featureCollection, polygon } from '@turf/turf';
import type { FeatureCollection, Polygon, Position } from 'geojson';

export interface ZoneProps {
  readonly rule: 'keep-clear' | 'allowed';
  readonly label: string;
}

const closed = (ring: readonly Position[]): Position[] => {
  const [first] = ring;
  const last = ring.at(-1);
  return first === undefined || last === undefined || (first[0] === last[0] && first[1] === last[1])
    ? [...ring]
    : [...ring, first];
};

export const zoneShapes = (plan: Pick<Plan, 'zones'>): FeatureCollection<Polygon, ZoneProps> =>
  featureCollection(
    plan.zones
      .filter((zone) => zone.polygon.length > 2)
      .map((zone) =>
        polygon([closed(zone.polygon.map((at) => [at[0], at[1]]))], {
          rule: zone.rule,
          label: `${zone.rule === 'keep-clear' ? 'Keep clear' : 'Allowed'}: ${zone.name}`,
        }),
      ),
  );
