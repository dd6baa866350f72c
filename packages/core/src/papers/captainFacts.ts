/** The captain's numbers: clock, pre-pour, supplies, crew, whom to call. What the plan does not hold is a line to write on. */
import type { Analysis } from '../analyse.ts';
import type { StationLayout } from '../layout/layout.ts';
import { byId, findById } from '../plan/lookups.ts';
import { suppliesOf } from '../plan/practice.ts';
import type { Supplies } from '../plan/plan.ts';
import type { DayCrew, Pack, PrePour, StationDay } from '../raceday/day.ts';
import { formatDuration, formatMinute } from '../format.ts';
import { thingLabel } from '../text/planThing.ts';
import { pourWordsOf } from '../text/pourWords.ts';
import type { SheetText } from '../text/sheetText.ts';
import { flavoursNote } from './flavours.ts';
import { saidOrBlank, toFill } from './frame.ts';
import { type Html, NONE, html } from './html.ts';

/** One station's day; `null` where the plan has no race day or nobody arrives. */
export function dayOf({ day }: Pick<Analysis, 'day'>, { id }: Pick<StationLayout, 'id'>): StationDay | null {
  const found = findById(day?.stations ?? [], id);
  return found === undefined || found.quantiles === null ? null : found;
}

const row = (label: string, value: Html | string): Html =>
  html`<tr><th scope="row">${label}</th><td>${value}</td></tr>\n`;

/** When wheels first come, of the races in that division; `undefined` where none of those that are served is. */
function firstWheels(
  { plan }: Pick<Analysis, 'plan'>,
  station: StationLayout,
  day: StationDay | null,
): number | null | undefined {
  const wheels = plan.races.filter(
    ({ id, division }) => division === 'wheels' && station.passes.some((pass) => pass.race === id && pass.served),
  );
  if (wheels.length === 0) return undefined;
  const times = (day?.races ?? []).filter(({ race }) => wheels.some(({ id }) => id === race)).map(({ first }) => first);
  return times.length === 0 ? null : Math.min(...times);
}

function firstOnFoot({ plan }: Pick<Analysis, 'plan'>, { races, quantiles }: StationDay): number {
  const onFoot = races.filter(({ race }) => byId(plan.races, race).division !== 'wheels');
  return onFoot.length === 0 ? quantiles!.first : Math.min(...onFoot.map(({ first }) => first));
}

/** The minute that has begun or begins next: nobody leaves early for a rounding. */
export const upToMinute = (seconds: number | null | undefined): number | null =>
  seconds === null || seconds === undefined ? null : Math.ceil(seconds / 60) * 60;

/** Clock minutes, rounded down for what must be ready, up for who comes last. */
export function clockBlock(analysis: Analysis, station: StationLayout, text: SheetText): Html {
  const { clock } = text.captain;
  const day = dayOf(analysis, station);
  const at = (seconds: number | null | undefined): Html | string =>
    seconds === null || seconds === undefined ? toFill(text) : formatMinute(seconds);
  const wheels = firstWheels(analysis, station, day);
  // Race day keeps the later of last arrival and sweep: where that is past the last arrival, it is the sweep.
  const sweep = day !== null && day.openUntil! > day.quantiles!.last ? day.openUntil : null;
  return html`<h2>${clock.title}</h2><table class="clock"><tbody>${[
    row(clock.beHere, at(day?.crewAt)),
    row(clock.ready, at(day?.openFrom)),
    wheels === undefined ? NONE : row(clock.firstWheels, at(wheels)),
    row(clock.firstRunner, at(day === null ? null : firstOnFoot(analysis, day))),
    row(
      day === null || day.peak === null ? clock.busiest : clock.busiestCount(text.frame.count(day.peak.count)),
      at(day?.peak?.at),
    ),
    row(clock.last, at(upToMinute(day?.quantiles?.last))),
    row(clock.sweep, at(upToMinute(sweep))),
    row(clock.packed, at(upToMinute(day?.packedAt))),
  ]}</tbody></table>`;
}

/** How much stands poured of each drink: cups in all, on each table, in layers. */
export function pouredLines({ plan, day }: Analysis, station: StationLayout, text: SheetText): readonly Html[] {
  const { cupsPerLayer } = suppliesOf(plan, station.station);
  const { count, items } = text.frame;
  const pour = dayOf({ day }, station)?.prePour;
  const one = (drink: 'sportsDrink' | 'water', stock: PrePour): Html =>
    html`<p>${items[drink]}${drink === 'water' ? NONE : flavoursNote(plan, [station.station], 'sportsDrinkJug')}: <span class="told" data-pour="${drink}">${text.captain.prePour.told(pourWordsOf({ ...stock, cupsPerLayer }, count))}</span></p>`;
  const drinks = (['sportsDrink', 'water'] as const).filter((drink) => station.station.serves.includes(drink));
  return drinks.map((drink) => {
    const stock = pour?.[drink];
    return stock === undefined ? html`<p>${items[drink]}: ${toFill(text)}</p>` : one(drink, stock);
  });
}

/** " · Gel (Kelp Berry, Dune Honey)", where gel has names. */
function gelNames({ plan }: Analysis, { station }: StationLayout, { frame }: SheetText): Html {
  const note = flavoursNote(plan, [station], 'gels');
  return note.html === '' ? NONE : html` · ${frame.items.gel}${note}`;
}

/** The same with what a full layer is; nothing where no drink is served. */
export function prePourBlock(analysis: Analysis, station: StationLayout, text: SheetText): Html {
  const { prePour: words } = text.captain;
  const { cupsPerLayer, handOut } = suppliesOf(analysis.plan, station.station);
  const told = pouredLines(analysis, station, text);
  if (told.length === 0) return NONE;
  if (handOut === 'bottles') return html`<h2>${words.title}</h2><p>${words.bottles}</p>`;
  return html`<h2>${words.title} <span class="small">(${words.perLayer(text.frame.count(cupsPerLayer))})${gelNames(analysis, station, text)}</span></h2><div class="pour">${told}</div>`;
}

/** A sign is called a sign: its wording stands in the drawing. */
const packWord = ({ kind, count }: Pack, { frame }: SheetText): string => {
  const [one, more] = frame.supplies.kinds[kind];
  return kind === 'sign' && count === 1 ? one : more;
};

/** What was sent, and at how many jugs to call for more. */
export function suppliesBlock(analysis: Analysis, station: StationLayout, text: SheetText): Html {
  const { supplies: words } = text.captain;
  const day = dayOf(analysis, station);
  if (day === null) return html`<h2>${words.title}</h2><p>${toFill(text)}</p>`;
  const supplies = suppliesOf(analysis.plan, station.station);
  const rows = day.packs.map(
    (pack) => html`<li><span>${packWord(pack, text)}</span><b>${text.frame.count(pack.count)}</b></li>\n`,
  );
  return html`<h2>${words.title} ${callMore(supplies, day, text)}</h2><ul class="packs">${rows}</ul>${jugsTable(supplies, day, text)}`;
}

/** Columns of the table of jugs at most; of a longer day every second half hour. */
const MOST_TIMES = 10;

/** Full jugs that should be left, by the half hour; nothing where no jug is sent or the day is over before. */
function jugsTable({ resupply }: Supplies, { jugsLeft = [] }: StationDay, text: SheetText): Html {
  const step = Math.ceil(jugsLeft.length / MOST_TIMES);
  const shown = jugsLeft.filter((_, k) => k % step === 0);
  const drinks = (['sportsDrink', 'water'] as const).filter((drink) => shown.some((at) => at[drink] !== undefined));
  if (drinks.length === 0) return NONE;
  const jug = { water: 'waterJug', sportsDrink: 'sportsDrinkJug' } as const;
  return html`<table class="jugs"><thead><tr><th scope="col">${text.captain.supplies.left(resupply === undefined ? null : formatDuration(resupply.takes))}</th>${shown.map(({ at }) => html`<th scope="col">${formatMinute(at)}</th>`)}</tr></thead><tbody>${drinks.map(
    (drink) =>
      html`<tr data-jugs="${drink}"><th scope="row">${text.frame.supplies.kinds[jug[drink]][1]}</th>${shown.map((at) => html`<td>${text.frame.count(at[drink]!)}</td>`)}</tr>`,
  )}</tbody></table>`;
}

/** How long more takes; where no jugs are counted down by the half hour, the least at which to call. */
function callMore({ resupply }: Supplies, { packs, jugsLeft = [] }: StationDay, text: SheetText): Html {
  const { supplies: words } = text.captain;
  if (jugsLeft.length > 0) return NONE;
  if (resupply === undefined) return html`<span class="more">${words.more} ${toFill(text)}</span>`;
  const jugs = packs.filter(({ kind }) => kind === 'waterJug' || kind === 'sportsDrinkJug');
  const left = jugs.map(({ kind, count }) => ({ kind, at: Math.ceil(count * resupply.at - 1e-9) }));
  const told = left.map(({ kind, at }) => `${text.frame.count(at)} ${text.frame.supplies.kinds[kind][1]}`).join(', ');
  return jugs.length === 0
    ? NONE
    : html`<span class="more" data-more="${left.map(({ kind, at }) => `${kind} ${at}`).join(' ')}">${words.callMore(told, formatDuration(resupply.takes))}</span>`;
}

/** What a captain counts when it is over: packs of what was sent, with lines to write on. */
export function countsBlock(analysis: Analysis, station: StationLayout, text: SheetText): Html {
  const { counts } = text.captain;
  const day = dayOf(analysis, station);
  const kinds = (['waterJug', 'sportsDrinkJug', 'cups', 'gels'] as const).filter((kind) =>
    day === null ? kind !== 'gels' : day.packs.some((pack) => pack.kind === kind),
  );
  return html`<p class="counts"><b>${counts}</b> ${kinds.map((kind, k) => html`${k === 0 ? '' : ' · '}${text.captain.counted[kind]} <span class="blank"></span>`)}</p>`;
}

const ROLES = ['handOut', 'pour', 'gel', 'clean', 'captain'] as const satisfies readonly (keyof DayCrew)[];

/** Heads by task. */
export function crewBlock(analysis: Analysis, station: StationLayout, text: SheetText): Html {
  const { crew: words } = text.captain;
  const day = dayOf(analysis, station);
  if (day === null) return html`<p class="run-in"><b>${words.title}:</b> ${toFill(text)}</p>`;
  const { crew } = day;
  const parts = ROLES.filter((role) => crew[role] > 0).map(
    (role, k) => html`${k === 0 ? '' : ' · '}<b>${crew[role]}</b> ${words.roles[role]}`,
  );
  return html`<p class="run-in"><b>${words.title}:</b> ${parts} · <b>${crew.total}</b> ${words.total}${crew.shifts > 1 ? `, ${words.shifts(crew.shifts)}` : ''}</p>`;
}

/** Of a station's people, in the order in which a sheet lists them. */
const PEOPLE = ['radio', 'captain', 'phone'] as const;

/** Channel, call sign, captain; race control stands in the emergency box. */
export function talkBlock({ plan }: Pick<Analysis, 'plan'>, { station }: StationLayout, text: SheetText): Html {
  const { talk: words } = text.captain;
  const channel = row(words.channel, saidOrBlank(plan.contacts.radioChannel, text));
  const people = PEOPLE.map((key) =>
    row(thingLabel(`stations[].people.${key}`, text.things), saidOrBlank(station.people[key], text)),
  );
  return html`<h2>${words.title}</h2><table class="talk"><tbody>${[channel, ...people]}</tbody></table>`;
}
