/** Commands of the year: what was used at stations, and the rates that it teaches. */
import type { LearntSupplies, StationUsed, Used } from '@halfcup/core/raceday';
import { rawPlan, rawStation, setOfStation, setValue, together, valueAt, type Command } from './edits.ts';
import type { OpenPlan } from '../store/store.ts';

type Entry = Readonly<Record<string, unknown>>;

/** Sets what was used; kinds that were not counted now keep what they had. */
const setUsed = (station: string, used: Used): Command => ({
  label: '',
  edit: (open) => {
    const before = (valueAt(rawStation(open, station), ['used']) ?? {}) as Entry;
    return setOfStation(station, ['used'], { ...before, ...used }, '').edit(open);
  },
});

/** What was used at stations, as one step. */
export const countUsed = (label: string, counted: readonly StationUsed[]): Command =>
  together(
    label,
    counted.map(({ station, used }) => setUsed(station, used)),
  );

/** Takes learnt rates into the plan's supplies, as one step. */
export const applyRates = (supplies: LearntSupplies): Command =>
  together(
    'apply learnt rates',
    Object.entries(supplies).map(([key, value]) => setValue(['supplies', key], value, '')),
  );

/** Whether the plan has these rates already. */
export const hasRates = (open: OpenPlan, supplies: LearntSupplies): boolean =>
  Object.entries(supplies).every(
    ([key, value]) => JSON.stringify(valueAt(rawPlan(open.document), ['supplies', key])) === JSON.stringify(value),
  );
