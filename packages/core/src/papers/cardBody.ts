/** One role card: head, where and when, the job in pictures, the job in words, and what to do if something happens. */
import type { Analysis } from '../analyse.ts';
import { gridReference } from '../export/gridReference.ts';
import { formatLength, formatMinute } from '../format.ts';
import type { Served } from '../kinds.ts';
import { type StationLayout, numberOf } from '../layout/layout.ts';
import { servedOn } from '../layout/stretches.ts';
import { leadOf } from '../plan/lookups.ts';
import { crewOf, suppliesOf } from '../plan/practice.ts';
import type { PictureWords } from '../text/cardText.ts';
import type { SheetText } from '../text/sheetText.ts';
import { dayOf, pouredLines, upToMinute } from './captainFacts.ts';
import { pilesPicture } from './captainOrder.ts';
import { type CardPicture, cardPicture, percentOf, standPicture } from './cardPictures.ts';
import { type CardRole, rolesOf } from './cardRoles.ts';
import { callsOf } from './flavours.ts';
import {
  type SheetOptions,
  dateText,
  planName,
  printLine,
  numberOrBlank,
  saidOrBlank,
  shortened,
  sizeOf,
  toFill,
  versionText,
} from './frame.ts';
import { type Html, NONE, html, said } from './html.ts';
import { placeCode } from './qr.ts';

export interface Card {
  readonly analysis: Analysis;
  readonly station: StationLayout;
  readonly role: CardRole;
  readonly options: SheetOptions;
  readonly text: SheetText;
}

/** Millimetres. */
const QR = 15;
const PILES = 52;

const list = (lines: readonly (Html | string)[]): Html => html`<ul>${lines.map((line) => html`<li>${line}</li>`)}</ul>`;

export const cardBody = (card: Card): Html => {
  const { station, role, options, text } = card;
  return html`<article class="card" data-paper="${options.paper}" data-station="${station.id}" data-role="${role}">
${head(card)}
${facts(card)}
<div class="pictures">${pictures(card)}</div>
<div class="two"><div>${job(card)}</div>
<div class="happens">${happens(card)}</div></div>
<p class="caution">${text.card.before} ${text.frame.caution}</p>
</article>
`;
};

const head = ({ analysis, station, role, options, text }: Card): Html => {
  const { card } = text;
  const { plan } = analysis;
  return html`<header class="top"><div class="number">${numberOf(station)}</div><div class="who"><h1>${card.roles[role].title} · <span${sizeOf(station.name)}>${said(station.name)}</span></h1>
<p>${card.title} · ${said(planName(plan, text))} · ${said(versionText(plan, text))} · ${printLine(options.printedAt, text)}</p></div>
${placeCode(station.at, QR, card.code)}</header>`;
};

/** By which street one comes. */
function streetOf({ station: { points } }: StationLayout): string | undefined {
  const access = points.find(({ kind, street }) => kind === 'access' && street !== undefined);
  return (access ?? points.find(({ street }) => street !== undefined))?.street;
}

function facts({ analysis, station, text }: Card): Html {
  const { card } = text;
  const { people } = station.station;
  const { date } = analysis.plan;
  const day = dayOf(analysis, station);
  const at = day?.crewAt ?? null;
  const packed = upToMinute(day?.packedAt);
  return html`<div class="facts"><p>${card.where}: <b>${saidOrBlank(streetOf(station), text)}</b> (${card.code}) · ${card.captain}: <b>${saidOrBlank(people.captain, text)}</b>, <b>${saidOrBlank(people.phone, text)}</b></p>
<p>${card.when}: <b>${date === undefined ? toFill(text) : dateText(date, text)}, ${at === null ? toFill(text) : formatMinute(at)}</b>; ${card.until(packed === null ? null : formatMinute(packed))}</p></div>`;
}

/** The pictures of each role after the one of where it stands. */
const SHOWN: Readonly<Record<CardRole, readonly CardPicture[]>> = {
  setUp: ['carry', 'gloves', 'half', 'stack'],
  cups: ['rim', 'palm', 'reachCup', 'call'],
  gel: ['packet', 'reachGel', 'call'],
  refill: ['gloves', 'jugs', 'half', 'stack'],
  taps: ['gloves', 'jugs', 'taps', 'bag'],
  clean: ['rake', 'bag'],
};

const WORDS: Readonly<Record<Exclude<CardPicture, 'half'>, keyof PictureWords>> = {
  carry: 'carry',
  gloves: 'gloves',
  stack: 'stack',
  jugs: 'jugs',
  taps: 'taps',
  rim: 'rim',
  palm: 'palm',
  reachCup: 'reach',
  reachGel: 'reach',
  packet: 'packet',
  call: 'call',
  rake: 'rake',
  bag: 'bag',
};

function pictures({ analysis: { plan }, station, role, text }: Card): Html[] {
  const { card } = text;
  const { stand } = card.roles[role];
  const { fill } = suppliesOf(plan, station.station);
  const cups = rolesOf(plan, station).includes('cups');
  const shown = SHOWN[role].filter((kind) => cups || role !== 'setUp' || (kind !== 'half' && kind !== 'stack'));
  const figure = (picture: Html, words: Html | string, kind: string = 'plain'): Html =>
    html`<figure class="${kind}">${picture}<figcaption>${words}</figcaption></figure>`;
  const side = leadOf(station)?.side ?? 'unclear';
  return [
    figure(standPicture({ role, side, roles: rolesOf(plan, station), text }), stand),
    ...shown.map((kind) => {
      const words = kind === 'half' ? card.half(percentOf(fill)) : card.pictures[WORDS[kind]];
      const calls = kind === 'call' ? html`${words} ${callsOf(plan, station, ownKinds(role), text)}` : words;
      return figure(cardPicture(kind, words, fill), calls, kind === 'call' ? 'calling' : 'plain');
    }),
    ...(role === 'clean' ? [figure(pilesPicture(text, PILES), card.pictures.piles, 'wide')] : []),
  ];
}

/** What a role holds in its hands; those who hand nothing out may be asked to. */
const ownKinds = (role: CardRole): readonly Served[] =>
  role === 'gel' ? ['gel'] : role === 'cups' ? ['sportsDrink', 'water'] : ['gel', 'sportsDrink', 'water'];

function job(sheet: Card): Html {
  const { analysis, station, role, text } = sheet;
  const { card } = text;
  const { plan } = analysis;
  const pours = role === 'setUp' && rolesOf(plan, station).includes('cups');
  const { handSpacing } = crewOf(plan, station.station);
  const apart = role === 'cups' ? [card.apart(formatLength(handSpacing, plan.units, 'table', 1))] : [];
  return html`<h2>${card.jobTitle}</h2>${pours ? html`<div class="pour"><b>${card.pour}</b>${pouredLines(analysis, station, text)}</div>` : NONE}${list([...apart, ...card.roles[role].job, ...everyone(sheet)])}`;
}

/** What everybody must know, whatever their job: how things are handed out, where trash goes, when one may go. */
function everyone({ analysis: { plan }, station, role, text }: Card): readonly (Html | string)[] {
  const { card } = text;
  const roles = rolesOf(plan, station);
  const hands = roles.includes('cups') && role !== 'cups' ? [card.handing] : [];
  const gels = roles.includes('gel') && !roles.includes('cups') && role !== 'gel' ? [card.handingGel] : [];
  const { handOut, fill } = suppliesOf(plan, station.station);
  const bottles = handOut === 'bottles';
  const full = roles.includes('cups') && !SHOWN[role].includes('half') ? [card.half(percentOf(fill))] : [];
  const called = role === 'cups' ? [] : bottles ? (['gel'] as const) : ownKinds(role === 'gel' ? 'cups' : role);
  const some = servedOn(station.station).some((kind) => called.includes(kind));
  const calls = some ? [html`${card.callOut} ${callsOf(plan, station, called, text)}`] : [];
  return [...full, ...hands, ...gels, ...calls, card.trash];
}

/** Signs of a name that are spoken; the whole name stands in the head. */
const SPOKEN = 40;

function happens({ analysis: { plan }, station, text }: Card): Html {
  const { card, frame } = text;
  const { life } = card;
  const { emergency: words } = text.captain;
  const grid = gridReference(station.at).text;
  return html`<h2>${card.happensTitle}</h2><div class="life"><p><b>${life.what} ${life.call} ${numberOrBlank(plan.contacts.emergency, text)}.</b></p>
<p>${life.say} “${words.words} ${words.comeInBy} ${saidOrBlank(streetOf(station), text)}. ${grid === null ? '' : html`${words.grid} ${grid}. `}${frame.station} ${numberOf(station)}, ${said(shortened(station.name, SPOKEN))}.”</p>
<p>${life.next} <b>${life.radio}</b></p></div>
${list(card.happens.map(([what, todo]) => html`<b>${what}</b> ${todo}`))}`;
}
