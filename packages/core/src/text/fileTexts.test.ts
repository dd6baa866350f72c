/** Every sentence on GPX files, courses and exports, in both languages and both systems of units. */
import { describe, expect, it } from 'vitest';
import { type Counted, LIMITS, type Reader } from '../limits.ts';
import { course as courseEn } from './en/findings/course.ts';
import { exports as exportsEn } from './en/findings/exports.ts';
import { gpx as gpxEn } from './en/findings/gpx.ts';
import { ground as groundEn } from './en/findings/ground.ts';
import { words as english } from './en/words.ts';
import { course as courseEs } from './es/findings/course.ts';
import { exports as exportsEs } from './es/findings/exports.ts';
import { gpx as gpxEs } from './es/findings/gpx.ts';
import { ground as groundEs } from './es/findings/ground.ts';
import { words as spanish } from './es/words.ts';
import type { CourseParams } from './params/course.ts';
import type { ExportsParams } from './params/exports.ts';
import type { GpxParams, XmlFault } from './params/gpx.ts';
import type { GroundBound, GroundParams } from './params/ground.ts';
import { type Say, sayIn } from './say.ts';
import type { Sentence, TextsOf } from './sentence.ts';
import type { UnitSystem } from '../units.ts';

/** Parameters of each code, one for each sentence that it can have. */
type Samples<P> = { readonly [C in keyof P]: readonly P[C][] };

const XML_FAULTS: { readonly [fault in XmlFault]: true } = {
  attributeName: true,
  bracketsInText: true,
  brokenTag: true,
  character: true,
  comment: true,
  crossed: true,
  declaration: true,
  doctype: true,
  duplicate: true,
  entity: true,
  instruction: true,
  lateDeclaration: true,
  noSpace: true,
  noValue: true,
  numberedCharacter: true,
  other: true,
  secondRoot: true,
  textOutside: true,
  unmatched: true,
  unquoted: true,
};

const repeats = { more: 980, all: 1000 };
const numbers = (['word', 'comma', 'large'] as const).map((fault) => ({ found: 'abc', fault }));
const badNumbers = [...numbers, { found: '', fault: 'empty' }, { found: '', fault: 'mark' }] as const;
const element = 'trkpt';
const points = [
  { element, fault: 'missing' as const },
  ...badNumbers.map((bad) => ({ element, ...bad })),
  { element, fault: 'range' as const, found: '95', hint: null },
  { element, fault: 'range' as const, found: '95', hint: 'swapped' as const },
  { element, fault: 'range' as const, found: '190', hint: 'wrapped' as const, instead: -170 },
  repeats,
];
const lines = { lines: [{ kind: 'route', name: 'Half' } as const, { kind: 'track', name: null } as const], count: 9 };

const COUNTED = [...new Set(Object.values(LIMITS).flatMap((limits) => Object.keys(limits) as Counted[]))] as const;

const GPX: Samples<GpxParams> = {
  'past-limit': [
    ...(Object.keys(LIMITS) as Reader[]).flatMap((reader) => [
      { reader, what: 'bytes' as const, most: 8_000_000, found: 8_000_001 },
      { reader, what: 'bytes' as const, most: 8_000_000 },
    ]),
    ...COUNTED.map((what) => ({ reader: 'plan' as const, what, most: 2_000_000 })),
  ],
  'more-problems': [{ listed: 200 }],
  'gpx-empty': [{}],
  'gpx-truncated': [{ inside: 'start' }, { inside: 'tag' }, { inside: 'element', element: 'trk' }],
  'gpx-binary': [{ kind: 'compressed' }, { kind: 'binary' }, { kind: 'nul' }],
  'gpx-encoding': [
    { problem: 'notUtf16', encoding: 'UTF-16' },
    { problem: 'unsupported', encoding: 'EBCDIC' },
    { problem: 'invalid', encoding: 'UTF-8', byte: '0xE9' },
  ],
  'gpx-not-xml': [{ kind: 'html' }, { kind: 'json', found: '{' }, { kind: 'text', found: 'lat' }],
  'gpx-not-gpx': [{ root: 'kml' }],
  'gpx-doctype': [{}],
  'gpx-malformed': (Object.keys(XML_FAULTS) as XmlFault[]).map((fault) => ({ fault, name: 'wpt' })),
  'gpx-latitude': points,
  'gpx-longitude': points,
  'gpx-elevation': [...badNumbers, repeats],
  'gpx-hdop': [...badNumbers, repeats],
  'gpx-misplaced': [{ element, home: 'trkseg' }, repeats],
  'track-unknown': [null, 'full.gpx'].flatMap((file) => [
    { file, problem: 'none' as const },
    { file, problem: 'empty' as const, track: 'Half' },
    { file, problem: 'unknown' as const, track: 'Half', ...lines },
    { file, problem: 'unknown' as const, track: 'Half', lines: [], count: 0 },
    { file, problem: 'ambiguous' as const, track: 'Half', same: 2, ...lines },
  ]),
  'track-chosen': [{ ...lines, taken: 1 }],
};

const gap = { length: 120.4, point: 340, from: [-17.4, -33.2], to: [-17.3, -33.2] } as const;
const flaw = { size: 147.4, segment: 1, first: 4, last: 5 };

const COURSE: Samples<CourseParams> = {
  'gap-joined': [
    { ...gap, asked: true },
    { ...gap, length: 12, asked: false },
    { ...gap, length: 12, asked: false, seam: { measure: 5000, times: 1 } },
    { ...gap, length: 12, asked: false, seam: { measure: 5000, times: 3 } },
  ],
  'gap-skipped': [gap],
  'gap-refused': [{ ...gap, most: 50 }],
  position: [
    { lon: 200, lat: { kind: 'nothing' } },
    { lon: -33.2, lat: -117, point: 3, swapped: true },
  ],
  'course-too-short': [
    ...(['none', 'onePlace', 'noLength'] as const).map((problem) => ({ problem })),
    { problem: 'few', points: 1 },
    { problem: 'few', points: 0 },
  ],
  'course-too-long': [{ length: 18_924_000, most: 1e7, step: 12_245_000, point: 2 }],
  'mark-factor': [
    { from: 'start', to: { name: '3 mi' }, marks: 4800, line: 5000, within: 0.03 },
    { from: { measure: 4800 }, to: 'finish', marks: 520, line: 500, within: 0.03 },
  ],
  'mark-off-course': [{ mark: { measure: 6000 }, distance: 300, most: 60 }],
  'marks-no-order': [
    { places: [{ mark: { name: 'A' }, along: [5000, 7000] }], more: 0 },
    { places: [{ mark: 'finish', along: [5000] }], more: 3 },
    { length: 0 },
  ],
  'measure-beyond-course': (['station', 'partStart', 'partEnd'] as const).flatMap((what) => [
    { what, measure: 7000, course: 'c', problem: 'past' as const, length: 5000 },
    { what, measure: 7000, problem: 'past' as const, length: 6999 },
    { what, measure: -10, course: 'c', problem: 'before' as const, start: 0 },
    { what, measure: 70, course: 'c', problem: 'gap' as const },
  ]),
  'part-backwards': [{ course: 'c', from: 300, to: 200 }],
  'parts-apart': [{ length: 50.4, most: 50 }],
  geojson: [
    ...(['object', 'type', 'coordinates', 'list'] as const).map((problem) => ({ problem, found: 7 })),
    { problem: 'holes', holes: 1 },
    { problem: 'holes', holes: 2 },
    { problem: 'corners', corners: 1 },
    { problem: 'corners', corners: 2 },
    { problem: 'nested' },
  ],
  'track-spike': [{ ...flaw, last: 4 }],
  'track-jump': [flaw],
  'track-sparse-bend': [{ ...flaw, most: 140 }],
  'track-tangle': [
    { ...flaw, last: 9 },
    { size: 100, from: 500, to: 600 },
  ],
};

const EXPORTS: Samples<ExportsParams> = {
  'export-unplaced': [
    {
      items: [
        { item: 'sign', end: 'whole' },
        { item: 'trash', end: 'first' },
        { item: 'trash', end: 'last' },
      ],
    },
  ],
  'calendar-no-clock': [{ missing: 'date' }, { missing: 'timeZone' }],
  'calendar-no-times': [{ problem: 'noWaves' }, { problem: 'noArrivals' }],
  'calendar-left-out': [{}],
  'calendar-clock-change': (['skipped', 'repeated'] as const).map((problem) => ({
    date: '2027-03-14',
    time: 9000,
    problem,
  })),
};

const BOUNDS: { readonly [bound in GroundBound]: true } = {
  megabytes: true,
  nodes: true,
  ways: true,
  relations: true,
  features: true,
  attributes: true,
  tagLength: true,
  depth: true,
  kept: true,
};

const GROUND: Samples<GroundParams> = {
  'ground-empty': [{}],
  'ground-foreign': [
    ...(['html', 'zip', 'binary', 'nul'] as const).map((kind) => ({ kind })),
    { kind: 'text', found: 'lat;lon' },
  ],
  'ground-root': [{ root: 'gpx' }, { type: 'Topology' }, { type: { kind: 'nothing' } }, { missing: 'features' }],
  'ground-cut-off': (['xml', 'pbf', 'geojson', 'gzip'] as const).map((format) => ({ format })),
  'ground-broken': (['pbf', 'gzip'] as const).map((format) => ({ format })),
  'ground-json': [{ found: '}' }],
  'ground-malformed': (Object.keys(XML_FAULTS) as XmlFault[]).map((fault) => ({ fault, name: 'node' })),
  'ground-encoding': GPX['gpx-encoding'],
  'ground-pbf-feature': [{ feature: 'HistoricalInformation' }],
  'ground-limit': (Object.keys(BOUNDS) as GroundBound[]).map((bound) => ({ bound, most: 4000 })),
  'ground-element': [
    { problem: 'position', found: '[0, 91]' },
    ...(['geometry', 'feature', 'nodes'] as const).map((problem) => ({ problem, found: 7 })),
    { problem: 'id', element: 'node', found: 'x', most: 562_949_953_421_312 },
    ...(['latitude', 'longitude'] as const).map((problem) => ({ problem, element: 'node', found: 'x' })),
    { more: 30, all: 50 },
  ],
  'ground-nothing': [{ read: 12_345, within: 300 }],
  'ground-no-course': [{}],
};

const NAMES = { station: () => 'Pier', race: () => 'Ten', course: () => 'Shore' };
const say = (units: UnitSystem, language: typeof english): Say => sayIn({ units, names: NAMES }, language);

/** Each sample's sentence, by its code. */
const sentencesOf = <P>(texts: TextsOf<P>, samples: Samples<P>, voice: Say): (readonly [string, Sentence])[] =>
  (Object.keys(samples) as (keyof P & string)[]).flatMap((code) =>
    samples[code].map((params) => [code, texts[code](params, voice)] as const),
  );

const all = (units: UnitSystem, language: 'en' | 'es'): (readonly [string, Sentence])[] => {
  const [voice, own] = [say(units, language === 'en' ? english : spanish), language === 'en'];
  return [
    ...sentencesOf(own ? gpxEn : gpxEs, GPX, voice),
    ...sentencesOf(own ? courseEn : courseEs, COURSE, voice),
    ...sentencesOf(own ? exportsEn : exportsEs, EXPORTS, voice),
    ...sentencesOf(own ? groundEn : groundEs, GROUND, voice),
  ];
};
const partsOf = (sentence: Sentence): string[] => sentence.filter((part) => typeof part === 'string');

describe.each(['en', 'es'] as const)('the sentences on files, courses and exports in %s', (language) => {
  it.each(['metric', 'imperial'] as const)('are short, whole and in the units asked for: %s', (units) => {
    for (const [code, sentence] of all(units, language))
      for (const part of partsOf(sentence)) {
        expect(part, code).toMatch(/^[\p{Lu}\d“«a-z].*\.$/u);
        expect(part.split(/\s+/u).length, part).toBeLessThanOrEqual(30);
        expect(part, code).not.toMatch(/NaN|undefined|null|\[object|Infinity|-0(?![.\d])|–|\.\.$|  /u);
        const metres = part.replace('123.4', '').match(/\d k?m(?!\p{L})/u);
        if (units === 'imperial') expect(metres, part).toBeNull();
      }
  });

  it('name courses by their names, not by ids, and hold no path', () => {
    for (const [code, sentence] of all('metric', language))
      for (const part of partsOf(sentence)) expect(part, code).not.toMatch(/\bc\b|\/\w+\/\d/u);
  });
});

it('no sentence of one language is that of the other, and each has as many parts', () => {
  const [en, es] = [all('metric', 'en'), all('metric', 'es')];
  expect(es.map(([code, sentence]) => `${code} ${partsOf(sentence).length}`)).toEqual(
    en.map(([code, sentence]) => `${code} ${partsOf(sentence).length}`),
  );
  for (const [k, [, sentence]] of en.entries())
    for (const [n, part] of sentence.entries()) if (part !== null) expect(part).not.toBe(es[k]![1][n]);
});
