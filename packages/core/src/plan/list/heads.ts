/** The heads by which a list of stations names its columns, in English and Spanish. */
import type { Cell } from '../../delimited.ts';
import type { LengthUnit } from '../../units.ts';

/** What a column of a list holds. */
export type ListColumn =
  | 'id'
  | 'number'
  | 'name'
  | 'course'
  | 'distance'
  | 'lon'
  | 'lat'
  | 'side'
  | 'serves'
  | 'tables'
  | 'water'
  | 'sportsDrink'
  | 'gel'
  | 'boxes'
  | 'width'
  | 'captain'
  | 'phone'
  | 'radio'
  | 'note';

/** A column by its head; `unit` where the head says one. */
export interface Head {
  readonly column: ListColumn;
  readonly unit?: LengthUnit;
}

const HEADS: Readonly<Record<ListColumn, readonly string[]>> = {
  id: ['id'],
  number: ['no', 'nr', '#', 'number', 'station number', 'n.º', 'n°', 'num', 'numero'],
  name: ['name', 'station', 'station name', 'nombre', 'puesto', 'estacion', 'nombre del puesto'],
  course: ['course', 'recorrido', 'circuito'],
  distance: [
    'distance',
    'course distance',
    'measure',
    'distancia',
    'distancia del recorrido',
    'punto kilometrico',
    'pk',
    'km',
    'mi',
    'kilometre',
    'kilometer',
    'kilometro',
    'mile',
    'milla',
  ],
  lon: ['lon', 'long', 'lng', 'longitude', 'longitud'],
  lat: ['lat', 'latitude', 'latitud'],
  side: ['side', 'side of the road', 'lado', 'lado de la calle'],
  serves: ['serves', 'served', 'what is served', 'serving', 'sirve', 'se sirve', 'que se sirve', 'avituallamiento'],
  tables: ['tables', 'mesas'],
  water: ['water', 'water tables', 'agua', 'mesas de agua'],
  sportsDrink: [
    'sports drink',
    'sportsdrink',
    'sports drink tables',
    'bebida deportiva',
    'bebida isotonica',
    'mesas de bebida deportiva',
  ],
  gel: ['gel', 'gels', 'gel tables', 'geles', 'mesas de gel', 'mesas de geles'],
  boxes: ['boxes', 'trash boxes', 'cajas', 'cajas de basura'],
  width: ['width', 'road width', 'ancho', 'anchura', 'ancho de la calle'],
  captain: ['captain', 'capitan', 'capitana', 'responsable'],
  phone: ['phone', 'telephone', 'telefono'],
  radio: ['radio'],
  note: ['note', 'notes', 'nota', 'notas', 'observaciones'],
};

const UNITS: Readonly<Record<string, LengthUnit>> = {
  m: 'm',
  metres: 'm',
  meters: 'm',
  metros: 'm',
  km: 'km',
  kilometre: 'km',
  kilometres: 'km',
  kilometer: 'km',
  kilometers: 'km',
  kilometro: 'km',
  kilometros: 'km',
  mi: 'mi',
  mile: 'mi',
  miles: 'mi',
  milla: 'mi',
  millas: 'mi',
  yd: 'yd',
  yards: 'yd',
  yardas: 'yd',
  ft: 'ft',
  feet: 'ft',
  pies: 'ft',
};

/** Lower case without accents, underscores and hyphens as blanks, one blank between words. */
export const plainWord = (text: string): string =>
  text
    .normalize('NFD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll(/[\s_-]+/gu, ' ')
    .trim();

const COLUMNS = new Map(
  (Object.keys(HEADS) as ListColumn[]).flatMap((column) => HEADS[column].map((head) => [plainWord(head), column])),
);

/** A unit by any of its names. */
export const unitNamed = (word: string): LengthUnit | undefined =>
  Object.hasOwn(UNITS, plainWord(word)) ? UNITS[plainWord(word)] : undefined;

const isLength = (column: ListColumn): boolean => column === 'distance' || column === 'width';

/** The column that a head names, with its unit: "Distance (km)", "distancia km", "Mile". */
export function headOf(text: string): Head | null {
  const word = plainWord(text).replace(/[.:*]+$/u, '');
  const whole = COLUMNS.get(word) ?? COLUMNS.get(word.replace(/s$/u, ''));
  if (whole !== undefined) {
    const unit = whole === 'distance' ? unitNamed(word) : undefined;
    return unit === undefined ? { column: whole } : { column: whole, unit };
  }
  const match = /^(.+?) ?[([]([^)\]]+)[)\]]$/u.exec(word) ?? /^(.+) (?:in |en )?(\S+)$/u.exec(word);
  const column = match === null ? undefined : COLUMNS.get(match[1]!.trim());
  const unit = match === null ? undefined : unitNamed(match[2]!);
  return column === undefined || unit === undefined || !isLength(column) ? null : { column, unit };
}

/** A row is the header where at least one of its cells is a head, and none is a number. */
export const isHeader = (row: readonly Cell[]): boolean =>
  row.some(({ text }) => headOf(text) !== null) && !row.some(({ text }) => /^[\d.,\s]*\d[\d.,\s]*$/u.test(text));
