import { describe, expect, it } from 'vitest';
import { findingLine } from '../finding.ts';
import { planOf, planStation } from '../testing/plans.ts';
import { readRoster } from './roster.ts';

const plan = planOf({
  stations: [planStation({ name: 'Packet Pier' }), planStation({ id: 's2', name: 'Rowan Hill' })],
});
const read = (text: string): ReturnType<typeof readRoster> => readRoster(text, 'crew.csv', plan);
const people = [
  { name: 'Ada Tern', station: 's1', role: 'pour', from: '07:30', until: '11:00', phone: '555 0101' },
  { name: 'Ivo Skua', station: 's2' },
];

describe('a roster as a table', () => {
  it.each([
    [
      'English, commas',
      'name,station,role,from,until,phone\nAda Tern,s1,pour,07:30,11:00,555 0101\nIvo Skua,rowan hill,,,,\n',
    ],
    [
      'Spanish, semicolons, other hours',
      'Teléfono;Nombre;Puesto;Tarea;Desde;Hasta\r\n555 0101;Ada Tern;Packet Pier;pour;7:30;11.00\r\n;Ivo Skua;S2;;;\r\n',
    ],
    [
      'tabs and quotes',
      'Station\tFull name\tTask\tStart\tEnd\tMobile\ns1\t"Ada Tern"\tpour\t7h30\t11:00\t555 0101\ns2\tIvo Skua\n',
    ],
  ])('is read: %s', (_, text) => {
    const got = read(text);
    expect(got.findings).toEqual([]);
    expect(got.ok && got.value).toEqual(people);
  });

  it('lets good rows in and tells of the others by line and column', () => {
    const got = read(
      'name,station,from,until,shirt\nAda Tern,s1,,,M\n,s1,,,S\nIvo Skua,,,,L\nUna Gull,s9,,,S\nOle Puffin,s2,soon,,S\nOle Puffin,s2,10:00,09:00,S\nada tern,s1,,,L\nBea Eider,s2,22:00,25:30,L\n',
    );
    expect(got.ok && got.value).toEqual([
      { name: 'Ada Tern', station: 's1' },
      { name: 'Bea Eider', station: 's2', from: '22:00', until: '25:30' },
    ]);
    expect(got.findings.map(findingLine)).toEqual([
      'crew.csv:1:25: The column “shirt” is not known and is left out.',
      'crew.csv:3:1: The row has no name. Give a name, or remove the row.',
      'crew.csv:4:10: The row names no station for this person. Give the id or the name of a station.',
      'crew.csv:5:10: Somebody is put at “s9”, a station that the plan does not have. It has “s1 (Packet Pier)” and “s2 (Rowan Hill)”.',
      'crew.csv:6:15: “soon” is no clock time. It should be a time such as “07:30”.',
      'crew.csv:7:21: This person comes at 10:00 and leaves at 09:00. The second time should be the later; after midnight hours pass 24.',
      'crew.csv:8:1: The same person and hours stand in line 2 already. Keep one of the two rows.',
    ]);
  });

  it('tells of the first twenty faults one by one, and counts the rest', () => {
    const got = read(`name,station\nAda Tern,s1\n${'Una Gull,s9\n'.repeat(23)}`);
    expect(got.ok && got.value).toHaveLength(1);
    expect(got.findings).toHaveLength(21);
    expect(findingLine(got.findings.at(-1)!)).toBe('crew.csv:23:10: 3 more rows from here on cannot be read.');
    expect(read(`name,station\nAda Tern,s1\n${'Una Gull,s9\n'.repeat(20)}`).findings).toHaveLength(20);
  });

  it.each([
    ['', 'crew.csv: The file is empty. Its first line should be a header.'],
    ['who,station\nAda,s1\n', 'crew.csv:1:1: There is no column “name”. The header has “who” and “station”.'],
    [
      'name,station\nAda,s9\n',
      'crew.csv:2:5: Somebody is put at “s9”, a station that the plan does not have. It has “s1 (Packet Pier)” and “s2 (Rowan Hill)”.',
    ],
    ['name,station\n,\n', 'crew.csv: Nobody in the file can be read. Correct the rows, or choose another file.'],
  ])('is refused where nobody can be read: %j', (text, line) => {
    expect(read(text).ok).toBe(false);
    expect(read(text).findings.map(findingLine)).toEqual([line]);
  });
});
