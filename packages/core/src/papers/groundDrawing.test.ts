/** The ground on papers: streets as wide as they are, what is beside the paper left out, and the credit under each map. */
import { describe, expect, it } from 'vitest';
import type { Ground } from '../ground/ground.ts';
import { groundTown, townPlan, townReview } from '../testing/planted/groundTown.ts';
import { en } from '../text/en.ts';
import { es } from '../text/es.ts';
import { creditOf, groundDrawing, namedStreets } from './groundDrawing.ts';
import { papersOf } from './papers.ts';
import { stationDrawing } from './stationDrawing.ts';
import { kerbMouths } from './stationGround.ts';
import { stationMap } from './stationMap.ts';
import { type Box, POINT, overlap, textWidth } from './textBox.ts';

/** Metres east and north of 0, 0, near enough for a drawing. */
const line = (...spots: readonly (readonly [number, number])[]) => ({
  lon: Float64Array.from(spots, ([x]) => x / 111_320),
  lat: Float64Array.from(spots, ([, y]) => y / 110_574),
});
const way = (id: string, tags: Record<string, string>, ...spots: readonly (readonly [number, number])[]) => ({
  id,
  tags,
  nodes: spots.map((_, k) => `${id}-${k}`),
  ...line(...spots),
});
const ground = (ways: Ground['ways'], areas: Ground['areas'] = []): Ground => ({
  source: { date: '2027-06-01', credit: 'own survey', licence: null },
  ways,
  areas,
  points: [],
});
/** 100 by 100 mm, 1 mm to 2 m, 0, 0 in its middle. */
const frame = {
  on: ([lon, lat]: readonly [number, number]) => [50 + lon * 111_320 * 0.5, 50 - lat * 110_574 * 0.5] as const,
  scale: 0.5,
  width: 100,
  height: 100,
  about: { at: [0, 0] as const, reach: 150 },
};
const drawn = (given: Ground): string =>
  groundDrawing(given, frame)
    .map(({ html }) => html)
    .join('\n');

describe('the ground on paper', () => {
  it('draws a street as wide as it is, with its edges under the white of all others', () => {
    const svg = drawn(
      ground([
        way('way/1', { highway: 'residential', width: '8' }, [-90, 0], [90, 0]),
        way('way/2', { highway: 'primary', width: '10' }, [0, -90], [0, 90]),
      ]),
    );
    const strokes = [...svg.matchAll(/stroke="([^"]+)" stroke-width="([\d.]+)"/gu)].map(([, colour, width]) => [
      colour,
      width,
    ]);
    expect(strokes).toEqual([
      ['#b4b4b4', '4.3'],
      ['#b4b4b4', '5.3'],
      ['#fff', '4'],
      ['#fff', '5'],
    ]);
  });

  it('draws steps and tunnels dashed, and nothing of what lies beside the paper, is too small, or is not drawn', () => {
    const svg = drawn(
      ground([
        way('way/1', { highway: 'steps' }, [-40, 10], [40, 10]),
        way('way/2', { highway: 'primary', tunnel: 'yes' }, [-40, 20], [40, 20]),
        way('way/3', { highway: 'residential' }, [400, 0], [500, 0]),
        way('way/4', { highway: 'residential' }, [0, 0], [1, 0]),
        way('way/5', { barrier: 'fence' }, [-40, 30], [40, 30]),
      ]),
    );
    expect(svg.match(/<path/gu)).toHaveLength(2);
    expect(svg.match(/stroke-dasharray/gu)).toHaveLength(2);
  });

  it('draws houses with their courtyards', () => {
    const house = {
      id: 'way/9',
      tags: { building: 'yes' },
      rings: [
        line([-20, -20], [20, -20], [20, 20], [-20, 20], [-20, -20]),
        line([-10, -10], [-10, 10], [10, 10], [10, -10], [-10, -10]),
      ],
    };
    expect(drawn(ground([], [house])).match(/Z/gu)).toHaveLength(2);
  });

  it('names streets by how much they matter, and each piece that comes near', () => {
    const streets = namedStreets(
      ground([
        way('way/1', { highway: 'service', name: 'Back Yard' }, [-40, 10], [40, 10]),
        way('way/2', { highway: 'primary', name: 'Harbour Road' }, [-40, 20], [40, 20]),
        way('way/3', { highway: 'primary' }, [-40, 30], [40, 30]),
        way('way/4', { highway: 'primary', name: 'Far Road' }, [900, 30], [940, 30]),
      ]),
      frame,
    );
    expect(streets.map(({ name }) => name)).toEqual(['Harbour Road', 'Back Yard']);
  });
});

describe('the credit under a map', () => {
  it('says whom, by which licence, of which day, on as many lines as that takes', () => {
    const source = { credit: '© OpenStreetMap contributors', licence: 'ODbL 1.0', date: '2026-10-02' };
    const texts = (width: number, text = en): string[] =>
      creditOf(source, width, text)
        .at(40)
        .map(({ html }) => />([^<]*)</u.exec(html)![1]!);
    expect(texts(120)).toEqual(['Streets: © OpenStreetMap contributors, ODbL 1.0, map of 2026-10-02']);
    expect(texts(120, es)).toEqual(['Calles: © OpenStreetMap contributors, ODbL 1.0, mapa del 2026-10-02']);
    expect(texts(40).length).toBeGreaterThan(1);
    expect(texts(40).every((words) => textWidth(words, 6.5) <= 40)).toBe(true);
    expect(creditOf(undefined, 66, en)).toMatchObject({ height: 0 });
  });

  it('shortens a long one and takes no markup from it', () => {
    const source = { credit: `<b>${'x'.repeat(300)}`, licence: null, date: null };
    const svg = creditOf(source, 500, en)
      .at(40)
      .map(({ html }) => html)
      .join('');
    expect(svg).toContain('&lt;b&gt;');
    expect(svg.length).toBeLessThan(500);
  });
});

const { analysis } = townReview(townPlan(), groundTown(), true);
const [station] = analysis.stations;

describe('papers of a plan with a map of the ground', () => {
  it('print its credit under every map', () => {
    const papers = papersOf(analysis, { paper: 'a4', printedAt: '2027-09-01 18:30' });
    for (const name of ['overview.html', 'shared.html', 'captains.html']) {
      const { html } = papers.find((paper) => paper.name === name)!;
      const maps = html.match(/class="(?:map|overview-map)" role="img"/gu)!.length;
      expect([name, html.match(/data-credit/gu)?.length]).toEqual([name, maps]);
    }
  });

  it('name streets on a station’s map, none over another word', () => {
    const svg = stationMap({
      layout: analysis,
      station: station!,
      units: 'metric',
      text: en,
      width: 66,
      height: 42,
    }).html;
    const words = [...svg.matchAll(/<text x="([-\d.]+)" y="([-\d.]+)" font-size="([\d.]+)"([^>]*)>([^<]*)</gu)].map(
      ([, x, y, size, more, says]): Box & { readonly says: string } => {
        const width = textWidth(says!, Number(size) / POINT);
        const left = more!.includes('middle') ? Number(x) - width / 2 : Number(x);
        return { says: says!, x: left, y: Number(y) - Number(size) * 0.8, width, height: Number(size) };
      },
    );
    expect(words.map(({ says }) => says)).toContain('Harbour Road');
    for (const [k, one] of words.entries())
      for (const other of words.slice(k + 1)) expect(overlap(one, other), `${one.says} | ${other.says}`).toBe(false);
  });

  it('open the kerb where a street meets it, name the street, and tell one across the road', () => {
    const { along, ...map } = analysis.ground!;
    const [direction] = station!.directions;
    const chalk = direction!.measure;
    const junction = (by: number, side: 'left' | 'right', more: object) => ({
      measure: chalk + by,
      node: `node/${by}`,
      ways: ['way/1'],
      names: [],
      vehicles: true,
      access: false,
      sides: [side],
      mouth: { from: chalk + by - 6, to: chalk + by + 6 },
      ...more,
    });
    const near = direction!.side === 'left' ? 'left' : 'right';
    const far = near === 'left' ? 'right' : 'left';
    const junctions = [
      junction(-40, near, { names: ['<b>Mill</b> Lane'] }),
      junction(25, far, { names: ['Quay Street'] }),
      junction(40, near, { vehicles: false }),
      junction(900, near, { names: ['Far Lane'] }),
    ];
    const seen = {
      ...analysis,
      ground: { ...map, along: new Map([['c', { ...along.get('c')!, junctions }]]) },
    } as typeof analysis;
    expect(kerbMouths(seen, direction!, en)).toEqual([
      { word: '<b>Mill</b> Lane', kerb: 'near', along: [-46, -34] },
      { word: 'Quay Street', kerb: 'far', along: [19, 31] },
      { word: 'Path', kerb: 'near', along: [34, 46] },
    ]);
    const { svg } = stationDrawing(seen, station!, { size: 'full' });
    expect(svg).toContain('&lt;b&gt;Mill&lt;/b&gt; Lane');
    expect(svg).toContain('Quay Street');
    expect(svg).toContain('across the road');
    expect(svg).not.toContain('Far Lane');
  });
});
