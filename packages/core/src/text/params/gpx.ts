/** Named parameters of the findings on reading GPX, by code. Lengths in metres, times in seconds; ids, not names. */

import type { LimitParams } from './limits.ts';

/** Nothing to say but the code. */
type None = Readonly<Record<string, never>>;

/** The end of a long list: so many more than were listed, and how many there are in all. */
export interface Repeats {
  readonly more: number;
  readonly all: number;
}

/** A text that is no number, one line and cut; empty for `empty` and for `mark`, a "not a number" mark. */
export interface BadNumber {
  readonly found: string;
  readonly fault: 'word' | 'empty' | 'comma' | 'large' | 'mark';
}

/** `element`: the point's tag. `swapped`: latitude and longitude have changed places; `wrapped`: a longitude of 0 to 360, `instead` is right. */
type PointFault = { readonly element: string } & (
  | { readonly fault: 'missing' }
  | BadNumber
  | { readonly fault: 'range'; readonly found: string; readonly hint: 'swapped' | null }
  | { readonly fault: 'range'; readonly found: string; readonly hint: 'wrapped'; readonly instead: number }
);

/** What is not well formed; `name` is that of an attribute or a tag. */
export type XmlFault =
  | 'attributeName'
  | 'bracketsInText'
  | 'brokenTag'
  | 'character'
  | 'comment'
  | 'crossed'
  | 'declaration'
  | 'doctype'
  | 'duplicate'
  | 'entity'
  | 'instruction'
  | 'lateDeclaration'
  | 'noSpace'
  | 'noValue'
  | 'numberedCharacter'
  | 'other'
  | 'secondRoot'
  | 'textOutside'
  | 'unmatched'
  | 'unquoted';

/** A track or route to choose from. */
export interface LineName {
  readonly kind: 'track' | 'route';
  readonly name: string | null;
}

/** `file`: `null` where the place of the finding names it. `lines`: the first of `count`. */
type LineUnknown = { readonly file: string | null } & (
  | { readonly problem: 'none' }
  | { readonly problem: 'empty'; readonly track: string }
  | { readonly problem: 'unknown'; readonly track: string; readonly lines: readonly LineName[]; readonly count: number }
  | {
      readonly problem: 'ambiguous';
      readonly track: string;
      readonly same: number;
      readonly lines: readonly LineName[];
      readonly count: number;
    }
);

/** What choosing a line of a file can find. */
export interface TrackParams {
  'track-unknown': LineUnknown;
  'track-chosen': { readonly lines: readonly LineName[]; readonly count: number; readonly taken: number };
}

export interface GpxParams extends TrackParams, LimitParams {
  'gpx-empty': None;
  'gpx-truncated': { readonly inside: 'start' | 'tag' } | { readonly inside: 'element'; readonly element: string };
  'gpx-binary': { readonly kind: 'compressed' | 'binary' | 'nul' };
  'gpx-encoding':
    | { readonly problem: 'notUtf16' | 'unsupported'; readonly encoding: string }
    | { readonly problem: 'invalid'; readonly encoding: string; readonly byte: string };
  'gpx-not-xml': { readonly kind: 'html' } | { readonly kind: 'json' | 'text'; readonly found: string };
  'gpx-not-gpx': { readonly root: string };
  'gpx-doctype': None;
  'gpx-malformed': { readonly fault: XmlFault; readonly name: string };
  'gpx-latitude': PointFault | Repeats;
  'gpx-longitude': PointFault | Repeats;
  'gpx-elevation': BadNumber | Repeats;
  'gpx-hdop': BadNumber | Repeats;
  'gpx-misplaced': { readonly element: string; readonly home: string } | Repeats;
}
