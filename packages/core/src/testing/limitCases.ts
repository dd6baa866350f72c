/** A text for each limit of each reader that holds so many of what is counted, and little else. Not part of the package. */
import { courseFromGeoJson, placesFromGeoJson } from '../course/fromGeoJson.ts';
import type { Finding } from '../finding.ts';
import { readGpx } from '../gpx/read.ts';
import type { Counted, Reader } from '../limits.ts';
import { readGround } from '../ground/readGround.ts';
import { drawingJson } from '../papers/context.ts';
import { readStationList } from '../plan/list/read.ts';
import { readPlan } from '../plan/read.ts';
import { readNamed } from '../raceday/namedTable.ts';
import { readResults } from '../raceday/results.ts';

/** Findings on an input that holds so many. */
export type LimitCase = (count: number) => readonly Finding[];

const times = <T>(count: number, one: (k: number) => T): T[] => Array.from({ length: count }, (_, k) => one(k));
const padded = (text: string, bytes: number): string => text + ' '.repeat(bytes - text.length);

const gpx = (text: string): readonly Finding[] => readGpx(text, 'c.gpx').findings;
const inGpx = (inside: string): string => `<gpx version="1.1" creator="c">${inside}</gpx>`;
const inTrack = (inside: string): string => inGpx(`<trk>${inside}</trk>`);

const PLAN = {
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
  stations: [],
};
const plan = (more: object): readonly Finding[] => readPlan(JSON.stringify({ ...PLAN, ...more }), 'p.json').findings;
const [COURSE] = PLAN.courses;
const [RACE] = PLAN.races;

/** Values of the plan with an empty list under `seen`, counted by hand: itself, 6 keys, a course of 2 keys, a race of 2, a waiver of 4. */
const PLAN_VALUES = 1 + 6 + (1 + 2) + (1 + 2) + (1 + 4);

/** Lists that are so many values together, none of them a long one. */
const chunked = (values: number): readonly (readonly true[])[] =>
  times(Math.ceil(values / 1000), (k) => times(Math.min(1000, values - k * 1000) - 1, () => true));

const table = (rows: number, columns: number): string =>
  `${times(columns, (k) => (k === 0 ? 'name' : `c${k}`)).join()}\n${`1:00:00${',x'.repeat(columns - 1)}\n`.repeat(rows)}`;

/** Cells in rows of at most so many, the last row and the header perhaps shorter. */
function cellTable(cells: number): string {
  const width = 60;
  const row = `1:00:00${',x'.repeat(width - 1)}\n`;
  const left = cells % width;
  return `${row.repeat(Math.floor(cells / width))}${left === 0 ? '' : `1:00:00${',x'.repeat(left - 1)}\n`}`;
}

const LONG_LINE = `name${' '.repeat(9995)}\n`;

const tableCases = (read: (text: string) => readonly Finding[]): { readonly [what: string]: LimitCase } => ({
  bytes: (count) => read(LONG_LINE.repeat(Math.ceil(count / LONG_LINE.length)).slice(0, count)),
  rows: (count) => read(table(count, 1)),
  columns: (count) => read(table(1, count)),
  cells: (count) => read(cellTable(count)),
  characters: (count) => read(`name,c1\n1:00:00,"${'x'.repeat(count)}"\n`),
});

const drawing = (text: string): readonly Finding[] => drawingJson(text, 'd.geojson').findings;
const nested = (depth: number): string => '['.repeat(depth) + ']'.repeat(depth);

/** By reader and by what is counted. */
export const LIMIT_CASES: { readonly [reader in Exclude<Reader, 'zip'>]: { readonly [what in Counted]?: LimitCase } } =
  {
    gpx: {
      bytes: (count) => gpx(padded(inGpx(''), count)),
      points: (count) => gpx(inTrack(`<trkseg>${'<trkpt lat="1" lon="2"/>'.repeat(count)}</trkseg>`)),
      waypoints: (count) => gpx(inGpx('<wpt lat="1" lon="2"/>'.repeat(count))),
      lines: (count) => gpx(inGpx('<trk/>'.repeat(count))),
      segments: (count) => gpx(inTrack('<trkseg/>'.repeat(count))),
      depth: (count) => gpx(inGpx('<x>'.repeat(count - 1) + '</x>'.repeat(count - 1))),
      attributes: (count) => gpx(inGpx(`<x ${times(count, (k) => `a${k}=""`).join(' ')}/>`)),
      // More than a tag may have attributes, so over two.
      namespaces: (count) =>
        gpx(
          inGpx(
            `<x ${times(100, (k) => `xmlns:a${k}="u"`).join(' ')}><y ${times(count - 100, (k) => `xmlns:b${k}="u"`).join(' ')}/></x>`,
          ),
        ),
      characters: (count) => gpx(inTrack(`<name>${'x'.repeat(count)}</name>`)),
    },
    plan: {
      bytes: (count) => readPlan(padded(JSON.stringify(PLAN), count), 'p.json').findings,
      // What is past the depth is no plan either: the finding is that of strict JSON.
      values: (count) => plan({ waivers: [{ code: 'x', by: 'a', reason: 'b', seen: chunked(count - PLAN_VALUES) }] }),
      points: (count) => plan({ courses: [{ ...COURSE, line: times(count, (k) => [k / 1e6, 1]) }] }),
      entries: (count) => plan({ numbers: Object.fromEntries(times(count, (k) => [`n${k}`, k + 1])) }),
      courses: (count) => plan({ courses: times(count, (k) => ({ ...COURSE, id: `c${k}` })) }),
      races: (count) => plan({ races: times(count, (k) => ({ ...RACE, id: `r${k}` })) }),
      waves: (count) => plan({ races: [{ ...RACE, waves: times(count, () => ({ time: '08:00', entrants: 1 })) }] }),
      marks: (count) =>
        plan({ courses: [{ ...COURSE, marks: times(count, (k) => ({ at: [-17.4, -33.2], measure: k + 1 })) }] }),
      stations: (count) => plan({ stations: times(count, (k) => ({ id: `s${k}`, at: [-17.4, -33.2] })) }),
      zones: (count) =>
        plan({
          zones: times(count, () => ({
            rule: 'allowed',
            polygon: [
              [0, 0],
              [1, 0],
              [0, 1],
            ],
          })),
        }),
      vehicles: (count) => plan({ vehicles: times(count, (k) => ({ id: `v${k}` })) }),
      waivers: (count) => plan({ waivers: times(count, () => ({ code: 'x', by: 'a', reason: 'b' })) }),
      variants: (count) => plan({ variants: times(count, (k) => ({ name: `v${k}` })) }),
      crew: (count) =>
        plan({
          stations: [{ id: 's', at: [-17.4, -33.2] }],
          people: { crew: times(count, () => ({ name: 'A', station: 's' })) },
        }),
    },
    geojson: {
      points: (count) =>
        courseFromGeoJson({ type: 'LineString', coordinates: times(count, (k) => [k / 1e6, 1]) }).findings,
      features: (count) =>
        placesFromGeoJson({
          type: 'FeatureCollection',
          features: times(count, () => ({ type: 'Feature', geometry: null, properties: null })),
        }).findings,
    },
    drawing: {
      bytes: (count) => drawing(padded('{"type":"FeatureCollection","features":[]}', count)),
      depth: (count) => drawing(nested(count)),
      values: (count) => drawing(`[${times(count - 1, () => 'null').join()}]`),
      points: (count) => drawing(`[${times(count, () => '[0,0]').join()}]`),
      features: (count) => drawing(`{"features":[${times(count, () => '{}').join()}]}`),
    },
    ground: {
      bytes: (count) => readGround(padded('{"type":"FeatureCollection","features":[]}', count), 'g.geojson').findings,
    },
    results: tableCases((text) => readResults(text, 'name', 'r.csv').findings),
    list: tableCases((text) => readStationList(text, { file: 'l.csv', units: 'metric', courses: [] }).findings),
    roster: tableCases((text) => readNamed(text, 't.csv', { name: ['name'] }, ['name'], 'roster').findings),
    leftovers: tableCases((text) => readNamed(text, 't.csv', { name: ['name'] }, ['name'], 'leftovers').findings),
  };
