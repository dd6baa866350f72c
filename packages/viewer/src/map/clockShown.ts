/** What the map shows of race day at the clock's time. */
import { pointAt } from '@halfcup/core/geometry';
import type { StationPhase } from '@halfcup/core/raceday';
import { featureCollection, point } from '@turf/turf';
import type { Feature, FeatureCollection } from 'geojson';
import type { OpenPlan, Store } from '../state/store/store.ts';
import { levelOf, momentNow, nameOf, type Moment } from '../state/view/clock.ts';
import { courseOf } from '../state/view/derive.ts';
import type { ClockMark, ClockShown } from './clockOnMap.ts';
import { crowdLines, EACH } from './layers/crowd.ts';

/** Kept while the courses and the races are the same: a station that moves changes none of them. */
let lines: { readonly of: readonly unknown[]; readonly features: readonly Feature[] } | null = null;

function linesOf({ analysis }: OpenPlan, { crowds }: Moment): readonly Feature[] {
  const of = [...analysis.courses.map(({ course }) => course), ...crowds.map(({ race }) => race)];
  if (lines === null || lines.of.length !== of.length || lines.of.some((one, k) => one !== of[k]))
    lines = {
      of,
      features: crowdLines(
        analysis,
        crowds.map(({ race }) => race),
      ),
    };
  return lines.features;
}

let stands: { readonly of: string; readonly points: FeatureCollection } | null = null;

function phasesOf({ analysis }: OpenPlan, { states }: Moment): FeatureCollection {
  const rows = analysis.stations.flatMap(({ id, at }) => {
    const state = states.find(({ station }) => station === id);
    return state === undefined ? [] : [{ at, phase: state.phase }];
  });
  const of = JSON.stringify(rows);
  if (stands?.of !== of)
    stands = {
      of,
      points: featureCollection(rows.map(({ at, phase }) => point<{ phase: StationPhase }>([at[0], at[1]], { phase }))),
    };
  return stands.points;
}

function levelsOf({ crowds }: Moment): ReadonlyMap<number, number> {
  const levels = new Map<number, number>();
  for (const [race, { runners }] of crowds.entries())
    for (let k = 0; k < runners.length; k++) if (runners[k]! > 0) levels.set(race * EACH + k, levelOf(runners[k]!));
  return levels;
}

const KIND = { drop: 'drop-off', collect: 'collection' } as const;

function marksOf(open: OpenPlan, { sweeps, vehicles }: Moment): ClockMark[] {
  const { plan } = open.analysis;
  const placed = (course: string, measure: number, mark: Omit<ClockMark, 'at'>): ClockMark[] => {
    const found = courseOf(open, course);
    const at = found === undefined ? null : pointAt(found, measure);
    return at === null ? [] : [{ ...mark, at: at.at }];
  };
  return [
    ...sweeps.flatMap(({ race, course, measure }) =>
      placed(course, measure, { key: `sweep ${race}`, kind: 'sweep', label: `Sweep, ${nameOf(plan.races, race)}` }),
    ),
    ...vehicles.flatMap(({ vehicle, kind, course, measure }) =>
      placed(course, measure, {
        key: `${kind} ${vehicle}`,
        kind,
        label: `${nameOf(plan.vehicles, vehicle)}, ${KIND[kind]}`,
      }),
    ),
  ];
}

export function clockShown(store: Store): ClockShown | null {
  const moment = momentNow(store);
  const open = store.open.value;
  if (moment === null || open === null) return null;
  return {
    lines: linesOf(open, moment),
    levels: levelsOf(moment),
    phases: phasesOf(open, moment),
    marks: marksOf(open, moment),
  };
}
