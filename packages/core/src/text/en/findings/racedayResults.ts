/** Past results that cannot be read, or were read with something left out. */
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

const rowsText = (rows: number, say: Say): string => (rows === 1 ? '1 row' : `${say.count(rows)} rows`);

export const results: Pick<TextsOf<RacedayParams>, Codes> = {
  'results-missing': ({ csv, column }, say) => [
    `Finish times come from column ${say.found(column)} of ${say.found(csv)}, which was not read.`,
    null,
    'Add that file, with at least one time in that column.',
  ],
  'results-empty': byProblem({
    noLine: ({ column }, say) => [
      'The file is empty.',
      `It should have a header with a column ${say.found(column)}, and a row for each finisher.`,
    ],
    noTimes: ({ column, rows }, say) => [
      `Column ${say.found(column)} has no finish time in ${rowsText(rows, say)}.`,
      'It should have at least one.',
    ],
  }),
  'results-unread': byProblem({
    openQuote: () => ['A quote is never closed.', 'It should be closed, and quotes inside a field should be doubled.'],
    afterQuote: () => [
      'Text follows a closing quote.',
      'There should be a delimiter or the end of the line; quotes inside a field should be doubled.',
    ],
    tooMany: ({ fields, header }, say) => [
      `The row has ${say.count(fields)} fields, and the header ${say.count(header)}.`,
      null,
      'Put a field that holds a delimiter in quotes.',
    ],
    tooFew: ({ fields, header }, say) => [
      `The row has ${fields === 1 ? '1 field' : `${say.count(fields)} fields`}, and the header ${say.count(header)}: the time is missing.`,
      null,
      'Leave the field empty between delimiters for those who did not finish.',
    ],
    noTime: ({ found }, say) => [
      `${say.found(found)} is not a finish time.`,
      'It should be a time over 0 as H:MM:SS, MM:SS or seconds, or DNF, DNS or nothing.',
    ],
    more: ({ rows }, say) => [
      rows === 1
        ? '1 more row from here on cannot be read.'
        : `${say.count(rows)} more rows from here on cannot be read.`,
    ],
  }),
  'results-column': byProblem({
    several: ({ column, count }, say) => [
      `${say.count(count)} columns are named ${say.found(column)}.`,
      'There should be one.',
      'Rename the others.',
    ],
    none: ({ column, header, more }, say) => [
      `There is no column ${say.found(column)}.`,
      `The header has ${listed(header, more, say)}.`,
    ],
  }),
  'results-left-out': ({ leftOut, rows, column }, say) => [
    `${say.count(leftOut)} of ${rowsText(rows, say)} ${leftOut === 1 ? 'has' : 'have'} no finish time in column ${say.found(column)} and ${leftOut === 1 ? 'is' : 'are'} left out (DNF, DNS or empty).`,
  ],
  'splits-left-out': byProblem({
    twice: ({ columns }, say) => [
      `Columns ${say.all(columns.map((column) => say.found(column)))} name the same distance, so neither is used as a split.`,
      null,
      'Rename the one that is no time from the start.',
    ],
    unread: ({ column, rows, found, used }, say) => [
      `Column ${say.found(column)} is named by a distance but has ${say.found(found)}${rows > 1 ? ` and ${say.count(rows - 1)} more` : ''} that ${rows > 1 ? 'are' : 'is'} no time.`,
      used ? 'Those runners’ splits there are left out.' : 'It is not used as a split.',
    ],
    beyond: ({ columns, length }, say) => [
      `The splits ${say.all(columns.map((column) => say.found(column)))} are not before the finish at ${say.far(length)}, and are left out.`,
    ],
    runners: ({ runners, of }, say) => [
      `The splits of ${say.count(runners)} of ${say.count(of)} finishers do not fit their finish times, so these slow as their pace tells.`,
    ],
    all: ({ runners, of }, say) => [
      `The splits of ${say.count(runners)} of ${say.count(of)} finishers do not fit their finish times, so none are used.`,
      'They should be times from the start, counted as the finish time is.',
      'Correct the columns that are named by distances, or rename them.',
    ],
  }),
};
