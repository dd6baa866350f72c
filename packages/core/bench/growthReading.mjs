/**
 * What reading grows by, for the table of exponents (`growth.mjs`): a stage's name, what there is more of, how many at the upper
 * end (within `LIMITS`), the text that holds so many, and the reading of it.
 */
import { readPlan } from '@halfcup/core';
import { readGpx } from '@halfcup/core/gpx';
import { drawingJson } from '@halfcup/core/papers';
import { readStationList } from '@halfcup/core/plan';
import { readResults, readRoster } from '@halfcup/core/raceday';
import { LIMITS } from '@halfcup/core/schemas';
import { gpxText } from './data.mjs';

const times = (count, one) => Array.from({ length: count }, (_, k) => one(k));

const must = (result) => {
  if (!result.ok) throw new Error(result.findings[0].message);
  return result.value;
};
/** A file in which something is wrong: it must be refused, and for no limit. */
const mustNot = (result) => {
  if (result.ok || result.findings.some(({ code }) => code === 'past-limit')) throw new Error('expected faults');
};

const gpx = (inside) => `<gpx version="1.1" creator="bench">${inside}</gpx>`;
const reading = (text) => must(readGpx(text, 'growth.gpx'));

const plan = (more) =>
  JSON.stringify({
    format: 'halfcup-plan',
    version: 1,
    courses: [
      {
        id: 'c',
        line: [
          [-17.4, -33.2],
          [-17.3, -33.2],
        ],
      },
    ],
    races: [{ id: 'r', course: 'c' }],
    stations: [{ id: 's', name: 'Pier', at: [-17.35, -33.2] }],
    ...more,
  });
const small = must(readPlan(plan({}), 'plan.json')).plan;
const position = (k) => [Number((-17.4 + k * 1e-6).toFixed(6)), -33.2];

const clockText = (seconds) =>
  [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60]
    .map((n) => String(n).padStart(2, '0'))
    .join(':');
const finish = (k) => clockText(9000 + ((k * 7919) % 12_000));

/** `[stage, what, count, textOf, work]`.
 * @type {[stage: string, what: string, count: number, textOf: (count: number) => any, work: (text: any) => any][]}
 */
export const READING = [
  ['reading GPX', 'points', 400_000, gpxText, reading],
  [
    'reading GPX',
    'waypoints',
    LIMITS.gpx.waypoints,
    (n) => gpx('<wpt lat="1" lon="2"><name>Pier</name></wpt>'.repeat(n)),
    reading,
  ],
  [
    'reading GPX',
    'segments',
    LIMITS.gpx.segments,
    (n) => gpx(`<trk>${'<trkseg><trkpt lat="1" lon="2"/></trkseg>'.repeat(n)}</trk>`),
    reading,
  ],
  [
    'reading GPX',
    'elements with namespaces',
    40_000,
    (n) => gpx(times(n, (k) => `<x xmlns:a${k}="urn:${k}" xmlns="urn:b"/>`).join('')),
    reading,
  ],
  [
    'reading GPX',
    'namespaces in force',
    LIMITS.gpx.namespaces,
    (n) =>
      gpx(
        `${times(n / 100, (d) => `<x ${times(100, (k) => `xmlns:a${d}-${k}="u"`).join(' ')}>`).join('')}${'</x>'.repeat(n / 100)}`,
      ),
    (text) => {
      for (let k = 0; k < 50; k++) reading(text);
    },
  ],
  [
    'reading GPX',
    'characters of one attribute',
    LIMITS.gpx.characters,
    (n) => gpx(`<x a="${'x'.repeat(n)}"/>`),
    (text) => {
      for (let k = 0; k < 200; k++) reading(text);
    },
  ],
  [
    'reading results',
    'rows',
    LIMITS.results.rows,
    (n) => `bib,net\n${times(n, (k) => `${k},${finish(k)}`).join('\n')}\n`,
    (text) => must(readResults(text, 'net', 'results.csv')),
  ],
  [
    'reading results',
    'columns',
    LIMITS.results.columns,
    (n) => `net${times(n - 1, (k) => `,c${k}`).join('')}\n${`1:00:00${',x'.repeat(n - 1)}\n`.repeat(2000)}`,
    (text) => must(readResults(text, 'net', 'results.csv')),
  ],
  [
    'reading a station list',
    'rows',
    LIMITS.list.rows,
    (n) => `name,distance\n${times(n, (k) => `Pier ${k},${k / 100}\n`).join('')}`,
    (text) => must(readStationList(text, { file: 'list.csv', units: 'metric', courses: [{ id: 'c', name: 'Full' }] })),
  ],
  [
    'reading a crew list',
    'rows',
    LIMITS.roster.rows,
    (n) => `name,station\n${times(n, (k) => `Ada ${k},Pier\n`).join('')}`,
    (text) => must(readRoster(text, 'crew.csv', small)),
  ],
  [
    'reading the plan',
    'points',
    LIMITS.plan.points - 10,
    (n) => plan({ courses: [{ id: 'c', line: times(n, position) }] }),
    (text) => must(readPlan(text, 'plan.json')),
  ],
  [
    'reading the plan',
    'people',
    LIMITS.plan.crew,
    (n) => plan({ people: { crew: times(n, (k) => ({ name: `Ada ${k}`, station: 's' })) } }),
    (text) => must(readPlan(text, 'plan.json')),
  ],
  [
    'reading the plan',
    'unknown entries',
    40_000,
    (n) =>
      plan({
        stations: times(n / 100, (s) => ({
          id: `s${s}`,
          at: [0, 0],
          ...Object.fromEntries(times(100, (k) => [`k${k}`, 1])),
        })),
      }),
    (text) => mustNot(readPlan(text, 'plan.json')),
  ],
  [
    'reading the plan',
    'names that do not exist',
    40_000,
    (n) =>
      plan({
        stations: times(n / 1000, (s) => ({ id: `s${s}`, at: [0, 0], races: times(1000, (k) => `race ${s} ${k}`) })),
      }),
    (text) => mustNot(readPlan(text, 'plan.json')),
  ],
  [
    'reading a drawing',
    'points',
    LIMITS.drawing.points,
    (n) =>
      JSON.stringify({
        type: 'FeatureCollection',
        features: [
          { type: 'Feature', properties: {}, geometry: { type: 'LineString', coordinates: times(n, position) } },
        ],
      }),
    (text) => must(drawingJson(text, 'drawing.geojson')),
  ],
];
