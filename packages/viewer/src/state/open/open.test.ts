import { describe, expect, test } from 'vitest';
import { DEMO_NAMES, demoFile, openedFrom, straightPlan, textFile } from '../../testing.ts';
import { openFiles, type Opening } from './open.ts';
import { createStore } from '../store/store.ts';
import { receive } from './receive.ts';

const refusedLines = (opening: Opening): readonly string[] => {
  if (opening.kind !== 'refused') throw new Error(`expected a refusal, found ${opening.kind}`);
  return opening.findings.map(
    ({ where, message }) => `${where.file ?? ''}:${where.line ?? ''}:${where.column ?? ''} ${message}`,
  );
};

const startingFrom = (...args: [files: Parameters<typeof openFiles>[0], waiting?: Parameters<typeof openFiles>[1]]) => {
  const opening = openFiles(args[0], args[1] ?? null);
  if (opening.kind !== 'starting') throw new Error(`expected the start sheet, found ${opening.kind}`);
  return opening.starting.files;
};

const POINTS = [
  [-17.4, -33.2],
  [-17.39, -33.2],
  [-17.38, -33.21],
] as const;
const gpx = (inside = ''): string =>
  `<?xml version="1.0"?>\n<gpx version="1.1" creator="test" xmlns="http://www.topografix.com/GPX/1/1">${inside}<trk><name>Loop</name><trkseg>${POINTS.map(([lon, lat]) => `<trkpt lat="${lat}" lon="${lon}"/>`).join('')}</trkseg></trk></gpx>`;

describe('opening files', () => {
  test('a plan with all its files opens, with its background', () => {
    const plan = openedFrom(openFiles(DEMO_NAMES.map(demoFile), null));
    expect(plan.analysis.stations).toHaveLength(9);
    expect([...plan.files.gpx.keys()].sort()).toEqual(['full.gpx', 'half.gpx']);
    expect(plan.files.context?.type).toBe('FeatureCollection');
  });

  test('the order of the files and the folder they came from do not matter', () => {
    const files = DEMO_NAMES.map(demoFile)
      .reverse()
      .map((file) => ({ ...file, name: `race/${file.name}` }));
    expect(openedFrom(openFiles(files, null)).analysis.stations).toHaveLength(9);
  });

  test('a plan without its GPX files waits and names each that is missing', () => {
    const opening = openFiles([demoFile('plan.json'), demoFile('full.gpx')], null);
    expect(opening.kind === 'waiting' ? opening.plan.missing : null).toEqual(['half.gpx']);
  });

  test('a waiting plan opens when the missing file is added', () => {
    const waiting = openFiles([demoFile('plan.json'), demoFile('full.gpx')], null);
    if (waiting.kind !== 'waiting') throw new Error('expected the plan to wait');
    expect(openedFrom(openFiles([demoFile('half.gpx')], waiting.plan)).document.file).toBe('plan.json');
  });

  test('another GPX file than the one waited for is asked about by itself', () => {
    const waiting = openFiles([demoFile('plan.json'), demoFile('full.gpx')], null);
    if (waiting.kind !== 'waiting') throw new Error('expected the plan to wait');
    expect(startingFrom([textFile('other.gpx', gpx())], waiting.plan).map(({ name }) => name)).toEqual(['other.gpx']);
  });

  test('GPX files without a plan are asked about, each under a name of its own', () => {
    const files = ['a/loop.gpx', 'b/loop.gpx', 'shore.GPX'].map((name) => textFile(name, gpx()));
    expect(startingFrom(files).map(({ name }) => name)).toEqual(['loop.gpx', 'loop-2.gpx', 'shore.GPX']);
  });

  test('a GPX file that cannot be read is refused with its line and column', () => {
    const [line] = refusedLines(openFiles([textFile('bad.gpx', gpx().replace('lat="-33.21"', 'lat="north"'))], null));
    expect(line).toMatch(/^bad\.gpx:2:\d+ .*north/u);
  });

  test('a plan with an unknown key is refused with the place of that key', () => {
    const [line] = refusedLines(openFiles([straightPlan({ statoins: [] })], null));
    expect(line).toMatch(/^straight\.json:1:\d+ .*statoins.*stations/u);
  });

  test('a bad GPX file beside a good plan refuses the whole', () => {
    const files = [demoFile('plan.json'), demoFile('full.gpx'), textFile('half.gpx', '<gpx')];
    expect(refusedLines(openFiles(files, null)).some((line) => line.startsWith('half.gpx:1:'))).toBe(true);
  });

  test.each([
    ['two plans at once', [demoFile('plan.json'), straightPlan({})], /two plans: plan\.json and straight\.json/u],
    [
      'a file of another kind',
      [textFile('notes.txt', 'hello')],
      /Halfcup can open a GPX course.*notes\.txt is none of these/u,
    ],
    ['a drawing alone', [demoFile('context.geojson')], /no course and no plan/u],
  ])('%s is refused with what was expected', (_, files, words) => {
    expect(refusedLines(openFiles(files, null)).join('\n')).toMatch(words);
  });

  test('a file that the plan does not name is left aside and said', () => {
    const plan = openedFrom(openFiles([...DEMO_NAMES.map(demoFile), textFile('spare.gpx', gpx())], null));
    expect(
      plan.findings.filter((finding) => finding.code === 'file-not-named').map((finding) => finding.where.file),
    ).toEqual(['spare.gpx']);
  });

  test('a background that is no GeoJSON is a note, and the plan opens without it', () => {
    const files = [...DEMO_NAMES.slice(0, 3).map(demoFile), textFile('context.geojson', '{"type":"Feature')];
    const plan = openedFrom(openFiles(files, null));
    expect(plan.files.context).toBeNull();
    expect(plan.findings.map((finding) => finding.code)).toContain('context-unreadable');
  });
});

describe('receiving what was opened', () => {
  test('a refusal leaves the open plan, the selection and the view as they were', () => {
    const store = createStore();
    receive(store, ['demo'], openFiles(DEMO_NAMES.map(demoFile), null));
    const before = store.open.value;
    store.selected.value = 's3';
    receive(store, ['bad.gpx'], openFiles([textFile('bad.gpx', '<gpx')], null));
    expect(store.open.value).toBe(before);
    expect(store.selected.value).toBe('s3');
    expect(store.refusal.value?.files).toEqual(['bad.gpx']);
  });

  test('opening a plan clears the refusal, takes the plan’s units and shows the first race’s course', () => {
    const store = createStore();
    receive(store, ['bad.gpx'], openFiles([textFile('bad.gpx', '<gpx')], null));
    receive(store, ['straight.json'], openFiles([straightPlan({ units: 'imperial' })], null));
    expect(store.refusal.value).toBeNull();
    expect(store.units.value).toBe('imperial');
    expect(store.course.value).toBe('c');
  });
});

describe('a plan that names its map of the ground', () => {
  const plan = straightPlan({
    ground: 'ground.geojson',
    context: 'island.geojson',
    stations: [{ id: 's1', name: 'Pump', on: { course: 'c', measure: 2000, side: 'right' } }],
  });
  const map = textFile(
    'ground.geojson',
    JSON.stringify({
      type: 'FeatureCollection',
      date: '2026-10-02',
      features: [
        {
          type: 'Feature',
          id: 'way/1',
          properties: { highway: 'residential', name: 'Equator Road' },
          geometry: {
            type: 'LineString',
            coordinates: [
              [0, 0],
              [0.1, 0],
            ],
          },
        },
      ],
    }),
  );

  test('opens with it, apart from its background drawing', () => {
    const opened = openedFrom(openFiles([plan, map, { ...demoFile('context.geojson'), name: 'island.geojson' }], null));
    expect([...opened.files.ground.keys()]).toEqual(['ground.geojson']);
    expect(opened.files.context?.features.length).toBeGreaterThan(1);
    expect(opened.analysis.stations[0]?.street?.street).toBe('Equator Road');
    expect([...opened.files.originals.keys()].toSorted()).toEqual(['ground.geojson', 'island.geojson']);
  });

  test('opens without it too, and says that it is missing', () => {
    const opened = openedFrom(openFiles([plan], null));
    expect(opened.findings.some(({ code }) => code === 'ground-missing')).toBe(true);
    expect(opened.analysis.stations[0]?.street).toBeUndefined();
  });

  test('opens with one that is broken, and says where', () => {
    const opened = openedFrom(openFiles([plan, textFile('ground.geojson', '{ "type": ')], null));
    expect(opened.findings.map(({ code, where }) => [code, where.file])).toEqual(
      expect.arrayContaining([
        ['ground-missing', 'straight.json'],
        ['ground-cut-off', 'ground.geojson'],
      ]),
    );
  });
});
