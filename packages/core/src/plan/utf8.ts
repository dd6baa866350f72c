/**
 * The text of a file that should be UTF-8: a plan, a table, a drawing. Nothing is replaced: a byte that is no part of a
 * character refuses the whole. Source: Unicode 15 table 3-7 for well-formed UTF-8.
 */
import { type Finding, type Result, bad, good } from '../finding.ts';
import { utf8Valid } from '../gpx/decode.ts';
import type { EncodingProblem } from '../text/params/plan.ts';
import { type Shape, aText, want } from '../wants.ts';
import { planFinding } from './fault.ts';

declare const TextDecoder: new (
  label: string,
  options: { readonly fatal: boolean; readonly ignoreBOM: boolean },
) => { decode(bytes: Uint8Array): string };

/** Bytes of another window or thread are bytes too, so no `instanceof`. */
const someBytes: Shape = (value) =>
  Object.prototype.toString.call(value) === '[object Uint8Array]'
    ? null
    : { path: '', expected: 'the bytes of a file (Uint8Array)', found: value };

/**
 * The text of a file's bytes, which should be UTF-8; a byte order mark stays at its beginning. Refused, with the place of
 * the first byte that is no UTF-8, where the file is in another encoding or no text. `file` is the name that findings give.
 *
 * @example
 * ```ts
 * import { textFrom } from '@halfcup/core/plan';
 * textFrom(new Uint8Array([67, 97, 102, 195, 169]), 'plan.json'); // → { ok: true, value: 'Café', findings: [] }
 * textFrom(new Uint8Array([67, 97, 102, 233]), 'plan.json').findings.map(({ where }) => where.column); // → [4]
 * ```
 */
export function textFrom(bytes: Uint8Array, file: string): Result<string> {
  want('textFrom', 'bytes', someBytes, bytes);
  want('textFrom', 'file', aText, file);
  const wide = wideOf(bytes);
  if (wide !== null) return bad([planFinding('text-encoding', wide, { severity: 'error', where: { file } })]);
  const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  try {
    return good(decoder.decode(bytes));
  } catch {
    return bad([invalidAt(bytes, utf8Valid(bytes), file)]);
  }
}

/** UTF-16 and UTF-32 by their marks, or by the zero of a first character; `null` for anything else. */
function wideOf(bytes: Uint8Array): EncodingProblem | null {
  const [a = -1, b = -1, c = -1, d = -1] = bytes;
  if ((a === 0xff && b === 0xfe && c === 0 && d === 0) || (a === 0 && b === 0 && c === 0xfe && d === 0xff))
    return { problem: 'wide', encoding: 'UTF-32' };
  const marked = (a === 0xff && b === 0xfe) || (a === 0xfe && b === 0xff);
  const bare = (a > 0 && b === 0 && c > 0 && d === 0) || (a === 0 && b > 0 && c === 0 && d > 0);
  return marked || bare ? { problem: 'wide', encoding: 'UTF-16' } : null;
}

function invalidAt(bytes: Uint8Array, at: number, file: string): Finding {
  let line = 1;
  let start = 0;
  for (let i = bytes.indexOf(10); i >= 0 && i < at; i = bytes.indexOf(10, i + 1)) {
    line++;
    start = i + 1;
  }
  let column = 1;
  // Bytes that only go on with a character are no column of their own.
  for (let i = start; i < at; i++) if ((bytes[i]! & 0xc0) !== 0x80) column++;
  const byte = bytes[at]!.toString(16).toUpperCase().padStart(2, '0');
  const problem = bytes.includes(0) ? 'binary' : 'invalid';
  return planFinding(
    'text-encoding',
    { problem, byte, at: at + 1 },
    { severity: 'error', where: { file, line, column } },
  );
}
