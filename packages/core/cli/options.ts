/** Options that several commands share. */
import type { OptionSpec } from './call.ts';

/** Options that every command has. */
export const COMMON: readonly OptionSpec[] = [
  { name: 'json', kind: 'flag', about: 'print JSON: metres, degrees, longitude first' },
  { name: 'units', kind: ['metric', 'imperial'], about: 'units of the printed tables (usually those of the plan)' },
  { name: 'out', kind: 'text', shown: 'FILE', about: 'write to a file; an existing one is kept' },
  { name: 'force', kind: 'flag', about: 'let --out replace an existing file' },
  { name: 'help', kind: 'flag', about: 'print this help' },
];

/** Which line of a GPX file is the course, and how it is read. */
export const LINE: readonly OptionSpec[] = [
  {
    name: 'track',
    kind: 'text',
    shown: 'NAME',
    about: 'name or number of the track or route, if the file has several',
  },
  {
    name: 'gaps',
    kind: ['refuse', 'join', 'skip'],
    about: 'what to do with gaps over 50 m between segments (default: refuse)',
  },
  { name: 'reverse', kind: 'flag', about: 'read the course from its last point to its first' },
];

/** What is known of the distances of a course. */
export const KNOWN: readonly OptionSpec[] = [
  { name: 'length', kind: 'length', shown: '42.195km', about: 'the known length of the course' },
  {
    name: 'mark',
    kind: 'repeated',
    shown: 'LON,LAT=10km',
    about: 'a known mark; also NAME=10km, or NAME; may be repeated',
  },
];

export const VARIANT: OptionSpec = {
  name: 'variant',
  kind: 'text',
  shown: 'NAME',
  about: 'apply this variant of the plan',
};
