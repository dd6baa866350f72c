/** Reading GPX: what was found, what was expected, what to do. */
import type { BadNumber, GpxParams, Repeats, XmlFault } from '../../params/gpx.ts';
import type { Say } from '../../say.ts';
import type { Sentence, TextsOf } from '../../sentence.ts';
import { limits } from './limits.ts';
import { tracks } from './tracks.ts';

/** A text for one finding, and for how many more there are of its kind. */
const counted =
  <P extends object>(one: (params: P, say: Say) => Sentence) =>
  (params: P | Repeats, say: Say): Sentence =>
    'more' in params
      ? [`${say.count(params.more)} more of the same kind are not listed; there are ${say.count(params.all)} in all.`]
      : one(params, say);

const badNumber = (what: string, { found, fault }: BadNumber, say: Say): string => {
  const said = `${what} is ${say.quote(found)}`;
  if (fault === 'empty') return `${what} is empty.`;
  if (fault === 'mark') return `${what} says “not a number”.`;
  if (fault === 'comma') return `${said}, with a decimal comma.`;
  return fault === 'large' ? `${said}, which is too large.` : `${said}.`;
};

const decimalPoint = ({ fault }: BadNumber): string | null => (fault === 'comma' ? 'Use a decimal point.' : null);

const axis = (word: 'latitude' | 'longitude', most: number): TextsOf<GpxParams>['gpx-latitude'] =>
  counted((params, say) => {
    if (params.fault === 'missing')
      return [
        `This point has no ${word}.`,
        'A point should have lat and lon in decimal degrees.',
        'Add it, or delete the point.',
      ];
    if (params.fault !== 'range')
      return [
        badNumber(`The ${word}`, params, say),
        `It should be a number from -${most} to ${most}.`,
        decimalPoint(params),
      ];
    const range = [`The ${word} is ${params.found}.`, `It should be from -${most} to ${most}.`] as const;
    if (params.hint === 'swapped')
      return [...range, 'Latitude and longitude look swapped: exchange lat and lon in the whole file.'];
    return params.hint === 'wrapped'
      ? [...range, `Subtract 360 from longitudes above 180; here that gives ${params.instead}.`]
      : [...range, 'Correct it, or delete the point.'];
  });

export const XML: { readonly [fault in XmlFault]: (name: string) => Sentence } = {
  entity: () => ['An & does not begin one of &amp; &lt; &gt; &quot; &apos;.', null, 'Write a plain & as &amp;.'],
  numberedCharacter: () => [
    'XML does not allow this numbered character (&#…;).',
    null,
    'Delete it, or write the character itself.',
  ],
  noValue: () => ['An attribute has no value.', 'It should be name="value".'],
  unquoted: () => ['An attribute value has no quotes around it.', 'It should be name="value".'],
  duplicate: (name) => [`The tag has the attribute ${name} twice.`, null, 'Delete one of them.'],
  noSpace: () => ['There is no space between two attributes.', null, 'Put one there.'],
  secondRoot: () => [
    'A second outermost element follows the end of <gpx>.',
    'Several files seem to be joined into one.',
    'Use one file at a time.',
  ],
  lateDeclaration: () => [
    'The <?xml …?> line is not at the beginning of the file.',
    'It should be the very first characters.',
    'Delete what comes before it.',
  ],
  textOutside: () => ['There is text outside the outermost element.', null, 'Delete it.'],
  unmatched: (name) => [`The tag </${name}> closes nothing: no <${name}> is open.`, null, 'Delete it.'],
  crossed: (name) => [
    `Another tag is closed where </${name}> should be.`,
    'Each element should be closed before the one around it.',
    `Add </${name}> before it.`,
  ],
  comment: () => ['A comment contains --, which XML does not allow.', null, 'Delete the comment.'],
  bracketsInText: () => ['The text contains ]]>, which XML does not allow.', null, 'Write it as ]]&gt;.'],
  brokenTag: () => ['A tag is broken.', null, 'Write a plain < in text as &lt;.'],
  attributeName: () => ['An attribute name has a character that XML does not allow there.'],
  character: () => ['XML does not allow this character here: a control character, or a < inside quotes.'],
  doctype: () => ['There is a second or late <!DOCTYPE>, which GPX does not need.', null, 'Delete it.'],
  declaration: () => ['The <?xml …?> line is not well formed.', 'It should be <?xml version="1.0" encoding="UTF-8"?>.'],
  instruction: () => ['A processing instruction (<? … ?>) is broken.', null, 'Delete it.'],
  other: () => ['The text is not well-formed XML here.', null, 'Export the course again as GPX.'],
};

export const gpx: TextsOf<GpxParams> = {
  ...tracks,
  ...limits,
  'gpx-empty': () => [
    'The file is empty.',
    'It should be a GPX file with a track, a route or waypoints.',
    'Export it again.',
  ],
  'gpx-truncated': (params) => {
    const where =
      'element' in params
        ? `before <${params.element}> is closed`
        : params.inside === 'start'
          ? 'before <gpx> begins'
          : 'inside a tag or a comment';
    return [`The file ends ${where}: it was cut off.`, null, 'Download or export it again.'];
  },
  'gpx-binary': ({ kind }) =>
    kind === 'compressed'
      ? [
          'This is a compressed file (ZIP or gzip).',
          'It should be the text of a GPX file.',
          'Unpack it and use the .gpx file inside.',
        ]
      : kind === 'nul'
        ? ['The file has a NUL byte: it is binary, or was not written to its end.', null, 'Export it again as GPX.']
        : ['The file holds binary data, not text.', null, 'Export the course as GPX, which is XML text.'],
  'gpx-encoding': (params, say) => {
    if (params.problem === 'invalid')
      return [
        `The byte ${params.byte} is not valid ${params.encoding}.`,
        null,
        'Save the file as UTF-8, or state its encoding in the first line, such as encoding="ISO-8859-1".',
      ];
    const encoding = say.quote(params.encoding);
    return params.problem === 'notUtf16'
      ? [
          `The first line gives the encoding ${encoding}, but the file is not in UTF-16.`,
          null,
          'Save it as UTF-8 and write encoding="UTF-8" there.',
        ]
      : [
          `The file is in the encoding ${encoding}, which cannot be read.`,
          'It should be UTF-8, UTF-16, US-ASCII, ISO-8859 or windows-125x.',
          'Save it as UTF-8 and write encoding="UTF-8" in its first line.',
        ];
  },
  'gpx-not-xml': (params, say) =>
    params.kind === 'html'
      ? [
          'This is a web page (HTML), not a GPX file.',
          'The download may have led to a log-in or error page.',
          'Open the address in a browser and save the GPX file itself.',
        ]
      : [
          `The file begins with ${say.quote(params.found)}, which is ${params.kind === 'json' ? 'JSON, ' : ''}not XML.`,
          'A GPX file begins with <?xml or <gpx.',
          'Export the course as GPX.',
        ],
  'gpx-not-gpx': ({ root }) => [
    `The outermost element is <${root}>.`,
    'It should be <gpx>.',
    'Export the course as GPX 1.1.',
  ],
  'gpx-doctype': () => [
    'The file has a <!DOCTYPE>, which GPX does not need.',
    'It is refused because entities declared in it can fill the memory.',
    'Delete it.',
  ],
  'gpx-malformed': ({ fault, name }) => XML[fault](name),
  'gpx-latitude': axis('latitude', 90),
  'gpx-longitude': axis('longitude', 180),
  'gpx-elevation': counted((params, say) => [
    badNumber('The elevation', params, say),
    'It should be a number of metres, such as 123.4.',
    decimalPoint(params) ?? 'The point is kept without it.',
  ]),
  'gpx-hdop': counted((params, say) => [
    badNumber('The dilution of precision (hdop)', params, say),
    'It should be a number, such as 1.5.',
    decimalPoint(params) ?? 'The point is kept without it.',
  ]),
  'gpx-misplaced': counted(({ element, home }) => [
    `This <${element}> is left out, with everything in it.`,
    `It should be directly inside <${home}>.`,
    'Move it there.',
  ]),
};
