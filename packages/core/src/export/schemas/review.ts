/** JSON Schema of what `halfcup review --json` prints. */
import { THEMES } from '../../review/themes.ts';
import { findings } from './finding.ts';
import {
  DRAFT,
  type JsonSchema,
  count,
  length,
  listOf,
  number,
  orNull,
  position,
  record,
  side,
  text,
  tuple,
  twoNumbers,
} from './shared.ts';

const severity: JsonSchema = { enum: ['error', 'warning', 'note'] };
const sha256: JsonSchema = {
  type: 'string',
  pattern: '^[0-9a-f]{64}$',
  description: 'SHA-256 of the bytes of the file, hexadecimal.',
};

const checkRun: JsonSchema = record(
  { code: text, severity, title: text, source: text, ran: { type: 'boolean' }, found: count },
  {
    theme: { enum: [...THEMES], description: 'What it is about.' },
    reason: { ...text, description: 'Why it could not run.' },
    reasonCode: { ...text, description: 'The same as a key that no language changes.' },
    cannotTell: { ...count, description: 'Of those found, how many could not be decided.' },
  },
);

const verdict: JsonSchema = record(
  {
    station: text,
    item: text,
    verdict: { enum: ['holds', 'fails', 'cannot tell'] },
    measured: number,
    limit: twoNumbers,
    margin: length,
    move: { ...number, description: 'Metres to move it, downstream positive.' },
    at: position,
  },
  {
    end: { enum: ['from', 'to'] },
    course: text,
    by: { enum: ['position', 'wheel'] },
    reference: { enum: ['placed', 'planned'] },
    side,
    confidence: number,
  },
);

const builtStation: JsonSchema = record(
  {
    station: text,
    planned: position,
    recorded: position,
    distance: length,
    margin: length,
    limit: length,
    verdict: { enum: ['holds', 'fails', 'cannot tell'] },
  },
  {
    course: text,
    item: { ...text, description: 'The table by which it is told.' },
    along: { ...orNull(number), description: 'Of the distance, along the course, metres, downstream positive.' },
    measures: { ...tuple(number, orNull(number)), description: 'Course distances, metres: planned, recorded.' },
  },
);

/** JSON Schema (draft 2020-12) of what `halfcup review --json` prints: `ReviewDocument`. Objects may gain keys in later versions. */
export const reviewSchema: JsonSchema = {
  $schema: DRAFT,
  title: 'A review',
  ...record(
    {
      plan: record({ name: text, sha256 }),
      inputs: listOf(record({ file: text, sha256 })),
      checks: listOf(checkRun),
      findings,
      counts: record(
        { error: count, warning: count, note: count, waived: count },
        { cannotTell: count, notRun: count },
      ),
    },
    {
      madeBy: { ...text, description: 'The program and its version.' },
      file: text,
      placed: listOf(verdict),
      built: listOf(builtStation),
    },
  ),
};
