/** Rates that counted cups and gels teach, as they stand in a plan. */
import type { Learnt, LearntSupplies, Spread } from '../../src/raceday/learn.ts';
import type { View } from '../findings.ts';
import { kindName } from '../supplyWords.ts';
import { table } from '../tables.ts';
import { NONE, page, section } from './blocks.ts';

const HEAD = ['What', ' Used', ' Calculated', ' Factor', ' ±', ' Lowest to highest', 'Counted at'];

/** From stations far apart a rate is a guess; from one station nobody knows. */
const spreadCells = (spread: Spread | null): [string, string] =>
  spread === null
    ? [NONE, 'one station']
    : [spread.error.toFixed(2), `${spread.low.toFixed(2)} to ${spread.high.toFixed(2)}`];

const SPREAD =
  'Stations weigh by what was calculated for them; ± is the standard error of the factor over the stations.';

export function learntText({ basis }: Learnt, supplies: LearntSupplies, { names, screen }: View): string {
  if (basis.length === 0)
    return page(['Nothing to learn from: no station of the plan has counts under "used".'], screen);
  const rows = basis.map(({ kind, used, reckoned, factor, spread, stations }) => [
    kindName(kind),
    used.toLocaleString('en'),
    Math.round(reckoned).toLocaleString('en'),
    factor.toFixed(2),
    ...spreadCells(spread),
    stations.map(names.station).join(', '),
  ]);
  const lines = Object.entries(supplies).map(([key, value]) => `"${key}": ${JSON.stringify(value)}`);
  return page(
    [
      section('Counted on the day, and calculated from the plan', table(HEAD, rows, screen), screen, SPREAD),
      section('For the next plan, under "supplies"', lines.join(',\n'), screen),
    ],
    screen,
  );
}
