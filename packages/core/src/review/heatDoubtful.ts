/**
 * A heat level that is cooler than the temperature beside it, by the plan's own steps, else by the flags of the American
 * College of Sports Medicine for road races (1996 and 2007, from memory): over 18 °C no longer low, over 28 °C extreme.
 * And a wet-bulb globe temperature that no place on earth has.
 */
import type { Layout } from '../layout/layout.ts';
import type { Heat, Supplies } from '../plan/plan.ts';
import { suppliesOf } from '../plan/practice.ts';
import { COMMON_PRACTICE, type Case, type Check, check } from './check.ts';

const STEPS = [18, 28] as const;
/** Degrees by which a level may miss steps that the plan does not give: flags are no measure of how much is drunk. */
const ROOM = 5;
/** Hotter has hardly been measured: an assumption. */
const MOST = 45;
const LEVELS: readonly Heat[] = ['cool', 'warm', 'hot'];

/** The level that a temperature surely asks for. */
function askedBy({ wbgtC, heatSteps }: Supplies): Heat {
  const [warm, hot] = heatSteps ?? [STEPS[0] + ROOM, STEPS[1]];
  const temperature = wbgtC!;
  return temperature < warm ? 'cool' : temperature < hot ? 'warm' : 'hot';
}

function casesOf(supplies: Supplies, station: string | null, path: string): Case<'heat-doubtful'>[] {
  const { heat, wbgtC } = supplies;
  if (wbgtC === undefined) return [];
  const where = { path, ...(station === null ? {} : { station }) };
  const facts = { where, measured: wbgtC, unit: '°C' };
  if (wbgtC > MOST) return [{ params: { is: 'beyond', station, wbgtC, most: MOST }, ...facts, limit: MOST }];
  const asks = askedBy(supplies);
  if (heat === undefined || LEVELS.indexOf(asks) <= LEVELS.indexOf(heat)) return [];
  return [{ params: { is: 'cooler', station, heat, wbgtC, asks }, ...facts }];
}

/** The plan's, then those of stations that have a heat of their own. */
const find = ({ plan }: Layout): Case<'heat-doubtful'>[] => [
  ...casesOf(plan.supplies, null, '/supplies'),
  ...plan.stations.flatMap((station, k) =>
    ['heat', 'wbgtC', 'heatSteps'].some((key) => Object.hasOwn(station.supplies, key))
      ? casesOf(suppliesOf(plan, station), station.id, `/stations/${k}/supplies`)
      : [],
  ),
];

export const heatDoubtful: Check = check(
  {
    code: 'heat-doubtful',
    severity: 'warning',
    source: `${COMMON_PRACTICE}; the room is an assumption`,
  },
  find,
);
