/** Race day at the time of the clock, each result kept for the time and the plan that it is of: strip, map and panels ask for the same. */
import {
  clockSpan,
  crowdAlong,
  stateAt,
  sweepsAt,
  vehiclesAt,
  type CrowdAlong,
  type StationState,
  type SweepPlace,
  type VehicleAt,
} from '@halfcup/core/raceday';
import { batch } from '@preact/signals';
import type { OpenPlan, Store } from '../store/store.ts';
import { keep } from './derive.ts';

export type Span = readonly [from: number, to: number];

/** From whole minute to whole minute; `null` without race day. */
export const spanOf: (analysis: OpenPlan['analysis']) => { readonly span: Span | null } = keep((analysis) => {
  const span = clockSpan(analysis);
  return { span: span === null ? null : [Math.floor(span[0] / 60) * 60, Math.ceil(span[1] / 60) * 60] };
});

/** All that the clock shows at one time. */
export interface Moment {
  readonly time: number;
  readonly crowds: readonly CrowdAlong[];
  readonly states: readonly StationState[];
  readonly sweeps: readonly SweepPlace[];
  readonly vehicles: readonly VehicleAt[];
}

/** The last two: the map's, and the one that is told. */
let kept: readonly { readonly open: OpenPlan; readonly moment: Moment }[] = [];

export function momentOf(open: OpenPlan, time: number): Moment {
  const known = kept.find((one) => one.open === open && one.moment.time === time);
  if (known !== undefined) return known.moment;
  const { analysis } = open;
  const moment: Moment = {
    time,
    crowds: crowdAlong(analysis, time),
    states: analysis.stations.flatMap(({ id }) => stateAt(analysis, id, time) ?? []),
    sweeps: sweepsAt(analysis, time),
    vehicles: vehiclesAt(analysis, time),
  };
  kept = [{ open, moment }, ...kept.slice(0, 1)];
  return moment;
}

/** What the clock shows now; `null` where it is off or the plan has no race day. */
export const momentNow = ({ open, clock }: Store): Moment | null => momentAt(open.value, clock.value);

/** What strip, panels and words tell of it: the same, a moment later while it moves. */
export const momentTold = ({ open, clockTold }: Store): Moment | null => momentAt(open.value, clockTold.value);

function momentAt(plan: OpenPlan | null, time: number | null): Moment | null {
  return plan === null || time === null || spanOf(plan.analysis).span === null ? null : momentOf(plan, time);
}

/** Sets the clock to a time within race day. */
export function setClock(store: Store, time: number): void {
  const span = store.open.value === null ? null : spanOf(store.open.value.analysis).span;
  if (span !== null) store.clock.value = Math.min(span[1], Math.max(span[0], time));
}

export function turnOff(store: Store): void {
  batch(() => {
    store.playing.value = false;
    store.clock.value = null;
  });
}

export const nameOf = (list: readonly { readonly id: string; readonly name: string }[], id: string): string =>
  list.find((one) => one.id === id)?.name ?? id;

/** Runners per 100 m as a thickness from 0 to 7: a step for each factor of about three, so that few runners show beside many. */
export const LEVELS = [1, 3, 10, 30, 100, 300, 1000] as const;
export const levelOf = (runners: number): number => LEVELS.filter((least) => runners >= least).length;
