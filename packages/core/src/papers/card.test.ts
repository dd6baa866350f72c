/** Each role card by itself answers what somebody asks who has never done the job. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Analysis, analyse } from '../analyse.ts';
import { formatMinute } from '../format.ts';
import { readGpx } from '../gpx/read.ts';
import { readPlan } from '../plan/read.ts';
import { valueOf } from '../testing/courses.ts';
import { LANGUAGES } from '../text/languages.ts';
import { cardSheet } from './card.ts';
import { cardsOf, rolesOf } from './cardRoles.ts';

const demoFile = (name: string): string =>
  readFileSync(new URL(`../../../../fixtures/demo/${name}`, import.meta.url), 'utf8');

interface Keys {
  readonly stations: readonly { readonly id: string; readonly [key: string]: unknown }[];
}

/** The demo, with keys of its third station, where gel is served, and of the plan. */
function demoWith(station: object = {}, keys: object = {}): Analysis {
  const plan = JSON.parse(demoFile('plan.json')) as Keys;
  const stations = plan.stations.map((one) => (one.id === 's3' ? { ...one, ...station } : one));
  const text = JSON.stringify({ ...plan, ...keys, stations });
  const gpx = new Map(['full.gpx', 'half.gpx'].map((name) => [name, valueOf(readGpx(demoFile(name), name))]));
  return valueOf(analyse(valueOf(readPlan(text, 'plan.json')).plan, { gpx }));
}

/** What each card says, by role: words and what the pictures show. */
function cardsIn(analysis: Analysis, id: string, language: string): readonly (readonly [string, string])[] {
  const station = analysis.stations.find((one) => one.id === id)!;
  const page = cardSheet(analysis, station, { paper: 'a4', printedAt: '2027-09-01 18:30', language });
  return page
    .split('<article class="card"')
    .slice(1)
    .map((card) => [
      /data-role="(\w+)"/u.exec(card)![1]!,
      card
        .replaceAll(/<\/?(?:b|bdi|span)\b[^>]*>/gu, '')
        .replaceAll(/<[^>]*>/gu, ' ')
        .replaceAll('&quot;', '"')
        .replaceAll(/\s+/gu, ' '),
    ]);
}

/** Where do I stand, what do I call, how do I hold the cup, how full is it; who falls, chest pain, a ride, thunder; trash; when may I go. */
const ANSWERS: Readonly<Record<string, readonly RegExp[]>> = {
  en: [
    /off the road/u,
    /“Gel/u,
    /“Water!”/u,
    /by the rim/u,
    /open palm|on the palm/u,
    /half full, no more/u,
    /chest pain.*life in danger\. Call first: the local emergency number/u,
    /Access by Drover’s Road\. Grid reference 28H BJ 7649 2450\. Station 3, Wrack Fork/u,
    /Then tell your captain/u,
    /never a name or condition/u,
    /Small fall/u,
    /Wants a ride: waits here for the sweep \(the last vehicle\)\. Tell your captain the bib/u,
    /Thunder: all into a building or a closed car at once/u,
    /Full bags: tied, on the pile of bags|two piles where the supplies were/u,
    /stay until your captain lets you go \(about \d\d:\d\d\)/u,
    /hands-only CPR/u,
  ],
  es: [
    /no en la calle/u,
    /«¡Gel/u,
    /«¡Agua!»/u,
    /por el borde/u,
    /palma/u,
    /a medias, no más/u,
    /dolor de pecho.*vida en peligro\. Llame primero: the local emergency number/u,
    /Acceso por Drover’s Road\. Cuadrícula 28H BJ 7649 2450\. Puesto 3, Wrack Fork/u,
    /Después avise a su responsable/u,
    /nunca nombre ni estado/u,
    /Golpe, corte/u,
    /Quiere que lo lleven: espera aquí al coche escoba/u,
    /Truenos: todos ya a un edificio o coche cerrado/u,
    /Bolsas llenas: atadas, en el montón de bolsas/u,
    /no se vaya hasta que le libere su responsable \(hacia las \d\d:\d\d\)/u,
    /reanimación/u,
  ],
};

describe('role cards', () => {
  const demo = demoWith();

  it.each(LANGUAGES.map(({ language }) => language))(
    'answer all that may be asked, each by itself, in %s',
    (language) => {
      const at = formatMinute(demo.day!.stations.find(({ id }) => id === 's3')!.crewAt!);
      const cards = cardsIn(demo, 's3', language);
      expect(cards.map(([role]) => role)).toEqual(['setUp', 'cups', 'cups', 'gel', 'refill', 'clean']);
      for (const [role, says] of cards) {
        // Whoever hands out one thing calls that one.
        const asked = ANSWERS[language]!.filter((_, k) => !(role === 'cups' && k === 1));
        for (const answer of asked) expect(says, role).toMatch(answer);
        expect(says, role).toContain(at);
      }
    },
  );

  it('are one a role and fill whole pages', () => {
    const station = (keys: object) => demoWith(keys).stations[2]!;
    const { plan } = demo;
    expect(rolesOf(plan, demo.stations[0]!)).toEqual(['setUp', 'cups', 'refill', 'clean']);
    expect(rolesOf(plan, station({ serves: ['gel'], tables: {} }))).toEqual(['setUp', 'gel', 'clean']);
    const bottles = station({ serves: ['water'], tables: {}, supplies: { handOut: 'bottles' } });
    expect(rolesOf(plan, bottles)).toEqual(['setUp', 'taps', 'clean']);
    expect(cardsOf(plan, bottles)).toEqual(['setUp', 'taps', 'taps', 'clean']);
    expect(cardsOf(plan, station({ serves: ['gel'], tables: {} }))).toEqual(['setUp', 'gel', 'gel', 'clean']);
    for (const one of demo.stations) expect(cardsOf(plan, one).length % 2).toBe(0);
  });

  it('say nothing of cups where runners bring bottles', () => {
    const bottles = demoWith({ supplies: { handOut: 'bottles' } });
    for (const [role, says] of cardsIn(bottles, 's3', 'en')) {
      expect(says, role).not.toMatch(/half full|“Water!”|Who hands out cups/u);
      expect(says, role).toContain('Thunder');
    }
  });

  it('tell another filling in percent', () => {
    const full = demoWith({ supplies: { fill: 0.7 } });
    for (const [role, says] of cardsIn(full, 's3', 'en')) expect(says, role).toContain('Cups 70 % full, no more.');
  });

  it('tell the same cups to pour as the captain’s sheet', () => {
    const [, says] = cardsIn(demo, 's3', 'en')[0]!;
    const water = demo.day!.stations[2]!.prePour.water!.cups;
    expect(says).toContain(`Water: Pour ${water.toLocaleString('en')}`);
  });

  it('draw where one stands with an arrow only where the side is clear', () => {
    const station = demo.stations[2]!;
    const page = (side: 'left' | 'unclear') =>
      cardSheet(
        demo,
        { ...station, directions: station.directions.map((one) => ({ ...one, side })) },
        { paper: 'a4', printedAt: '' },
      );
    expect(page('left')).toContain('h7m-2 -1.6');
    expect(page('unclear')).not.toContain('h7m-2 -1.6');
  });
});
