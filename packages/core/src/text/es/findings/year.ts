/** What is wrong with counts and rosters that people fill in. */
import type { Supply } from '../../../kinds.ts';
import { byProblem } from '../../byProblem.ts';
import type { YearParams } from '../../params/year.ts';
import type { Say } from '../../say.ts';
import type { TextsOf } from '../../sentence.ts';
import { wordOf } from '../../some.ts';
import { supplyWords } from '../supplyWords.ts';
import { year as words } from '../year.ts';

const quoted = (names: readonly string[], more: number, say: Say): string =>
  say.all([...names.map(say.quote), ...(more > 0 ? [`${say.count(more)} más`] : [])]);

const packs = (kind: Supply['kind'], count: number): string => supplyWords.kinds[kind][count === 1 ? 0 : 1];

/** "2,5". */
const amount = (count: number, say: Say): string =>
  Number.isInteger(count) ? say.count(count) : String(count).replace('.', ',');

const PIECES = { cups: 'vasos', gels: 'geles' } as const;

export const year: TextsOf<YearParams> = {
  'table-unread': byProblem({
    openQuote: () => [
      'Hay unas comillas abiertas que no se cierran.',
      null,
      'Ciérrelas, o duplique las comillas dentro de un campo.',
    ],
    afterQuote: () => [
      'Hay texto tras unas comillas de cierre.',
      'Las comillas de cierre deberían terminar el campo; dentro de un campo van duplicadas.',
    ],
    noLine: () => ['El archivo está vacío.', 'Su primera línea debería ser un encabezado.'],
    noRows: () => ['El archivo tiene encabezado y ninguna fila debajo.'],
    tooMany: ({ fields, header }, say) => [
      `La fila tiene ${say.count(fields)} campos, y el encabezado ${say.count(header)}.`,
      null,
      'Ponga entre comillas el campo que contiene un separador.',
    ],
    twice: ({ column }, say) => [
      `Una columna como ${say.quote(column)} aparece dos veces.`,
      null,
      'Quite una de las dos.',
    ],
    none: ({ column, header, more }, say) => [
      `No hay ninguna columna ${say.quote(column)}.`,
      `El encabezado tiene ${quoted(header, more, say)}.`,
    ],
    more: ({ rows }, say) => [
      rows === 1
        ? 'Desde aquí hay 1 fila más que no se puede leer.'
        : `Desde aquí hay ${say.count(rows)} filas más que no se pueden leer.`,
    ],
  }),
  'table-column-unknown': ({ columns, more }, say) => [
    columns.length + more === 1
      ? `La columna ${quoted(columns, more, say)} no se conoce y se omite.`
      : `Las columnas ${quoted(columns, more, say)} no se conocen y se omiten.`,
  ],
  'leftovers-unread': byProblem({
    noStation: () => ['La fila no nombra ningún puesto.', null, 'Dé el identificador o el nombre de un puesto.'],
    unknownStation: ({ found, known, more }, say) => [
      `El plan no tiene ningún puesto ${say.found(found)}.`,
      known.length === 0 ? 'No tiene puestos.' : `Tiene ${quoted(known, more, say)}.`,
    ],
    twice: ({ station, line }, say) => [
      `${say.station(station)} está contado dos veces, aquí y en la línea ${line}.`,
      null,
      'Deje una de las dos filas.',
    ],
    notNumber: ({ count, found }, say) => [
      `${say.found(found)} no es un número de ${wordOf(words.left, count)}.`,
      'Debería ser un número desde 0, o nada si nadie contó.',
    ],
    tooMany: ({ item, left, sent, pieces }, say) => [
      pieces === true
        ? `Se contaron ${amount(left, say)} ${wordOf(PIECES, item as keyof typeof PIECES)}, y se enviaron ${say.count(sent)}.`
        : `Se contaron ${amount(left, say)} ${packs(item, left)}, y se enviaron ${say.count(sent)}.`,
      null,
      'Cuente de nuevo, o compruebe lo que se envió al puesto.',
    ],
    notSent: ({ item }) => [
      `El plan no envía ${packs(item, 2)} a este puesto.`,
      null,
      'Deje vacío el recuento, o corrija lo que ofrece el puesto.',
    ],
    whichDrink: ({ drink }, say) => [
      `Se contaron vasos pero no las garrafas de ${say.served(drink)}: no se sabe cuántos vasos fueron de cada bebida.`,
      null,
      'Cuente las garrafas llenas de ambas bebidas.',
    ],
    noDrink: ({ cups }, say) => [
      `Faltan ${say.count(cups)} vasos, pero no se abrió ninguna garrafa.`,
      null,
      'Cuente de nuevo vasos y garrafas.',
    ],
    noCounts: () => ['No hay nada contado.', null, 'Rellene al menos un recuento.'],
  }),
  'roster-unread': byProblem({
    noName: () => ['La fila no tiene nombre.', null, 'Dé un nombre, o quite la fila.'],
    noStation: () => [
      'La fila no nombra ningún puesto para esta persona.',
      null,
      'Dé el identificador o el nombre de un puesto.',
    ],
    nobody: () => ['No se puede leer a nadie del archivo.', null, 'Corrija las filas, o elija otro archivo.'],
    unknownStation: ({ found, known, more }, say) => [
      `Alguien está asignado a ${say.found(found)}, un puesto que el plan no tiene.`,
      known.length === 0 ? 'No tiene puestos.' : `Tiene ${quoted(known, more, say)}.`,
    ],
    notTime: ({ found }, say) => [`${say.found(found)} no es una hora.`, 'Debería ser una hora como «07:30».'],
    backwards: ({ from, until }, say) => [
      `Esta persona llega a las ${say.clock(from)} y se va a las ${say.clock(until)}.`,
      'La segunda hora debería ser posterior; tras medianoche las horas pasan de 24.',
    ],
    twice: ({ line }) => [
      `La misma persona con las mismas horas ya está en la línea ${line}.`,
      null,
      'Deje una de las dos filas.',
    ],
  }),
};
