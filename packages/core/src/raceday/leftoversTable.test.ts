import { describe, expect, it } from 'vitest';
import { leftoversCsv } from '../export/leftoversCsv.ts';
import { findingLine } from '../finding.ts';
import { planOf, planStation } from '../testing/plans.ts';
import type { SentDay } from './leftovers.ts';
import { readLeftovers } from './leftoversTable.ts';

const plan = planOf({
  stations: [
    planStation({ name: 'Packet Pier', serves: ['water'] }),
    planStation({ id: 's2', name: 'Rowan Hill', serves: ['water'] }),
  ],
});
const packs: SentDay['packs'] = [
  { kind: 'waterJug', need: 100, pack: 4, count: 30 },
  { kind: 'cups', need: 1500, pack: 100, count: 16 },
];
const days = plan.stations.map(({ id }) => ({ id, packs }));
const read = (text: string): ReturnType<typeof readLeftovers> => readLeftovers(text, 'left.csv', plan, days);
const lines = (text: string): string[] => read(text).findings.map(findingLine);

describe('Leftover forms as a table', () => {
  it.each([
    ['in English, with commas', 'station,packs of cups left,loose cups left\ns1,1,30\nRowan Hill,2,\n'],
    [
      'in Spanish, with semicolons',
      'Puesto;Paquetes de vasos sobrantes;Vasos sueltos sobrantes\r\ns1;1;30,0\r\nrowan hill;2;\r\n',
    ],
    ['with tabs, quotes and another order', 'loose cups left\t"packs_of_cups_left"\tStation\n30\t"1"\ts1\n\t2\tS2\n'],
  ])('are read %s', (_, text) => {
    const got = read(text);
    expect(got.findings).toEqual([]);
    expect(got.ok && got.value).toEqual([
      { station: 's1', used: { water: 1470 } },
      { station: 's2', used: { water: 1400 } },
    ]);
  });

  it('come back empty from the form that is given out, and filled in as they are', () => {
    const form = leftoversCsv(plan, days, 'es');
    expect(form).toBe(
      'puesto,nombre,garrafas de agua llenas,garrafas de agua vacías,paquetes de vasos sobrantes,vasos sueltos sobrantes\r\ns1,Packet Pier,,,,\r\ns2,Rowan Hill,,,,\r\n',
    );
    expect(lines(form)).toEqual(['left.csv: Nothing is counted. Fill in at least one count.']);
    const filled = read(form.replace('Pier,,,,', 'Pier,,,6,'));
    expect(filled.ok && filled.value).toEqual([{ station: 's1', used: { water: 1000 } }]);
  });

  it('leave out rows with faults, told by line and column, and keep the good ones', () => {
    const more = planOf({
      stations: ['s1', 's2', 's3', 's4'].map((id) => planStation({ id, name: id, serves: ['water'] })),
    });
    const text =
      'station,name,packs of cups left,loose cups left,boxes of gels left,weather\n' +
      's1,,seven,,,wet\ns9,,1,,,\n,,3,,,\ns2,,17,,,\ns2,,1,,,\ns3,,1,2,3,\ns4,,1,,,,x\ns4,,2,50,,\n';
    const got = readLeftovers(
      text,
      'left.csv',
      more,
      more.stations.map(({ id }) => ({ id, packs })),
    );
    expect(got.ok && got.value).toEqual([{ station: 's4', used: { water: 1350 } }]);
    expect(got.findings.map(findingLine)).toEqual([
      'left.csv:1:68: The column “weather” is not known and is left out.',
      'left.csv:2:5: “seven” is no number of packs of cups left. It should be a number from 0, or empty where nobody counted.',
      'left.csv:3:1: The plan has no station “s9”. It has “s1”, “s2”, “s3” and “s4”.',
      'left.csv:4:1: The row names no station. Give the id or the name of a station.',
      'left.csv:5:5: 17 packs of cups are counted, and 16 were sent. Count again, or check what the station was sent.',
      'left.csv:6:1: s2 is counted twice, here and in line 5. Keep one of the two rows.',
      'left.csv:7:9: The plan sends no boxes of gels to this station. Leave the count empty, or correct what the station serves.',
      'left.csv:8:10: The row has 7 fields, and the header 6. Put a field that holds a delimiter in quotes.',
    ]);
  });

  it.each([
    ['', 'left.csv: The file is empty. Its first line should be a header.'],
    ['station,loose cups left\n', 'left.csv: The file has a header and no rows below it.'],
    [
      'post,loose cups left\ns1,3\n',
      'left.csv:1:1: There is no column “station”. The header has “post” and “loose cups left”.',
    ],
    [
      'station,id,loose cups left\ns1,s1,3\n',
      'left.csv:1:9: A column like “id” is there twice. Remove one of the two.',
    ],
    [
      'station,loose cups left\ns1,"3\n',
      'left.csv:2:4: A quote is opened and never closed. Close it, or double quotes inside a field.',
    ],
    [
      'station,loose cups left\ns1,-3\n',
      'left.csv:2:4: “-3” is no number of loose cups left. It should be a number from 0, or empty where nobody counted.',
    ],
  ])('are refused whole where none can be read: %j', (text, line) => {
    expect(read(text).ok).toBe(false);
    expect(lines(text)[0]).toBe(line);
  });
});
