/** GPX files whose elements, attributes and namespaces are put together by chance. Not part of the package. */
import { ODD_TEXTS, type Random, pick, some, tornText } from './random.ts';

const NAMES = ['trk', 'trkseg', 'trkpt', 'rte', 'rtept', 'wpt', 'metadata', 'extensions', 'gpx', 'x:trk', 'y', 'time'];
const TEXTS = ['name', 'ele', 'hdop', 'cmt', 'desc', 'sym', 'type'];
const WORDS = ['s1 sign', 's1 table 1', 's2 trash', 'km 5', 'Pier', '12.5', '1.5', '-3', '1e3', '900', ...ODD_TEXTS];
/** Where elements belong, so that most files have lines and points. */
const INSIDE: Readonly<Record<string, readonly string[]>> = {
  gpx: ['trk', 'trk', 'rte', 'wpt', 'wpt', 'metadata'],
  trk: ['name', 'trkseg', 'trkseg'],
  trkseg: ['trkpt', 'trkpt', 'trkpt', 'trkpt'],
  trkpt: ['ele', 'ele', 'time'],
  rte: ['name', 'rtept', 'rtept', 'rtept'],
  rtept: ['ele'],
  wpt: [...TEXTS],
  metadata: ['name'],
};

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;').replaceAll('\u0000', '');

const coordinate = (random: Random, around: number): string =>
  random(12) === 0 ? pick(random, ODD_TEXTS) : (around + random(20_000) / 1e5).toFixed(6);

function attributes(name: string, random: Random): string {
  const own = name.endsWith('pt')
    ? [`lat="${escaped(coordinate(random, -33.2))}"`, `lon="${escaped(coordinate(random, -17.4))}"`]
    : [];
  if (random(20) === 0) own.pop();
  if (random(15) === 0)
    own.push(
      ...some(
        random,
        8,
        (k) =>
          `${pick(random, ['xmlns', 'xmlns:x', 'xmlns:y', `a${k}`, 'lat'])}="${escaped(pick(random, ['urn:x', 'http://www.topografix.com/GPX/1/1', ...ODD_TEXTS]))}"`,
      ),
    );
  return own.map((one) => ` ${one}`).join('');
}

function content(name: string, random: Random, depth: number): string {
  if (TEXTS.includes(name) || name === 'time')
    return random(8) === 0 ? `<![CDATA[${pick(random, WORDS).replaceAll(']]>', '')}]]>` : escaped(pick(random, WORDS));
  if (depth > 12) return '';
  const kinds = random(15) === 0 ? [...NAMES, ...TEXTS] : (INSIDE[name] ?? NAMES);
  return some(random, 7, () => element(pick(random, kinds), random, depth + 1)).join(random(3) === 0 ? '\n' : '');
}

function element(name: string, random: Random, depth: number): string {
  const open = `<${name}${attributes(name, random)}`;
  if (random(25) === 0) return `${open}/>`;
  if (random(60) === 0) return `<!-- ${escaped(pick(random, WORDS)).replaceAll('-', '')} -->`;
  return `${open}>${content(name, random, depth)}</${random(200) === 0 ? pick(random, NAMES) : name}>`;
}

/** A file of points and lines; `around`: what its points lie near. */
export function oddGpx(random: Random): string {
  const root = random(20) === 0 ? pick(random, NAMES) : 'gpx';
  const space = random(3) === 0 ? ' xmlns="http://www.topografix.com/GPX/1/1" xmlns:x="urn:x"' : '';
  const inside = Array.from({ length: 1 + random(5) }, () => element(pick(random, INSIDE['gpx']!), random, 1)).join('');
  const text = `${random(3) === 0 ? '<?xml version="1.0"?>\n' : ''}<${root} version="1.1" creator="c"${space}>${inside}</${root}>`;
  return random(6) === 0 ? tornText(text, random) : text;
}

/** Waypoints by a course from [-17.4, -33.2] eastward, as a recorder names them: most of them can be matched. */
export function oddRecording(random: Random): string {
  const names = ['sign', 'table', 'tables', 'trash', 'first table', 'box', 'cups', 'gel', 'mesa', 'cartel'];
  const points = Array.from({ length: 1 + random(12) }, () => {
    const name =
      random(6) === 0
        ? pick(random, WORDS)
        : `${pick(random, ['s1', 's2', 'Pier', 'S1', 's9', ''])} ${pick(random, names)}${random(4) === 0 ? ` ${random(12)}` : ''}`;
    const at = `lat="${(-33.2 + (random(200) - 100) / 1e6).toFixed(7)}" lon="${(-17.4 + random(45_000) / 1e6).toFixed(7)}"`;
    const hdop = random(3) === 0 ? `<hdop>${escaped(pick(random, ['1', '0.8', '50', ...WORDS]))}</hdop>` : '';
    return `<wpt ${random(15) === 0 ? attributes('wpt', random) : at}><name>${escaped(name)}</name>${hdop}${random(5) === 0 ? `<cmt>${escaped(pick(random, WORDS))}</cmt>` : ''}</wpt>`;
  });
  const text = `<gpx version="1.1" creator="c">${points.join('\n')}</gpx>`;
  return random(15) === 0 ? tornText(text, random) : text;
}
