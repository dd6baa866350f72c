/** JSON whose long runs of spaces are cut short: the parser puts trivia together sign by sign, and keeps hundreds of bytes for each. */
import type { Node } from 'jsonc-parser';
import { endOfText } from '../jsonExtent.ts';

/** Spaces that may stand in a row. */
const ROW = 1000;
const SPACE = 32;
const TAB = 9;
const QUOTE = 34;

/** A text to parse, and where its signs stand in the one that it was made of. */
export interface Shortened {
  readonly text: string;
  readonly whole: (offset: number) => number;
}

/** The same text where no run outside texts is long. */
export function withoutLongRuns(json: string): Shortened {
  const parts: string[] = [];
  // Offsets from which so many signs are left out before.
  const cuts: { readonly from: number; readonly left: number }[] = [];
  let begin = 0;
  let left = 0;
  let run = 0;
  for (let at = 0; at <= json.length; at++) {
    const sign = json.charCodeAt(at);
    if (sign === SPACE || sign === TAB) {
      run += 1;
      continue;
    }
    if (run > ROW) {
      parts.push(json.slice(begin, at - run + ROW));
      begin = at;
      left += run - ROW;
      cuts.push({ from: at - left, left });
    }
    run = 0;
    if (sign === QUOTE) at = endOfText(json, at);
  }
  if (cuts.length === 0) return { text: json, whole: (offset) => offset };
  const text = parts.join('') + json.slice(begin);
  return { text, whole: (offset) => offset + (cuts.findLast(({ from }) => from <= offset)?.left ?? 0) };
}

type Movable = { -readonly [key in keyof Node]: Node[key] };

/** Puts the places of a tree back to where they are in the whole text. */
export function placeBack(node: Movable, whole: Shortened['whole']): void {
  const { offset, length, colonOffset, children = [] } = node;
  node.offset = whole(offset);
  node.length = whole(offset + length - 1) + 1 - node.offset;
  if (colonOffset !== undefined) node.colonOffset = whole(colonOffset);
  for (const child of children) placeBack(child, whole);
}
