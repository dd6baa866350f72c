import { prePourText } from '../text/prePourText.ts';
import { NO_NAMES } from '../text/voice.ts';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Analysis, analyse } from '../analyse.ts';
import { formatMinute } from '../format.ts';
import { readGpx } from '../gpx/read.ts';
import type { Plan, PlanStation } from '../plan/plan.ts';
import { readPlan } from '../plan/read.ts';
import { reviewLayout } from '../review/review.ts';
import { ORIGIN, turtle, valueOf } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { MADE_BY } from '../version.ts';
import { layoutDocument } from '../export/documents.ts';
import { gridReference } from '../export/gridReference.ts';
import { reviewDocument } from '../export/reviewDocument.ts';
import { LANGUAGES } from '../text/languages.ts';
import { type CaptainOptions, captainSheet, captainSheets } from './captain.ts';
import { cardSheet, cardSheets } from './card.ts';
import { cssString } from './frameStyle.ts';
import { indexPaper, papersOf } from './papers.ts';

const demoFile = (name: string): string =>
  readFileSync(new URL(`../../../../fixtures/demo/${name}`, import.meta.url), 'utf8');

function demoAnalysis(change: (plan: Plan) => Plan = (plan) => plan): Analysis {
  const plan = change(valueOf(readPlan(demoFile('plan.json'), 'plan.json')).plan);
  const gpx = new Map(['full.gpx', 'half.gpx'].map((name) => [name, valueOf(readGpx(demoFile(name), name))]));
  return valueOf(analyse(plan, { gpx }));
}

const demo = demoAnalysis();
const options: CaptainOptions = { paper: 'a4', printedAt: '2027-09-01 18:30' };
const sheetOf = (id: string, analysis: Analysis = demo, more: Partial<CaptainOptions> = {}): string =>
  captainSheet(
    analysis,
    analysis.stations.find((station) => station.id === id)!,
    { ...options, ...more },
  );
const cardOf = (id: string, analysis: Analysis = demo): string =>
  cardSheet(
    analysis,
    analysis.stations.find((station) => station.id === id)!,
    options,
  );
/** What a reader sees, without marks. */
const plain = (page: string): string =>
  page
    .replace(/<style>.*?<\/style>/su, '')
    .replaceAll(/<\/?(?:b|bdi|span)\b[^>]*>/gu, '')
    .replaceAll(/<[^>]*>/gu, ' ')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&nbsp;', ' ')
    .replaceAll(/\s+/gu, ' ');

/** Every tag is closed in its order, save those that HTML closes itself. */
function expectWhole(page: string): void {
  const open: string[] = [];
  for (const [, closing, name, rest] of page
    .replace(/<style>.*?<\/style>/su, '')
    .matchAll(/<(\/?)([a-zA-Z][\w-]*)((?:[^>"]|"[^"]*")*)>/gu)) {
    if (['meta', 'br'].includes(name!) || rest!.endsWith('/')) continue;
    if (closing === '') open.push(name!);
    else expect(open.pop()).toBe(name);
  }
  expect(open).toEqual([]);
}

describe('the captain’s sheets of the demo', () => {
  it.each(
    LANGUAGES.flatMap(
      ({ language }) =>
        [
          [language, 'a4'],
          [language, 'letter'],
        ] as const,
    ),
  )('are whole documents without scripts or anything fetched, in %s on %s', (language, paper) => {
    for (const page of [
      captainSheets(demo, { ...options, paper, language }),
      cardSheets(demo, { ...options, paper, language }),
    ]) {
      expectWhole(page);
      expect(page).toContain(`<html lang="${language}"`);
      expect(page).toContain(`content="default-src 'none'; style-src 'unsafe-inline'; font-src data:"`);
      expect(page).not.toMatch(/<script|<link|<img|@import|url\(h|src=|href=/u);
      expect(page).not.toMatch(/NaN|undefined|null|Infinity/u);
      expect([...page.matchAll(/font-size: ([\d.]+)pt/gu)].filter(([, size]) => Number(size) < 9)).toEqual([]);
      expect(
        [...page.matchAll(/font-size="([\d.]+)"/gu)].filter(([, size]) => Number(size) < 9 * (25.4 / 72) - 0.001),
      ).toEqual([]);
    }
    expect(captainSheets(demo, { ...options, paper, language }).split('<article class="captain ').length - 1).toBe(
      demo.stations.length,
    );
    expect(cardSheets(demo, { ...options, paper, language }).split('<article class="card"').length - 1).toBe(
      // Two pages of two cards a station; where gel is served a third.
      demo.stations.reduce((sum, { station }) => sum + (station.serves.includes('gel') ? 6 : 4), 0),
    );
  });

  it('are the same for the same input: they know no clock', () => {
    expect(sheetOf('s3')).toBe(sheetOf('s3'));
    expect(sheetOf('s3')).not.toBe(sheetOf('s3', demo, { printedAt: '2027-09-02 07:00' }));
  });

  it('say whom to call first, where to come in, and that no name or condition goes over the radio', () => {
    const says = plain(sheetOf('s3'));
    const order = [
      'Life in danger',
      'Call first: the local emergency number',
      'Access by Drover’s Road',
      `Grid reference ${gridReference(demo.stations[2]!.at).text!}`,
      'Station 3, Wrack Fork',
      'Then race control: race control, harbour office',
      'bib number, place, a short description',
      'Stay with the person',
      'Never a name, never a condition',
    ];
    const places = order.map((part) => says.indexOf(part));
    expect(places).not.toContain(-1);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  it('put the emergency box in the same place on every sheet: straight after a head of the same parts', () => {
    for (const article of captainSheets(demo, options).split('<article').slice(1)) {
      expect(
        [...article.matchAll(/<(?:header|section)[^>]*class="([^"]+)"/gu)].slice(0, 2).map(([, kind]) => kind),
      ).toEqual(['top', 'emergency']);
    }
  });

  it('say the side as the runners see it, and where they come from', () => {
    expect(plain(sheetOf('s3'))).toContain(
      'Runners come from the west. Tables on the runners’ LEFT, where your supplies are.',
    );
    expect(plain(sheetOf('s4'))).toContain('Tables on the runners’ RIGHT, where your supplies are.');
  });

  it('print every wheel distance of the layout document', () => {
    const document = layoutDocument(demo, []);
    for (const { id, directions } of document.stations) {
      const printed = [...sheetOf(id).matchAll(/data-item="(\w+)" data-wheel="([^"]*)" data-margin="([^"]*)"/gu)].map(
        ([, kind, wheel, margin]) => [kind, wheel, margin].join(' / '),
      );
      // A legend is in the order of its numbers, in which the hand-out line may stand before a table.
      expect(printed.toSorted((a, b) => (a < b ? -1 : 1))).toEqual(
        directions[0]!.items
          .map(({ kind, wheel, wheelMargin }) => [kind, wheel!.join(' '), String(wheelMargin)].join(' / '))
          .toSorted((a, b) => (a < b ? -1 : 1)),
      );
    }
  });

  it('tell the pre-pour by tables and layers, the jugs that should be left, and when to call for more', () => {
    const says = plain(sheetOf('s3'));
    const water = demo.day!.stations[2]!.prePour.water!;
    expect(says).toContain(
      prePourText({ ...water, cupsPerLayer: 200 }, { language: 'en', units: 'metric', names: NO_NAMES }),
    );
    for (const row of demo.day!.stations[2]!.jugsLeft!) expect(says).toContain(formatMinute(row.at));
    expect(says).toContain('Fewer sealed jugs than this? Call race control for more (40 min)');
    expect(says).toContain(`${demo.day!.stations[2]!.crew.total} in all`);
    expect(says).toContain('Stay open until race control releases you, whatever the published cutoff.');
  });

  it('draw the plan’s own roads on the map where the caller gives them', () => {
    const context = JSON.parse(demoFile('context.geojson')) as NonNullable<CaptainOptions['context']>;
    expect(sheetOf('s4', demo, { context }).split('stroke="#888"').length).toBeGreaterThan(1);
    expect(sheetOf('s4')).not.toContain('stroke="#888"');
  });
});

describe('a plan that lacks facts', () => {
  const layout = layoutOf(
    [turtle(ORIGIN, [[90, 4000]], 100)],
    [{ on: { course: 'c', measure: 2000, side: 'right', offset: 5 } }],
  );
  const bare: Analysis = { ...layout, day: null, ...reviewLayout(layout) };

  it('gets lines to write on, never an invented value', () => {
    const page = sheetOf('s1', bare);
    expectWhole(page);
    expect(plain(page).replaceAll(options.printedAt, '')).not.toMatch(/\b\d\d:\d\d\b|NaN|undefined/u);
    const blanks = page.split('class="to-fill"').length - 1;
    // Emergency number, street, race control; seven clock times; radio, call sign, captain, telephone; points; two pre-pours; supplies; crew.
    expect(blanks).toBe(3 + 7 + 4 + 1 + 2 + 1 + 1);
    expect(plain(page)).toContain('No version');
    expect(plain(cardOf('s1', bare))).toContain('Be there: fill in:');
  });

  it('gets no drawing where no race passes, and says so', () => {
    const far = layoutOf([turtle(ORIGIN, [[90, 4000]], 100)], [{ at: [-10, -30] }]);
    const page = sheetOf('s1', { ...far, day: null, ...reviewLayout(far) });
    expectWhole(page);
    expect(plain(page)).toContain('No race passes this station');
    expect(page).not.toContain('class="layout"');
  });

  it('has no row for wheels unless a race of that division is served, and then a time or a line to write on', () => {
    expect(plain(sheetOf('s3'))).not.toContain('First wheels');
    const wheels = demoAnalysis((plan) => ({
      ...plan,
      races: plan.races.map((race) => (race.id === 'h' ? { ...race, division: 'wheels' as const } : race)),
    }));
    expect(plain(sheetOf('s3', wheels))).toMatch(/First wheels \d\d:\d\d/u);
    expect(plain(sheetOf('s3', wheels))).toMatch(/First runner 08:\d\d/u);
  });
});

describe('hostile texts', () => {
  const HOSTILE = [
    '<script>alert(1)</script>',
    `"'><img src=x onerror=alert(1)>`,
    '</style><b>',
    '=cmd()|x',
    '\u202Eمحطة الماء',
    'x'.repeat(200),
    '水'.repeat(200),
  ];

  const hostile = (text: string): Analysis =>
    demoAnalysis((plan) => ({
      ...plan,
      name: text,
      revision: text,
      races: plan.races.map((race) => ({ ...race, name: text })),
      contacts: { emergency: text, raceControl: text, radioChannel: text },
      stations: plan.stations.map((station): PlanStation => ({
        ...station,
        name: text,
        note: text,
        people: { captain: text, radio: text, phone: text },
        points: station.points.map((point) => ({ ...point, name: text, street: text, note: text })),
      })),
    }));

  it.each(HOSTILE)('stay texts and stay whole: %s', (text) => {
    const analysis = hostile(text);
    for (const page of [
      captainSheets(analysis, { ...options, printedAt: text }),
      cardSheets(analysis, { ...options, printedAt: text }),
    ]) {
      expectWhole(page);
      expect(page).not.toMatch(/<script|<img|\u202E/u);
      expect(page.split('</style>')).toHaveLength(2);
      expect(plain(page)).toContain(
        text.replaceAll('\u202E', '\uFFFD').replaceAll('<', '&lt;').replaceAll('>', '&gt;'),
      );
    }
  });
});

it.each(LANGUAGES.map(({ language }) => language))(
  'every paper tells which Halfcup printed it, on itself and at the foot of every page, in %s',
  (language) => {
    const how = { ...options, language, review: reviewDocument(demo, { sha256: 'ab'.repeat(32), inputs: [] }) };
    const papers = papersOf(demo, how);
    expect(papers.map(({ name }) => name)).toEqual([
      'overview.html',
      'shared.html',
      'captains.html',
      'cards.html',
      'signin.html',
      'placement.html',
      'supplies.html',
      'run-v1.html',
      'run-v2.html',
      'collection.html',
      'leftovers.html',
      'report.html',
    ]);
    for (const { name, html } of [...papers, indexPaper(demo, papers, how)]) {
      expect(plain(html), name).toContain(MADE_BY);
      const foot = /@bottom-right \{ content: ([^;]*);/u.exec(html)![1]!;
      expect(foot.startsWith(`"${MADE_BY} `) || foot.startsWith(cssString(`${MADE_BY} · `).slice(0, -1)), name).toBe(
        true,
      );
    }
  },
);

it('papers are in the plan’s own language unless another is asked for', () => {
  const spanish = demoAnalysis((plan) => ({ ...plan, language: 'es' }));
  const bare: CaptainOptions = { paper: 'a4', printedAt: options.printedAt };
  const [own, english] = [papersOf(spanish, bare), papersOf(spanish, { ...bare, language: 'en' })];
  expect(own).toEqual(papersOf(spanish, { ...bare, language: 'es' }));
  for (const { html } of own) expect(html).toContain('<html lang="es"');
  for (const { html } of english) expect(html).toContain('<html lang="en"');
  expect(own.map(({ title }) => title)).toEqual(papersOf(demo, { ...bare, language: 'es' }).map(({ title }) => title));
  expect(english.map(({ title }) => title)).toEqual(papersOf(demo, bare).map(({ title }) => title));
  const papers = [{ name: 'a.html', title: 'A' }];
  expect(indexPaper(spanish, papers, bare)).toEqual(indexPaper(demo, papers, { ...bare, language: 'es' }));
});
