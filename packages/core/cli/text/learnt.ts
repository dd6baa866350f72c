/** Rates that counted cups and gels teach, as they stand in a plan. */
import type { Learnt } from '../../src/raceday/learn.ts';
import type { View } from '../findings.ts';
import { kindName } from '../supplyWords.ts';
import { table } from '../tables.ts';
import { page, section } from './blocks.ts';

const HEAD = ['What', ' Used', ' Calculated', ' Factor', 'Counted at'];

export function learntText({ take, basis }: Learnt, { names, screen }: View): string {
  if (basis.length === 0)
    return page(['Nothing to learn from: no station of the plan has counts under "used".'], screen);
  const rows = basis.map(({ kind, used, reckoned, factor, stations }) => [
    kindName(kind),
    used.toLocaleString('en'),
    Math.round(reckoned).toLocaleString('en'),
    factor.toFixed(2),
    stations.map(names.station).join(', '),
  ]);
  const rounded = JSON.stringify(take, (_, value: unknown) =>
    typeof value === 'number' ? Number(value.toFixed(3)) : value,
  );
  return page(
    [
      section('Counted on the day, and calculated from the plan', table(HEAD, rows, screen), screen),
      section('For the next plan, under "supplies"', `"take": ${rounded}`, screen),
    ],
    screen,
  );
}
