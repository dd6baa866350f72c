/**
 * Content lines of iCalendar (RFC 5545): texts escaped (3.3.11), lines folded at 75 octets of UTF-8 with no letter
 * cut (3.1), CRLF; instants as UTC (3.3.5, form 2); and identifiers that stay the same (3.8.4.7; RFC 9562, version 8).
 */

/** Controls that the standard forbids, and halves of surrogate pairs, which UTF-8 cannot hold. */
const UNHELD = /[^\t\n\r\P{Cc}]|\p{Cs}/gu;

/** A value of type TEXT. Line ends of all kinds become `\n`. */
export const textValue = (text: string): string =>
  text
    .replaceAll(UNHELD, '\uFFFD')
    .replaceAll(/[\\;,]/gu, (sign) => `\\${sign}`)
    .replaceAll(/\r\n|\r|\n/gu, '\\n');

/** `20270912T093000Z`. */
export const instantValue = (instant: number): string => new Date(instant).toISOString().replaceAll(/[-:]|\.\d+/gu, '');

const LONGEST = 75;

const octets = (sign: string): number => {
  const code = sign.codePointAt(0)!;
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x1_0000 ? 3 : 4;
};

/** A content line with its CRLF, in as many lines as it needs; each but the first begins with a space. */
export function foldedLine(line: string): string {
  let folded = '';
  let length = 0;
  for (const sign of line) {
    const more = octets(sign);
    if (length + more > LONGEST) {
      folded += '\r\n ';
      length = 1;
    }
    folded += sign;
    length += more;
  }
  return `${folded}\r\n`;
}

const [BASIS, PRIME, BITS] = [0x6c62272e07bb014262b821756295c58dn, 0x0000000001000000000000000000013bn, 128];

/** FNV-1a, 128 bits, of a text's UTF-8 (IETF draft-eastlake-fnv): no secret, but the same wherever it is computed. */
export function fnv128(text: string): bigint {
  let hash = BASIS;
  // Percent-encoding names the very octets; a half of a surrogate pair it would refuse.
  const bytes = encodeURIComponent(text.replaceAll(/\p{Cs}/gu, '\uFFFD')).matchAll(/%([0-9A-F]{2})|([^%])/gu);
  for (const [, hex, plain] of bytes) {
    hash = BigInt.asUintN(
      BITS,
      (hash ^ BigInt(hex === undefined ? plain!.codePointAt(0)! : Number.parseInt(hex, 16))) * PRIME,
    );
  }
  return hash;
}

/** A UUID that is always the same for the same texts. */
export function uidOf(...texts: readonly string[]): string {
  const hex = fnv128(JSON.stringify(texts)).toString(16).padStart(32, '0');
  const variant = '89ab'[Number.parseInt(hex[16]!, 16) % 4]!;
  return [
    hex.slice(0, 8),
    hex.slice(8, 12),
    `8${hex.slice(13, 16)}`,
    `${variant}${hex.slice(17, 20)}`,
    hex.slice(20),
  ].join('-');
}
