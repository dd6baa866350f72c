/** The captain's numbers: clock, pre-pour, supplies, crew, whom to call. What the plan does not hold is a line to write on. */
import type { Analysis } from '../../analyse.ts';
import type { StationLayout } from '../../layout/layout.ts';
import { suppliesOf } from '../../plan/practice.ts';
import type { Supplies } from '../../plan/plan.ts';
import type { DayCrew, Pack, PrePour, StationDay } from '../../raceday/day.ts';
import { formatDuration, formatMinute } from '../../units.ts';
import type { PackWord, SheetText } from '../text/text.ts';
import { saidOrBlank, toFill } from './frame.ts';
import { type Html, NONE, html, said } from './html.ts';

/** One station's day; `null` where the plan has no race day or nobody arrives. */
export function dayOf({ day }: Pick<Analysis, 'day'>, { id }: Pick<StationLayout, 'id'>): StationDay | null {
  const found = day?.stations.find((station) => station.id === id);
  return found === undefined || found.quantiles === null ? null : found;
}

const row = (label: string, value: Html | string): Html => html`<tr><th scope="row">${label}</th><td>${value}</td></tr>\n`;

/** When wheels first come, of the races in that division; `undefined` where none of those that are served is. */
function firstWheels({ plan }: Pick<Analysis, 'plan'>, station: StationLayout, day: StationDay | null): number | null | undefined {
  const wheels = plan.races.filter(({ id, division }) => division === 'wheels' && station.passes.some((pass) => pass.race === id && pass.served));
  if (wheels.length === 0) return undefined;
  const times = (day?.races ?? []).filter(({ race }) => wheels.some(({ id }) => id === race)).map(({ first }) => first);
  return times.length === 0 ? null : Math.min(...times);
}

function firstOnFoot({ plan }: Pick<Analysis, 'plan'>, { races, quantiles }: StationDay): number {
  const onFoot = races.filter(({ race }) => plan.races.find(({ id }) => id === race)!.division !== 'wheels');
  return onFoot.length === 0 ? quantiles!.first : Math.min(...onFoot.map(({ first }) => first));
}

/** The minute that has begun or begins next: nobody leaves early for a rounding. */
const upToMinute = (seconds: number | null | undefined): number | null => (seconds === null || seconds === undefined ? null : Math.ceil(seconds / 60) * 60);

/** Clock minutes, rounded down for what must be ready, up for who comes last. */
export function clockBlock(analysis: Analysis, station: StationLayout, text: SheetText): Html {
  const { clock } = text.captain;
  const day = dayOf(analysis, station);
  const at = (seconds: number | null | undefined): Html | string => (seconds === null || seconds === undefined ? toFill(text) : formatMinute(seconds));
  const wheels = firstWheels(analysis, station, day);
  // Race day keeps the later of last arrival and sweep: where that is past the last arrival, it is the sweep.
  const sweep = day !== null && day.openUntil! > day.quantiles!.last ? day.openUntil : null;
  return html`<h2>${clock.title}</h2><table class="clock"><tbody>${[
    row(clock.beHere, at(day?.crewAt)),
    row(clock.ready, at(day?.openFrom)),
    wheels === undefined ? NONE : row(clock.firstWheels, at(wheels)),
    row(clock.firstRunner, at(day === null ? null : firstOnFoot(analysis, day))),
    row(day === null || day.peak === null ? clock.busiest : `${clock.busiest} (${clock.busiestCount(text.frame.count(day.peak.count))})`, at(day?.peak?.at)),
    row(clock.last, at(upToMinute(day?.quantiles?.last))),
    row(clock.sweep, at(upToMinute(sweep))),
  ]}</tbody></table><p><b>${clock.stayOpen}</b></p>`;
}

/** How much stands poured, as tables × layers = cups. */
export function prePourBlock(analysis: Analysis, station: StationLayout, text: SheetText): Html {
  const { prePour: words } = text.captain;
  const { cupsPerLayer } = suppliesOf(analysis.plan, station.station);
  const day = dayOf(analysis, station);
  const { count, items } = text.frame;
  const one = (drink: 'sportsDrink' | 'water', stock: PrePour): Html => html`<p>${items[drink]}: <span class="told" data-pour="${drink}">${words.told(stock.tables, stock.layers, count(stock.tables * stock.layers * cupsPerLayer))}</span><br><span class="small">${words.perLayer(count(cupsPerLayer), count(stock.cups))}</span></p>`;
  const drinks = (['sportsDrink', 'water'] as const).filter((drink) => station.station.serves.includes(drink));
  const told = drinks.map((drink) => {
    const stock = day?.prePour[drink];
    return stock === undefined ? html`<p>${items[drink]}: ${toFill(text)}</p>` : one(drink, stock);
  });
  return drinks.length === 0 ? NONE : html`<h2>${words.title}</h2>${told}`;
}

const SIGN = 'sign: ';

function packWord({ item }: Pack, { captain: { supplies } }: SheetText): string {
  if (item.startsWith(SIGN)) return `${supplies.packs.sign} “${item.slice(SIGN.length)}”`;
  return supplies.packs[item as PackWord] ?? item;
}

/** What was sent, and at how many jugs to call for more. */
export function suppliesBlock(analysis: Analysis, station: StationLayout, text: SheetText): Html {
  const { supplies: words } = text.captain;
  const day = dayOf(analysis, station);
  if (day === null) return html`<h2>${words.title}</h2><p>${toFill(text)}</p>`;
  const supplies = suppliesOf(analysis.plan, station.station);
  const rows = day.packs.map((pack) => html`<li><span>${packWord(pack, text)}</span><b>${text.frame.count(pack.count)}</b></li>\n`);
  return html`<h2>${words.title}</h2><ul class="packs">${rows}</ul>${callMore(supplies, day, text)}`;
}

/** The least jugs of each drink at which to call: the plan's share of what was sent, rounded up. */
function callMore({ resupply }: Supplies, { packs }: StationDay, text: SheetText): Html {
  const { supplies: words } = text.captain;
  if (resupply === undefined) return html`<p>${words.more} ${toFill(text)}</p>`;
  return html`<div class="more">${(['water', 'sportsDrink'] as const).map((drink) => {
    const jugs = packs.find(({ item }) => item === `${drink}Jug`);
    if (jugs === undefined) return NONE;
    const at = Math.ceil(jugs.count * resupply.at - 1e-9);
    return html`<p data-more="${drink}" data-jugs="${at}"><b>${words.callMore(text.frame.items[drink], text.frame.count(at), formatDuration(resupply.takes))}</b></p>`;
  })}</div>`;
}

const ROLES = ['handOut', 'pour', 'gel', 'clean', 'captain'] as const satisfies readonly (keyof DayCrew)[];

/** Heads by task. */
export function crewBlock(analysis: Analysis, station: StationLayout, text: SheetText): Html {
  const { crew: words } = text.captain;
  const day = dayOf(analysis, station);
  if (day === null) return html`<p class="run-in"><b>${words.title}:</b> ${toFill(text)}</p>`;
  const { crew } = day;
  const parts = ROLES.filter((role) => crew[role] > 0).map((role, k) => html`${k === 0 ? '' : ' · '}<b>${crew[role]}</b> ${words.roles[role]}`);
  return html`<p class="run-in"><b>${words.title}:</b> ${parts} · <b>${crew.total}</b> ${words.total}${crew.shifts > 1 ? `, ${words.shifts(crew.shifts)}` : ''}</p>`;
}

/** Whom to call, and by what name. */
export function talkBlock({ plan }: Pick<Analysis, 'plan'>, { station }: StationLayout, text: SheetText): Html {
  const { talk: words } = text.captain;
  const { people } = station;
  const { radioChannel, raceControl } = plan.contacts;
  const line = (label: string, value: string | undefined): Html => html`<tr><th scope="row">${label}</th><td>${saidOrBlank(value, text)}</td></tr>\n`;
  return html`<h2>${words.title}</h2><table><tbody>${[line(words.channel, radioChannel), line(words.callSign, people.radio), line(words.control, raceControl), line(words.captain, people.captain), line(words.phone, people.phone)]}</tbody></table>`;
}

/** A note of the plan, as it stands. */
export const noteOf = (note: string | undefined): Html => (note === undefined || note === '' ? NONE : html`<p class="note">${said(note)}</p>`);
