/** What stands beside the stations shown: the old place of the one on trial, and the variant compared. Pure. */
import type { StationLayout } from '@halfcup/core';
import type { Units } from '@halfcup/core/plan';
import { lineString, point } from '@turf/turf';
import type { Feature, LineString, Point, Position } from 'geojson';
import { differenceOf, differenceText } from '../../state/view/difference.ts';
import type { OpenPlan, Trial } from '../../state/store/store.ts';
import { anchorTowards, type Anchor } from './directions.ts';
import { stationProps, type StationProps } from './stations.ts';

/** `old`: where a station stood or stands elsewhere; `way`: from there to where it is shown; `said`: the difference, at the pin shown. */
export type BesideProps =
  | (StationProps & { readonly draw: 'old' })
  | { readonly draw: 'way' }
  | { readonly draw: 'said'; readonly text: string; readonly anchor: Anchor };

type Beside = Feature<Point | LineString, BesideProps>;

const position = (station: StationLayout): Position => [station.at[0], station.at[1]];
const inPlan = (open: OpenPlan, id: string): StationLayout | undefined =>
  open.analysis.stations.find((one) => one.id === id);

const old = (station: StationLayout, name: string): Beside =>
  point<BesideProps>(position(station), { ...stationProps(station), name, draw: 'old' });
const way = (from: StationLayout, to: StationLayout): Beside =>
  lineString<BesideProps>([position(from), position(to)], { draw: 'way' });

/** The old place, the way from it, and the difference, written away from the ring. Empty while nothing has moved. */
export function ghostFeatures(trial: Trial, open: OpenPlan, units: Units): Beside[] {
  const [from, to] = [inPlan(trial.from, trial.station), inPlan(open, trial.station)];
  if (from === undefined || to === undefined || from === to) return [];
  const { shape, bearing } = stationProps(to);
  const said: BesideProps = {
    draw: 'said',
    text: differenceText(differenceOf(from, to), units),
    anchor: anchorTowards(shape === 'ring' ? 180 : bearing + 180),
  };
  return [old(from, ''), way(from, to), point<BesideProps>(position(to), said)];
}

/** Places nearer than this are the same, metres. */
const SAME = 0.05;

/** Stations that stand elsewhere in the variant compared, each with its name. */
export function againstFeatures(against: OpenPlan, open: OpenPlan): Beside[] {
  const named = against.variant ?? 'main plan';
  return against.analysis.stations.flatMap((station) => {
    const shown = inPlan(open, station.id);
    if (shown !== undefined && differenceOf(station, shown).moved < SAME) return [];
    return [old(station, `${station.name}: ${named}`), ...(shown === undefined ? [] : [way(station, shown)])];
  });
}
