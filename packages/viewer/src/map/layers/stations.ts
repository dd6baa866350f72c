/** Stations: a tick on its side of the road with a numbered ring and the name. */
import type { Analysis, StationLayout } from '@halfcup/core';
import { featureCollection, point } from '@turf/turf';
import type { Feature, FeatureCollection, Point } from 'geojson';
import { leadOf, numberOf } from '../../state/view/derive.ts';
import { flagPlace, type Flag, type FlagPlace } from './flags.ts';
import { anchorTowards, away, screenOffset, type Anchor } from './directions.ts';

export interface StationProps {
  readonly id: string;
  readonly number: string;
  readonly name: string;
  /** `ring` where the side is unclear: no tick is drawn then. */
  readonly shape: 'tick' | 'ring';
  /** Direction of the tick, degrees clockwise from north. */
  readonly bearing: number;
  /** From the pin to the ring's centre, and to the name, in ems of their texts. */
  readonly ring: [number, number];
  /** The same for the ring itself, pixels. */
  readonly ringAt: [number, number];
  readonly farRingAt: [number, number];
  readonly label: [number, number];
  readonly anchor: Anchor;
  /** The same when zoomed in, where the words of the tables stand between. */
  readonly farRing: [number, number];
  readonly farLabel: [number, number];
  /** What the checks have found there. */
  readonly flag: Flag;
  /** From the pin to the mark of it, pixels. */
  readonly flagAt: [number, number];
  readonly farFlagAt: [number, number];
  readonly flagAnchor: FlagPlace['anchor'];
}

type FlagProps = Pick<StationProps, 'flag' | 'flagAt' | 'farFlagAt' | 'flagAnchor'>;

/** From the pin to the ring's centre, pixels: from afar, and where the words of the tables stand between. */
export const RING_NEAR = 29;
export const RING_FAR = 99;
/** From the ring's centre to the name: the two must not meet in any direction, or the name is left out. */
const BESIDE = 16.5;

/** Ems of 11 px (number) and 12 px (name). */
const RING = RING_NEAR / 11;
const LABEL = (RING_NEAR + BESIDE) / 12;
const FAR_RING = RING_FAR / 11;
const FAR_LABEL = (RING_FAR + BESIDE) / 12;

const sum = ([x, y]: readonly [number, number], [dx, dy]: readonly [number, number]): [number, number] => [
  x + dx,
  y + dy,
];

function flagged(flag: Flag, bearing: number, ringAt: [number, number], farRingAt: [number, number]): FlagProps {
  const { offset, anchor } = flagPlace(bearing);
  return { flag, flagAt: sum(ringAt, offset), farFlagAt: sum(farRingAt, offset), flagAnchor: anchor };
}

export function stationProps(station: StationLayout, flag: Flag = ''): StationProps {
  const lead = leadOf(station);
  const side = lead?.side ?? 'unclear';
  const common = { id: station.id, number: String(numberOf(station)), name: station.name };
  if (lead === undefined || side === 'unclear') {
    const label = screenOffset(90, 14 / 12);
    return {
      ...common,
      shape: 'ring',
      bearing: 0,
      ring: [0, 0],
      ringAt: [0, 0],
      farRingAt: [0, 0],
      label,
      anchor: 'left',
      farRing: [0, 0],
      farLabel: label,
      ...flagged(flag, 90, [0, 0], [0, 0]),
    };
  }
  const bearing = away(lead.azimuthDeg, side);
  const [ringAt, farRingAt] = [screenOffset(bearing, RING_NEAR), screenOffset(bearing, RING_FAR)];
  return {
    ...common,
    shape: 'tick',
    bearing,
    ring: screenOffset(bearing, RING),
    ringAt,
    farRingAt,
    label: screenOffset(bearing, LABEL),
    anchor: anchorTowards(bearing),
    farRing: screenOffset(bearing, FAR_RING),
    farLabel: screenOffset(bearing, FAR_LABEL),
    ...flagged(flag, bearing, ringAt, farRingAt),
  };
}

export const stationPoint = (station: StationLayout, flag: Flag = ''): Feature<Point, StationProps> =>
  point([station.at[0], station.at[1]], stationProps(station, flag));

export const stationPoints = (analysis: Analysis): FeatureCollection<Point, StationProps> =>
  featureCollection(analysis.stations.map((station) => stationPoint(station)));
