/** Broken GPX files and plans by a fixed seed: numbers, tags, stretches and lines changed, cut, doubled or moved; bits flipped. */
import { inFixture, sourceOf } from './fixtures.ts';

/** A whole number from 0, below another. */
export type Random = (below: number) => number;

/** xorshift32 (Marsaglia 2003, doi:10.18637/jss.v008.i14). */
export function randomOf(seed: number): Random {
  let state = seed;
  return (below) => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) % below;
  };
}

export const pick = <T>(random: Random, list: readonly T[]): T => list[random(list.length)]!;

/** Numbers that are odd, too large, or none. */
const NUMBERS = [
  '0',
  '-0',
  '90',
  '-90',
  '90.0000001',
  '180',
  '-180',
  '179.9999999',
  '1e9',
  '-1e-320',
  '1e308',
  '1e999',
  'NaN',
  'INF',
  '',
  '1,5',
  '+12',
  '0x1F',
  '١٢',
];
const DIGIT = /-?\d+(?:\.\d+)?/gu;

/** A number of the text in place of another, or with a digit changed. */
function otherNumber(text: string, random: Random): string {
  const found = [...text.matchAll(DIGIT)];
  if (found.length === 0) return text;
  const { 0: number, index } = pick(random, found);
  const small = (Number(number) + (random(2001) - 1000) / pick(random, [1, 100, 1e4, 1e6])).toFixed(7);
  const other = random(2) === 0 ? small : random(2) === 0 ? pick(random, found)[0] : pick(random, NUMBERS);
  return text.slice(0, index) + other + text.slice(index + number.length);
}

/** A whole element, tag or attribute taken out or said twice. */
function otherTag(text: string, random: Random): string {
  const found = [...text.matchAll(random(2) === 0 ? /<[^>]*>/gu : / \w+="[^"]*"/gu)];
  if (found.length === 0) return text;
  const { 0: tag, index } = pick(random, found);
  return text.slice(0, index) + (random(2) === 0 ? '' : tag + tag) + text.slice(index + tag.length);
}

/** Stretches of up to 400 characters cut, doubled, moved, or all the rest cut off. */
function otherStretch(text: string, random: Random): string {
  const at = random(text.length + 1);
  const end = at + random(pick(random, [4, 60, 400]));
  const stretch = text.slice(at, end);
  const kind = random(4);
  if (kind === 0) return text.slice(0, at) + text.slice(end);
  if (kind === 1) return text.slice(0, end) + stretch + text.slice(end);
  if (kind === 2) return random(4) === 0 ? text.slice(0, at) : text;
  const rest = text.slice(0, at) + text.slice(end);
  const to = random(rest.length + 1);
  return rest.slice(0, to) + stretch + rest.slice(to);
}

/** Whole track points moved in order: most of these files can still be read, and make odd courses. */
function otherLines(text: string, random: Random): string {
  const lines = text.split('\n');
  const [a, b] = [random(lines.length), random(lines.length)];
  const kind = random(4);
  if (kind === 0) [lines[a], lines[b]] = [lines[b]!, lines[a]!];
  else if (kind === 1) lines.splice(a, random(30));
  else if (kind === 2) lines.splice(a, 0, ...lines.slice(b, b + random(30)));
  else lines.splice(a, 0, '</trkseg><trkseg>');
  return lines.join('\n');
}

function flipped(bytes: Uint8Array, random: Random): Uint8Array {
  for (let times = 1 + random(4); times > 0; times--) bytes[random(bytes.length)]! ^= 1 << random(8);
  return bytes;
}

/** GPX files with tracks that are short, so that a mutation meets the points rather than filler; two more for what they lack. */
const EXTRAS = ['<ele>12.5</ele>', '<time>2027-09-12T08:00:00Z</time>', '<hdop>1</hdop>'];
const goods = ['laps', 'antimeridian', 'noisy', 'sparse'].map((name, k) =>
  inFixture(name, 'course.gpx')
    .replaceAll('"/>', `">${EXTRAS[k % EXTRAS.length]!}</trkpt>`)
    .split('\n')
    .filter((line, at) => at < 60 || !line.includes('<trkpt') || k === 3)
    .join('\n'),
);

/** A GPX file with one to three things wrong. */
export function brokenGpx(random: Random): Uint8Array {
  let text = pick(random, goods);
  for (let times = 1 + random(3); times > 0 && text.length > 0; times--)
    text = pick(random, [otherNumber, otherNumber, otherTag, otherStretch, otherLines, otherLines])(text, random);
  const bytes = new TextEncoder().encode(text);
  return random(5) === 0 && bytes.length > 0 ? flipped(bytes, random) : bytes;
}

const source = sourceOf('half-joins');

/** A plan over the files of `half-joins` that says every key which changes a layout. */
export const PLAN: string = JSON.stringify(
  {
    ...(JSON.parse(source.plan) as object),
    units: 'imperial',
    courses: [
      {
        id: 'full',
        gpx: 'full.gpx',
        drawn: 'centre',
        gaps: 'join',
        reverse: false,
        length: '5.01 km',
        marks: [{ at: [-28.8784, -33.8032], measure: '2 km' }],
      },
      { id: 'half', gpx: 'half.gpx', track: 0 },
      {
        id: 'part',
        parts: [
          { of: 'full', from: '1 km', to: '4.5 km' },
          { of: 'full', from: 4500 },
        ],
      },
      {
        id: 'line',
        line: [
          [-28.9, -33.8],
          [-28.88, -33.803],
          [-28.86, -33.806],
          [-28.9, -33.8],
        ],
        drawn: 'shortest',
      },
    ],
    races: [
      { id: 'full', course: 'full' },
      { id: 'half', course: 'half' },
      { id: 'part', course: 'part' },
      { id: 'line', course: 'line', division: 'walk' },
    ],
    stations: [
      {
        id: 's1',
        at: [-28.8675727, -33.8048239],
        side: 'right',
        serves: ['gel', 'sportsDrink', 'water'],
        tables: { gel: 1, sportsDrink: 3, water: 4 },
        boxes: 6,
        width: '7 m',
      },
      {
        id: 's2',
        on: { course: 'full', measure: '4.2 km', side: 'left', offset: '5 m' },
        races: ['full', 'half'],
        passes: 'all',
        practice: { signAhead: '120 yd', kerb: 3 },
        items: { sign: { at: [-28.8563, -33.8064] } },
      },
      {
        id: 's3',
        at: [-28.88, -33.803],
        lead: { race: 'line', pass: 0 },
        passes: [
          { race: 'full', pass: 0 },
          { race: 'line', pass: 1 },
        ],
      },
    ],
    practice: {
      signAhead: '100 yd',
      signTolerance: '10 yd',
      gelAhead: '25 ft',
      tableGap: '10 ft',
      tableLength: '6 ft',
      trashFrom: '50 yd',
      trashTo: '100 yd',
      boxEvery: '20 m',
      kerb: '4 m',
      setback: '0.5 m',
      snapRadius: '60 m',
      pinR95: '5 m',
      courseR95: '3 m',
      sideConfidence: 0.95,
      maxSpacing: '5 km',
      minSpacing: '1.6 km',
    },
  },
  null,
  1,
);

/** Values that are allowed somewhere, odd, or wrong. */
const VALUES = [
  '0',
  '1',
  '-1',
  '0.001',
  '5000',
  '1e7',
  '1e300',
  '"0 m"',
  '"1 mi"',
  '"1000000 km"',
  '"0.000001 in"',
  '"left"',
  '"right"',
  '"full"',
  '"half"',
  '"part"',
  '"line"',
  '"skip"',
  '"all"',
  '[]',
  '{}',
  'null',
  'true',
  '[-28.8784, -33.8032]',
  '[180, 90]',
  '[0, -90]',
  '["water"]',
  '[[0, 0], [0, 0]]',
];

/** A value in place of another; most of these plans can be read. */
const otherValue = (text: string, random: Random): string => {
  const found = [...text.matchAll(/: ("[^"]*"|-?[\d.]+|true|false)/gu)];
  if (found.length === 0) return text;
  const { 0: whole, index } = pick(random, found);
  return `${text.slice(0, index)}: ${random(3) === 0 ? pick(random, found)[1]! : pick(random, VALUES)}${text.slice(index + whole.length)}`;
};

/** A key's whole line taken out or said twice. */
const otherLine = (text: string, random: Random): string => {
  const lines = text.split('\n');
  const at = random(lines.length);
  lines.splice(at, random(2), ...(random(2) === 0 ? [lines[at]!] : []));
  return lines.join('\n');
};

/** `PLAN` with one or two things wrong; a fifth of them can still be laid out. */
export function brokenPlan(random: Random): string {
  let text = PLAN;
  for (let times = 1 + random(2); times > 0; times--)
    text = pick(random, [otherValue, otherValue, otherValue, otherNumber, otherNumber, otherLine, otherStretch])(
      text,
      random,
    );
  return text;
}
