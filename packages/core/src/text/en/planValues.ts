/** Parts of the sentences on plans: what a value should be, and what may have been meant. */
import type { Found } from '../found.ts';
import type { Accepted, Choice, PlainKind, QuantityKind, Thing } from '../params/plan.ts';
import type { Unknown } from '../params/unknown.ts';
import { humanised, thingName } from '../planThing.ts';
import type { Say } from '../say.ts';
import { planThings } from './planThings.ts';

/** "sign distance". */
export const nameOf = (thing: Thing): string => thingName(thing, planThings, humanised(thing.keys));

const QUANTITIES: Readonly<Record<QuantityKind, readonly [noun: string, example: string]>> = {
  length: ['a length', '100 yd or 90 m'],
  duration: ['a duration', '30 min or 4:25:00'],
  volume: ['a volume', '7 fl oz or 200 ml'],
  mass: ['a mass', '8.3 lb or 3.9 kg'],
};

const PLAIN: Readonly<Record<PlainKind, (say: Say) => string>> = {
  text: () => 'text',
  number: () => 'a number',
  whole: () => 'a whole number',
  boolean: () => 'true or false',
  list: () => 'a list',
  object: () => 'an object in braces',
  other: () => 'another kind of value',
  filledText: () => 'text that is not empty',
  id: ({ quote }) => `an id that is not empty; ${quote('start')} and ${quote('finish')} are reserved`,
  file: ({ quote }) => `a file in the plan’s own folder or below, such as ${quote('tracks/full.gpx')}`,
  date: ({ quote }) => `a date from 1900 to 2999 such as ${quote('2027-09-12')}`,
  timeZone: ({ quote }) => `an IANA time zone such as ${quote('Atlantic/Azores')} or ${quote('UTC')}`,
  language: ({ quote }) => `a language tag such as ${quote('en')}`,
  clock: ({ quote }) => `a clock time such as ${quote('08:00')} or ${quote('08:00:30')}; hours may pass 24`,
  position: () => 'a longitude and a latitude in degrees, such as [-17.4, -33.2]',
  positionWithElevation: () => 'a longitude and a latitude in degrees, with or without an elevation',
  track: () => 'the name of a track, or its number counted from 0',
  finish: () => 'a median with a spread, shares with times, a list of times, or a CSV file with a column',
  passes: ({ quote }) => `${quote('lead')}, ${quote('all')} or a list of passes, each with its race and number`,
};

const PIECES = { entries: ['entry', 'entries'], characters: ['character', 'characters'] } as const;

/** "a length such as 100 yd or 90 m". */
export function acceptedText(accepted: Accepted, found: Found, say: Say): string {
  switch (accepted.kind) {
    case 'length':
    case 'duration':
    case 'volume':
    case 'mass': {
      const [noun, example] = QUANTITIES[accepted.kind];
      const bound = accepted.positive === true ? ' over 0,' : typeof found === 'number' ? ' of 0 or more,' : '';
      return `${noun}${bound} such as ${example}`;
    }
    case 'within':
      return `from ${say.bounds(accepted.quantity, accepted.range)}`;
    case 'oneOf':
      return say.any(accepted.values.map(say.found));
    case 'over':
      return `more than ${say.found(accepted.bound)}`;
    case 'atLeast':
      return `${say.found(accepted.bound)} or more`;
    case 'under':
      return `less than ${say.found(accepted.bound)}`;
    case 'atMost':
      return `${say.found(accepted.bound)} or less`;
    case 'fewest':
    case 'most':
      return `${accepted.kind === 'fewest' ? 'at least' : 'at most'} ${say.count(accepted.count)} ${PIECES[accepted.of][accepted.count === 1 ? 0 : 1]}`;
    default:
      return PLAIN[accepted.kind](say);
  }
}

/** What else helps with a value: the units there are, the nearest word. */
export function acceptedHint(accepted: Accepted, say: Say): string | null {
  if (accepted.kind === 'oneOf')
    return accepted.near === undefined ? null : `Did you mean ${say.found(accepted.near)}?`;
  if (accepted.kind === 'within')
    return accepted.meant === undefined ? null : `Did you mean ${say.found(accepted.meant)}?`;
  if (accepted.kind === 'file') return 'Addresses and paths that lead out of that folder are refused.';
  if ('colons' in accepted) return 'With colons it is always hours:minutes:seconds.';
  return 'units' in accepted ? `Its unit can be ${say.any(accepted.units)}.` : null;
}

/** Whether there is a value at all. */
export const isStated = (found: Found): boolean =>
  typeof found !== 'object' || found === null || found.kind !== 'nothing';

/** "“a”, “b” and 3 more". */
export function listed(words: readonly string[], more: number, say: Say): string {
  const quoted = words.map((word) => say.found(word));
  return more === 0 ? say.all(quoted) : `${quoted.join(', ')} and ${say.count(more)} more`;
}

/** "Did you mean “signs”?", else the known words: "Known here: “a”, “b” and 3 more." */
export function suggested({ near, known, more }: Unknown, what: string, none: string, say: Say): string {
  if (near !== undefined) return `Did you mean ${say.found(near)}?`;
  if (known.length === 0) return none;
  return `${what}: ${listed(known, more, say)}.`;
}

export const choiceText: Readonly<Record<Choice, string>> = {
  gpx: 'a GPX file',
  line: 'a line of points',
  parts: 'parts of other courses',
  at: 'a place by longitude and latitude',
  on: 'a place along a course',
};
