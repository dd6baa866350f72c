/**
 * Takes the features of a GeoJSON text apart as it comes, so that no more than one of them is held at a time.
 * Model: RFC 8259; a text outside the features is given as a whole at the end, with `[]` in their place.
 * Lines and columns count from 1, columns in UTF-16 units.
 */

/** A piece of the text and where it begins. */
export interface Piece {
  readonly text: string;
  readonly line: number;
  readonly column: number;
}

export interface Splitter {
  /** Takes the next text, cut anywhere. */
  readonly write: (text: string) => void;
  /** The place of the next character. */
  readonly here: () => { readonly line: number; readonly column: number };
  /** All outside the features; `open`: braces that are not closed. */
  readonly close: () => { readonly frame: readonly Piece[]; readonly open: number; readonly end: Piece };
}

const [QUOTE, BACKSLASH, NEWLINE, COMMA] = [34, 92, 10, 44];
const [OPEN_LIST, CLOSE_LIST, OPEN_BRACE, CLOSE_BRACE] = [91, 93, 123, 125];

/** Calls `feature` with each entry of the list `features` of the outermost object. */
export function splitFeatures(feature: (piece: Piece) => void): Splitter {
  const frame: Piece[] = [];
  let [depth, line, column] = [0, 1, 1];
  let [quoted, escaped] = [false, false];
  // One more than the features begun so far; 0 outside the list.
  let listed = 0;
  // The piece at work: what came of it in earlier texts, and where it begins.
  let held = '';
  let place = { line: 1, column: 1 };
  // The last string of the outermost object, which is a key where a list follows it.
  let [key, inKey] = ['', false];

  const begin = (ahead: number): void => {
    held = '';
    place = { line, column: column + ahead };
  };
  const end = (text: string): Piece => ({ text: held + text, ...place });

  const write = (text: string): void => {
    let from = 0;
    for (let i = 0; i < text.length; i++) {
      const code = text.charCodeAt(i);
      if (quoted) {
        if (escaped) escaped = false;
        else if (code === BACKSLASH) escaped = true;
        else if (code === QUOTE) [quoted, inKey] = [false, false];
        if (inKey && key.length < 20) key += text[i]!;
      } else if (code === QUOTE) {
        quoted = true;
        if (depth === 1) [key, inKey] = ['', true];
      } else if (code === OPEN_LIST && depth === 1 && key === 'features') {
        frame.push(end(text.slice(from, i + 1)));
        [depth, listed, from] = [2, 1, i + 1];
        begin(1);
      } else if (listed > 0 && depth === 2 && (code === COMMA || code === CLOSE_LIST)) {
        const piece = end(text.slice(from, i));
        if (code === COMMA || listed > 1 || piece.text.trim() !== '') feature(piece);
        if (code === CLOSE_LIST) [depth, listed, key] = [1, 0, ''];
        else listed++;
        from = code === COMMA ? i + 1 : i;
        begin(from - i);
      } else if (code === OPEN_LIST || code === OPEN_BRACE) depth++;
      // A brace that closes nothing in the list stays in its piece, which is then no JSON.
      else if ((code === CLOSE_LIST || code === CLOSE_BRACE) && !(listed > 0 && depth === 2)) depth--;
      if (code === NEWLINE) [line, column] = [line + 1, 1];
      else column++;
    }
    held += text.slice(from);
  };

  const close = (): ReturnType<Splitter['close']> => {
    const last = end('');
    if (listed === 0) frame.push(last);
    return { frame, open: depth, end: listed > 0 ? last : { text: '', line, column } };
  };

  return { write, here: () => ({ line, column }), close };
}
