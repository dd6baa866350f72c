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
  say.all([...names.map(say.quote), ...(more > 0 ? [`${say.count(more)} more`] : [])]);

const packs = (kind: Supply['kind'], count: number): string => supplyWords.kinds[kind][count === 1 ? 0 : 1];

/** "2.5". */
const amount = (count: number, say: Say): string => (Number.isInteger(count) ? say.count(count) : String(count));

const PIECES = { cups: 'cups', gels: 'gels' } as const;

export const year: TextsOf<YearParams> = {
  'table-unread': byProblem({
    openQuote: () => ['A quote is opened and never closed.', null, 'Close it, or double quotes inside a field.'],
    afterQuote: () => [
      'Text follows a closing quote.',
      'A closing quote should end the field; quotes inside a field should be doubled.',
    ],
    noLine: () => ['The file is empty.', 'Its first line should be a header.'],
    noRows: () => ['The file has a header and no rows below it.'],
    tooMany: ({ fields, header }, say) => [
      `The row has ${say.count(fields)} fields, and the header ${say.count(header)}.`,
      null,
      'Put a field that holds a delimiter in quotes.',
    ],
    twice: ({ column }, say) => [`A column like ${say.quote(column)} is there twice.`, null, 'Remove one of the two.'],
    none: ({ column, header, more }, say) => [
      `There is no column ${say.quote(column)}.`,
      `The header has ${quoted(header, more, say)}.`,
    ],
    more: ({ rows }, say) => [
      rows === 1
        ? '1 more row from here on cannot be read.'
        : `${say.count(rows)} more rows from here on cannot be read.`,
    ],
  }),
  'table-column-unknown': ({ columns, more }, say) => [
    columns.length + more === 1
      ? `The column ${quoted(columns, more, say)} is not known and is left out.`
      : `The columns ${quoted(columns, more, say)} are not known and are left out.`,
  ],
  'leftovers-unread': byProblem({
    noStation: () => ['The row names no station.', null, 'Give the id or the name of a station.'],
    unknownStation: ({ found, known, more }, say) => [
      `The plan has no station ${say.found(found)}.`,
      known.length === 0 ? 'It has no stations.' : `It has ${quoted(known, more, say)}.`,
    ],
    twice: ({ station, line }, say) => [
      `${say.station(station)} is counted twice, here and in line ${line}.`,
      null,
      'Keep one of the two rows.',
    ],
    notNumber: ({ count, found }, say) => [
      `${say.found(found)} is no number of ${wordOf(words.left, count)}.`,
      'It should be a number from 0, or empty where nobody counted.',
    ],
    tooMany: ({ item, left, sent, pieces }, say) => [
      pieces === true
        ? `${amount(left, say)} ${wordOf(PIECES, item as keyof typeof PIECES)} are counted, and ${say.count(sent)} were sent.`
        : `${amount(left, say)} ${packs(item, left)} are counted, and ${say.count(sent)} were sent.`,
      null,
      'Count again, or check what the station was sent.',
    ],
    notSent: ({ item }) => [
      `The plan sends no ${packs(item, 2)} to this station.`,
      null,
      'Leave the count empty, or correct what the station serves.',
    ],
    whichDrink: ({ drink }, say) => [
      `Cups are counted but not the jugs of ${say.served(drink)}, so the cups of each drink are unknown.`,
      null,
      'Count the full jugs of both drinks.',
    ],
    noDrink: ({ cups }, say) => [
      `${say.count(cups)} cups are gone, but no jug was opened.`,
      null,
      'Count cups and jugs again.',
    ],
    noCounts: () => ['Nothing is counted.', null, 'Fill in at least one count.'],
  }),
  'roster-unread': byProblem({
    noName: () => ['The row has no name.', null, 'Give a name, or remove the row.'],
    noStation: () => ['The row names no station for this person.', null, 'Give the id or the name of a station.'],
    nobody: () => ['Nobody in the file can be read.', null, 'Correct the rows, or choose another file.'],
    unknownStation: ({ found, known, more }, say) => [
      `Somebody is put at ${say.found(found)}, a station that the plan does not have.`,
      known.length === 0 ? 'It has no stations.' : `It has ${quoted(known, more, say)}.`,
    ],
    notTime: ({ found }, say) => [`${say.found(found)} is no clock time.`, 'It should be a time such as “07:30”.'],
    backwards: ({ from, until }, say) => [
      `This person comes at ${say.clock(from)} and leaves at ${say.clock(until)}.`,
      'The second time should be the later; after midnight hours pass 24.',
    ],
    twice: ({ line }) => [
      `The same person and hours stand in line ${line} already.`,
      null,
      'Keep one of the two rows.',
    ],
  }),
};
