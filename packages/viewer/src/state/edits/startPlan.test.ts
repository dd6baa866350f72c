import { readPlan } from '@halfcup/core';
import { setUpPlan, type SetUpAnswers } from '@halfcup/core/plan';
import { describe, expect, test } from 'vitest';
import { textFile } from '../../testing.ts';
import { openFiles } from '../open/open.ts';
import { receive } from '../open/receive.ts';
import { fixedFile } from '../open/starting.ts';
import { createStore, type Starting, type Store } from '../store/store.ts';
import { savedName } from '../view/fileNames.ts';
import { startPlan } from './startPlan.ts';
import { undo } from './workbench.ts';

const gpx = (points: readonly (readonly [number, number])[], inside = ''): string =>
  `<gpx version="1.1" creator="test" xmlns="http://www.topografix.com/GPX/1/1">${inside}<trk><trkseg>${points
    .map(([lon, lat]) => `<trkpt lat="${lat}" lon="${lon}"/>`)
    .join('')}</trkseg></trk></gpx>`;
const LINE = Array.from({ length: 40 }, (_, k) => [-17.4 + k * 0.001, -33.2] as const);

function sheet(...texts: readonly string[]): { readonly store: Store; readonly starting: Starting } {
  const store = createStore();
  const files = texts.map((text, k) => textFile(`course-${k + 1}.gpx`, text));
  receive(store, [], openFiles(files, null));
  return { store, starting: store.starting.value! };
}

const LIST = 'name,km,side\nMill,1,left\nBay,far,left\nCape,2,up\nPier,3,right\nEnd,30,left\n';
const ANSWERS: SetUpAnswers = {
  name: 'Ganneth Island',
  units: 'metric',
  courses: [
    { gpx: 'course-1.gpx', name: 'Long' },
    { gpx: 'course-2.gpx', name: 'Short' },
  ],
  races: [{ name: 'Long', gpx: 'course-1.gpx', start: '08:00', entrants: '300', finish: '0:25', cutoff: '1:00' }],
  marks: true,
  stations: { from: 'list', text: LIST, file: 'list.csv' },
};

describe('a plan from the start sheet', () => {
  test('opens with the very text of the answers, and one undo takes all back', () => {
    const { store, starting } = sheet(gpx(LINE), gpx(LINE.slice(0, 20)));
    expect(startPlan(store, starting, ANSWERS)).toEqual([]);
    const made = setUpPlan(ANSWERS, new Map(starting.files.map(({ name, document }) => [name, document])));
    const { open, history, origin } = store;
    expect(open.value!.document.text).toBe(made.ok && made.value);
    expect(open.value!.analysis.stations.map(({ name }) => name)).toEqual(['Mill', 'Pier']);
    expect(open.value!.findings.filter(({ code }) => code === 'list-row').map(({ where }) => where.line)).toEqual([
      3, 4, 6,
    ]);
    expect(history.value.past.map(({ label }) => label)).toEqual(['set up the plan']);
    expect(origin.value!.saved).toBeNull();
    expect(open.value!.document.file).toBe('ganneth-island.json');
    undo(store);
    expect(open.value!.analysis.stations).toEqual([]);
    expect(history.value.past).toEqual([]);
  });

  test('is not made of answers that cannot be used, and the sheet stays', () => {
    const { store, starting } = sheet(gpx(LINE), gpx(LINE));
    const races = [{ name: 'Long', gpx: 'course-1.gpx', start: 'soon' }];
    expect(startPlan(store, starting, { ...ANSWERS, races }).map(({ where }) => where.path)).toEqual([
      '/races/0/start',
    ]);
    expect(store.open.value).toBeNull();
    expect(store.starting.value).toBe(starting);
  });

  test('can take its course without spikes, from a file of another name that reads back', () => {
    const spiked = [...LINE.slice(0, 10), [-17.391, -33.199] as const, ...LINE.slice(10)];
    const { starting } = sheet(gpx(spiked, '<wpt lat="-33.2" lon="-17.38"><name>Tap</name></wpt>'));
    const [file] = starting.files;
    const fixed = fixedFile(file!);
    expect(fixed.name).toBe('course-1-fixed.gpx');
    expect(fixed.document.tracks[0]!.segments[0]!.lon).toHaveLength(40);
    expect(fixed.document.waypoints.map(({ name }) => name)).toEqual(['Tap']);
    expect(fixedFile(fixed)).toBe(fixed);
  });

  test('gives names to what is saved that no file of the plan has', () => {
    const { store, starting } = sheet(gpx(LINE), gpx(LINE));
    startPlan(store, starting, { ...ANSWERS, stations: { from: 'none' } });
    const open = store.open.value!;
    expect(savedName(open, 'stations', '.gpx')).toBe('ganneth-island-stations.gpx');
    const originals = new Map([['Ganneth-Island-stations.GPX', new Blob([])]]);
    expect(savedName({ ...open, files: { ...open.files, originals } }, 'stations', '.gpx')).toBe(
      'ganneth-island-stations-2.gpx',
    );
    expect(readPlan(open.document.text, 'plan.json').ok).toBe(true);
  });
});
