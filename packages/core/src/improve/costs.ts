/**
 * What places cost in findings: of one station alone, of two together, and of the leg between two.
 * The checks themselves run, on layouts that hold only what they look at. A check that looks at more
 * than one station is named here; where one is missing, no proof is given.
 */
import type { IndexedCourse } from '../course/segmentIndex.ts';
import type { Finding } from '../finding.ts';
import { inverseLength } from '../geodesy/karney.ts';
import type { PlanGround } from '../ground/planGround.ts';
import type { Layout, StationLayout } from '../layout/layout.ts';
import type { Plan } from '../plan/plan.ts';
import { type Check, isServing } from '../review/check.ts';
import { CHECKS } from '../review/checks.ts';
import { waive } from '../review/waivers.ts';
import type { Leg, RaceSpacing } from '../station/station.ts';
import { isOpen } from './standing.ts';

/** Checks of legs between stops. */
const OF_LEGS: readonly string[] = ['leg-long', 'leg-short', 'near-start', 'near-finish'];
/** Checks of two stations that stand near one another. */
const OF_NEIGHBOURS: readonly string[] = ['items-overlap', 'stations-face'];
/** Checks of two stations that one race comes to in turn. */
const OF_FOLLOWERS: readonly string[] = ['gel-without-water'];
/** Checks of the plan as a whole or of its day: no search weighs them, and all is reviewed once more when places are chosen. */
const OF_PLAN: ReadonlySet<string> = new Set([
  'clock-order',
  'closes-late',
  'reopens-early',
  'crew-late',
  'cutoff-stops-many',
  'slow-wave-first',
  'speed-impossible',
  'crowded-road',
  'no-water',
  'supplies-short',
  'same-name',
  'far-from-courses',
  'no-entrants',
  'no-medical',
  'no-widths',
  'ground-missing',
  'ground-silent',
  'map-old',
  'off-map',
  'gate-on-course',
  'steps-with-wheels',
  'rough-surface',
  'width-from-map',
  'no-elevations',
  'no-contacts',
  'no-captain',
  'shared-contact',
  'roster-short',
  'rule-loose',
  'clock-beyond',
  'clock-short',
  'zone-large',
  'points-elsewhere',
  'show-low',
  'heat-doubtful',
  'no-date',
  'walked-date',
  'tables-many',
  'boxes-tight',
]);

/** Whether a finding is of a kind that the search weighs. */
export const isOfPlaces = ({ code }: Pick<Finding, 'code'>): boolean => !OF_PLAN.has(code);

const named = (codes: readonly string[]): Check[] => CHECKS.filter(({ code }) => codes.includes(code));
const LEG_CHECKS: readonly Check[] = named(OF_LEGS);
const NEIGHBOUR_CHECKS: readonly Check[] = named(OF_NEIGHBOURS);
const FOLLOWER_CHECKS: readonly Check[] = named(OF_FOLLOWERS);
const STATION_CHECKS: readonly Check[] = CHECKS.filter(
  (check) => isOfPlaces(check) && ![...OF_LEGS, ...OF_NEIGHBOURS].includes(check.code),
);

/** One error outweighs all warnings. */
export const ERROR = 1024;

/** Errors and warnings that nobody has waived, an error as `ERROR` warnings. */
export const weightOf = (findings: readonly Finding[]): number =>
  findings
    .filter(isOpen)
    .reduce((sum, { severity }) => sum + (severity === 'note' ? 0 : severity === 'error' ? ERROR : 1), 0);

/** What costs are computed with. */
export interface Ground {
  readonly plan: Plan;
  readonly courses: readonly IndexedCourse[];
  readonly ground?: PlanGround | undefined;
  /** Stations that serve nobody, which stay: they excuse legs. */
  readonly lost: readonly StationLayout[];
}

/** What costs of a plan's stations are computed with. */
export const groundOf = ({ plan, courses, stations, ground }: Layout): Ground => ({
  plan,
  courses,
  ground,
  lost: stations.filter((station) => !isServing(station)),
});

/** A layout that holds only what checks of these stations look at. */
export const layoutOf = (
  { plan, courses, ground }: Pick<Ground, 'plan' | 'courses' | 'ground'>,
  stations: readonly StationLayout[],
  spacing: readonly RaceSpacing[] = [],
): Layout => ({ plan, courses, stations, spacing, ...(ground === undefined ? {} : { ground }) });

/** What checks find and nobody has waived. */
function weighed(checks: readonly Check[], layout: Layout): number {
  const found = checks.flatMap((check) => ((check.missing?.(layout) ?? null) === null ? check.find(layout) : []));
  return weightOf(layout.plan.waivers.length === 0 ? found : waive(found, layout.plan));
}

/** A station laid out at one place, with what it costs alone. */
export interface Costed {
  readonly station: StationLayout;
  /** Findings of the station alone. */
  readonly own: number;
  /** Of these, what a station that follows could mend. */
  readonly wanting: number;
  /** How far from its pin anything stands, metres. */
  readonly reach: number;
}

/** Findings of one station alone. */
export function costed(station: StationLayout, ground: Ground): Costed {
  const alone = layoutOf(ground, [station]);
  return {
    station,
    own: weighed(STATION_CHECKS, alone),
    wanting: weighed(FOLLOWER_CHECKS, alone),
    reach: reachOf(station),
  };
}

/** Twice what a measure may be off, as where a course is stretched between marks. */
const SLACK = 1.1;

const reachOf = ({ at, directions }: StationLayout): number =>
  SLACK *
  directions
    .flatMap(({ items }) => items)
    .flatMap((item) => [
      ...item.along.map(Math.abs),
      ...item.at.map((place) => (place === null ? 0 : inverseLength(at[0], at[1], place[0], place[1]))),
    ])
    .reduce((reach, one) => Math.max(reach, one), 0);

/** Findings that two stations have only together. `follow`: one race comes to them in turn. */
export function pairCost(one: Costed, other: Costed, follow: boolean, ground: Ground): number {
  const [a, b] = [one.station.at, other.station.at];
  const near = inverseLength(a[0], a[1], b[0], b[1]) <= one.reach + other.reach;
  const wanting = follow ? one.wanting + other.wanting : 0;
  if (!near && wanting === 0) return 0;
  const pair = layoutOf(
    ground,
    one.station.index < other.station.index ? [one.station, other.station] : [other.station, one.station],
  );
  const together = (checks: readonly Check[], wanted: boolean): number => (wanted ? weighed(checks, pair) : 0);
  return together(NEIGHBOUR_CHECKS, near) + together(FOLLOWER_CHECKS, wanting > 0) - wanting;
}

/** Findings of one leg of a race. */
export function legCost(
  race: Pick<RaceSpacing, 'race' | 'course'>,
  leg: Leg,
  stations: readonly StationLayout[],
  ground: Ground,
): number {
  const spacing = { ...race, legs: [leg], longest: leg.length, shortest: leg.length, mean: leg.length };
  return weighed(LEG_CHECKS, layoutOf(ground, [...stations, ...ground.lost], [spacing]));
}
