/** Resultados anteriores que no se pueden leer, o que se leyeron dejando algo fuera. */
import { byProblem } from '../../byProblem.ts';
import type { RacedayParams } from '../../params/raceday.ts';
import type { Say } from '../../say.ts';
import type { TextsOf } from '../../sentence.ts';
import { listed } from '../planValues.ts';

type Codes =
  | 'results-missing'
  | 'results-empty'
  | 'results-unread'
  | 'results-column'
  | 'results-left-out'
  | 'splits-left-out';

const rowsText = (rows: number, say: Say): string => (rows === 1 ? '1 fila' : `${say.count(rows)} filas`);

export const results: Pick<TextsOf<RacedayParams>, Codes> = {
  'results-missing': ({ csv, column }, say) => [
    `Los tiempos de meta vienen de la columna ${say.found(column)} de ${say.found(csv)}, que no se leyó.`,
    null,
    'Añada ese archivo, con al menos un tiempo en esa columna.',
  ],
  'results-empty': byProblem({
    noLine: ({ column }, say) => [
      'El archivo está vacío.',
      `Debe tener una cabecera con la columna ${say.found(column)}, y una fila por cada persona en meta.`,
    ],
    noTimes: ({ column, rows }, say) => [
      `La columna ${say.found(column)} no tiene ningún tiempo de meta en ${rowsText(rows, say)}.`,
      'Debe tener al menos uno.',
    ],
  }),
  'results-unread': byProblem({
    openQuote: () => [
      'Unas comillas no se cierran.',
      'Deben cerrarse, y las comillas dentro de un campo deben ir dobles.',
    ],
    afterQuote: () => [
      'Hay texto después de unas comillas de cierre.',
      'Debe haber un separador o el final de la línea; las comillas dentro de un campo deben ir dobles.',
    ],
    tooMany: ({ fields, header }, say) => [
      `La fila tiene ${say.count(fields)} campos, y la cabecera ${say.count(header)}.`,
      null,
      'Ponga entre comillas el campo que contenga un separador.',
    ],
    tooFew: ({ fields, header }, say) => [
      `La fila tiene ${fields === 1 ? '1 campo' : `${say.count(fields)} campos`}, y la cabecera ${say.count(header)}: falta el tiempo.`,
      null,
      'Deje el campo vacío entre separadores para quien no llegó a meta.',
    ],
    noTime: ({ found }, say) => [
      `${say.found(found)} no es un tiempo de meta.`,
      'Debe ser un tiempo mayor que 0 como H:MM:SS, MM:SS o segundos, o bien DNF, DNS o nada.',
    ],
    more: ({ rows }, say) => [`Desde aquí no se pueden leer ${rowsText(rows, say)} más.`],
  }),
  'results-column': byProblem({
    several: ({ column, count }, say) => [
      `Hay ${say.count(count)} columnas con el nombre ${say.found(column)}.`,
      'Debe haber una.',
      'Cambie el nombre de las otras.',
    ],
    none: ({ column, header, more }, say) => [
      `No hay ninguna columna ${say.found(column)}.`,
      `La cabecera tiene ${listed(header, more, say)}.`,
    ],
  }),
  'results-left-out': ({ leftOut, rows, column }, say) => [
    leftOut === 1
      ? `1 de ${rowsText(rows, say)} no tiene tiempo de meta en la columna ${say.found(column)} y se deja fuera (DNF, DNS o vacía).`
      : `${say.count(leftOut)} de ${rowsText(rows, say)} no tienen tiempo de meta en la columna ${say.found(column)} y se dejan fuera (DNF, DNS o vacías).`,
  ],
  'splits-left-out': byProblem({
    twice: ({ columns }, say) => [
      `Las columnas ${say.all(columns.map((column) => say.found(column)))} nombran la misma distancia, así que ninguna se usa como tiempo de paso.`,
      null,
      'Cambie el nombre de la que no sea un tiempo desde la salida.',
    ],
    unread: ({ column, rows, found, used }, say) => [
      `La columna ${say.found(column)} lleva el nombre de una distancia, pero tiene ${say.found(found)}${rows > 1 ? ` y ${say.count(rows - 1)} más` : ''} que no ${rows > 1 ? 'son tiempos' : 'es un tiempo'}.`,
      used ? 'Esos tiempos de paso se dejan fuera.' : 'No se usa como tiempo de paso.',
    ],
    beyond: ({ columns, length }, say) => [
      `Los tiempos de paso ${say.all(columns.map((column) => say.found(column)))} no están antes de la meta, en ${say.far(length)}, y se dejan fuera.`,
    ],
    runners: ({ runners, of }, say) => [
      `Los tiempos de paso de ${say.count(runners)} de ${say.count(of)} personas no encajan con su tiempo de meta; su pérdida de ritmo se toma de su ritmo.`,
    ],
    all: ({ runners, of }, say) => [
      `Los tiempos de paso de ${say.count(runners)} de ${say.count(of)} personas no encajan con su tiempo de meta, así que no se usa ninguno.`,
      'Deben ser tiempos desde la salida, contados como el de meta.',
      'Corrija las columnas con nombre de distancia, o cambie su nombre.',
    ],
  }),
};
