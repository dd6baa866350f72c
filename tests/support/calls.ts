/**
 * One good call of every function that a face exports: what a fuzz turns wrong. Everything is small, so that thousands
 * of calls take seconds. Arguments are frozen, typed arrays apart.
 */
import * as core from '@halfcup/core';
import * as geojson from '@halfcup/core/geojson';
import * as geometry from '@halfcup/core/geometry';
import * as gpx from '@halfcup/core/gpx';
import * as ground from '@halfcup/core/ground';
import * as raceday from '@halfcup/core/raceday';
import * as papers from '@halfcup/core/papers';
import * as planParts from '@halfcup/core/plan';
import * as schemas from '@halfcup/core/schemas';
import * as sentences from '@halfcup/core/sentences';
import * as stages from '@halfcup/core/stages';
import * as units from '@halfcup/core/units';
import { must } from './exported.ts';

const PLAN = JSON.stringify({
  format: 'halfcup-plan',
  version: 1,
  name: 'Pier run',
  date: '2027-09-12',
  timeZone: 'Etc/GMT+1',
  courses: [
    { id: 'c', name: 'Pier', gpx: 'c.gpx' },
    {
      id: 'd',
      line: [
        [-17.4, -33.2],
        [-17.39, -33.2],
      ],
      drawn: 'centre',
    },
  ],
  races: [
    {
      id: 'r',
      course: 'c',
      waves: [{ time: '08:00', entrants: 40 }],
      finish: { median: '20 min', spread: 0.2 },
      cutoff: '09:30',
    },
    { id: 'q', course: 'd' },
  ],
  stations: [
    {
      id: 's1',
      name: 'Café 1',
      at: [-17.385, -33.20007],
      side: 'right',
      passes: 'all',
      serves: ['gel', 'water', 'sportsDrink'],
      width: '8 m',
      used: { water: 50 },
      points: [{ kind: 'medical', at: [-17.385, -33.2002] }],
    },
    { id: 's2', on: { course: 'c', measure: '900 m', side: 'left' }, items: { sign: { at: [-17.3915, -33.2] } } },
  ],
  zones: [
    {
      name: 'Crossing',
      rule: 'keep-clear',
      polygon: [
        [-17.3, -33.2],
        [-17.29, -33.2],
        [-17.29, -33.19],
      ],
    },
  ],
  vehicles: [{ id: 'v', name: 'Van', from: '05:00' }],
  clock: [{ course: 'c', measure: '1 km', closes: '07:00', reopens: '12:00' }],
  variants: [{ name: 'rain', stations: { s1: { side: 'left' } } }],
  waivers: [{ code: 'max-spacing', by: 'me', reason: 'short' }],
});
const GPX = `<gpx version="1.1" creator="me"><wpt lat="-33.2" lon="-17.39"><name>s1 sign</name></wpt><trk><name>Pier</name><trkseg>${[
  -17.4, -17.395, -17.39, -17.385, -17.38, -17.385, -17.39,
]
  .map((lon, k) => `<trkpt lat="${-33.2 - k * 1e-6}" lon="${lon}"><ele>${k}</ele></trkpt>`)
  .join('')}</trkseg></trk></gpx>`;

/** Frozen all the way down; Float64Arrays cannot be. */
function frozen<T>(value: T): T {
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value) || Object.isFrozen(value)) return value;
  Object.freeze(value);
  for (const one of value instanceof Map ? (value as ReadonlyMap<unknown, unknown>).values() : Object.values(value))
    frozen(one);
  return value;
}

const file = must(gpx.readGpx(GPX, 'c.gpx'));
const document = must(core.readPlan(PLAN, 'plan.json'));
const { plan } = document;
const sources = { gpx: new Map([['c.gpx', file]]), results: new Map([['past.csv', 'time\n0:20:00\n']]) };
const courses = must(stages.courseStage(plan, sources));
const seen = must(stages.passStage(plan, courses));
const analysis = must(core.analyse(plan, sources));
const { day } = analysis;
if (day === null) throw new Error('the plan has a race day');
const [indexed] = courses;
const { course } = indexed!;
const at = [-17.385, -33.20007] as const;
const [finding] = analysis.findings;
const voice = sentences.voiceOf(plan, {});
const table = new Map(courses.map((one) => [one.course.id, one]));
const [race] = plan.races;
const field = must(raceday.fieldOf(race!, 3000, new Map()));
const running = raceday.runRace(field, [0, geometry.courseLength(course)], null, null);
const arrivals = raceday.arrivalsAt(analysis.stations, [running]);
const review = schemas.reviewDocument(analysis, { sha256: '0', inputs: [{ file: 'c.gpx', sha256: '1' }] });
const improved = core.improve(analysis, { within: 20, step: 10, finest: 5 });
const segments = file.tracks[0]!.segments;
const where = { file: 'c.gpx', course: 'c', at };
const options = { paper: 'a4', printedAt: '2027-09-01 18:30', language: 'en' };
const context = papers.contextOf({
  type: 'FeatureCollection',
  features: [{ type: 'Feature', properties: {}, geometry: { type: 'Point', coordinates: [-17.39, -33.2] } }],
});
const passes = geometry.passesOf(indexed!, at);
const nearest = geometry.nearestOn(indexed!, at);
const line = {
  type: 'LineString',
  coordinates: [
    [-17.4, -33.2],
    [-17.39, -33.2],
  ],
};

const streets = must(
  ground.readGround(
    JSON.stringify({
      type: 'FeatureCollection',
      date: '2027-05-01',
      features: [
        { type: 'Feature', id: 'way/7', properties: { highway: 'residential', name: 'Quay Street' }, geometry: line },
        {
          type: 'Feature',
          id: 'way/8',
          properties: { building: 'yes' },
          geometry: {
            type: 'Polygon',
            coordinates: [
              [
                [-17.39, -33.2],
                [-17.38, -33.2],
                [-17.38, -33.19],
                [-17.39, -33.2],
              ],
            ],
          },
        },
        {
          type: 'Feature',
          id: 'node/9',
          properties: { emergency: 'fire_hydrant' },
          geometry: { type: 'Point', coordinates: at },
        },
      ],
    }),
    'ground.geojson',
  ),
);

const OSM = new TextEncoder().encode(
  '<osm version="0.6"><node id="1" lat="-33.2" lon="-17.385"><tag k="barrier" v="gate"/></node></osm>',
);
const clipper = ground.createGroundClipper('town.osm', [course], 300);
clipper.write(OSM);
const clipped = must(clipper.close());

/** Arguments by the function's name; `deep`: how far down they are turned wrong. */
export interface GoodCall {
  readonly call: (...values: readonly unknown[]) => unknown;
  readonly args: readonly unknown[];
  readonly deep: number;
}

const ALL = 9;
/** What Halfcup itself has made is taken apart this far. */
const MADE = 4;

const ARGS: Readonly<Record<string, readonly [args: readonly unknown[], deep?: number]>> = {
  analyse: [[plan, sources], MADE],
  analyseOn: [[stages.courseStage(plan, sources), plan, sources], MADE],
  arrivalsAt: [[analysis.stations, [running]], MADE],
  ascentOf: [[course]],
  buildCourse: [[{ id: 'a', name: 'A', segments, drawn: 'centre', gaps: 'join', reverse: true, where }]],
  calibrate: [
    [
      indexed,
      {
        marks: [{ at, measure: 1400, name: 'mark', where }],
        length: 2800,
        options: { snapRadius: 50, pinR95: 5, courseR95: 3, sideConfidence: 0.9 },
        where,
      },
    ],
  ],
  captainSheet: [[analysis, analysis.stations[0], { ...options, context }], MADE],
  cardSheet: [[analysis, analysis.stations[0], options], MADE],
  clearPlace: [[analysis, 's1', { within: 20 }], 2],
  chooseLine: [[file, 'Pier', where]],
  cleaned: [[segments]],
  compareAnalyses: [[['before', 'after'], analysis, improved.analysis], MADE],
  compareDocument: [[core.compareAnalyses(['before', 'after'], analysis, improved.analysis)]],
  contextOf: [[context]],
  countsOf: [[analysis.findings, analysis.checks]],
  covers: [[{ code: 'leg-long', by: 'me', reason: 'short', seen: { item: 'sign' } }, finding]],
  courseDocument: [[course, analysis.findings, [{ at, measure: 1400 }]]],
  courseFromGeoJson: [[line, { id: 'x', name: 'X', track: 0, drawn: 'centre', gaps: 'join', reverse: false }]],
  courseFromGpxParser: [
    [
      {
        tracks: [
          {
            name: 'Lap',
            points: [
              { lon: -17.4, lat: -33.2, ele: 4 },
              { lon: -17.39, lat: -33.2, ele: null },
            ],
          },
        ],
        routes: [],
      },
      { id: 'x', track: 'Lap', gaps: 'skip' },
    ],
  ],
  courseLength: [[course]],
  courseOfParts: [
    [{ id: 'p', name: 'P', drawn: 'centre', reverse: false, where, stretches: [{ course, from: 0, to: 500, where }] }],
    MADE,
  ],
  courseStage: [[plan, sources], MADE],
  courseToGeoJson: [[course]],
  createGpxReader: [['c.gpx']],
  csvText: [
    [
      [
        ['a', 1, true, null],
        ['=b', 2.5, false, null],
      ],
    ],
  ],
  clockSpan: [[analysis]],
  crowdAlong: [[analysis, 30_000, 500]],
  dayStage: [[plan, courses, seen, sources.results], MADE],
  eastNorth: [[at, [-17.38, -33.2]]],
  editPlan: [[PLAN, '/stations/0/side', 'left']],
  elevationAt: [[course, 500]],
  fieldOf: [[race, 3000, new Map([['x', [1200, 1300]]])]],
  drawingJson: [['{"type":"FeatureCollection","features":[]}', 'drawing.geojson']],
  limitFinding: [['gpx', 'points', {}, 600_000]],
  limitTable: [[]],
  filesNamedBy: [[plan], MADE],
  findingDocument: [[finding]],
  findingInWords: [[finding, voice]],
  findingLine: [[finding]],
  findingSentence: [[finding, voice]],
  raceFaults: [[{ name: 'Five', gpx: 'c.gpx', start: '08:00', entrants: '300', finish: '0:28' }, 5000]],
  readStationList: [
    [
      'Name;Distance;Side\nMill;0,9;left\n',
      { file: 'list.csv', units: 'metric', courses: [{ id: 'c', name: 'Pier' }] },
    ],
  ],
  textFrom: [[new TextEncoder().encode('Café'), 'plan.json']],
  setUpPlan: [
    [
      {
        name: 'Pier',
        courses: [{ gpx: 'c.gpx' }],
        marks: true,
        stations: { from: 'every', every: 900, side: 'left' },
        races: [{ name: 'Pier 3', gpx: 'c.gpx', start: '08:00', entrants: '300', finish: '0:18', cutoff: '1:00' }],
      },
      new Map([['c.gpx', file]]),
    ],
    MADE,
  ],
  sharedStretches: [[course, courses[1]!.course], MADE],
  stateAt: [[analysis, 's1', 30_000]],
  stationDrawing: [[analysis, analysis.stations[0], { dimensions: false }], MADE],
  steepStretches: [[course, 0.01, 50]],
  sweepsAt: [[analysis, 30_000]],
  vehiclesAt: [[analysis, 30_000]],
  listColumns: [['Name;Distance;Side\nMill;0,9;left\n']],
  typedCount: [['1,000']],
  stationListText: [[plan, 'en'], MADE],
  placeText: [[{ street: 'Quay Street', after: null, before: 'Mill Lane' }, 'en']],
  mapCreditText: [[{ credit: 'own survey', licence: null, date: '2027-05-01' }, 'en']],
  crossingText: [[{ names: ['Mill Lane'], vehicles: true, access: false }, 'en']],
  drawnLine: [[{ highway: 'residential' }]],
  drawnArea: [[{ building: 'yes' }]],
  drawnName: [[{ name: 'Mill Lane' }]],
  isBelow: [[{ tunnel: 'yes' }]],
  prePourText: [[{ cups: 470, tables: 2, cupsPerLayer: 200 }, voice]],
  findingSubject: [[finding, voice.names]],
  flawFindings: [[[{ kind: 'spike', segment: 0, first: 1, last: 1, size: 20, at }], where]],
  flawsOf: [[segments]],
  formOf: [['sign']],
  formatClock: [[28_830]],
  formatDuration: [[900]],
  formatLength: [[91.44, 'imperial', 'wheel', 2]],
  formatMass: [[3.9, 'metric']],
  formatMeasure: [[5012, 'metric']],
  formatMinute: [[28_830]],
  formatVolume: [[3, 'metric']],
  fromEastNorth: [[at, 10, 20]],
  gradeBetween: [[course, 100, 900]],
  gridReference: [[at, 4]],
  groundStage: [[plan, courses, { ground: new Map([['ground.geojson', streets]]) }], MADE],
  groundAlong: [[indexed, streets], MADE],
  groundText: [[streets], MADE],
  groundDocument: [[clipped], MADE],
  clipGround: [[[OSM], { file: 'town.osm', courses: [course], within: 300 }], MADE],
  createGroundClipper: [['town.osm', [course], 300], MADE],
  improve: [[analysis, { only: ['s2'], within: 20, step: 10, finest: 5, steps: 1e5 }], 2],
  improveDocument: [[improved], MADE],
  indexBuildings: [[streets], MADE],
  indexCourse: [[course]],
  indexPaper: [[analysis, [{ name: 'a.html', title: 'A' }], options], MADE],
  languageNote: [['en']],
  layoutDocument: [[analysis, analysis.findings], MADE],
  layoutStage: [[plan, courses, day], MADE],
  learnRates: [[plan, day.stations], MADE],
  learntSupplies: [[plan, raceday.learnRates(plan, day.stations)], MADE],
  leftFields: [[day.stations[0]], MADE],
  usedOf: [[plan, day.stations[0], { waterFull: 0, sportsDrinkFull: 0, cupPacks: 0 }], MADE],
  usedOfTexts: [[plan, day.stations[0], { waterFull: '0', sportsDrinkFull: '0', cupPacks: '0' }], MADE],
  sightBlocked: [[at, [-17.3851, -33.19], ground.indexBuildings(streets)], MADE],
  streetPlace: [[ground.groundAlong(indexed!, streets), 300], MADE],
  readGround: [[ground.groundText(streets), 'ground.geojson']],
  readLeftovers: [['station,water jugs full\ns1,0\n', 'left.csv', plan, day.stations], MADE],
  leftoversCsv: [[plan, day.stations, 'es'], MADE],
  readRoster: [['name,station\nAda Tern,s1\n', 'crew.csv', plan]],
  rosterRows: [[plan, day.stations], MADE],
  supplyOrder: [[plan, day], MADE],
  orderCsv: [[plan, day, 'es'], MADE],
  crewCsv: [[plan, day, 'es'], MADE],
  lengthIn: [[42_195, 'mi']],
  lengthLike: [['2 km', 1865]],
  massCurve: [[[0, 100, 300, 300, 50], 120, 1]],
  measureLine: [[course.lon, course.lat]],
  measureOf: [[course, 500]],
  metres: [[100, 'yd']],
  movedText: [[document, improved.plan.stations, improved.moves], MADE],
  nearestOn: [[indexed, at]],
  papersOf: [[analysis, { ...options, review, context }], 2],
  parseClock: [['08:00']],
  parseDuration: [['30 min']],
  parseLength: [['2 km']],
  parseMass: [['2 kg']],
  parseVolume: [['2 l']],
  reviewPlan: [[{ plan: PLAN, files: { 'c.gpx': GPX }, file: 'p.json', variant: 'rain' }], 2],
  layoutPlan: [[{ plan: PLAN, files: { 'c.gpx': GPX }, file: 'p.json', variant: 'rain' }], 2],
  nextStation: [[analysis, 'r', 500], MADE],
  etaAt: [[analysis, 'r', 0.5, 500], MADE],
  runnersAt: [[analysis, 29_400, 'r'], MADE],
  courseFromLine: [
    [
      [
        [-17.4, -33.2, 1],
        [-17.39, -33.2, 2],
      ],
      { drawn: 'centre' },
    ],
  ],
  courseFromGpx: [[GPX, { file: 'c.gpx', gaps: 'join' }]],
  ascentBetween: [[course, 100, 900]],
  legBetween: [[indexed, 100, at]],
  passStage: [[plan, courses], MADE],
  passesOf: [[indexed, at, { snapRadius: 60, pinR95: 5, courseR95: 3, sideConfidence: 0.95 }]],
  passesToGeoJson: [[passes]],
  offeredCourse: [[{ gpx: 'c.gpx' }, file], MADE],
  placeFindings: [[analysis.findings, document], MADE],
  placesFromGeoJson: [[{ type: 'Point', coordinates: [-17.4, -33.2] }]],
  placesToGeoJson: [[[{ name: 'Pier', at }]]],
  planJsonSchema: [[]],
  pointAt: [[course, 500, 3]],
  polygonsFromGeoJson: [
    [
      {
        type: 'Polygon',
        coordinates: [
          [
            [0, 0],
            [1, 0],
            [1, 1],
            [0, 0],
          ],
        ],
      },
    ],
  ],
  polygonsToGeoJson: [
    [
      [
        {
          name: 'Pier',
          polygon: [
            [0, 0],
            [1, 0],
            [1, 1],
          ],
        },
      ],
    ],
  ],
  raceDayDocument: [[analysis, day, day.findings], MADE],
  raceDayOf: [[plan, seen, table, sources.results], MADE],
  racesOnCourses: [[plan, table, [field]], MADE],
  rawLength: [[course]],
  rawOf: [[course, 500]],
  readGpx: [[GPX, 'c.gpx']],
  readPlan: [[PLAN, 'plan.json']],
  readResults: [['time\n40:00\n', 'time', 'past.csv']],
  reanalyse: [[analysis, plan, sources], 2],
  reportHtml: [[{ analysis, review, made: '2027-09-01', language: 'en' }], MADE],
  reviewBuilt: [[analysis, file], MADE],
  reviewDocument: [[analysis, { sha256: '0', inputs: [{ file: 'c.gpx', sha256: '1' }] }], MADE],
  reviewLayout: [[analysis, analysis.findings], MADE],
  resultsKey: [['past.csv', 'time']],
  reviewPlaced: [[analysis, file], MADE],
  runRace: [[field, [0, 3000], null, { measures: [0, 3000], times: [28_800, 33_000] }], MADE],
  sayOf: [[voice]],
  seenOf: [[finding]],
  segmentAzimuthDeg: [[-17.4, -33.2, -17.39, -33.2]],
  segmentLength: [[-17.4, -33.2, -17.39, -33.2]],
  sliceLine: [[course, 0, 100]],
  snapDocument: [[[{ at, name: 'Pin', passes, nearest }]]],
  sourceText: [['common practice, no source', 'en']],
  startMeasure: [[course]],
  startPlan: [
    [
      file,
      {
        name: 'A',
        gpx: 'c.gpx',
        units: 'metric',
        every: 500,
        side: 'alternate',
        track: 'Pier',
        length: 2800,
        marks: [{ at, measure: 1400 }],
      },
    ],
  ],
  stationDay: [[plan, plan.stations[0], arrivals[0], 2], MADE],
  swappedPosition: [[indexed, at]],
  tangleFindings: [[indexed, where]],
  textOfCell: [["'=a"]],
  timesAt: [[running, 500], MADE],
  themeText: [['time', 'en']],
  toCalendar: [[analysis, 1_800_000_000_000], MADE],
  toCsv: [[analysis], MADE],
  toGeoJson: [[analysis], MADE],
  toGpx: [[analysis, 'metric'], MADE],
  voiceOf: [[plan, { units: 'metric', language: 'en' }], MADE],
  wheelBetween: [[course, 100, 400, 6, 1]],
  withVariant: [[document, 'rain'], MADE],
  writeGpx: [
    [
      {
        creator: 'me',
        name: 'n',
        time: 0,
        waypoints: [{ lon: 1, lat: 2, ele: 3, name: 'w' }],
        routes: [{ name: 'r', points: [{ lon: 1, lat: 2 }] }],
        tracks: [{ name: 't', segments }],
      },
    ],
  ],
};

const FACES = { core, planParts, stages, schemas, sentences, units, geojson, geometry, gpx, ground, raceday, papers };

/** Every exported function by name, of all faces. */
export const EXPORTED: ReadonlyMap<string, (...values: readonly unknown[]) => unknown> = new Map(
  Object.values(FACES).flatMap((face) =>
    Object.entries(face).filter(
      (entry): entry is [string, (...values: readonly unknown[]) => unknown] => typeof entry[1] === 'function',
    ),
  ),
);

/** The good call of each. */
export const CALLS: ReadonlyMap<string, GoodCall> = new Map(
  Object.entries(ARGS).map(([name, [args, deep = ALL]]) => [
    name,
    { call: EXPORTED.get(name) ?? (() => undefined), args: frozen(args), deep },
  ]),
);

/** Columns that no call may change. */
export const COLUMNS: readonly Float64Array[] = [course.lon, course.lat, course.raw, ...segments.map(({ ele }) => ele)];
