/** Drop and collection runs for people, one table each. */
import type { Plan } from '../../src/plan/plan.ts';
import type { RaceDay, Run } from '../../src/raceday/day.ts';
import { formatMinute } from '../../src/format.ts';
import { type UnitSystem, massIn } from '../../src/units.ts';
import type { View } from '../findings.ts';
import { table } from '../tables.ts';
import { section } from './blocks.ts';

const HEAD = ['Station', ' Arrives', ' Leaves', 'Side', ' Load'];

/** Every run under a heading that says what it does and with which vehicle. */
export function runsText({ runs }: RaceDay, { vehicles }: Plan, view: View): readonly string[] {
  if (runs.length === 0) return ['Runs: none. The plan has no vehicles, or nothing to carry.'];
  const nameOf = (id: string): string => vehicles.find((vehicle) => vehicle.id === id)?.name ?? id;
  return runs.map((run) => runText(run, nameOf(run.vehicle), view));
}

function runText({ kind, stops }: Run, vehicle: string, { units, names, screen }: View): string {
  const rows = stops.map(({ station, arrive, leave, side, load }) => [
    names.station(station),
    formatMinute(arrive),
    formatMinute(leave),
    side,
    loadText(
      load.reduce((sum, { kg }) => sum + kg, 0),
      units,
    ),
  ]);
  return section(`${kind === 'drop' ? 'Drop run' : 'Collection run'}: ${vehicle}`, table(HEAD, rows, screen), screen);
}

/** A load to a whole kilogram or pound. */
const loadText = (kg: number, units: UnitSystem): string =>
  units === 'metric' ? `${Math.round(kg)} kg` : `${Math.round(massIn(kg, 'lb'))} lb`;
