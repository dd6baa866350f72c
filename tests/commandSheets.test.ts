/** `halfcup sheets`: which files it writes, that their figures are those of the other commands, and that no text of a plan breaks them. */
import { existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { SaxesParser } from 'saxes';
import { describe, expect, it } from 'vitest';
import { ROOT } from './support/build.ts';
import { OCEAN, gpxText, planText, straight } from './support/courses.ts';
import type { LayoutDocument } from '../packages/core/src/export/documents.ts';
import type { RaceDayDocument } from '../packages/core/src/export/raceDayDocument.ts';
import { documentIn, folderWith, halfcupIn, refusalIn } from './support/halfcup.ts';

const DEMO = join(ROOT, 'fixtures/demo');

interface Read {
  /** All text but that of `style`. */
  readonly text: string;
  readonly tags: ReadonlySet<string>;
  readonly attributes: ReadonlySet<string>;
}

/** A paper by an XML parser: once the doctype is gone and `meta` and `br` are closed, these pages must be well formed to the last tag. */
function readPaper(page: string): Read {
  const parser = new SaxesParser();
  const [tags, attributes, texts, open] = [new Set<string>(), new Set<string>(), [] as string[], [] as string[]];
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', (tag) => {
    open.push(tag.name);
    tags.add(tag.name);
    for (const name of Object.keys(tag.attributes)) attributes.add(name);
  });
  parser.on('closetag', () => open.pop());
  parser.on('text', (text) => {
    if (open.at(-1) !== 'style') texts.push(text);
  });
  parser
    .write(
      page
        .replace(/^<!doctype html>/iu, '')
        .replaceAll(/<(meta|br)([^>]*)>/gu, '<$1$2/>')
        .replaceAll('&nbsp;', ' '),
    )
    .close();
  return { text: texts.join(''), tags, attributes };
}

/** Rows of the tables inside each block of a station: the texts of their cells. */
function blocksOf(page: string): ReadonlyMap<string, readonly (readonly string[])[]> {
  const blocks = new Map<string, (readonly string[])[]>();
  for (const [, id, inside] of page.matchAll(/<section class="block" data-station="([^"]*)">(.*?)<\/section>/gsu)) {
    const rows = [...inside!.matchAll(/<tr>(.*?)<\/tr>/gsu)].map(([, row]) =>
      [...row!.matchAll(/<td[^>]*>(.*?)<\/td>/gsu)].map(([, cell]) => cell!.replaceAll(/<[^>]*>/gu, '')),
    );
    blocks.set(id!, [...(blocks.get(id!) ?? []), ...rows.filter((row) => row.length > 0)]);
  }
  return blocks;
}

const papersIn = async (
  folder: string,
  plan: string,
  ...call: readonly string[]
): Promise<ReadonlyMap<string, string>> => {
  const { files } = (await documentIn(folder, 'sheets', plan, ...call)) as { readonly files: readonly string[] };
  return new Map(
    files.map((file) => [file.slice(file.lastIndexOf('/') + 1), readFileSync(join(folder, file), 'utf8')]),
  );
};

const demo = folderWith(
  Object.fromEntries(
    ['plan.json', 'full.gpx', 'half.gpx', 'context.geojson', 'ground.geojson'].map((name) => [
      name,
      readFileSync(join(DEMO, name)),
    ]),
  ),
);

describe('halfcup sheets', () => {
  it('writes every paper of the demo and a page that links to each, and prints their names', async () => {
    const papers = await papersIn(demo, 'plan.json', '--out', 'all');
    const names = [
      'captains.html',
      'cards.html',
      'collection.html',
      'index.html',
      'leftovers.html',
      'overview.html',
      'placement.html',
      'report.html',
      'run-v1.html',
      'run-v2.html',
      'shared.html',
      'signin.html',
      'supplies.html',
    ];
    expect([...papers.keys()].sort()).toEqual(names);
    expect(readdirSync(join(demo, 'all')).sort()).toEqual(names);
    const index = papers.get('index.html')!;
    for (const name of names.filter((one) => one !== 'index.html')) expect(index).toContain(`href="${name}"`);
    for (const [name, page] of papers) {
      const { text, tags } = readPaper(page);
      expect(text, name).toContain('Ganneth Island Marathon and Half');
      expect(text, name).toContain('local codes, the road authority');
      expect(tags.has('script'), name).toBe(false);
    }
  });

  it('prints on the paper asked for, A4 where none is', async () => {
    const size = async (...call: readonly string[]): Promise<string> =>
      /size: ([^;]*);/u.exec((await papersIn(demo, 'plan.json', ...call)).get('placement.html')!)![1]!;
    // ISO 216; ANSI/ASME Y14.1 A.
    expect(await size('--out', 'p1')).toBe('210mm 297mm');
    expect(await size('--out', 'p2', '--paper', 'letter')).toBe('215.9mm 279.4mm');
    expect((await refusalIn(demo, 'sheets', 'plan.json', '--out', 'p3', '--paper', 'a5')).join()).toContain('a4');
  });

  it('lists every end of every item with the figures of the layout, to the decimetre shown', async () => {
    const { stations } = (await documentIn(demo, 'layout', 'plan.json')) as LayoutDocument;
    const blocks = blocksOf((await papersIn(demo, 'plan.json', '--out', 'figures')).get('placement.html')!);
    let compared = 0;
    for (const { id, directions } of stations) {
      const rows = blocks.get(id)!;
      const ends = directions.flatMap(({ items }) =>
        items.flatMap((item) =>
          (item.from === item.to ? [0] : [0, 1]).map((k) => ({
            measure: k === 0 ? item.from : item.to,
            wheel: item.wheel![k]!,
            at: item.at[k]!,
          })),
        ),
      );
      // And the chalk mark.
      expect(rows).toHaveLength(ends.length + directions.length);
      for (const { measure, wheel, at } of ends) {
        const place = `${at[1].toFixed(6)}, ${at[0].toFixed(6)}`;
        const shown = Math.abs(wheel) < 0.05 ? 'at the chalk mark' : `${Number(Math.abs(wheel).toFixed(1))} `;
        const found = rows.filter(
          (row) =>
            row[5] === place &&
            row[1] === `${(measure / 1000).toFixed(3)} km` &&
            row[4]!.startsWith(shown) &&
            (Math.abs(wheel) < 0.05 || row[4]!.endsWith(wheel < 0 ? 'before' : 'past')),
        );
        expect(found.length, `${id} ${place} ${wheel}`).toBeGreaterThan(0);
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(80);
  });

  it('leads by wheel from each peg to the next, the steps adding up to the whole', async () => {
    const blocks = blocksOf((await papersIn(demo, 'plan.json', '--out', 'steps')).get('placement.html')!);
    for (const [id, rows] of blocks) {
      const number = (cell: string): number => Number(/^−?[\d.]+/u.exec(cell)?.[0].replace('−', '-') ?? '0');
      const signed = (cell: string): number => (cell.endsWith('before') ? -number(cell) : number(cell));
      const steps = rows.slice(1).reduce((sum, row) => sum + number(row[3]!), 0);
      // Each of some dozen figures is rounded to 0.1 m.
      expect(Math.abs(steps - (signed(rows.at(-1)![4]!) - signed(rows[0]![4]!))), id).toBeLessThan(
        0.05 * (rows.length + 1),
      );
    }
  });

  it('follows the units of the plan, or of the call', async () => {
    const rows = blocksOf(
      (await papersIn(demo, 'plan.json', '--out', 'yards', '--units', 'imperial')).get('placement.html')!,
    ).get('s4')!;
    expect(rows[0]![1]).toMatch(/ mi$/u);
    // 100 yd ahead of the first table.
    expect(rows[0]![4]).toMatch(/ yd before$/u);
  });

  it('orders in packs what race day reckons, for each station and in all', async () => {
    const day = (await documentIn(demo, 'raceday', 'plan.json')) as RaceDayDocument;
    const page = (await papersIn(demo, 'plan.json', '--out', 'packs')).get('supplies.html')!;
    const rowsOf = (part: string): readonly (readonly string[])[] =>
      [...part.matchAll(/<tr>(.*?)<\/tr>/gsu)].map(([, row]) =>
        [...row!.matchAll(/<td[^>]*>(.*?)<\/td>/gsu)].map(([, cell]) => cell!),
      );
    const totals = rowsOf(/<table class="totals">(.*?)<\/table>/su.exec(page)![1]!).filter((row) => row.length > 0);
    expect(totals.map((row) => Number(row[1]!.replaceAll(',', '')))).toEqual(
      day.totals.packs.map(({ count }) => count),
    );
    const blocks = blocksOf(page);
    for (const { id, packs } of day.stations)
      expect(
        blocks.get(id)!.map((row) => Number(row[1]!.replaceAll(',', ''))),
        id,
      ).toEqual(packs.map(({ count }) => count));
    for (const what of ['A runner drinks, warm', 'common practice', 'assumption', 'Set by this plan'])
      expect(page).toContain(what);
    expect(page).not.toContain('a runner takes, hot');
  });

  it('sends each vehicle to the stops of race day, at their times and on their side, in the dark where the sun is not up', async () => {
    const day = (await documentIn(demo, 'raceday', 'plan.json')) as RaceDayDocument;
    const papers = await papersIn(demo, 'plan.json', '--out', 'runs');
    const paperOf = (run: RaceDayDocument['runs'][number]): string =>
      papers.get(run.kind === 'drop' ? `run-${run.vehicle}.html` : 'collection.html')!;
    for (const run of day.runs) {
      for (const stop of run.stops) {
        const page = paperOf(run);
        const blocks = [...page.matchAll(/<section class="block stop" data-stop="([^"]*)">(.*?)<\/section>/gsu)].filter(
          ([, id, inside]) => id === stop.station && inside!.includes(`<b>${stop.arrive.slice(0, 5)}</b>`),
        );
        expect(blocks, `${run.vehicle} ${stop.station}`).toHaveLength(1);
        const inside = blocks[0]![2]!;
        expect(inside).toContain(stop.side === 'left' ? 'LEFT-hand side' : 'RIGHT-hand side');
        for (const { count } of stop.load) expect(inside).toContain(`<b>${String(count)}</b> ×`);
        // Sunrise on the demo's day is at 06:13 or a minute before.
        expect(inside.includes('It is dark')).toBe(stop.arrive < '06:12');
      }
    }
  });

  it('shows each leg of each race on the overview, and every station on the map', async () => {
    const { spacing, stations } = (await documentIn(demo, 'layout', 'plan.json')) as LayoutDocument;
    const page = (await papersIn(demo, 'plan.json', '--out', 'over')).get('overview.html')!;
    for (const { race, legs } of spacing) {
      expect([...page.matchAll(new RegExp(`data-leg="${race}">([^<]*)<`, 'gu'))].map(([, shown]) => shown)).toEqual(
        legs.map(({ length }) => (length / 1000).toFixed(2)),
      );
    }
    const map = /<svg class="overview-map".*?<\/svg>/su.exec(page)![0];
    for (const { id } of stations) expect(map).toContain(`data-station="${id}"`);
  });

  it('speaks the language asked for, and says where it has not got it', async () => {
    expect((await papersIn(demo, 'plan.json', '--out', 'es', '--lang', 'es')).get('placement.html')).toContain(
      'Lista de colocación',
    );
    const spanish = readPaper(
      (await papersIn(demo, 'plan.json', '--out', 'es2', '--lang', 'es-MX')).get('supplies.html')!,
    ).text;
    expect(spanish).toContain('práctica habitual');
    expect(spanish).not.toMatch(/common practice|assumption/u);
    const { exit, err } = await halfcupIn(demo, 'sheets', 'plan.json', '--out', 'fo', '--lang', 'fo');
    expect(exit).toBe(0);
    expect(err).toMatch(/note: No papers in the language "fo".*English/u);
  });

  it('names the variant on each paper of one', async () => {
    const papers = await papersIn(demo, 'plan.json', '--out', 'variant', '--variant', 'Lighthouse table moved');
    for (const [name, page] of papers)
      expect(readPaper(page).text, name).toContain('Ganneth Island Marathon and Half (Lighthouse table moved)');
  });

  it('keeps what is in the folder, unless forced, and writes nothing at all where one file is in the way', async () => {
    mkdirSync(join(demo, 'kept'));
    writeFileSync(join(demo, 'kept/placement.html'), 'mine');
    expect((await refusalIn(demo, 'sheets', 'plan.json', '--out', 'kept')).join('\n')).toMatch(
      /kept\/placement\.html.*exists already.*--force/u,
    );
    expect(readdirSync(join(demo, 'kept'))).toEqual(['placement.html']);
    expect(readFileSync(join(demo, 'kept/placement.html'), 'utf8')).toBe('mine');
    await papersIn(demo, 'plan.json', '--out', 'kept', '--force');
    expect(readFileSync(join(demo, 'kept/placement.html'), 'utf8')).toContain('Placement list');
  });

  it('never writes over what it reads, whatever it is told', async () => {
    const plan = planText([{ id: 's1', on: { course: 'c', measure: 2500, side: 'right' } }], {
      context: 'overview.html',
    });
    const folder = folderWith({
      'c.gpx': gpxText([straight(OCEAN, 90, 51, 100)]),
      'report.html': plan,
      'overview.html': '{"type":"FeatureCollection","features":[]}',
    });
    const refused = (await refusalIn(folder, 'sheets', 'report.html', '--out', '.', '--force')).join('\n');
    expect(refused).toMatch(/report\.html.*being read/u);
    expect(refused).toMatch(/overview\.html.*being read/u);
    expect(readFileSync(join(folder, 'report.html'), 'utf8')).toBe(plan);
    expect(existsSync(join(folder, 'placement.html'))).toBe(false);
  });

  it('refuses a call without a folder, and a folder that is a file', async () => {
    expect((await refusalIn(demo, 'sheets', 'plan.json')).join()).toContain('--out papers');
    expect((await refusalIn(demo, 'sheets', 'plan.json', '--out', 'plan.json')).join()).toContain('this is a file');
    expect((await refusalIn(demo, 'sheets', 'plan.json', '--out', 'plan.json/below', '--force')).length).toBe(1);
  });

  it('leaves out a background drawing that cannot be used, and says so', async () => {
    const plan = planText([{ id: 's1', on: { course: 'c', measure: 2500, side: 'right' } }], { context: 'map.json' });
    for (const [content, why] of [
      ['{"type":"Feature"', 'FeatureCollection'],
      ['[]', 'FeatureCollection'],
      [null, 'file not found'],
    ] as const) {
      const folder = folderWith({
        'c.gpx': gpxText([straight(OCEAN, 90, 51, 100)]),
        'plan.json': plan,
        ...(content === null ? {} : { 'map.json': content }),
      });
      const { exit, err } = await halfcupIn(folder, 'sheets', 'plan.json', '--out', 'o');
      expect(exit).toBe(0);
      expect(err).toContain(why);
    }
  });
});

const LONG = 'Kittiwake '.repeat(20).trim();
/** Marked-up, quoted, formula-like, right-to-left (Hebrew letters, from memory: "station"), long; and a turn of the reading order. */
const NAMES = [
  '<script>alert(1)</script>',
  `"quoted" 'twice' & </style><img src=x onerror=alert(1)>`,
  '=cmd()',
  'תחנה',
  LONG,
  'turned \u202E around',
];

describe('a plan whose texts are hostile', () => {
  const name = (k: number): string => NAMES[k % NAMES.length]!;
  const stations = NAMES.map((one, k) => ({
    id: `s${k} "${k}"<b>`,
    name: one,
    on: { course: 'c', measure: 1000 + 700 * k, side: 'right', offset: 5 },
    why: name(k + 1),
    note: name(k + 2),
    points: [{ kind: 'drop', at: OCEAN, name: name(k + 3), street: name(k + 4), note: name(k + 5) }],
    people: { captain: name(k + 1), radio: name(k + 2), phone: name(k + 3) },
  }));
  const plan = planText(stations, {
    name: NAMES.join(' '),
    revision: '</style><script>1</script>',
    context: 'map.json',
    contacts: { emergency: name(0), raceControl: name(1), radioChannel: name(2) },
    courses: [{ id: 'c', name: name(1), gpx: 'c.gpx', drawn: 'centre' }],
    races: [
      {
        id: 'r',
        name: name(0),
        course: 'c',
        waves: [{ time: '08:00', entrants: 300 }],
        finish: { median: '0:50:00', spread: 0.2 },
        cutoff: '10:30',
      },
    ],
    vehicles: [
      { id: '../../v"1<', name: name(0), kg: 3000, places: 20 },
      { id: '..', name: name(1), kg: 3000, places: 2 },
    ],
  });
  const map = {
    type: 'FeatureCollection',
    features: [
      {
        type: 'Feature',
        properties: { kind: '"><script>', name: name(0) },
        geometry: {
          type: 'LineString',
          coordinates: [
            [-17.4, -33.2],
            [-17.39, -33.21],
          ],
        },
      },
      {
        type: 'Feature',
        properties: null,
        geometry: {
          type: 'LineString',
          coordinates: [
            ['x', null],
            [Infinity, 3],
          ],
        },
      },
    ],
  };
  const folder = folderWith({
    'c.gpx': gpxText([straight(OCEAN, 90, 101, 100)]),
    'plan.json': plan,
    'map.json': JSON.stringify(map),
  });

  it('gives papers that are well formed, hold no script, no handler and no address, and still say every name', async () => {
    const papers = await papersIn(folder, 'plan.json', '--out', 'o');
    expect(papers.size).toBeGreaterThanOrEqual(9);
    for (const [file, page] of papers) {
      const { text, tags, attributes } = readPaper(page);
      for (const tag of ['script', 'img', 'iframe']) expect(tags.has(tag), `${file} ${tag}`).toBe(false);
      expect(
        [...attributes].filter((one) => one.startsWith('on') || one === 'src'),
        file,
      ).toEqual([]);
      expect(page.match(/<\/style>/gu), file).toHaveLength(1);
      expect(text, file).not.toContain('\u202E');
    }
    for (const file of ['captains.html', 'placement.html', 'supplies.html', 'overview.html', 'cards.html']) {
      const { text } = readPaper(papers.get(file)!);
      for (const one of NAMES.slice(0, 5)) expect(text, file).toContain(one);
    }
  });

  it('writes into its folder only, whatever a vehicle is called', async () => {
    const before = readdirSync(folder).sort();
    const names = [...(await papersIn(folder, 'plan.json', '--out', 'o2')).keys()];
    expect(readdirSync(folder).sort()).toEqual([...before, 'o2'].sort());
    expect(names.every((one) => /^[A-Za-z0-9-]+\.html$/u.test(one))).toBe(true);
    expect(readdirSync(join(folder, 'o2')).sort()).toEqual(names.sort());
  });
});
