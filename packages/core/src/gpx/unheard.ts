/**
 * How long the parts are of which the parser tells nothing before their end: comments, CDATA sections, instructions, a
 * DOCTYPE. It keeps them whole until then, so their length is counted before it reads on (XML 1.0, 5th ed., 2.5 to 2.8).
 */

interface Part {
  readonly opens: string;
  /** Empty where it is not looked for. */
  readonly closes: string;
  readonly kind: 'text' | 'doctype';
}

const PARTS: readonly Part[] = [
  { opens: '<!--', closes: '-->', kind: 'text' },
  { opens: '<![CDATA[', closes: ']]>', kind: 'text' },
  { opens: '<?', closes: '?>', kind: 'text' },
  { opens: '<!DOCTYPE', closes: '', kind: 'doctype' },
];

/** Of a DOCTYPE so much is read as tells what kind of file it is. */
const DOCTYPE_READ = 40;

/** What is known of a piece of text. */
export interface Heard {
  /** Index of what is still open at its end; -1 where there is nothing, or it began before. */
  readonly opened: number;
  /** How much of it may be read. */
  readonly end: number;
  /** What is too long to be read further. */
  readonly past: Part['kind'] | null;
}

/** Takes a text piece by piece, no piece ending within the opening of such a part; `most` characters may each part have. */
export function createUnheard(most: number): (piece: string) => Heard {
  let open: Part | null = null;
  let before = 0;
  // The last characters of what is open, which may be the beginning of its end.
  let tail = '';

  return (piece) => {
    const next = openings(piece);
    let at = 0;
    let opened = -1;
    for (;;) {
      if (open === null) {
        at = next(at);
        if (at === -1) return { opened: -1, end: piece.length, past: null };
        open = partAt(piece, at);
        opened = at;
        at += open?.opens.length ?? 2;
        before = 0;
        tail = '';
        continue;
      }
      const closed = behindEnd(piece, at, open.closes, tail);
      const bound = open.kind === 'doctype' ? DOCTYPE_READ : most + open.closes.length;
      const length = before + (closed === -1 ? piece.length : closed) - at;
      if (length > bound) return { opened, end: at + bound - before, past: open.kind };
      if (closed === -1) {
        before = length;
        tail = (tail + piece.slice(Math.max(at, piece.length - 2))).slice(-2);
        return { opened, end: piece.length, past: null };
      }
      at = closed;
      open = null;
    }
  };
}

const partAt = (piece: string, at: number): Part | null =>
  PARTS.find(({ opens }) => piece.startsWith(opens, at)) ?? null;

/** Finds the next `<!` or `<?`; each is looked for again only once it is passed. */
function openings(piece: string): (from: number) => number {
  const found = ['<!', '<?'].map((mark) => ({ mark, at: -2 }));
  return (from) => {
    let first = -1;
    for (const one of found) {
      if (one.at !== -1 && one.at < from) one.at = piece.indexOf(one.mark, from);
      if (one.at !== -1 && (first === -1 || one.at < first)) first = one.at;
    }
    return first;
  };
}

/** Index behind the end of a part, -1 where it is not in this piece. */
function behindEnd(piece: string, from: number, closes: string, tail: string): number {
  if (closes === '') return -1;
  const joint = (tail + piece.slice(from, from + 2)).indexOf(closes);
  if (joint !== -1) return from + joint + closes.length - tail.length;
  const at = piece.indexOf(closes, from);
  return at === -1 ? -1 : at + closes.length;
}

/** The opening of such a part with which a text may end. */
const CUT = /<(?:!(?:-|\[(?:C(?:D(?:A(?:T(?:A)?)?)?)?)?|D(?:O(?:C(?:T(?:Y(?:P)?)?)?)?)?)?)?$/u;

/** How many characters at the end of a text may be the beginning of such a part. */
export function cutOpening(text: string): number {
  return CUT.exec(text.slice(-10))?.[0].length ?? 0;
}
