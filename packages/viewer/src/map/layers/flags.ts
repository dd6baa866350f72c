/** What the checks have found, as marks: at a station's ring its gravest open finding and that an error is waived; at other places one for each finding. Pure. */
import type { Finding, LonLat } from '@halfcup/core';
import { pointAt } from '@halfcup/core/geometry';
import { point } from '@turf/turf';
import type { Feature, Point } from 'geojson';
import { courseOf, waivedOf, worstOf } from '../../state/view/derive.ts';
import type { OpenPlan } from '../../state/store/store.ts';

/** By which shape: the image `flag-…` of it; empty for none. */
export type Flag = '' | 'waived' | `${'error' | 'warning' | 'note'}${'' | '-waived'}`;

export function flagOf(findings: readonly Finding[]): Flag {
  const worst = worstOf(findings);
  const waived = waivedOf(findings).errors > 0;
  if (worst === null) return waived ? 'waived' : '';
  return waived ? `${worst}-waived` : worst;
}

export interface FlagPlace {
  /** From the ring's centre to the near edge of the mark's middle, pixels. */
  readonly offset: readonly [number, number];
  readonly anchor: 'left' | 'right';
}

/** Corners of the ring, degrees clockwise from north. */
const CORNERS = [45, 315, 135, 225] as const;
const turn = (a: number, b: number): number => Math.abs(((((a - b) % 360) + 540) % 360) - 180);

/** The corner of the ring that is farthest from the stem and from the name, which stand towards and away from the pin. */
export function flagPlace(bearing: number): FlagPlace {
  const free = (corner: number): number => Math.min(turn(corner, bearing), turn(corner, bearing + 180));
  const best = CORNERS.reduce((one, other) => (free(other) > free(one) + 1e-9 ? other : one));
  const right = best < 180;
  const up = best === 45 || best === 315;
  return { offset: [right ? 4.5 : -4.5, up ? -10.5 : 10.5], anchor: right ? 'left' : 'right' };
}

export interface FlagProps {
  readonly flag: Flag;
  /** Its place in the list that is drawn. */
  readonly finding: number;
}

const placeOf = (open: OpenPlan, { where: { at, course, measure } }: Finding): LonLat | null => {
  if (at !== undefined) return at;
  const known = courseOf(open, course);
  return known === undefined || measure === undefined ? null : (pointAt(known, measure)?.at ?? null);
};

/** Findings that are about no station and have a place, the gravest last: it is drawn on top. Of the waived the errors. */
export function flagPoints(open: OpenPlan, findings: readonly Finding[]): Feature<Point, FlagProps>[] {
  const known = new Set(open.analysis.stations.map(({ id }) => id));
  const grave = { error: 2, warning: 1, note: 0 } as const;
  return findings
    .flatMap((finding, index) => {
      const { station } = finding.where;
      const flag = flagOf([finding]);
      const at = flag === '' || (station !== undefined && known.has(station)) ? null : placeOf(open, finding);
      return at === null ? [] : [{ finding, feature: point<FlagProps>([at[0], at[1]], { flag, finding: index }) }];
    })
    .toSorted((a, b) => grave[a.finding.severity] - grave[b.finding.severity])
    .map(({ feature }) => feature);
}
