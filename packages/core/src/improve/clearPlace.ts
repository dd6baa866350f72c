/**
 * The nearest place of one station where nothing of it stands where the plan's map or its zones want nothing: out of mouths, off bridges
 * and crossings, away from hydrants. What `improve` weighs for all stations, for one and at once.
 */
import type { Analysis } from '../analyse.ts';
import type { StationLayout } from '../layout/layout.ts';
import type { PlanStation } from '../plan/plan.ts';
import { CHECKS } from '../review/checks.ts';
import { isAnalysis } from '../review/shapes.ts';
import { courseTable } from '../station/seeStation.ts';
import { type Shape, aText, notNegative, partly, want } from '../wants.ts';
import { type Ground, costed, groundOf, layoutOf } from './costs.ts';
import { type Place, placeAt, whyStays } from './places.ts';

/** Checks of places where nothing may stand. */
const CODES: ReadonlySet<string> = new Set([
  'item-in-zone',
  'item-in-mouth',
  'item-on-bridge',
  'item-in-tunnel',
  'item-on-steps',
  'item-on-level-crossing',
  'item-at-stop',
  'item-on-crossing',
  'hydrant-blocked',
  'fire-station-blocked',
  'hospital-blocked',
  'narrow-by-map',
]);
const OF_PLACES = CHECKS.filter(({ code }) => CODES.has(code));

/** Where a station stands clear. */
export interface ClearPlace {
  /** Metres along the course of its lead pass, upstream negative. */
  readonly shift: number;
  /** The station as the plan has it there. */
  readonly station: PlanStation;
}

/** Metres along the course to either side; absent: 150. */
export interface ClearOptions {
  readonly within?: number;
}

const isOptions: Shape = partly<ClearOptions>('options such as { within: 100 }', { within: notNegative });
const WITHIN = 150;

/**
 * The nearest place along its course, in whole metres, where a station stands clear of mouths of streets, of what else the plan's map
 * has on and beside the road, and of keep-clear zones, and where no check of its own finds more than now. `null` where there is none
 * within reach, where the station is fixed, and where it stands clear already.
 * @example
 * ```ts
 * import { analyse, readPlan } from '@halfcup/core';
 * import { clearPlace } from '@halfcup/core/stages';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }], "races": [{ "id": "r", "course": "c" }],
 *   "zones": [{ "name": "Yard", "rule": "keep-clear",
 *     "polygon": [[-17.3785, -33.2002], [-17.3784, -33.2002], [-17.3784, -33.1998], [-17.3785, -33.1998]] }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const result = analyse(read.value.plan, { gpx: new Map() });
 * if (!result.ok) throw new Error(result.findings[0]?.message);
 * clearPlace(result.value, 's1')?.shift; // → -6
 * ```
 */
export function clearPlace(analysis: Analysis, id: string, options: ClearOptions = {}): ClearPlace | null {
  want('clearPlace', 'analysis', isAnalysis, analysis);
  want('clearPlace', 'id', aText, id);
  want('clearPlace', 'options', isOptions, options);
  const present = analysis.stations.find((station) => station.id === id);
  if (present === undefined) throw new RangeError(`clearPlace: the analysis has no station ${JSON.stringify(id)}`);
  const ground = groundOf(analysis);
  if (whyStays(present) !== null || isClear(present, ground)) return null;
  const found = nearest(present, analysis, ground, options.within ?? WITHIN);
  return found === null ? null : { shift: found.shift, station: found.station };
}

function nearest(present: StationLayout, analysis: Analysis, ground: Ground, within: number): Place | null {
  const courses = courseTable(analysis.courses);
  const { own } = costed(present, ground);
  for (let away = 1; away <= within; away++)
    for (const shift of [-away, away]) {
      const place = placeAt(shift, false, present, analysis.plan, courses);
      if (place !== null && isClear(place.laid, ground) && costed(place.laid, ground).own <= own) return place;
    }
  return null;
}

function isClear(station: StationLayout, ground: Ground): boolean {
  const alone = layoutOf(ground, [station]);
  return OF_PLACES.every((check) => (check.missing?.(alone) ?? null) !== null || check.find(alone).length === 0);
}
