/** What the XML parser (saxes 6) refuses, sorted by what a reader can do about it, and files that are no XML at all. */

import type { XmlFault } from '../text/params/gpx.ts';
import { excerpt, type RefusalOf } from './trouble.ts';

/** By the parser's own messages, the first that fits; what the brackets hold is the name. */
const FAULTS: readonly (readonly [RegExp, XmlFault])[] = [
  [/^undefined entity|entity name|empty entity/, 'entity'],
  [/^malformed character entity/, 'numberedCharacter'],
  [/^attribute without value/, 'noValue'],
  [/^unquoted attribute value/, 'unquoted'],
  [/^duplicate attribute: (.*)\.$/, 'duplicate'],
  [/^no whitespace between attributes/, 'noSpace'],
  [/^documents may contain only one root/, 'secondRoot'],
  [/XML declaration must (?:be|appear) at the start/, 'lateDeclaration'],
  [/^text data outside of root node/, 'textOutside'],
  [/^unmatched closing tag: (.*)\.$/, 'unmatched'],
  [/^malformed comment/, 'comment'],
  [/]]>/, 'bracketsInText'],
  [/tag name|closing tag|forward-slash/, 'brokenTag'],
  [/^disallowed character in attribute name/, 'attributeName'],
  [/^disallowed character/, 'character'],
  [/^inappropriately located doctype/, 'doctype'],
  [
    /XML declaration|value must be quoted|value required|whitespace required|expected|version number|encoding value|standalone value/,
    'declaration',
  ],
  [/processing instruction/, 'instruction'],
];

/** The refusal for one message of the parser. */
export function malformed(parserMessage: string): RefusalOf<'gpx-malformed'> {
  for (const [pattern, fault] of FAULTS) {
    const match = pattern.exec(parserMessage);
    if (match !== null) return { code: 'gpx-malformed', params: { fault, name: excerpt(match[1] ?? '') } };
  }
  return { code: 'gpx-malformed', params: { fault: 'other', name: '' } };
}

const HTML = /^<(!doctype\s+html|html)\b/i;

/** Why this is no XML at all, by the first characters that are not white space; `null` where it may be. */
export function notXml(head: string): RefusalOf<'gpx-not-xml'> | null {
  const start = head.trimStart();
  if (start === '') return null;
  if (HTML.test(start)) return { code: 'gpx-not-xml', params: { kind: 'html' } };
  if (start.startsWith('<')) return null;
  return {
    code: 'gpx-not-xml',
    params: { kind: /^[[{]/.test(start) ? 'json' : 'text', found: excerpt(start) },
  };
}

export const DOCTYPE: RefusalOf<'gpx-doctype'> = { code: 'gpx-doctype', params: {} };

export const NUL: RefusalOf<'gpx-binary'> = { code: 'gpx-binary', params: { kind: 'nul' } };

/** Where the outermost element is not `<gpx>`. */
export const otherRoot = (name: string): RefusalOf<'gpx-not-gpx'> => ({
  code: 'gpx-not-gpx',
  params: { root: excerpt(name) },
});
