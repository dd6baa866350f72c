/** Lines of longitude and latitude over what is in view, at a round step; pure. */
import { featureCollection, lineString } from '@turf/turf';
import type { FeatureCollection, LineString } from 'geojson';
import type { Bounds } from './fit.ts';

/** Round steps in degrees, down to a tenth of a second or so. */
const STEPS: readonly number[] = [
  30, 10, 5, 2, 1, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01, 0.005, 0.002, 0.001, 0.0005, 0.0002, 0.0001,
];

/** The largest step that gives at least this many lines across the view. */
const LEAST = 3;

export const stepFor = (span: number): number => STEPS.find((step) => span / step >= LEAST) ?? STEPS.at(-1)!;

function label(value: number, step: number, [positive, negative]: readonly [string, string]): string {
  const decimals = Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
  const size = Math.abs(value).toFixed(decimals);
  return Number(size) === 0 ? `${size}°` : `${size}° ${value > 0 ? positive : negative}`;
}

function values(from: number, to: number, step: number): number[] {
  const first = Math.ceil(from / step);
  return Array.from({ length: Math.max(0, Math.floor(to / step) - first + 1) }, (_, index) => (first + index) * step);
}

export function graticule([west, south, east, north]: Bounds): FeatureCollection<
  LineString,
  { readonly label: string }
> {
  const step = stepFor(Math.min(east - west, north - south));
  const [low, high] = [Math.max(-85, south), Math.min(85, north)];
  if (!(east > west) || !(high > low)) return featureCollection([]);
  return featureCollection([
    ...values(west, east, step).map((lon) =>
      lineString(
        [
          [lon, low],
          [lon, high],
        ],
        { label: label(((lon + 540) % 360) - 180, step, ['E', 'W']) },
      ),
    ),
    ...values(low, high, step).map((lat) =>
      lineString(
        [
          [west, lat],
          [east, lat],
        ],
        { label: label(lat, step, ['N', 'S']) },
      ),
    ),
  ]);
}
