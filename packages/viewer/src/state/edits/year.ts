/** Commands of the year: what was used at stations, and the rates that it teaches. */
import type { Learnt, StationUsed, Used } from '@halfcup/core/raceday';
import { rawPlan, rawStation, setOfStation, setValue, together, valueAt, type Command } from './edits.ts';
import type { OpenPlan } from '../store/store.ts';

type Take = Learnt['take'];
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

/** As a plan holds a rate: to a thousandth. */
const rounded = (rate: number): number => Number(rate.toFixed(3));

/** The plan's own rates with the learnt ones laid over. */
function takeWith(open: OpenPlan, take: Take): Entry {
  const before = (valueAt(rawPlan(open.document), ['supplies', 'take']) ?? {}) as Readonly<Record<string, Entry>>;
  const learnt = Object.entries(take).map(
    ([division, rates]) =>
      [
        division,
        {
          ...before[division],
          ...Object.fromEntries(Object.entries(rates).map(([kind, rate]) => [kind, rounded(rate as number)])),
        },
      ] as const,
  );
  return { ...before, ...Object.fromEntries(learnt) };
}

/** Takes learnt rates into the plan, as one step. */
export const applyRates = (take: Take): Command => ({
  label: 'apply learnt rates',
  edit: (open) => setValue(['supplies', 'take'], takeWith(open, take), '').edit(open),
});

/** Whether the plan has these rates already. */
export const hasRates = (open: OpenPlan, take: Take): boolean =>
  applyRates(take).edit(open) === open.document.text ||
  JSON.stringify(takeWith(open, take)) === JSON.stringify(valueAt(rawPlan(open.document), ['supplies', 'take']));
