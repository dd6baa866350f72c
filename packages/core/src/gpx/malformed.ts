/** Plain sentences for what the XML parser (saxes 6) refuses, and for files that are no XML at all. */

import { quoted } from './trouble.ts';

export interface Refusal {
  readonly code: string;
  readonly message: string;
}

const SENTENCES: readonly (readonly [RegExp, string])[] = [
  [
    /^undefined entity|entity name|empty entity/,
    'Found an & that does not begin one of the five XML entities (&amp; &lt; &gt; &quot; &apos;). Write a plain & as &amp;.',
  ],
  [
    /^malformed character entity/,
    'Found a numbered character (&#…;) that XML does not allow. Delete it, or write the character itself.',
  ],
  [/^attribute without value/, 'Found an attribute without a value; expected name="value".'],
  [/^unquoted attribute value/, 'Found an attribute value without quotes; expected name="value".'],
  [/^duplicate attribute: (.*)\.$/, 'Found the attribute $1 twice in one tag. Delete one of them.'],
  [/^no whitespace between attributes/, 'Found two attributes without a space between them. Put a space there.'],
  [
    /^documents may contain only one root/,
    'Found a second outermost element after the end of <gpx>: several files seem to be joined into one. Give each of them alone.',
  ],
  [
    /XML declaration must (be|appear) at the start/,
    'Found the <?xml …?> line after the beginning of the file; it must be its very first characters. Delete what stands before it.',
  ],
  [/^text data outside of root node/, 'Found text outside of the outermost element. Delete it.'],
  [/^unmatched closing tag: (.*)\.$/, 'Found </$1> with no <$1> open. Delete it.'],
  [/^malformed comment/, 'Found -- inside a comment, where XML does not allow it. Delete the comment.'],
  [/]]>/, 'Found ]]> in text, where XML does not allow it. Write it as ]]&gt;.'],
  [/tag name|closing tag|forward-slash/, 'Found a broken tag; a plain < in text must be written as &lt;.'],
  [/^disallowed character in attribute name/, 'Found a character that cannot stand in an attribute name.'],
  [
    /^disallowed character/,
    'Found a character that XML does not allow here (a control character, or a < inside quotes).',
  ],
  [/^inappropriately located doctype/, 'Found a second or late <!DOCTYPE>; GPX needs none. Delete it.'],
  [
    /XML declaration|value must be quoted|value required|whitespace required|expected|version number|encoding value|standalone value/,
    'The <?xml …?> line is not well formed; expected <?xml version="1.0" encoding="UTF-8"?>.',
  ],
  [/processing instruction/, 'Found a broken processing instruction (<? … ?>). Delete it.'],
];

/** A sentence for one message of the parser. */
export function plainSentence(parserMessage: string): string {
  for (const [pattern, sentence] of SENTENCES) {
    const match = pattern.exec(parserMessage);
    if (match !== null) return sentence.replaceAll('$1', () => (match[1] ?? '').slice(0, 40));
  }
  return 'The text is not well-formed XML here. Export the course again as GPX.';
}

const HTML = /^<(!doctype\s+html|html)\b/i;

/** Why this is no XML at all, by the first characters that are not white space; `null` where it may be. */
export function notXml(head: string): Refusal | null {
  const start = head.trimStart();
  if (start === '') return null;
  if (HTML.test(start)) {
    return {
      code: 'gpx-not-xml',
      message:
        'This is a web page (HTML), not a GPX file: a download may have led to a log-in or error page. Open the address in a browser, and save the GPX itself.',
    };
  }
  if (start.startsWith('<')) return null;
  const json = /^[[{]/.test(start) ? ' It looks like JSON.' : '';
  return {
    code: 'gpx-not-xml',
    message: `The file begins with ${quoted(start)}, which is not XML; a GPX file begins with <?xml or <gpx.${json} Export the course as GPX.`,
  };
}

export const DOCTYPE: Refusal = {
  code: 'gpx-doctype',
  message:
    'Found a <!DOCTYPE> declaration; GPX needs none, and it is refused because entities declared in it can be made to fill the memory. Delete it.',
};

export const NUL: Refusal = {
  code: 'gpx-binary',
  message:
    'Found a NUL byte: this is a binary file, or one that was not written out to its end. Export the course again as GPX.',
};

/** Where the outermost element is not `<gpx>`. */
export const otherRoot = (name: string): Refusal => ({
  code: 'gpx-not-gpx',
  message: `The outermost element is <${quoted(name).slice(1, -1)}>; expected <gpx>. Export the course as GPX 1.1.`,
});

export const CUT_OFF = 'it was cut off. Download or export it again.';
