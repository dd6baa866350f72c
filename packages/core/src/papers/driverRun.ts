/** The driver's run: every load that one vehicle takes out, stop by stop. */
import type { Analysis } from '../analyse.ts';
import type { PlanVehicle } from '../plan/plan.ts';
import type { Run } from '../raceday/day.ts';
import { formatMinute } from '../format.ts';
import { type Html, html, said } from './html.ts';
import { type Sheet, listHead, massText } from './sheet.ts';
import { loadingOrder, stopBlock } from './stops.ts';

/** Vehicles that drive out in this plan, in its order. */
export const driving = ({ plan, day }: Analysis): PlanVehicle[] =>
  plan.vehicles.filter(({ id }) => (day?.runs ?? []).some(({ vehicle, kind }) => kind === 'drop' && vehicle === id));

/** The body of one vehicle's paper. */
export function driverRunBody(analysis: Analysis, vehicle: PlanVehicle, sheet: Sheet): Html {
  const { plan, day } = analysis;
  const words = sheet.text.lists.runs;
  const runs = (day?.runs ?? []).filter((run) => run.kind === 'drop' && run.vehicle === vehicle.id);
  return html`${listHead(`${words.dropTitle}: ${vehicle.name}`, plan, sheet)}
<p>${words.vehicle(massText(vehicle.kg, plan.units, sheet.text), String(vehicle.places))} ${words.loadedFrom(formatMinute(vehicle.from))}</p>
<p><b>${words.way}</b></p>
${runs.length === 0 ? html`<p>${words.none}</p>` : runSections(analysis, runs, sheet)}`;
}

/** So many runs of a vehicle are printed; nobody drives more of them in a day. */
const MOST_PRINTED = 50;

/** The runs of one vehicle, and how many more there would be. */
export function runSections(analysis: Analysis, runs: readonly Run[], sheet: Sheet, name: string = ''): Html[] {
  const more = runs.slice(MOST_PRINTED);
  const kg = massText(
    more.reduce((sum, run) => sum + run.kg, 0),
    analysis.plan.units,
    sheet.text,
  );
  return [
    ...runs.slice(0, MOST_PRINTED).map((run, k) => runSection(analysis, run, k + 1, sheet, name)),
    ...(more.length === 0 ? [] : [html`<p><b>${sheet.text.lists.runs.more(more.length, kg)}</b></p>\n`]),
  ];
}

/** The stops of one run; its heading stays with the first. */
function runSection(analysis: Analysis, run: Run, number: number, { text }: Sheet, name: string): Html {
  const { stops, kind, kg } = run;
  const [first, ...rest] = stops.map((stop, k) => stopBlock(analysis, stop, kind, k + 1, text));
  const title = text.lists.runs.run(number, massText(kg, analysis.plan.units, text));
  return html`<div class="block"><h2>${name === '' ? '' : html`${said(name)} · `}${title}</h2>\n${kind === 'drop' ? loadingOrder(analysis, run, text) : ''}${first!}</div>\n${rest}`;
}
