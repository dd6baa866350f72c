/** Tables put together by chance: known heads and others, rows too short and too long, quotes, delimiters. Not part of the package. */
import { ODD_TEXTS, type Random, pick, some, tornText } from './random.ts';

/** Words of one kind of table. */
export interface TableWords {
  readonly heads: readonly string[];
  readonly cells: readonly string[];
}

export const RESULTS: TableWords = {
  heads: ['bib', 'net', 'net', 'net', 'gun', '5 km', '10K', 'Half', 'name', ''],
  cells: [
    '3:00:00',
    '45:12',
    '2700',
    'DNF',
    'DNS',
    '',
    '0',
    '-1:00',
    '3:60:00',
    '1e9',
    '9'.repeat(20),
    '0:20:15',
    '0:41:00',
  ],
};

export const STATIONS: TableWords = {
  heads: [
    'Name',
    'Distance',
    'Distance (mi)',
    'Side',
    'lon',
    'lat',
    'Tables',
    'Water',
    'Course',
    'Serves',
    'Width',
    'Captain',
    'Note',
    'km',
    'Nombre',
    'Lado',
  ],
  cells: [
    '1',
    '2.5',
    '2,5 km',
    '3 mi',
    'left',
    'right',
    'izquierda',
    '-17.4',
    '-33.2',
    'water, gel',
    'c',
    'Full',
    '10 m',
    '1.234',
    '1,234',
  ],
};

export const CREW: TableWords = {
  heads: ['Name', 'Station', 'Role', 'From', 'Until', 'Phone', 'Nombre', 'Puesto', 'Desde'],
  cells: ['Ada Tern', 's1', 'Pier', 's2', '7:30', '07:30', '25:00', '+47 1', 'captain', 'S1'],
};

export const LEFT: TableWords = {
  heads: [
    'station',
    'water jugs full',
    'water jugs empty',
    'packs of cups left',
    'loose cups left',
    'boxes of gels left',
  ],
  cells: ['s1', 's2', '0', '0', '1', '1', '2', '1.5', '1,5', '1000000', '-1', ''],
};

const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

/** A table with these words. */
export function oddTable({ heads, cells }: TableWords, random: Random): string {
  const delimiter = pick(random, [',', ',', ';', '\t']);
  const end = pick(random, ['\n', '\n', '\r\n', '\r']);
  const written = (text: string): string =>
    random(10) === 0 || (/[",;\t\r\n]/u.test(text) && random(10) > 0) ? quoted(text) : text;
  const width = 1 + random(7);
  const at = random(heads.length);
  const header = Array.from({ length: width }, (_, k) =>
    random(8) === 0 ? pick(random, [...heads, ...ODD_TEXTS]) : heads[(at + k) % heads.length]!,
  );
  const row = (): string =>
    Array.from({ length: random(12) === 0 ? random(12) : width }, () =>
      written(random(12) === 0 ? pick(random, ODD_TEXTS) : pick(random, cells)),
    ).join(delimiter);
  const rows = some(random, 30, row);
  const text = [header.map(written).join(delimiter), ...rows].join(end);
  return (random(10) === 0 ? '\uFEFF' : '') + (random(8) === 0 ? tornText(text, random) : text);
}
