/** The layout as comma-separated rows: which place stands in which row, and what is empty where there is nothing to say. */
import { describe, expect, it } from 'vitest';
import type { Layout } from '../layout/layout.ts';
import { AT_1500, OUT_AND_BACK, STRAIGHT, analysisOf, runners } from '../testing/analyses.ts';
import { ORIGIN, from, turtlePoints } from '../testing/courses.ts';
import { toCsv } from './csv.ts';

/** Rows as records; the fixtures' cells hold no commas and no quotes. */
function rowsOf(layout: Layout): Readonly<Record<string, string>>[] {
  const [header, ...rows] = toCsv(layout)
    .split('\r\n')
    .slice(0, -1)
    .map((line) => line.split(','));
  return rows.map((cells) => Object.fromEntries(header!.map((key, k) => [key, cells[k]!])));
}
const brief = (layout: Layout): string[] =>
  rowsOf(layout).map((row) => [row['station'], row['item'], row['end']].join(' ').trim());

describe('the table of a layout', () => {
  const layout = analysisOf(
    STRAIGHT,
    [
      {
        ...AT_1500,
        name: 'Kelp Bay',
        serves: ['water'],
        boxes: 2,
        points: [
          { kind: 'drop', at: from(ORIGIN, 90, 1450), name: 'Supplies', street: 'Kelp Road' },
          { kind: 'toilets', at: ORIGIN },
        ],
      },
    ],
    { races: [runners(10), runners(10, { id: 'h', name: 'Half Mile' })] },
  );

  it('has sign, both ends of each item, each box, the chalk mark and the points, in running order', () => {
    const items = brief(layout).map((row) => row.slice(3));
    expect(items.filter((item) => !item.startsWith('handOut'))).toEqual([
      'sign',
      'station',
      'water from',
      'water to',
      'trash from',
      'box 1',
      'trash to',
      'box 2',
      'drop',
      'toilets',
    ]);
    expect(items).toContain('handOut from');
  });

  it('names station, races, course and that it is the lead direction in each row', () => {
    for (const row of rowsOf(layout))
      expect([row['station number'], row['name'], row['race'], row['course'], row['lead direction']]).toEqual([
        '1',
        'Kelp Bay',
        'Mile Run; Half Mile',
        'Shore',
        'yes',
      ]);
  });

  it('says where a box stands along the course, by wheel, and on the ground', () => {
    const [first, second] = rowsOf(layout).filter(({ item }) => item === 'box');
    const trash = layout.stations[0]!.directions[0]!.items.at(-1)!;
    expect(Number(first!['course distance (m)'])).toBeCloseTo(trash.from, 3);
    expect(Number(second!['wheel from chalk mark (m)'])).toBeCloseTo(trash.along[1], 2);
    expect([first!['side'], first!['wheel margin (m)'], first!['wording']]).toEqual(['right', '0', '']);
    const [lon, lat] = from(from(ORIGIN, 90, trash.from), 180, 5);
    expect(Number(first!['longitude'])).toBeCloseTo(lon, 6);
    expect(Number(first!['latitude'])).toBeCloseTo(lat, 6);
  });

  it('says the name and street of a point, which has no course distance and no side', () => {
    const [drop, toilets] = rowsOf(layout).slice(-2);
    expect(toCsv(layout)).toContain(',"Supplies, Kelp Road",,,\r\n');
    expect([drop!['course distance (m)'], drop!['side'], drop!['wheel from chalk mark (m)']]).toEqual(['', '', '']);
    expect(toilets!['wording']).toBe('');
  });

  it('says the words of the sign, and that its side is unclear where it is', () => {
    const unclear = rowsOf(analysisOf(STRAIGHT, [{ at: from(ORIGIN, 90, 1500), serves: ['water'] }]));
    expect([unclear[0]!['item'], unclear[0]!['wording'], unclear[0]!['side']]).toEqual([
      'sign',
      'Water ahead',
      'unclear',
    ]);
  });
});

describe('rows of a station', () => {
  it('that runners meet both ways stand twice, each in its place along the course; its points and its chalk mark once', () => {
    const rows = rowsOf(
      analysisOf(OUT_AND_BACK, [
        { ...AT_1500, serves: ['water'], boxes: 2, passes: 'all', points: [{ kind: 'radio', at: ORIGIN }] },
      ]),
    );
    expect(rows.filter((row) => row['lead direction'] === 'no').map((row) => row['item'])).toEqual([
      'sign',
      'water',
      'water',
      'trash',
      'box',
      'trash',
      'box',
    ]);
    expect(rows.filter((row) => ['station', 'radio'].includes(row['item']!))).toHaveLength(2);
    const signs = rows
      .filter(({ item }) => item === 'sign')
      .map((row) => [Number(row['course distance (m)']), row['side']]);
    // The way back meets the tables' end first: 4,500 − 1.8288 − 91.44.
    expect(signs).toEqual([
      [expect.closeTo(1408.56, 2), 'right'],
      [expect.closeTo(4406.731, 2), 'left'],
    ]);
  });

  it('stand in course order, whatever their order in the plan', () => {
    const two = analysisOf(STRAIGHT, [{ on: { course: 'c', measure: 3000, side: 'left', offset: 5 } }, AT_1500]);
    expect([...new Set(rowsOf(two).map(({ station }) => station))]).toEqual(['s2', 's1']);
  });

  it('have no position where an item would stand before the start', () => {
    const [sign] = rowsOf(analysisOf(STRAIGHT, [{ on: { course: 'c', measure: 50, side: 'right', offset: 5 } }]));
    expect([
      sign!['item'],
      sign!['course distance (m)'],
      sign!['longitude'],
      sign!['latitude'],
      sign!['wheel from chalk mark (m)'],
    ]).toEqual(['sign', '-41.44', '', '', '']);
  });

  it('have no wheel distance, and no margin of one, where the line folds', () => {
    // A hairpin just after the tables, whose inside is the station's side.
    const rows = rowsOf(
      analysisOf(
        turtlePoints(
          ORIGIN,
          [
            [90, 1520],
            [255, 1500],
          ],
          20,
        ),
        [{ ...AT_1500, serves: ['water'], boxes: 2 }],
      ),
    );
    for (const row of rows.filter(({ item }) => item === 'trash' || item === 'box'))
      expect([row['wheel from chalk mark (m)'], row['wheel margin (m)']]).toEqual(['', '']);
    expect(rows.filter(({ item }) => item === 'box')).toHaveLength(2);
  });

  it('have neither where a box would stand past the finish', () => {
    const rows = rowsOf(
      analysisOf(STRAIGHT, [
        { on: { course: 'c', measure: 3930, side: 'right', offset: 5 }, serves: ['water'], boxes: 2 },
      ]),
    );
    expect(
      rows
        .filter(({ item }) => item === 'box')
        .map((row) => [
          Number(row['along from chalk mark (m)']),
          row['wheel from chalk mark (m)'],
          row['wheel margin (m)'],
          row['longitude'] === '',
        ]),
    ).toEqual([
      [expect.closeTo(47.549, 2), expect.stringMatching(/^47\.5/u), '0', false],
      [expect.closeTo(93.269, 2), '', '', true],
    ]);
  });

  it('off every course are last, with their pin and points and nothing along a course', () => {
    const rows = rowsOf(
      analysisOf(STRAIGHT, [
        { at: [-10, -30], name: 'Far Skerry', points: [{ kind: 'medical', at: [-10, -30], name: 'Tent' }] },
        AT_1500,
      ]),
    );
    expect(
      rows
        .slice(-2)
        .map((row) => [
          row['name'],
          row['race'],
          row['course'],
          row['lead direction'],
          row['item'],
          row['course distance (m)'],
          row['longitude'],
          row['latitude'],
          row['wording'],
        ]),
    ).toEqual([
      ['Far Skerry', '', '', '', 'station', '', '-10', '-30', ''],
      ['Far Skerry', '', '', '', 'medical', '', '-10', '-30', 'Tent'],
    ]);
  });
});
