/**
 * A trial: a station is taken up, shown at one place after another, and put down as one step of undo, or put back. The
 * text of the plan stays as it is until then.
 */
import { reanalyse, type Finding, type Plan } from '@halfcup/core';
import { batch } from '@preact/signals';
import { moveStation } from '../edits/edits.ts';
import { placed, placementOf, sideOfLine, type Placement } from '../edits/placing.ts';
import { run } from '../edits/workbench.ts';
import type { OpenPlan, Store } from '../store/store.ts';
import { dropTrial } from '../store/trial.ts';
import { openPlanOf } from '../view/compute.ts';
import { leadOf } from '../view/derive.ts';

/** Begins a trial of a station, and selects it. */
export function beginTrial(store: Store, station: string): void {
  const open = store.open.value;
  if (open === null || !open.analysis.stations.some(({ id }) => id === station)) return;
  batch(() => {
    store.trial.value ??= { from: open, station };
    store.selected.value = station;
  });
}

const withStation = (plan: Plan, index: number, placement: Placement, side: 'left' | 'right' | undefined): Plan => {
  const station = placed(plan.stations[index]!, placement);
  return { ...plan, stations: plan.stations.with(index, side === undefined ? station : { ...station, side }) };
};

/** The side of the lead direction's line on which the pin is: whoever moves it says by that where it is to stand, however near the line. */
function seenSide(open: OpenPlan, station: string): 'left' | 'right' | null {
  const layout = open.analysis.stations.find(({ id }) => id === station);
  const lead = layout === undefined ? undefined : leadOf(layout);
  const pass = layout?.passes[lead?.passes[0] ?? -1];
  return pass === undefined || lead === undefined
    ? null
    : sideOfLine(pass.offset, lead.side === 'unclear' ? 'right' : lead.side);
}

/**
 * The open plan with the station of the trial at another place, on the side on which it stands there; `null` where there is no
 * trial or that place cannot be computed. `now`: what is shown, or the last such plan, of which all is kept that stays the same.
 */
export function trialAt(store: Store, placement: Placement, now: OpenPlan | null = store.open.value): OpenPlan | null {
  const trial = store.trial.value;
  if (trial === null || now === null) return null;
  const { from } = trial;
  const index = from.analysis.plan.stations.findIndex(({ id }) => id === trial.station);
  const at = (before: OpenPlan, side: 'left' | 'right' | undefined): OpenPlan | null => {
    const plan = withStation(from.analysis.plan, index, placement, side);
    const made = openPlanOf(from, reanalyse(before.analysis, plan, from.files));
    return made.ok ? made.value : null;
  };
  const shown = now.analysis.plan.stations[index]?.side;
  const first = at(now, shown);
  const side = first === null ? null : seenSide(first, trial.station);
  return first === null || side === null || side === shown ? first : at(first, side);
}

/** Shows the station of the trial at another place. A place that cannot be computed changes nothing. */
export function moveTrial(store: Store, placement: Placement): void {
  const shown = trialAt(store, placement);
  if (shown !== null) store.open.value = shown;
}

/** Puts the station of the trial down where it is shown: one step of undo, or none where it has not moved. */
export function finishTrial(store: Store): readonly Finding[] {
  const trial = store.trial.value;
  const shown = store.open.value;
  if (trial === null || shown === null) return [];
  const station = shown.analysis.stations.find(({ id }) => id === trial.station);
  dropTrial(store);
  if (station === undefined || shown === trial.from) return [];
  return run(store, moveStation(station.id, station.name, placementOf(station.station), seenSide(shown, station.id)));
}
