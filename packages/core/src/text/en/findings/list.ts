/** What is wrong with a list of stations, and what was assumed. */
import { byProblem } from '../../byProblem.ts';
import type { ListKind, ListParams } from '../../params/list.ts';
import type { Say } from '../../say.ts';
import type { TextsOf } from '../../sentence.ts';
import { listed, suggested } from '../planValues.ts';

const HEADS = 'The first row should name the columns: name, distance (or lon and lat), side, serves, tables, width.';
const OUT = 'The row was left out.';

const WANTED: Readonly<Record<ListKind, readonly [is: string, should: string, imperial?: string]>> = {
  distance: ['a course distance', 'a number or a length such as 5.2 km', 'a number or a length such as 3.1 mi'],
  width: ['a width', 'a number over 0 or a length such as 5.5 m', 'a number over 0 or a length such as 18 ft'],
  lon: ['a longitude', 'degrees from -180 to 180, such as -17.4'],
  lat: ['a latitude', 'degrees from -90 to 90, such as -33.2'],
  count: ['a count', 'a whole number of 0 or more'],
  side: ['a side', 'left or right, as the runners see it'],
  serves: ['what a station serves', 'water, sports drink or gel, or several with commas between them'],
};

const wanted = (kind: ListKind, { units }: Say): string => {
  const [, metric, imperial = metric] = WANTED[kind];
  return units === 'metric' ? metric : imperial;
};

const rowsText = (rows: number): string => (rows === 1 ? '1 station' : `${rows} stations`);

export const list: TextsOf<ListParams> = {
  'list-unread': byProblem({
    empty: () => ['The list is empty.', HEADS],
    noRows: () => ['The list has heads but no stations.', 'It should have a row for each station.'],
    openQuote: () => ['A quote is never closed.', 'It should be closed, and quotes inside a field should be doubled.'],
    afterQuote: () => [
      'Text follows a closing quote.',
      'There should be a delimiter or the end of the line; quotes inside a field should be doubled.',
    ],
  }),
  'list-heads': byProblem({
    none: () => ['The first row names no columns.', HEADS],
    noPlace: () => ['No column says where stations are.', 'There should be a column distance, or columns lon and lat.'],
    twice: ({ column }, say) => [
      `A second column ${say.found(column)} means the same as one before it.`,
      'There should be one of each.',
      'Rename or delete one.',
    ],
    unused: ({ columns, more }, say) => [
      `Columns that Halfcup does not know were not used: ${listed(columns, more, say)}.`,
    ],
  }),
  'list-row': byProblem({
    value: ({ row, column, found, kind }, say) => [
      `Row ${row}, ${column}: ${say.found(found)} is not ${WANTED[kind][0]}.`,
      `It should be ${wanted(kind, say)}.`,
      OUT,
    ],
    comma: ({ row, column, found }, say) => [
      `Row ${row}, ${column}: ${say.found(found)} can be read in two ways, with a decimal mark or in thousands.`,
      'It should be written without a thousands mark, or with one or two decimals.',
      OUT,
    ],
    noPlace: ({ row }) => [
      `Row ${row} does not say where the station is.`,
      'It should have a distance, or a longitude and a latitude.',
      OUT,
    ],
    twoPlaces: ({ row }) => [`Row ${row} has both a distance and a position.`, 'It should have one of them.', OUT],
    halfPlace: ({ row }) => [
      `Row ${row} has only one of longitude and latitude.`,
      'It should have both, or a distance.',
      OUT,
    ],
    course: ({ row, name }, say) => [
      `Row ${row}: there is no course ${say.found(name.word)}.`,
      suggested(name, 'Courses', 'There are no courses.', say),
      OUT,
    ],
    past: ({ row, measure, length }, say) => {
      const { measured, limit } = say.compareFar(measure, length);
      return [`Row ${row} is at ${measured}, but the course is ${limit} long.`, null, OUT];
    },
    before: ({ row, measure, start }, say) => {
      const { measured, limit } = say.compareFar(measure, start);
      return [`Row ${row} is at ${measured}, but the course begins at ${limit}.`, null, OUT];
    },
    fields: ({ row, fields, header }, say) => [
      `Row ${row} has ${say.count(fields)} fields, and the header ${say.count(header)}.`,
      'A field that holds a delimiter, such as a decimal comma, should be in quotes.',
      OUT,
    ],
  }),
  'list-assumed': byProblem({
    side: ({ rows }) => [
      `The list gives no side for ${rowsText(rows)}.`,
      'They were put on the right.',
      'Check the sides.',
    ],
    tables: ({ rows }) => [
      `The list gives ${rowsText(rows)} one number of tables for several kinds.`,
      'The tables were shared evenly, water first.',
      'Check the tables.',
    ],
  }),
};
