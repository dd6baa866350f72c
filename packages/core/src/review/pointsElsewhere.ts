/** Points of a station that lie at another one: two stations' pins or points were exchanged, or entered at the wrong one. */
import type { LonLat } from '../finding.ts';
import { inverseLength } from '../geodesy/karney.ts';
import type { Layout, StationLayout } from '../layout/layout.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, check } from './check.ts';
import { type StationPoint, refOf } from './points.ts';

/** Farther from its own station than this, metres, nobody means it there. */
const AWAY = 300;
/** So near another station, metres, it is at that. */
const AT = 150;

export const pointsElsewhere: Check = check(
  {
    code: 'points-elsewhere',
    severity: 'warning',
    source: COMMON_PRACTICE,
    missing: ({ stations }) =>
      stations.length < 2
        ? 'one-station'
        : stations.some(({ station }) => station.points.length > 0)
          ? null
          : 'no-zones-points',
  },
  (layout) => layout.stations.flatMap((station) => strayAt(station, layout)),
);

const between = (a: LonLat, b: LonLat): number => inverseLength(a[0], a[1], b[0], b[1]);

/** The other station at which a point lies, and how far that is from its own; `null` where it does not. */
export function elsewhere(
  { point, station }: StationPoint,
  { stations }: Layout,
): { readonly other: StationLayout; readonly away: number } | null {
  const away = between(point.at, station.at);
  if (away <= AWAY) return null;
  const others = stations
    .filter((one) => one !== station)
    .map((other) => ({ other, near: between(point.at, other.at) }))
    .filter(({ near }) => near <= AT)
    .sort((a, b) => a.near - b.near);
  return others[0] === undefined ? null : { other: others[0].other, away };
}

/** One finding of all points of a station that lie elsewhere, the farthest first. */
function strayAt(station: StationLayout, layout: Layout): Case<'points-elsewhere'>[] {
  const stray = station.station.points
    .map((point, k) => ({ point, station, key: `points/${k}` }))
    .flatMap((one) => {
      const found = elsewhere(one, layout);
      return found === null ? [] : [{ one, ...found }];
    })
    .sort((a, b) => b.away - a.away);
  const [first] = stray;
  if (first === undefined) return [];
  return [
    {
      params: { point: refOf(first.one), count: stray.length, other: first.other.id, away: first.away },
      where: { ...atStation(station, stray.length === 1 ? first.one.key : 'points'), at: first.one.point.at },
      measured: first.away,
      limit: AWAY,
      unit: 'm',
    },
  ];
}
