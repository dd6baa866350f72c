/** Qué falla en una lista de puestos, y qué se supuso. */
import { byProblem } from '../../byProblem.ts';
import type { ListKind, ListParams } from '../../params/list.ts';
import type { Say } from '../../say.ts';
import type { TextsOf } from '../../sentence.ts';
import { listed, suggested } from '../planValues.ts';

const HEADS =
  'La primera fila debe nombrar las columnas: nombre, distancia (o longitud y latitud), lado, sirve, mesas, ancho.';
const OUT = 'La fila se dejó fuera.';

const WANTED: Readonly<Record<ListKind, readonly [is: string, should: string, imperial?: string]>> = {
  distance: [
    'una distancia del recorrido',
    'un número o una longitud como 5.2 km',
    'un número o una longitud como 3.1 mi',
  ],
  width: [
    'un ancho',
    'un número mayor que 0 o una longitud como 5.5 m',
    'un número mayor que 0 o una longitud como 18 ft',
  ],
  lon: ['una longitud', 'un número de grados de -180 a 180, como -17.4'],
  lat: ['una latitud', 'un número de grados de -90 a 90, como -33.2'],
  count: ['una cantidad', 'un número entero de 0 o más'],
  side: ['un lado', 'izquierda o derecha, como lo ven los corredores'],
  serves: ['lo que sirve un puesto', 'agua, bebida isotónica o gel, o varios separados por comas'],
};

const wanted = (kind: ListKind, { units }: Say): string => {
  const [, metric, imperial = metric] = WANTED[kind];
  return units === 'metric' ? metric : imperial;
};

const rowsText = (rows: number): string => (rows === 1 ? '1 puesto' : `${rows} puestos`);
/** Columnas como las nombra quien lee en español. */
const COLUMNS: Readonly<Record<string, string>> = {
  Distance: 'Distancia',
  Width: 'Ancho',
  Lon: 'Longitud',
  Lat: 'Latitud',
  Side: 'Lado',
  Serves: 'Sirve',
  Tables: 'Mesas',
  Water: 'Agua',
  'Sports drink': 'Bebida isotónica',
  Gel: 'Gel',
  Boxes: 'Cajas',
};
const columnText = (column: string): string => COLUMNS[column] ?? column;

export const list: TextsOf<ListParams> = {
  'list-unread': byProblem({
    empty: () => ['La lista está vacía.', HEADS],
    noRows: () => ['La lista tiene encabezados pero ningún puesto.', 'Debe tener una fila por puesto.'],
    openQuote: () => [
      'Hay unas comillas que no se cierran.',
      'Deben cerrarse, y las comillas dentro de un campo deben duplicarse.',
    ],
    afterQuote: () => [
      'Hay texto detrás de unas comillas de cierre.',
      'Debe haber un separador o el fin de la línea; las comillas dentro de un campo deben duplicarse.',
    ],
  }),
  'list-heads': byProblem({
    none: () => ['La primera fila no nombra ninguna columna.', HEADS],
    noPlace: () => [
      'Ninguna columna dice dónde están los puestos.',
      'Debe haber una columna distancia, o columnas longitud y latitud.',
    ],
    twice: ({ column }, say) => [
      `La columna ${say.found(column)} dice lo mismo que otra anterior.`,
      'Debe haber una de cada.',
      'Cambie el nombre de una o bórrela.',
    ],
    unused: ({ columns, more }, say) => [
      `Hay columnas que Halfcup no conoce y no se usaron: ${listed(columns, more, say)}.`,
    ],
  }),
  'list-row': byProblem({
    value: ({ row, column, found, kind }, say) => [
      `Fila ${row}, ${columnText(column)}: ${say.found(found)} no es ${WANTED[kind][0]}.`,
      `Debe ser ${wanted(kind, say)}.`,
      OUT,
    ],
    comma: ({ row, column, found }, say) => [
      `Fila ${row}, ${columnText(column)}: ${say.found(found)} se puede leer de dos maneras, con decimales o en miles.`,
      'Debe escribirse sin separador de miles, o con uno o dos decimales.',
      OUT,
    ],
    noPlace: ({ row }) => [
      `La fila ${row} no dice dónde está el puesto.`,
      'Debe tener una distancia, o una longitud y una latitud.',
      OUT,
    ],
    twoPlaces: ({ row }) => [
      `La fila ${row} tiene a la vez una distancia y una posición.`,
      'Debe tener una de las dos.',
      OUT,
    ],
    halfPlace: ({ row }) => [
      `La fila ${row} tiene solo una de longitud y latitud.`,
      'Debe tener las dos, o una distancia.',
      OUT,
    ],
    course: ({ row, name }, say) => [
      `Fila ${row}: no hay ningún recorrido ${say.found(name.word)}.`,
      suggested(name, 'Recorridos', 'No hay recorridos.', say),
      OUT,
    ],
    past: ({ row, measure, length }, say) => {
      const { measured, limit } = say.compareFar(measure, length);
      return [`La fila ${row} está en ${measured}, pero el recorrido mide ${limit}.`, null, OUT];
    },
    before: ({ row, measure, start }, say) => {
      const { measured, limit } = say.compareFar(measure, start);
      return [`La fila ${row} está en ${measured}, pero el recorrido empieza en ${limit}.`, null, OUT];
    },
    fields: ({ row, fields, header }, say) => [
      `La fila ${row} tiene ${say.count(fields)} campos, y el encabezado ${say.count(header)}.`,
      'Un campo que contiene un separador, como una coma decimal, debe ir entre comillas.',
      OUT,
    ],
  }),
  'list-assumed': byProblem({
    side: ({ rows }) => [
      `La lista no da el lado de ${rowsText(rows)}.`,
      'Se pusieron a la derecha.',
      'Compruebe los lados.',
    ],
    tables: ({ rows }) => [
      `La lista da a ${rowsText(rows)} un solo número de mesas para varias clases.`,
      'Las mesas se repartieron por igual, primero el agua.',
      'Compruebe las mesas.',
    ],
  }),
};
